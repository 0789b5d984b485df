"""Standard MIDI files with one millisecond to the tick, and exact pitch bends.

Format 0 of the Standard MIDI Files 1.0 specification: a header chunk, one track of
delta times and events. A quarter note of 1 000 000 microseconds and 1000 ticks makes a
tick a millisecond.
"""

import struct
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

_MELODIC_CHANNELS: Final = tuple(channel for channel in range(16) if channel != 9)
_BEND_SEMITONES: Final = 2
_BEND_LEAD_MS: Final = 10


@dataclass(frozen=True, slots=True)
class MidiNote:
    """One note: ``bend`` is the 14-bit word, 8192 in the middle."""

    start_ms: int
    end_ms: int
    key: int
    bend: int = 8192
    velocity: int = 90


def write_midi(path: Path, program: int, notes: Sequence[MidiNote]) -> None:
    """Write a line of notes for one instrument (General MIDI program, 0 to 127).

    Neighbouring notes go to different channels, so that the bend of one never reaches
    the release of the one before.
    """
    events: list[tuple[int, bytes]] = [(0, b"\xff\x51\x03" + (1_000_000).to_bytes(3, "big"))]
    for channel in _MELODIC_CHANNELS:
        events.append((0, bytes((0xC0 | channel, program))))
        # registered parameter 0: the range of the bend
        for controller, value in ((101, 0), (100, 0), (6, _BEND_SEMITONES), (38, 0)):
            events.append((0, bytes((0xB0 | channel, controller, value))))
    for number, note in enumerate(notes):
        channel = _MELODIC_CHANNELS[number % len(_MELODIC_CHANNELS)]
        bend = bytes((0xE0 | channel, note.bend & 127, note.bend >> 7))
        events.append((max(note.start_ms - _BEND_LEAD_MS, 0), bend))
        events.append((note.start_ms, bytes((0x90 | channel, note.key, note.velocity))))
        events.append((note.end_ms, bytes((0x80 | channel, note.key, 64))))
    events.sort(key=lambda event: event[0])
    track, now_ms = b"", 0
    for at_ms, event in events:
        track += _delta(at_ms - now_ms) + event
        now_ms = at_ms
    track += _delta(1000) + b"\xff\x2f\x00"
    header = b"MThd" + struct.pack(">IHHH", 6, 0, 1, 1000)
    path.write_bytes(header + b"MTrk" + struct.pack(">I", len(track)) + track)


def _delta(ticks: int) -> bytes:
    """Variable-length quantity: seven bits to the byte, the top bit while more follow."""
    parts = [ticks & 127]
    while ticks > 127:
        ticks >>= 7
        parts.append((ticks & 127) | 128)
    return bytes(reversed(parts))
