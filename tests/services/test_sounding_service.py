"""Sounding minutes: counted without the audio, and never twice."""

import os
import time
from datetime import timedelta

import numpy as np
import pytest

from app.journal.failures import PlainFailure
from app.journal.kinds import MinutesSource
from app.services.ears import Ears, uncovered_s
from app.services.sounding import SoundingOffer
from audio.devices import Device
from audio.errors import AudioFailure
from sample_audio.generator import NoteSpec, PhraseSpec, render

RATE = 48_000


class FakeInput:
    """An input that delivers what the test hands on."""

    sample_rate_hz = RATE
    state = "monitoring"

    def __init__(self, on_block):
        self.on_block = on_block
        self.stopped = False

    def deliver(self, samples):
        for at in range(0, len(samples), RATE // 10):
            self.on_block(samples[at : at + RATE // 10, np.newaxis].astype(np.float32))

    def stop(self):
        self.stopped = True


@pytest.fixture
def microphone(monkeypatch):
    made = []

    def opened(_key, *, on_block, channel=None, pre_roll_s=0.0, latency_s=None):
        made.append(FakeInput(on_block))
        return made[-1], "a microphone"

    monkeypatch.setattr("app.services.inputs.opened_input", opened)
    microphone = Device(0, "a microphone", "a microphone", 1, RATE, True)
    monkeypatch.setattr("audio.devices.find_device", lambda *_: microphone)
    return made


@pytest.fixture(scope="module")
def forty_seconds():
    """Thirty seconds of playing between five of noise on either side."""
    notes = tuple(NoteSpec(60.0 + step, 1.0) for step in (0, 2, 4, 5, 7, 5, 4, 2) * 5)
    phrase = render(PhraseSpec(notes, tempo=80.0, lead_in_s=5.0, tail_s=5.0))
    noise = 10 ** (-65 / 20) * np.random.default_rng(1).normal(size=len(phrase.samples))
    return phrase.samples + noise


def listened(bench, microphone, clock, sound):
    bench.sounding.start()
    microphone[-1].deliver(sound)
    state = bench.sounding.state()
    clock.now += timedelta(seconds=len(sound) / RATE)
    return state, bench.sounding.stop()


def test_the_minutes_are_counted_and_offered(bench, clock, microphone, forty_seconds):
    assert bench.sounding.state().minutes == 0.0
    state, offer = listened(bench, microphone, clock, forty_seconds)
    assert state.is_listening
    assert not state.sounds_now
    assert state.listened_min * 60 == pytest.approx(40.0, abs=0.2)
    assert state.minutes * 60 == pytest.approx(30.0, abs=1.5)
    assert microphone[-1].stopped
    assert not bench.sounding.state().is_listening
    assert offer.minutes == offer.heard_min == pytest.approx(state.minutes)
    assert offer.sentence == ""
    session = bench.sounding.keep(offer)
    assert session.minutes_source is MinutesSource.SOUNDING
    assert bench.practising.today().minutes == pytest.approx(offer.minutes)


def test_nothing_of_the_sound_is_kept(bench, clock, microphone, forty_seconds, journal_dir):
    before = {path for path in journal_dir.rglob("*") if path.suffix in {".wav", ".flac"}}
    listened(bench, microphone, clock, forty_seconds)
    after = {path for path in journal_dir.rglob("*") if path.suffix in {".wav", ".flac"}}
    assert after == before == set()


def test_where_nothing_sounded_nothing_is_offered(bench, clock, microphone):
    assert bench.sounding.stop() is None
    assert listened(bench, microphone, clock, np.zeros(5 * RATE))[1] is None


def test_under_a_running_clock_the_minutes_are_the_clocks(bench, clock, microphone, forty_seconds):
    bench.clock.start()
    _, offer = listened(bench, microphone, clock, forty_seconds)
    assert offer.minutes == 0.0
    assert offer.heard_min > 0.4
    assert bench.sounding.keep(offer) is None
    bench.clock.stop()
    assert bench.practising.today().minutes == pytest.approx(40 / 60, abs=0.01)


def test_what_sounded_before_the_clock_is_added_to_it(bench, clock, microphone, forty_seconds):
    bench.sounding.start()
    microphone[-1].deliver(forty_seconds)
    clock.now += timedelta(seconds=20)  # half of it had sounded when the clock was started
    bench.clock.start()
    clock.now += timedelta(seconds=20)
    bench.clock.stop()
    offer = bench.sounding.stop()
    assert offer.heard_min * 60 == pytest.approx(30.0, abs=1.5)
    assert offer.minutes * 60 == pytest.approx(15.0, abs=1.5)
    bench.sounding.keep(offer)
    total = bench.practising.today().minutes
    assert total * 60 == pytest.approx(35.0, abs=1.5)


def test_typed_minutes_stand_for_what_was_heard_before(bench, clock, microphone, forty_seconds):
    day = bench.practising.practice_day_now()
    bench.sounding.start()
    microphone[-1].deliver(forty_seconds)
    bench.practising.set_minutes(day, 25)
    offer = bench.sounding.stop()
    assert offer.minutes == 0.0
    assert "typed" in offer.sentence
    assert bench.sounding.keep(offer) is None
    assert bench.practising.today().minutes == 25.0


def test_an_offer_is_kept_once_and_not_beside_minutes_typed_since(
    bench, clock, microphone, forty_seconds
):
    day = bench.practising.practice_day_now()
    _, offer = listened(bench, microphone, clock, forty_seconds)
    assert bench.sounding.keep(offer) is not None
    assert bench.sounding.keep(offer) is None
    assert bench.practising.today().minutes == pytest.approx(0.5, abs=0.03)
    _, late = listened(bench, microphone, clock, forty_seconds)
    bench.practising.set_minutes(day, 40)
    assert bench.sounding.keep(late) is None
    assert bench.practising.today().minutes == 40.0


def test_what_sounds_after_minutes_were_typed_is_added(bench, clock, microphone, forty_seconds):
    bench.practising.set_minutes(bench.practising.practice_day_now(), 25)
    clock.now += timedelta(minutes=10)
    _, offer = listened(bench, microphone, clock, forty_seconds)
    bench.sounding.keep(offer)
    assert bench.practising.today().minutes == pytest.approx(25.5, abs=0.03)


def test_a_sitting_is_one_session_and_an_evening_another(bench, clock, microphone, forty_seconds):
    store = bench.filing._store
    for pause_min, sessions in ((0, 1), (5, 1), (120, 2)):
        clock.now += timedelta(minutes=pause_min)
        bench.sounding.keep(listened(bench, microphone, clock, forty_seconds)[1])
        assert len(store.sessions.of_day(bench.practising.practice_day_now())) == sessions
    assert bench.practising.today().minutes == pytest.approx(1.5, abs=0.1)


@pytest.fixture
def a_take_today(bench, clock, add_take, tone_file):
    file = tone_file()
    os.utime(file, 2 * (clock.now.timestamp(),))  # whatever hour it is where the tests run
    return add_take(file, day=bench.practising.practice_day_now())


@pytest.mark.usefixtures("a_take_today")
def test_takes_of_the_day_share_their_session(bench, clock, microphone, forty_seconds):
    bench.sounding.keep(listened(bench, microphone, clock, forty_seconds)[1])
    (session,) = bench.filing._store.sessions.of_day(bench.practising.practice_day_now())
    assert session.minutes_source is MinutesSource.SOUNDING


def test_the_clock_started_later_counts_for_another_session(
    bench, clock, microphone, forty_seconds
):
    bench.sounding.keep(listened(bench, microphone, clock, forty_seconds)[1])
    bench.clock.start()
    clock.now += timedelta(minutes=10)
    bench.clock.stop()
    assert bench.practising.today().minutes == pytest.approx(10.5, abs=0.03)


def test_after_midnight_it_belongs_to_the_day_before(bench, clock, microphone, forty_seconds):
    clock.now = clock.now.replace(hour=1, minute=20)
    offer = listened(bench, microphone, clock, forty_seconds)[1]
    assert offer.practice_day == clock.now.date() - timedelta(days=1)


def test_an_input_that_goes_away_keeps_what_was_heard(bench, microphone, forty_seconds):
    bench.sounding.start()
    microphone[-1].deliver(forty_seconds)
    microphone[-1].state = "ended"
    state = bench.sounding.state()
    assert not state.is_listening
    assert "went away" in state.sentence

    def gone():
        raise AudioFailure("The sound input has gone.", "Plug it in again.")

    microphone[-1].stop = gone
    assert bench.sounding.stop().minutes > 0.4


def test_without_an_input_it_says_so(bench, monkeypatch):
    def none(*_arguments):
        raise AudioFailure("No microphone was found.", "Plug in a microphone.")

    monkeypatch.setattr("audio.devices.find_device", none)
    with pytest.raises(PlainFailure, match="No microphone"):
        bench.sounding.start()
    assert bench.sounding.stop() is None


def test_an_empty_offer_changes_nothing(bench, clock):
    day = bench.practising.practice_day_now()
    assert bench.sounding.keep(SoundingOffer(day, clock(), 0.0, 3.0, "")) is None
    assert bench.practising.today().minutes is None


def test_stretches_covered_by_others_count_no_more(clock):
    def span(start, end):
        return clock() + timedelta(seconds=start), clock() + timedelta(seconds=end)

    spans = [span(0, 10), span(20, 30)]
    assert uncovered_s(spans, []) == 20.0
    assert uncovered_s(spans, [span(5, 25)]) == 10.0
    assert uncovered_s(spans, [span(2, 4), span(3, 6), span(40, 50)]) == 16.0
    assert uncovered_s(spans, [span(-5, 60)]) == 0.0


def test_stretches_are_kept_apart(clock):
    tone = 0.1 * np.sin(2 * np.pi * 440 * np.arange(6 * RATE) / RATE)
    ears = Ears()
    sound = np.concatenate([tone, np.zeros(6 * RATE), tone, np.zeros(6 * RATE)])
    for at in range(0, len(sound), RATE):
        ears.hear(sound[at : at + RATE, np.newaxis].astype(np.float32), RATE)
    assert len(ears.spans(clock())) == 2
    lengths = [(end - start).total_seconds() for start, end in ears.spans(clock())]
    assert lengths == pytest.approx([6.0, 6.0], abs=0.6)


@pytest.mark.room
def test_it_listens_through_a_device(bench, virtual_room, forty_seconds):
    key = next(r.key for r in bench.recording.inputs() if r.name == virtual_room.device)
    bench.sounding.start(key)
    bench.sounding.start(key)  # already does
    played = forty_seconds[4 * RATE : 11 * RATE]
    with virtual_room.playing(played, RATE) as player:
        player.wait(timeout=30)
        deadline = time.monotonic() + 3
        while bench.sounding.state().minutes * 60 < 4 and time.monotonic() < deadline:
            time.sleep(0.1)
        assert bench.sounding.state().is_listening
        offer = bench.sounding.stop()
    assert offer.minutes * 60 == pytest.approx(6.0, abs=1.5)
