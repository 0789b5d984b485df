"""Scores from files: spelling, durations, transposition, repeats, and what is refused.

Transpositions are those of instrumentation handbooks (common practice): a clarinet in B
flat sounds a major second lower, one in A a minor third, a horn in F a fifth, an alto
saxophone a major sixth, a double bass an octave.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import io
import zipfile

import pytest

from app.journal.failures import PlainFailure
from app.services.score_reading import read_parts
from tests.services.writing_scores import (
    BACKWARD,
    FORWARD,
    attributes,
    compressed,
    ending,
    grace,
    line_of,
    measure,
    midi_file,
    partwise,
    pitched,
    rest,
    transposed,
    words,
)


@pytest.fixture
def read(tmp_path):
    def reading(content, name="score.musicxml"):
        path = tmp_path / name
        path.write_bytes(content if isinstance(content, bytes) else content.encode())
        return read_parts(path)

    return reading


def bars(score):
    return [bar.number for bar in score.bars]


def test_pitches_are_spelled_and_durations_counted_in_quarters(read):
    inside = (
        attributes(3, 4, -3)
        + pitched("Eb4", 1.5)
        + pitched("F#4", 0.5)
        + pitched("Gb4", 0.5)
        + rest(0.25)
        + pitched("B#3", 0.25)
    )
    (score,) = read(partwise([measure(1, inside)]))
    assert [(n.name, n.midi_pitch) for n in score.notes] == [
        ("Eb4", 63), ("F#4", 66), ("Gb4", 66), ("B#3", 60),
    ]  # fmt: skip
    assert [(n.onset_beats, n.duration_beats) for n in score.notes] == [
        (0.0, 1.5), (1.5, 0.5), (2.0, 0.5), (2.75, 0.25),
    ]  # fmt: skip
    assert [n.beat for n in score.notes] == [1.0, 2.5, 3.0, 3.75]
    assert score.counted_beats == (0.0, 1.0, 2.0)
    assert score.end_beats == 3.0


def test_compound_time_is_counted_in_dotted_quarters(read):
    (score,) = read(partwise([measure(1, attributes(6, 8) + line_of(*["A4"] * 6, quarters=0.5))]))
    assert score.counted_beats == (0.0, 1.5)
    assert [round(n.beat, 3) for n in score.notes[::3]] == [1.0, 2.0]


def test_an_upbeat_keeps_its_place_in_the_bar(read):
    text = partwise(
        [
            measure(0, attributes(3) + pitched("D4", 1), extra=' implicit="yes"'),
            measure(1, line_of("G4", "A4", "B4")),
        ]
    )
    (score,) = read(text)
    assert [(n.bar, n.beat, n.onset_beats) for n in score.notes[:2]] == [
        (0, 3.0, 0.0),
        (1, 1.0, 1.0),
    ]
    assert score.counted_beats == (0.0, 1.0, 2.0, 3.0)


def test_tied_notes_are_one_note_and_grace_notes_take_no_time(read):
    inside = attributes(2) + pitched("C5", 1) + grace("B4") + pitched("A4", 1, tie="start")
    text = partwise([measure(1, inside), measure(2, pitched("A4", 2, tie="stop"))])
    (score,) = read(text)
    assert [(n.name, n.duration_beats, n.tied, n.grace) for n in score.notes] == [
        ("C5", 1.0, False, False),
        ("B4", 0.0, False, True),
        ("A4", 3.0, True, False),
    ]


@pytest.mark.parametrize(
    ("transpose", "written", "sounding"),
    [
        (transposed(-1, -2), "D5", "C5"),
        (transposed(-2, -3), "C5", "A4"),
        (transposed(-4, -7), "C5", "F4"),
        (transposed(-5, -9), "C5", "Eb4"),
        (transposed(0, 0, -1), "E3", "E2"),
        (transposed(-1, -2), "F#5", "E5"),
        (transposed(-2, -3), "Eb5", "C5"),
    ],
    ids=["B flat", "A", "F", "E flat", "double bass", "B flat sharp", "A flat"],
)
def test_transposing_instruments_are_read_at_the_pitch_that_sounds(
    read, transpose, written, sounding
):
    (score,) = read(partwise([measure(1, attributes(1, 4, 0, transpose) + pitched(written, 1))]))
    assert score.notes[0].name == sounding


def test_repeats_and_endings_are_unfolded(read):
    text = partwise(
        [
            measure(1, attributes(2) + line_of("C5", "D5"), FORWARD),
            measure(2, line_of("E5", "F5"), ending("1", "start"), ending("1", "stop") + BACKWARD),
            measure(3, line_of("G5", "A5"), ending("2", "start"), ending("2", "stop")),
            measure(4, line_of("B5", "C6")),
        ]
    )
    (score,) = read(text)
    assert bars(score) == [1, 2, 1, 3, 4]
    assert [n.name for n in score.notes] == [
        "C5",
        "D5",
        "E5",
        "F5",
        "C5",
        "D5",
        "G5",
        "A5",
        "B5",
        "C6",
    ]
    assert [n.onset_beats for n in score.notes] == [float(k) for k in range(10)]
    assert [n.turn for n in score.notes] == [1, 1, 1, 1, 2, 2, 1, 1, 1, 1]


def test_da_capo_al_fine_ends_where_fine_stands(read):
    text = partwise(
        [
            measure(1, attributes(2) + line_of("C5", "D5")),
            measure(2, line_of("E5", "F5") + words("Fine", 'fine="yes"')),
            measure(3, line_of("G5", "A5")),
            measure(4, line_of("B5", "C6") + words("D.C. al Fine", 'dacapo="yes"')),
        ]
    )
    (score,) = read(text)
    assert bars(score) == [1, 2, 3, 4, 1, 2]


def test_dal_segno_al_coda_leaps_to_the_coda(read):
    segno = "<direction><direction-type><segno/></direction-type></direction>"
    coda = "<direction><direction-type><coda/></direction-type></direction>"
    text = partwise(
        [
            measure(1, attributes(2) + line_of("C5", "D5")),
            measure(2, segno + line_of("E5", "F5")),
            measure(3, line_of("G5", "A5") + words("To Coda", 'tocoda="coda"')),
            measure(4, line_of("B5", "C6") + words("D.S. al Coda", 'dalsegno="segno"')),
            measure(5, coda + line_of("D6", "E6")),
        ]
    )
    (score,) = read(text)
    assert bars(score) == [1, 2, 3, 4, 2, 3, 5]


def test_signs_that_cannot_be_unfolded_are_said_and_read_straight_through(read):
    text = partwise(
        [
            measure(1, attributes(2) + line_of("C5", "D5") + words("D.S. al Coda", 'dalsegno="x"')),
            measure(2, line_of("E5", "F5")),
        ]
    )
    (score,) = read(text)
    assert bars(score) == [1, 2]
    assert "read straight through" in score.notices[0]


def test_marks_of_the_player_are_kept(read):
    slur = '<slur type="{}" number="1"/>'
    technical = "<technical><fingering>3</fingering><string>2</string></technical>"
    dynamic = "<direction><direction-type><dynamics><mf/></dynamics></direction-type></direction>"
    wedge = '<direction><direction-type><wedge type="{}" number="1"/></direction-type></direction>'
    inside = (
        attributes(4)
        + dynamic
        + wedge.format("crescendo")
        + pitched("C5", 1, slur.format("start") + technical)
        + pitched("D5", 1, slur.format("stop"))
        + wedge.format("stop")
        + words("pizz.")
        + pitched("E5", 1)
        + words("arco")
        + pitched("F5", 1)
    )
    first, second, third, fourth = read(partwise([measure(1, inside)]))[0].notes
    assert (first.dynamic, first.hairpin, first.slurred) == ("mf", "crescendo", False)
    assert (first.string, first.finger) == (2, 3)
    assert second.slurred
    assert [n.technique for n in (second, third, fourth)] == ["", "pizzicato", ""]


def test_an_artificial_harmonic_sounds_two_octaves_above_the_stopped_note(read):
    # A fourth touched over the stopped note: two octaves above it (instrumentation handbooks).
    mark = "<technical><harmonic><artificial/>{}</harmonic></technical>"
    base = pitched("E4", 1, mark.format("<base-pitch/>"))
    touched = pitched("A4", 1, mark.format("<touching-pitch/>"))
    chord = base + touched.replace("<note>", "<note><chord/>")
    (note,) = read(partwise([measure(1, attributes(1) + chord)]))[0].notes
    assert (note.midi_pitch, note.harmonic, note.chord) == (64 + 24, True, ())


def test_every_part_with_notes_is_given_by_its_name(read):
    text = partwise(
        [measure(1, attributes(1) + pitched("C5", 1))],
        [measure(1, attributes(1) + rest(1))],
        [measure(1, attributes(1) + pitched("C3", 1))],
        names=["Violin", "Silent", "Cello"],
    )
    assert [part.part for part in read(text)] == ["Violin", "Cello"]


@pytest.mark.parametrize("form", ["compressed", "utf-16", "latin-1", "timewise"])
def test_every_written_form_of_a_score_reads_the_same(read, form):
    plain = partwise([measure(1, attributes(2) + line_of("C5", "Eb5"))], names=["Flöte"])
    expected = read(plain)
    if form == "compressed":
        again = read(compressed(plain), "score.mxl")
    elif form == "timewise":
        inside = plain.partition("<part-list>")[2].partition("</part-list>")[0]
        bar = attributes(2) + line_of("C5", "Eb5")
        again = read(
            f'<score-timewise version="4.0"><part-list>{inside}</part-list>'
            f'<measure number="1"><part id="P0">{bar}</part></measure></score-timewise>'
        )
    else:
        again = read(plain.replace("UTF-8", form).encode(form))
    assert again == expected
    assert again[0].part == "Flöte"


def test_midi_is_spelled_by_its_key_and_counted_by_its_metre(read):
    notes = [(62, 1), (64, 0.5), (66, 0.5), (67, 1), (73, 1.5), (74, 0.5)]
    (score,) = read(midi_file(notes, "D"), "line.mid")
    assert [n.name for n in score.notes] == ["D4", "E4", "F#4", "G4", "C#5", "D5"]
    assert [n.onset_beats for n in score.notes] == [0.0, 1.0, 1.5, 2.0, 3.0, 4.5]
    assert [n.bar for n in score.notes] == [1, 1, 1, 1, 2, 2]
    assert score.tempo_bpm == pytest.approx(90.0, abs=0.01)
    (flat,) = read(midi_file([(61, 1), (63, 1), (66, 1)], "Db"), "flat.mid")
    assert [n.name for n in flat.notes] == ["Db4", "Eb4", "Gb4"]


BOMB = (
    '<!DOCTYPE x [<!ENTITY a "aaaaaaaaaa">'
    + "".join(
        f'<!ENTITY {b} "{("&" + a + ";") * 10}">'
        for a, b in zip("abcdefgh", "bcdefghi", strict=True)
    )
    + "]><score-partwise>&i;</score-partwise>"
)
OUTSIDE = (
    '<!DOCTYPE x [<!ENTITY f SYSTEM "file:///etc/passwd">]><score-partwise>&f;</score-partwise>'
)


@pytest.mark.parametrize(
    ("content", "name", "says"),
    [
        (b"", "empty.xml", "is empty"),
        (b"\x00\x01\x02 no score", "noise.xml", "no score"),
        (b"<html><body/></html>", "page.xml", "no score"),
        (b"<score-partwise>", "cut.xml", "damaged"),
        (b"MThd\x00\x00\x00\x06", "cut.mid", "damaged"),
        (b"PK\x03\x04 not really", "cut.mxl", "damaged"),
        (BOMB.encode(), "bomb.xml", "entities"),
        (BOMB.encode("utf-16"), "bomb16.xml", "entities"),
        (OUTSIDE.encode(), "outside.xml", "entities"),
        (partwise([measure(1, attributes(4) + rest(4))]).encode(), "rests.xml", "no pitched notes"),
        (
            partwise([measure(1, attributes(4) + pitched("C5", 1e6))]).encode(),
            "long.xml",
            "no duration",
        ),
        (
            partwise(
                [
                    measure(
                        1,
                        attributes(1) + pitched("C5", 1),
                        right='<repeat direction="backward" times="99999"/>',
                    )
                ]
            ).encode(),
            "turns.xml",
            "damaged",
        ),
    ],
)
def test_a_wrong_file_is_told_in_one_plain_sentence(read, content, name, says):
    with pytest.raises(PlainFailure, match=says) as told:
        read(content, name)
    assert told.value.sentence.endswith(".")
    assert told.value.next_step.endswith(".")


def test_an_archive_that_unpacks_without_end_is_refused(read):
    data = io.BytesIO()
    with zipfile.ZipFile(data, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("score.xml", b"<" + b" " * (65 << 20))
    with pytest.raises(PlainFailure, match="unpacks to more"):
        read(data.getvalue(), "bomb.mxl")


def test_a_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(PlainFailure, match="is not there"):
        read_parts(tmp_path / "none.xml")
