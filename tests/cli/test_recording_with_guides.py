"""``record --armed``, ``record --click`` and ``latency`` as they are typed."""

from dataclasses import replace

import numpy as np
import pytest
import soundfile

from app.wiring import open_workbench

RATE = 48_000


@pytest.fixture
def journal_in_the_room(journal_dir, virtual_room):
    """A journal whose input and output are the virtual room."""
    with open_workbench(journal_dir) as bench:
        key = next(r.key for r in bench.recording.inputs() if r.name == virtual_room.device)
        settings = bench.practising.settings()
        bench.practising.change_settings(replace(settings, input_device=key, output_device=key))
    return virtual_room


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (("--click", "2"), "15 to 400"),
        (("--count-in", "1"), "needs a tempo"),
        (("--click", "60", "--accents", "1 1"), "accents"),
        (("--click", "60", "--accents", "loud"), "strengths"),
        (("--drone", "A3", "--count-in", "99", "--click", "60"), "8 bars"),
        (("--armed", "--silence", "0.1"), "1 to 120"),
    ],
)
def test_what_makes_no_sense_is_said_in_one_sentence(run, options, words):
    ran = run("record", *options)
    assert ran.code == 2, ran
    assert words in ran.err


@pytest.mark.room
@pytest.mark.usefixtures("journal_in_the_room")
def test_a_click_is_recorded_with_its_beats(run, journal_dir):
    ran = run(
        "record", "--click", "120", "--beats", "3", "--count-in", "1", "--drone", "A3",
        "--volume", "0.3", "--seconds", "5", "--no-measure", "--json",
    )  # fmt: skip
    assert ran.code == 0, ran.err
    assert "too loud" in ran.err, "the caution comes before the sound"
    assert "passagework latency" in ran.err
    with open_workbench(journal_dir) as bench:
        click = bench.listening.open_take(ran.json["id"]).settings.click
    assert click is not None, ran.err
    assert click.beats_a_bar == 3
    assert click.interval_s == pytest.approx(0.5, rel=1e-3)


@pytest.mark.room
def test_an_armed_take_is_filed(run, journal_in_the_room, wav_a):
    sound, rate = soundfile.read(wav_a)
    quiet = 1e-4 * np.random.default_rng(1).normal(size=3 * rate)
    with journal_in_the_room.playing(np.concatenate([quiet, sound]), rate):
        ran = run("record", "--armed", "--silence", "1.5", "--passage", "Scale", "--no-measure",
                  "--json")  # fmt: skip
    assert ran.code == 0, ran.err
    assert "Waiting for the first note" in ran.err
    assert ran.json["duration_s"] == pytest.approx(1.0 + len(sound) / rate + 1.0, abs=1.2)


@pytest.mark.room
def test_an_armed_take_has_the_beats_of_the_click_it_was_played_to(
    run, journal_in_the_room, wav_a, journal_dir
):
    """The input hears the click too, and does not take it for the first note."""
    sound, rate = soundfile.read(wav_a)
    quiet = 1e-4 * np.random.default_rng(1).normal(size=6 * rate)
    with journal_in_the_room.playing(np.concatenate([quiet, sound]), rate):
        ran = run("record", "--armed", "--silence", "1.5", "--click", "120", "--volume", "0.3",
                  "--no-measure", "--json")  # fmt: skip
    assert ran.code == 0, ran.err
    assert "too loud" in ran.err, "the caution comes before the sound"
    length_s = 1.0 + len(sound) / rate + 1.0
    # The sound server of a busy machine may leave a gap of seconds in what is played.
    assert length_s - 1.5 < ran.json["duration_s"] < length_s + 4.0
    with open_workbench(journal_dir) as bench:
        settings = bench.listening.open_take(ran.json["id"]).settings
    assert settings.pulse_bpm == 120.0
    assert settings.click.interval_s == pytest.approx(0.5, rel=1e-3)
    assert settings.click.first_beat_s < 0, "the click had begun before the take"


@pytest.mark.room
@pytest.mark.usefixtures("journal_in_the_room")
def test_the_round_trip_is_measured_and_shown(run):
    assert "not" not in run("latency", "--show").err
    assert run("latency", "--show", "--json").json is None
    ran = run("latency", "--json")
    assert ran.code == 0, ran.err
    assert "headphones off" in ran.err
    assert abs(ran.json["offset_s"]) < 0.010
    shown = run("latency", "--show")
    assert "beyond what the drivers say" in shown.out
    assert "headphones" not in shown.err


@pytest.mark.room
def test_sounding_minutes_are_counted_and_added(run, journal_in_the_room, wav_a, journal_dir):
    sound, rate = soundfile.read(wav_a)
    with journal_in_the_room.playing(np.tile(sound, 3), rate):
        ran = run("sounding", "--seconds", "8", "--json")
    assert ran.code == 0, ran.err
    assert "nothing is recorded" in ran.err
    assert 0.05 < ran.json["heard_min"] < 0.14
    assert ran.json["added_min"] == ran.json["heard_min"]
    with open_workbench(journal_dir) as bench:
        assert bench.practising.today().minutes == pytest.approx(ran.json["heard_min"])
    ran = run("sounding", "--seconds", "1", "--no-keep")
    assert "sounded for 0.0 min" in ran.out


@pytest.mark.room
def test_a_channel_is_recorded_and_remembered(run, journal_dir, journal_in_the_room):
    refused = run("record", "--channel", "33")
    assert (refused.code, refused.out) == (2, "")
    assert "32 channels; there is no channel 33" in refused.err
    room = journal_in_the_room
    t = np.arange(30 * RATE) / RATE
    tones = np.column_stack([0.2 * np.sin(2 * np.pi * f * t) for f in (300, 500, 700, 900)])
    with room.interface() as interface, room.playing(tones, RATE, interface):
        ran = run("record", "--channel", "4", "--seconds", "1", "--no-measure", "--json")
    assert ran.code == 0, ran.err
    samples, _ = soundfile.read(journal_dir / ran.json["file"])
    crossings = np.count_nonzero(np.diff(np.signbit(samples[-RATE // 2 :])))
    assert crossings == pytest.approx(900, rel=0.01)
    rows = run("record", "--inputs", "--json").json
    assert {row["name"]: row["channel"] for row in rows}[room.device] == 4
    assert run("record", "--inputs").out.count("records channel 4") == 1
