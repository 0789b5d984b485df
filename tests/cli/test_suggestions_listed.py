"""``mark --suggest``: suggestions on the command line, and the answers to them."""

import pytest
import soundfile

from sample_audio.generator import NoteSpec, PhraseSpec, render

TUNE = (69, 71, 72, 74, 72, 71, 74, 72, 69)


@pytest.fixture
def take(run, tmp_path):
    # B4 (71) is 30 cents flat twice; everything else is right.
    notes = tuple(NoteSpec(m, 1.0, deviation_cents=-30.0 if m == 71 else 0.0) for m in TUNE)
    phrase = render(PhraseSpec(notes, tempo=90.0, seed=4, instrument="violin"))
    path = tmp_path / "flat.wav"
    soundfile.write(path, phrase.samples, phrase.sample_rate_hz, subtype="PCM_24")
    imported = run("import", path, "--passage", "Tune", "--date", "2026-03-12", "--json")
    take_id = imported.json["filed"][0]["id"]
    assert run("measure", take_id).code == 0
    return take_id


def test_suggestions_are_listed_accepted_and_put_aside(run, take):
    found = run("mark", take, "--suggest", "--json").json
    assert [entry["key"] for entry in found["suggestions"]] == ["flat:B4"]
    entry = found["suggestions"][0]
    assert entry["category"] == "intonation"
    assert entry["unit"] == "cents"
    assert entry["value"] == pytest.approx(-30.0, abs=1.5)
    assert len(entry["places"]) == 2
    assert len(entry["evidence"]) == 3
    listed = run("mark", take, "--suggest").out
    assert "cents flat, twice" in listed
    assert run("mark", take, "--json").json == [], "nothing is placed by itself"

    accepted = run("mark", take, "--accept", "flat:B4")
    assert accepted.code == 0
    assert "marked or put aside" in accepted.out
    placed = run("mark", take, "--json").json
    assert len(placed) == 1
    assert "cents flat, twice" in placed[0]["text"]


def test_a_dismissal_lasts(run, take):
    assert run("mark", take, "--dismiss", "flat:B4").code == 0
    found = run("mark", take, "--suggest", "--json").json
    assert (found["suggestions"], found["dismissed_count"]) == ([], 1)
    assert "1 put aside for this passage." in run("mark", take, "--suggest").out


def test_what_is_not_suggested_cannot_be_answered(run, take):
    ran = run("mark", take, "--accept", "sharp:C5")
    assert ran.code == 2
    assert "not there" in ran.err
    assert run("mark", "--suggest").code == 2


def test_a_take_that_waits_is_told_how_to_measure_it(run, tmp_path):
    path = tmp_path / "tone.wav"
    soundfile.write(path, render(PhraseSpec((NoteSpec(69, 1.0),), tempo=90.0)).samples, 48_000)
    imported = run("import", path, "--passage", "Tune", "--date", "2026-03-12", "--json")
    take_id = imported.json["filed"][0]["id"]
    said = run("mark", take_id, "--suggest").out
    assert "Not measured yet." in said
    assert f"passagework measure {take_id[:8]}" in said
    assert run("measure", take_id[:8]).code == 0
    assert "passagework measure" not in run("mark", take_id, "--suggest").out
