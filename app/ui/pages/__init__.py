"""The window's pages."""
