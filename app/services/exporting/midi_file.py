"""The measured notes as a Standard MIDI File, with their intonation as pitch bend.

Time runs at 60 quarter notes a minute, so that a quarter note is a second and the
notes stand where they were played. Sources: MIDI 1.0 Detailed Specification (pitch
bend, registered parameter 0: bend sensitivity) and Standard MIDI Files 1.0.
"""

import io
import math
from collections.abc import Mapping, Sequence
from typing import Any

TICKS_PER_SECOND = 960
BEND_RANGE_SEMITONES = 2
BEND_STEPS = 8192
"""Steps of pitch bend from the middle to one end: 200 cents, so 0.024 cents a step."""

_MICROSECONDS_PER_QUARTER = 1_000_000
_VELOCITY = 80


def midi_bytes(title: str, notes: Sequence[Mapping[str, Any]]) -> bytes:
    """Write the notes that have a pitch.

    Parameters
    ----------
    title : str
        Name of the track.
    notes : sequence of mapping
        As in the machine-readable object: ``start_s``, ``end_s``, ``pitch_hz``. Notes
        without a pitch are passed over.

    Returns
    -------
    bytes
        A file of format 0.
    """
    import mido  # noqa: PLC0415 - only when exported

    file = mido.MidiFile(type=0, ticks_per_beat=TICKS_PER_SECOND)
    track = mido.MidiTrack()
    file.tracks.append(track)
    # Text events are Latin-1 in the library; what it lacks is written as a question mark.
    name = title.encode("latin-1", "replace").decode("latin-1")
    track.append(mido.MetaMessage("track_name", name=name))
    track.append(mido.MetaMessage("set_tempo", tempo=_MICROSECONDS_PER_QUARTER))
    for control, value in ((101, 0), (100, 0), (6, BEND_RANGE_SEMITONES), (38, 0)):
        track.append(mido.Message("control_change", control=control, value=value))
    at_ticks = 0
    for tick, kind, number, bend in _events(notes):
        wait = tick - at_ticks
        at_ticks = tick
        if kind == "note_on":
            track.append(mido.Message("pitchwheel", pitch=bend, time=wait))
            track.append(mido.Message("note_on", note=number, velocity=_VELOCITY))
        else:
            track.append(mido.Message("note_off", note=number, velocity=0, time=wait))
    out = io.BytesIO()
    file.save(file=out)
    return out.getvalue()


def _events(notes: Sequence[Mapping[str, Any]]) -> list[tuple[int, str, int, int]]:
    """Give note ends and starts in the order of time, an end before a start."""
    sounding = [note for note in notes if note["pitch_hz"] is not None]
    events = []
    for note, after in zip(sounding, [*sounding[1:], None], strict=True):
        exact = 69 + 12 * math.log2(note["pitch_hz"] / 440.0)
        number = min(max(round(exact), 0), 127)
        bend = round((exact - number) / BEND_RANGE_SEMITONES * BEND_STEPS)
        start = round(note["start_s"] * TICKS_PER_SECOND)
        end = round(note["end_s"] * TICKS_PER_SECOND)
        if after is not None:  # one channel, one bend: a note ends where the next begins
            end = min(end, round(after["start_s"] * TICKS_PER_SECOND))
        events.append((start, "note_on", number, min(max(bend, -BEND_STEPS), BEND_STEPS - 1)))
        events.append((max(end, start + 1), "note_off", number, 0))
    return sorted(events, key=lambda event: (event[0], event[1] == "note_on"))
