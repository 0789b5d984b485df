"""Measuring and aligning playing: arrays in, frozen results out.

Nothing here knows a file, a device, a database or a window. Every public
function is pure: the same arrays and parameters give the same result.
"""
