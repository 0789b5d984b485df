"""A take from disk with a click and a drone beside it; no output is needed for that."""

import numpy as np
import pytest

from app.journal.failures import PlainFailure
from app.services import heard_sound, playing
from app.services.guide_settings import GuideSettings
from audio.errors import AudioFailure
from audio.player import Player

RATE = 48_000


@pytest.fixture(autouse=True)
def _no_output(monkeypatch):
    def refuse(_player):
        raise AudioFailure("There is no output.", "Plug one in.")

    monkeypatch.setattr(Player, "open", refuse)


def played(bench, seconds=1.0) -> np.ndarray:
    """What is on its way to the output."""
    source = bench.playing._player._source
    return source.read(0, round(seconds * RATE))[:, 0]


def loudest_hz(sound) -> float:
    spectrum = np.abs(np.fft.rfft(sound * np.hanning(len(sound))))
    return float(np.argmax(spectrum)) * RATE / len(sound)


def test_the_click_falls_on_the_beats_of_the_take(bench, tone_file, add_take):
    row = add_take(tone_file(seconds=2.0))
    bench.playing.load(row.id)
    alone = played(bench, 2.0)
    beats = (0.3, 0.95, 1.5)
    bench.playing.play_along(GuideSettings(click_bpm=90.0), beat_s=beats)
    click = played(bench, 2.0) - alone
    loud = np.flatnonzero(np.abs(click) > 0.5 * np.abs(click).max())
    starts = loud[np.flatnonzero(np.diff(loud, prepend=-RATE) > RATE // 10)]
    assert starts / RATE == pytest.approx(beats, abs=0.001)


def test_a_steady_click_keeps_its_tempo_from_the_first_beat_on(bench, tone_file, add_take):
    row = add_take(tone_file(seconds=2.5))
    bench.playing.load(row.id)
    alone = played(bench, 2.5)
    bench.playing.play_along(GuideSettings(click_bpm=120.0), first_beat_s=0.2)
    click = played(bench, 2.5) - alone
    loud = np.flatnonzero(np.abs(click) > 0.5 * np.abs(click).max())
    starts = loud[np.flatnonzero(np.diff(loud, prepend=-RATE) > RATE // 10)]
    assert np.diff(starts) / RATE == pytest.approx(0.5, abs=0.001)
    assert starts[0] / RATE == pytest.approx(0.2, abs=0.001)


def test_the_drone_sounds_at_its_pitch_and_goes_away_again(bench, tone_file, add_take):
    # ISO 16: A4 is 440 Hz, so A3 is 220 Hz, and D4 a pure fourth above it 293.33 Hz.
    row = add_take(tone_file(seconds=1.0, frequency_hz=700.0))
    bench.playing.load(row.id)
    alone = played(bench)
    bench.playing.play_along(GuideSettings(drone="A3"))
    assert loudest_hz(played(bench) - alone) == pytest.approx(220.0, abs=1.0)
    bench.playing.play_along(
        GuideSettings(drone="D4", temperament="just", tonic="D", reference_a_hz=440.0)
    )
    assert loudest_hz(played(bench) - alone) == pytest.approx(293.3, abs=1.0)
    bench.playing.play_along(None)
    assert np.array_equal(played(bench), alone)


def test_a_drone_that_is_no_note_is_refused_plainly(bench, tone_file, add_take):
    row = add_take(tone_file())
    bench.playing.load(row.id)
    with pytest.raises(PlainFailure, match="cannot be the drone"):
        bench.playing.play_along(GuideSettings(drone="H9"))


def test_guides_end_with_the_take(bench, tone_file, add_take):
    row = add_take(tone_file())
    bench.playing.load(row.id)
    alone = played(bench, 0.4)
    bench.playing.play_along(GuideSettings(drone="A3"))
    bench.playing.load(row.id)
    assert np.array_equal(played(bench, 0.4), alone)


def test_a_take_is_read_where_it_is_played_and_its_file_let_go_of(bench, tone_file, add_take):
    first = add_take(tone_file("first.wav"))
    second = add_take(tone_file("second.wav", frequency_hz=330.0))
    bench.playing.load(first.id)
    opened = bench.playing._heard.file
    assert opened is not None, "nothing was read into memory"
    bench.playing.load(second.id)
    assert opened._file.closed
    last = bench.playing._heard.file
    bench.playing.unload()
    assert last._file.closed


def test_a_long_compressed_take_is_unpacked_to_disk_once(
    bench, tone_file, add_take, journal_dir, monkeypatch
):
    row = add_take(tone_file("phone.ogg", seconds=1.0))
    monkeypatch.setattr(heard_sound, "_LONG_S", 0.5)
    told = []
    bench.playing.load(row.id, told.append)
    (copy,) = (journal_dir / ".cache" / "sound").iterdir()
    assert told[-1] == 1.0
    assert loudest_hz(played(bench, 0.9)) == pytest.approx(440.0, abs=2.0)
    written = copy.stat().st_mtime_ns
    bench.playing.unload()
    bench.playing.load(row.id)
    assert copy.stat().st_mtime_ns == written
    assert bench.playing._heard.file is not None
    bench.playing.unload()


def test_stopping_the_unpacking_leaves_nothing_behind(
    bench, tone_file, add_take, journal_dir, monkeypatch
):
    from app.services.stopping import Stopped

    row = add_take(tone_file("phone.ogg", seconds=1.0))
    monkeypatch.setattr(heard_sound, "_LONG_S", 0.5)
    with pytest.raises(Stopped):
        bench.playing.load(row.id, lambda _: None, lambda: True)
    assert list((journal_dir / ".cache" / "sound").iterdir()) == []


def test_a_take_that_is_not_there_is_told(bench):
    assert playing.PlayingService is type(bench.playing)
    with pytest.raises(PlainFailure, match="not there"):
        bench.playing.load("nothing")
