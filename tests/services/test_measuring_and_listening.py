"""Takes are measured, kept, re-measured when stale, drawn, compared and followed.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import threading
from dataclasses import replace
from datetime import date, timedelta

import numpy as np
import pytest
import soundfile

from app.journal.failures import PlainFailure
from app.services.reading_views import NoReading, Reading
from app.services.stopping import Stopped
from app.wiring import open_workbench

DAY = date(2026, 1, 6)


@pytest.fixture
def take(add_take, bench, wav_a):
    row = add_take(wav_a, "Study: scale", DAY)
    settings = replace(bench.passages.list()[0].settings, pulse_bpm=96.0)
    return bench.filing.change_settings(row.id, settings)


def test_a_new_take_waits_and_is_measured(bench, take, phrase_a):
    assert take.state == "waiting"
    assert isinstance(take.intonation, NoReading)
    assert bench.measuring.waiting() == (take.id,)
    told = []
    row = bench.measuring.measure(take.id, told.append)
    assert row.state == "measured"
    assert told == sorted(told)
    assert told[-1] == 1.0
    truth = np.mean([abs(note.deviation_cents) for note in phrase_a.truth.notes])
    assert isinstance(row.intonation, Reading)
    assert row.intonation.value == pytest.approx(truth, abs=0.5)
    assert isinstance(row.tempo, Reading)
    assert row.tempo.value == pytest.approx(96.0, abs=0.5)
    assert bench.measuring.waiting() == ()


def test_what_was_measured_survives_a_restart(bench, journal_dir, clock, take):
    row = bench.measuring.measure(take.id)
    object_before = bench.measuring.report(take.id).as_json(True)
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        assert again.filing.row(take.id) == row
        assert again.measuring.report(take.id).as_json(False) | {"x": 0} == {
            **bench_without_curves(object_before),
            "x": 0,
        }


def bench_without_curves(found):
    curves = {
        "time_s", "f0_hz", "confidence", "local_time_s", "local_bpm",
        "momentary_time_s", "momentary_lufs",
    }  # fmt: skip
    return {
        key: {k: v for k, v in value.items() if k not in curves}
        if isinstance(value, dict)
        else value
        for key, value in found.items()
    }


def test_other_settings_make_a_measurement_stale(bench, take):
    bench.measuring.measure(take.id)
    settings = bench.listening.open_take(take.id).settings
    row = bench.filing.change_settings(take.id, replace(settings, reference_a_hz=442.0))
    assert row.state == "stale"
    assert bench.measuring.waiting() == (take.id,)
    row = bench.measuring.measure(take.id)
    assert row.state == "measured"
    report = bench.measuring.report(take.id).as_json()
    assert report["intonation"]["reference_a_hz"] == 442.0


def test_an_older_algorithm_makes_a_measurement_stale(bench, take, monkeypatch):
    bench.measuring.measure(take.id)
    monkeypatch.setattr("analysis.take.ALGORITHM", "take-99")
    assert bench.filing.row(take.id).state == "stale"
    assert bench.measuring.waiting() == (take.id,)


def test_stopping_keeps_nothing(bench, take):
    with pytest.raises(Stopped):
        bench.measuring.measure(take.id, should_stop=lambda: True)
    assert bench.filing.row(take.id).state == "waiting"


def test_a_take_whose_file_is_gone_fails_once_and_does_not_wait_for_ever(bench, take):
    take.file.unlink()
    with pytest.raises(PlainFailure, match="not there"):
        bench.measuring.measure(take.id)
    row = bench.filing.row(take.id)
    assert row.state == "failed"
    assert "not there" in row.notice
    assert bench.measuring.waiting() == ()
    assert bench.listening.open_take(take.id).notes_sentence


def test_several_takes_are_measured_in_one_go(bench, take, tone_file, add_take):
    gone = add_take(tone_file())
    gone.file.unlink()
    rows = bench.measuring.measure_all([gone.id, take.id])
    assert [row.state for row in rows] == ["failed", "measured"]


def test_the_lanes_of_a_measured_take(bench, take, phrase_a):
    bench.measuring.measure(take.id)
    bench.marking.add(take.id, 1.0, category="shift")
    view = bench.listening.open_take(take.id)
    assert len(view.notes) == len(phrase_a.truth.notes)
    for note, truth in zip(view.notes, phrase_a.truth.notes, strict=True):
        assert isinstance(note.deviation, Reading)
        assert note.deviation.value == pytest.approx(truth.deviation_cents, abs=1.0)
        assert note.certain
    assert len(view.pitch_cents.segments) >= len(view.notes)
    assert all(np.isfinite(y).all() for _, y in view.pitch_cents.segments)
    assert view.loudness_lufs.segments
    assert view.beat_s.size >= 7
    assert len(view.markers) == 1
    assert {reading.key for reading in view.summary} >= {"mean_absolute_cents", "mean_bpm"}


def test_the_lanes_of_a_take_that_waits_say_so(bench, take):
    view = bench.listening.open_take(take.id)
    assert view.notes == ()
    assert view.notes_sentence == "Not measured yet."
    assert view.pitch_cents.gap_sentence == "Not measured yet."
    assert all(isinstance(reading.reading, NoReading) for reading in view.summary)


def test_silence_is_told_in_every_lane(bench, add_take, tmp_path):
    path = tmp_path / "silence.wav"
    soundfile.write(path, np.zeros(48_000), 48_000)
    row = add_take(path)
    row = bench.measuring.measure(row.id)
    assert row.state == "measured"
    assert row.intonation == NoReading("The take is silent.")
    view = bench.listening.open_take(row.id)
    assert view.notes_sentence == "The take is silent."
    assert view.tempo_bpm.gap_sentence == "The take is silent."


def test_the_overview_of_the_sound_is_exact_and_kept(bench, journal_dir, take, phrase_a):
    told = []
    bench.listening.prepare(take.id, told.append)
    assert told[-1] == 1.0
    whole = bench.listening.waveform(take.id, 0.0, take.duration_s, 400)
    assert whole.time_s.size == whole.low.size == whole.high.size == 400
    assert whole.high.max() == pytest.approx(phrase_a.samples.max(), abs=1e-4)
    assert whole.low.min() == pytest.approx(phrase_a.samples.min(), abs=1e-4)
    part = bench.listening.waveform(take.id, -5.0, 1.0, 100)
    assert part.time_s[0] == 0.0
    assert list((journal_dir / ".cache").rglob("*.npz"))
    assert bench.listening.waveform(take.id, 99.0, 100.0, 10).time_s.size == 0


def test_stopping_the_overview_leaves_no_cache(bench, journal_dir, take):
    with pytest.raises(Stopped):
        bench.listening.prepare(take.id, should_stop=lambda: True)
    assert not list((journal_dir / ".cache").rglob("*"))


@pytest.fixture
def pair(bench, take, add_take, wav_b):
    later = add_take(wav_b, "Study: scale", DAY + timedelta(days=7))
    settings = bench.listening.open_take(take.id).settings
    bench.filing.change_settings(later.id, settings)
    return take.id, later.id


def test_two_takes_are_held_against_each_other(bench, pair):
    """The second take was rendered 6 cents sharper and 8 BPM faster."""
    told = []
    view = bench.comparing.compare(*pair, told.append)
    assert told == sorted(told)
    assert view.aligned
    assert len(view.notes) == 8
    for note in view.notes:
        assert isinstance(note.change, Reading)
        assert note.change.value == pytest.approx(6.0, abs=1.5)
        assert note.change.uncertainty is not None
    changes = {change.key: change for change in view.changes}
    assert changes["accuracy_cents"].change.value == pytest.approx(6.0, abs=1.0)
    assert changes["mean_bpm"].change.value == pytest.approx(8.0, abs=1.0)
    assert {change.word for change in view.changes} <= {"too few takes", ""}
    assert any("tempo" in sentence for sentence in view.confounders)
    assert view.alignment_a_s.size == view.alignment_b_s.size > len(view.notes)


def test_a_take_is_not_compared_with_itself(bench, take):
    with pytest.raises(PlainFailure, match="same take"):
        bench.comparing.compare(take.id, take.id)


def test_stopping_a_comparison(bench, pair):
    with pytest.raises(Stopped):
        bench.comparing.compare(*pair, should_stop=lambda: True)


def test_a_trend_needs_four_days(bench, pair):
    passage = bench.passages.list()[0]
    assert "No take" in bench.comparing.trend(passage.id).sentence
    bench.measuring.measure_all(pair)
    trend = bench.comparing.trend(passage.id)
    assert len(trend.points) == 2
    assert trend.line == ()
    assert trend.verdict == "too few takes"
    assert "4 practice days" in trend.sentence


def test_a_trend_over_days_follows_what_was_played(bench, take):
    """Made-up measurements, 1 cent less each week: the slope is known."""
    row = bench.measuring.measure(take.id)
    store = bench.measuring._store
    kept, record = store.measurements.get(row.id), store.takes.get(row.id)
    for week in range(1, 7):
        later = replace(
            record,
            id=f"{week:032x}",
            file=f"2026/x/{week}.wav",
            practice_day=DAY + timedelta(weeks=week),
            number=1,
        )
        store.takes.add(later)
        group = kept.summary["intonation"] | {"mean_absolute_cents": 20.0 - week}
        store.measurements.put(
            replace(kept, take_id=later.id, summary=kept.summary | {"intonation": group})
        )
    first = kept.summary["intonation"] | {"mean_absolute_cents": 20.0}
    store.measurements.put(replace(kept, summary=kept.summary | {"intonation": first}))
    trend = bench.comparing.trend(bench.passages.list()[0].id)
    assert isinstance(trend.slope, Reading)
    assert trend.slope.value == pytest.approx(-1.0, abs=1e-6)
    assert trend.verdict == "better"
    assert len(trend.line) == len(trend.band) == 7
    text = bench.reporting.text(DAY, DAY + timedelta(weeks=7))
    assert "better" in text
    assert "7 days practised" in text


def test_every_trend_key_has_a_label_and_words(bench, take):
    from app.services.trends import TREND_WORDS

    keys = bench.comparing.trend_keys()
    assert {key for key, _ in keys} <= set(TREND_WORDS)
    passage = bench.passages.list()[0]
    for key, label in keys:
        assert bench.comparing.trend(passage.id, key).label == label


def test_playing_without_an_output_is_said_when_it_is_wanted(bench, take, monkeypatch):
    from audio.errors import AudioFailure

    def none(*_arguments):
        raise AudioFailure("No loudspeaker was found.", "Plug one in.")

    monkeypatch.setattr("audio.devices.find_device", none)
    monkeypatch.setattr("audio.devices.output_devices", none)
    assert bench.playing.outputs() == ()
    with pytest.raises(PlainFailure, match="No take is open"):
        bench.playing.play()
    bench.playing.load(take.id)
    bench.playing.seek(1.5)
    bench.playing.set_loop(2.0, 1.0)
    bench.playing.set_speed(0.5)
    bench.playing.set_volume(7.0)
    state = bench.playing.state()
    assert (state.loop, state.speed, state.volume, state.playing) == ((1.0, 2.0), 0.5, 1.0, False)
    assert state.position_s == pytest.approx(1.5, abs=0.01)
    with pytest.raises(PlainFailure, match="No loudspeaker"):
        bench.playing.play()
    bench.playing.set_loop(None)
    assert bench.playing.state().loop is None
    bench.playing.unload()
    assert bench.playing.state().position_s == 0.0


def test_two_threads_may_use_the_services_at_once(bench, take):
    """As in the window: measuring in one thread, marking and listing in another."""
    failures = []
    done = threading.Event()

    def measure():
        try:
            for _ in range(5):
                bench.measuring.measure(take.id)
        except Exception as problem:  # told below
            failures.append(problem)
        finally:
            done.set()

    worker = threading.Thread(target=measure)
    worker.start()
    marked = 0
    while not done.is_set() or marked == 0:
        bench.marking.add(take.id, 0.5, category="sound")
        assert len(bench.filing.takes()) == 1
        bench.listening.open_take(take.id)
        marked += 1
    worker.join()
    assert failures == []
    row = bench.filing.row(take.id)
    assert row.marker_count == marked
    assert row.state == "measured"


@pytest.fixture
def eight_weeks(bench, take):
    """One take a week whose numbers are made up: 20 cents, falling by 1 a week, give or take."""
    row = bench.measuring.measure(take.id)
    store = bench.measuring._store
    kept, record = store.measurements.get(row.id), store.takes.get(row.id)
    ids = []
    for week, wobble in enumerate((0.2, -0.1, 0.1, -0.2, 0.0, 0.2, -0.2, 0.1)):
        copy = record.file.replace("take-1", f"take-{week + 2}")
        path = store.folders.absolute(copy)
        path.write_bytes(row.file.read_bytes())
        take_id = f"{week:032x}"
        day = DAY + timedelta(weeks=week)
        store.takes.add(replace(record, id=take_id, file=copy, practice_day=day, number=week + 2))
        group = kept.summary["intonation"] | {"mean_absolute_cents": 20.0 - week + wobble}
        summary = kept.summary | {"intonation": group}
        store.measurements.put(replace(kept, take_id=take_id, summary=summary))
        ids.append(take_id)
    bench.filing.delete(row.id)
    return ids


def test_two_takes_are_judged_by_the_scatter_of_their_passage(bench, eight_weeks, add_take, wav_b):
    same = bench.comparing.compare(eight_weeks[0], eight_weeks[1])
    words = {change.key: change.word for change in same.changes}
    # The curves of both are one take's: nothing changed, whatever the trend.
    assert words["mean_absolute_cents"] == "no clear change"
    assert words["mean_bpm"] == "no clear change"

    later = add_take(wav_b, "Study: scale", DAY + timedelta(weeks=9))
    settings = bench.listening.open_take(eight_weeks[0]).settings
    bench.filing.change_settings(later.id, settings)
    bench.measuring.measure(later.id)
    other = bench.comparing.compare(eight_weeks[0], later.id)
    words = {change.key: change.word for change in other.changes}
    assert words["mean_bpm"] in ("faster", "no clear change")
    assert words["accuracy_cents"] in ("sharper", "no clear change")
    assert "better" not in (words["mean_bpm"], words["steadiness_cv_percent"])


def test_words_of_a_comparison_follow_the_direction():
    from app.services.compare_views import _word
    from app.services.views import TrendView

    trend = TrendView(
        None, "", "", "", (), (), (), "", NoReading(""), NoReading(""), "", ordinary_difference=2.0
    )
    cases = {
        ("mean_absolute_cents", 3.0): "worse",
        ("mean_absolute_cents", -3.0): "better",
        ("mean_absolute_cents", -1.9): "no clear change",
        ("accuracy_cents", 3.0): "sharper",
        ("mean_bpm", -3.0): "slower",
        ("dynamic_span_db", 3.0): "wider",
        ("steadiness_cv_percent", -3.0): "steadier",
    }
    for (key, change), word in cases.items():
        assert _word(key, Reading(change, "", None), trend) == word
    assert _word("mean_bpm", Reading(3.0, "BPM", 2.5), trend) == "no clear change"
    assert _word("mean_bpm", Reading(9.0, "BPM"), None) == "too few takes"


def test_what_differs_besides_is_said(wav_a, wav_b):
    from app.journal.records import PlayingSettings
    from app.services.file_comparing import compare_files

    found = compare_files(
        wav_a,
        wav_b,
        PlayingSettings(pulse_bpm=96.0),
        PlayingSettings(
            "viola", reference_a_hz=442.0, temperament="just", tonic="D", pulse_bpm=104.0
        ),
    )
    said = " ".join(found.confounders)
    for word in ("instrument", "temperament", "another A", "tempo"):
        assert word in said


def test_a_muted_stretch_is_a_gap_and_does_not_take_the_loudness_lane_down(
    bench, add_take, phrase_a, tmp_path
):
    rate = phrase_a.sample_rate_hz
    path = tmp_path / "muted.wav"
    muted = np.zeros((2 * rate, *phrase_a.samples.shape[1:]), dtype=phrase_a.samples.dtype)
    soundfile.write(path, np.concatenate([muted, phrase_a.samples]), rate, subtype="PCM_24")
    take = add_take(path)
    bench.measuring.measure(take.id)
    curve = bench.listening.open_take(take.id).loudness_lufs
    # The absolute gate of ITU-R BS.1770-4: -70 LUFS.
    assert min(lufs.min() for _, lufs in curve.segments) >= -70.0
    assert 1.0 < curve.segments[0][0][0] < 2.5
    assert curve.gap_sentence == "Nothing sounds here."


def test_what_a_word_goes_by_is_said_where_the_interval_alone_says_more(wav_a, wav_b):
    from app.journal.records import PlayingSettings
    from app.services.change_words import HOW_JUDGED
    from app.services.comparison_text import comparison_text
    from app.services.file_comparing import compare_files

    found = compare_files(wav_a, wav_b, PlayingSettings(), PlayingSettings())
    value = found.measures["accuracy_cents"].value
    assert abs(value.change) > value.uncertainty  # 6 cents sharper, known to far less
    judged = replace(found, words={"accuracy_cents": "no clear change"})
    assert judged.how_judged == HOW_JUDGED
    assert HOW_JUDGED in comparison_text(judged)
    for words in ({}, {"accuracy_cents": "sharper"}):
        assert not replace(found, words=words).how_judged
