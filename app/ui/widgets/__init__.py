"""The window's widgets."""
