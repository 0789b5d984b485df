"""``score``: parts, attach, show, scale, bars, remove; and ``measure --score``."""

import json

import pytest

from tests.services.writing_scores import attributes, line_of, measure, partwise


@pytest.fixture
def score_file(tmp_path):
    path = tmp_path / "study.musicxml"
    bars = [measure(1, attributes(3, 4, 1) + line_of("G4", "A4", "B4")),
            measure(2, line_of("C5", "B4", "F#4"))]  # fmt: skip
    path.write_text(partwise(bars, bars, names=["Violin", "Viola"]), encoding="utf-8")
    return path


def test_a_score_is_attached_shown_and_taken_away(run, score_file):
    assert "2  Viola: 6 notes, bars 1 to 2" in run("score", "parts", score_file).out
    done = run("score", "attach", "Study: Opening", score_file, "--part", 2, "--bars", "2")
    assert done.code == 0, done.err
    assert "bar 2: C5 B4 F#4" in done.out
    shown = run("score", "show", "Opening", "--json").json
    assert shown["source"]["file"]["part"] == 1
    assert [note["step"] for note in shown["score"]["notes"]] == ["C", "B", "F"]
    assert run("score", "remove", "Opening").code == 0
    assert "has no score" in run("score", "show", "Opening").out


def test_a_scale_needs_no_file(run):
    done = run("score", "scale", "eb", "--mode", "melodic minor", "--instrument", "viola", "--json")
    assert done.json["passage"]["name"] == "Eb melodic minor scale, 1 octave"
    assert done.json["source"]["scale"]["start_octave"] == 3
    assert done.json["score"]["notes"][6]["alter"] == 0


@pytest.mark.parametrize(
    "arguments",
    [
        ("attach", "Opening", "none.musicxml"),
        ("attach", "Opening", "SCORE", "--part", "3"),
        ("attach", "Opening", "SCORE", "--bars", "70-80"),
        ("attach", "Opening", "SCORE", "--bars", "x"),
        ("scale", "H"),
        ("scale", "D", "--octaves", "4", "--start", "4"),
        ("show", "Nothing"),
    ],
)
def test_what_cannot_be_done_is_said_and_leaves_nothing_behind(run, score_file, arguments):
    run("score", "scale", "C")
    done = run("score", *[score_file if a == "SCORE" else a for a in arguments])
    assert done.code == 2
    assert done.err.strip().count("\n") <= 1
    assert "Opening" not in run("score", "show", "Nothing").err


def test_a_file_is_measured_against_a_score_without_a_journal(run, tmp_path, score_file):
    import soundfile

    from sample_audio.generator import NoteSpec, PhraseSpec, render

    played = (67, 69, 71, 72, 70, 66)
    phrase = render(PhraseSpec(tuple(NoteSpec(midi, 1.0) for midi in played), tempo=80))
    clip = tmp_path / "clip.wav"
    soundfile.write(clip, phrase.samples, phrase.sample_rate_hz)
    found = run("measure", clip, "--score", score_file, "--json").json["score"]
    (slip,) = found["slips"]
    assert (slip["kind"], slip["played"], slip["written"]["name"]) == ("wrong", "A#4", "B4")
    assert "A#4 instead of B4" in run("measure", clip, "--score", score_file).out
    assert json.dumps(found)
