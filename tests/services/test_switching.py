"""Two takes heard in turn: at one loudness, and at the matching place."""

import time

import numpy as np
import pytest

from app.services.level_matching import level_match

RATE = 48_000


def test_the_louder_take_is_played_softer_and_both_are_stated():
    match = level_match(-18.0, -24.5)
    assert match.a_gain_db == pytest.approx(-6.5)
    assert match.b_gain_db == 0.0
    assert "A \N{MINUS SIGN}18.0 LUFS, played 6.5 dB softer" in match.sentence
    assert "B \N{MINUS SIGN}24.5 LUFS" in match.sentence


def test_stepping_through_the_takes_of_a_passage_keeps_one_loudness():
    others = (-20.0, -27.0, None)
    for a, b in ((-20.0, -22.0), (-20.0, -27.0), (-22.0, -20.0)):
        match = level_match(a, b, others)
        assert a + match.a_gain_db == pytest.approx(-27.0)
        assert b + match.b_gain_db == pytest.approx(-27.0)


def test_nothing_is_made_louder_and_one_very_soft_take_does_not_hush_all():
    match = level_match(-20.0, -22.0, (-55.0,))
    assert match.b_gain_db == pytest.approx(-12.0)
    assert match.a_gain_db == pytest.approx(-14.0)
    for a, b in ((-20.0, -55.0), (-55.0, -20.0), (-10.0, -10.0)):
        gains = level_match(a, b)
        assert max(gains.a_gain_db, gains.b_gain_db) <= 0.0


def test_without_a_loudness_the_levels_stay_and_it_is_said():
    match = level_match(None, -20.0)
    assert (match.a_gain_db, match.b_gain_db) == (0.0, 0.0)
    assert "loudness of A is not known" in match.sentence


def heard_level_dbfs(blocks):
    """Level of the last second; a gap of a busy machine is not the level of the sound."""
    sound = np.concatenate(blocks)[-RATE:]
    pieces = sound[: len(sound) // 480 * 480].reshape(-1, 480)
    return 10 * np.log10(np.median(np.mean(pieces**2, axis=1)))


@pytest.mark.room
def test_takes_of_other_levels_and_rates_are_heard_alike_when_switched(
    bench, virtual_room, tmp_path, add_take
):
    import sounddevice
    import soundfile

    tones = []
    for name, size, rate in (("soft", 0.05, RATE), ("loud", 0.4, 44_100)):
        t = np.arange(8 * rate) / rate
        soundfile.write(tmp_path / f"{name}.wav", size * np.sin(2 * np.pi * 440 * t), rate)
        tones.append(add_take(tmp_path / f"{name}.wav"))
    soft, loud = tones
    gain_db = 20 * np.log10(0.05 / 0.4)
    output = next(r for r in bench.playing.outputs() if r.name == virtual_room.device)
    bench.playing.choose_output(output.key)
    bench.playing.load(soft.id)
    bench.playing.keep_ready(loud.id, gain_db=gain_db)
    assert bench.playing.ready_take_id == loud.id
    blocks = []
    listener = sounddevice.InputStream(
        device=virtual_room.device,
        channels=1,
        samplerate=RATE,
        callback=lambda block, *_: blocks.append(block[:, 0].copy()),
    )
    with listener:
        bench.playing.play()
        time.sleep(2.0)
        first = heard_level_dbfs(blocks)
        bench.playing.switch(lambda place_s: place_s + 2.0)
        place_s = bench.playing.state().position_s
        time.sleep(2.0)
        second = heard_level_dbfs(blocks)
    assert bench.playing.ready_take_id == soft.id
    assert bench.playing.state().playing
    assert place_s > 2.0
    print(f"heard at {first:.2f} and {second:.2f} dBFS")
    assert second == pytest.approx(first, abs=0.3)
    bench.playing.unload()
