"""Writes small scores for tests; the melodies are invented."""

import io
import zipfile
from collections.abc import Sequence

STEPS = {"C": 0, "D": 2, "E": 4, "F": 5, "G": 7, "A": 9, "B": 11}


def pitched(name: str, quarters: float, inside: str = "", tie: str = "") -> str:
    """Write a note such as ``F#4``; four divisions a quarter."""
    step, octave = name[0], name[-1]
    alter = name.count("#") - name.count("b")
    altered = f"<alter>{alter}</alter>" if alter else ""
    ties = "".join(f'<tie type="{kind}"/>' for kind in tie.split())
    tied = "".join(f'<tied type="{kind}"/>' for kind in tie.split())
    marks = f"<notations>{tied}{inside}</notations>" if tied or inside else ""
    return (
        f"<note><pitch><step>{step}</step>{altered}<octave>{octave}</octave></pitch>"
        f"<duration>{int(quarters * 4)}</duration>{ties}<voice>1</voice>{marks}</note>"
    )


def rest(quarters: float) -> str:
    return f"<note><rest/><duration>{int(quarters * 4)}</duration><voice>1</voice></note>"


def grace(name: str) -> str:
    return (
        pitched(name, 0).replace("<note>", "<note><grace/>").replace("<duration>0</duration>", "")
    )


def line_of(*names: str, quarters: float = 1.0) -> str:
    return "".join(pitched(name, quarters) for name in names)


def attributes(beats: int = 4, beat_type: int = 4, fifths: int = 0, transpose: str = "") -> str:
    return (
        f"<attributes><divisions>4</divisions><key><fifths>{fifths}</fifths></key>"
        f"<time><beats>{beats}</beats><beat-type>{beat_type}</beat-type></time>{transpose}"
        "</attributes>"
    )


def transposed(diatonic: int, chromatic: int, octaves: int = 0) -> str:
    octave = f"<octave-change>{octaves}</octave-change>" if octaves else ""
    return (
        f"<transpose><diatonic>{diatonic}</diatonic><chromatic>{chromatic}</chromatic>"
        f"{octave}</transpose>"
    )


def measure(number: int, inside: str, left: str = "", right: str = "", extra: str = "") -> str:
    begin = f'<barline location="left">{left}</barline>' if left else ""
    end = f'<barline location="right">{right}</barline>' if right else ""
    return f'<measure number="{number}"{extra}>{begin}{inside}{end}</measure>'


FORWARD = '<repeat direction="forward"/>'
BACKWARD = '<repeat direction="backward"/>'


def ending(number: str, kind: str) -> str:
    return f'<ending number="{number}" type="{kind}"/>'


def words(text: str, sound: str = "") -> str:
    heard = f"<sound {sound}/>" if sound else ""
    return f"<direction><direction-type><words>{text}</words></direction-type>{heard}</direction>"


def partwise(*parts: Sequence[str], names: Sequence[str] = ()) -> str:
    """Write a score of parts, each a list of measures."""
    names = names or [f"Line {number}" for number in range(1, len(parts) + 1)]
    listed = "".join(
        f'<score-part id="P{k}"><part-name>{name}</part-name></score-part>'
        for k, name in enumerate(names)
    )
    inside = "".join(f'<part id="P{k}">{"".join(bars)}</part>' for k, bars in enumerate(parts))
    return (
        '<?xml version="1.0" encoding="UTF-8"?>\n'
        f'<score-partwise version="4.0"><part-list>{listed}</part-list>{inside}</score-partwise>'
    )


def compressed(text: str, name: str = "score.xml") -> bytes:
    """Write a compressed score as the format wants it."""
    container = (
        '<?xml version="1.0"?><container><rootfiles>'
        f'<rootfile full-path="{name}"/></rootfiles></container>'
    )
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("META-INF/container.xml", container)
        archive.writestr(name, text)
    return data.getvalue()


def midi_file(notes: Sequence[tuple[int, float]], key: str = "D") -> bytes:
    """Write a MIDI file of (note number, quarters) with a key signature."""
    import mido

    file = mido.MidiFile(ticks_per_beat=480)
    track = mido.MidiTrack()
    file.tracks.append(track)
    track.append(mido.MetaMessage("time_signature", numerator=3, denominator=4, time=0))
    track.append(mido.MetaMessage("key_signature", key=key, time=0))
    track.append(mido.MetaMessage("set_tempo", tempo=mido.bpm2tempo(90), time=0))
    for number, quarters in notes:
        track.append(mido.Message("note_on", note=number, velocity=80, time=0))
        track.append(mido.Message("note_off", note=number, velocity=0, time=int(quarters * 480)))
    data = io.BytesIO()
    file.save(file=data)
    return data.getvalue()
