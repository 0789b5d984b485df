"""The window's models."""
