"""Devices and sound files: capture, playback, levels, decoding, peaks.

Nothing here knows what the sound means, a database or a window.
"""
