import subprocess
import sys
from typing import Any

import numpy as np
import pytest

from analysis.results import Measured, NotMeasurable, Reason, TakeAnalysis
from analysis.take import ALGORITHM, Stopped, TakeSettings, analyse_take
from analysis.tuning import Temperament
from sample_audio.generator import NoteSpec, Phrase, PhraseSpec, render

DEVIATIONS = (5.0, -8.0, 12.0, 0.0, -18.0, 3.0, 9.0, -4.0)


@pytest.fixture(scope="module")
def phrase() -> Phrase:
    notes = tuple(
        NoteSpec(m, 1.0, d)
        for m, d in zip((63, 65, 67, 68, 70, 70, 72, 75), DEVIATIONS, strict=True)
    )
    return render(PhraseSpec(notes, tempo=90.0, room_noise_dbfs=-70.0))


def parts(analysis: TakeAnalysis) -> list[Any]:
    return [analysis.pitch, analysis.intonation, analysis.tempo, analysis.dynamics]


def test_a_whole_take(phrase: Phrase) -> None:
    told: list[float] = []
    analysis = analyse_take(
        phrase.samples,
        phrase.sample_rate_hz,
        TakeSettings(pulse_bpm=90.0),
        progress=told.append,
    )
    assert [j.midi for j in analysis.notes] == [63, 65, 67, 68, 70, 70, 72, 75]
    for judged, cents in zip(analysis.notes, DEVIATIONS, strict=True):
        assert isinstance(judged.deviation, Measured)
        assert judged.deviation.value.deviation_cents == pytest.approx(cents, abs=0.7)
    assert isinstance(analysis.intonation, Measured)
    assert analysis.intonation.value.measured_share == 1.0
    assert isinstance(analysis.tempo, Measured)
    assert analysis.tempo.value.mean_bpm == pytest.approx(90.0, abs=0.3)
    assert isinstance(analysis.dynamics, Measured)
    assert analysis.dynamics.value.noise_floor_dbfs == pytest.approx(-70.0, abs=2.0)
    assert analysis.duration_s == pytest.approx(len(phrase.samples) / phrase.sample_rate_hz)
    assert analysis.provenance.algorithm == ALGORITHM
    assert analysis.provenance.parameters["pulse_bpm"] == 90.0
    assert told == sorted(told)
    assert told[-1] == 1.0


def test_the_same_again(phrase: Phrase) -> None:
    first, second = (analyse_take(phrase.samples, phrase.sample_rate_hz) for _ in range(2))
    assert [j.deviation for j in first.notes] == [j.deviation for j in second.notes]
    assert first.intonation == second.intonation


@pytest.mark.parametrize("channels", [1, 2, 6])
@pytest.mark.parametrize("dtype", [np.float32, np.float64])
def test_channels_and_types(phrase: Phrase, channels: int, dtype: type) -> None:
    samples = np.tile(phrase.samples[:, None], (1, channels)).astype(dtype)
    analysis = analyse_take(samples, phrase.sample_rate_hz)
    assert [j.midi for j in analysis.notes] == [63, 65, 67, 68, 70, 70, 72, 75]


@pytest.mark.parametrize("rate", [8_000, 192_000])
def test_lowest_and_highest_rate(rate: int) -> None:
    notes = tuple(NoteSpec(m, 1.0, 6.0) for m in (63, 65, 67, 68, 70))
    phrase = render(PhraseSpec(notes, tempo=90.0, sample_rate_hz=rate))
    analysis = analyse_take(np.column_stack([phrase.samples] * 2), rate)
    assert [j.midi for j in analysis.notes] == [63, 65, 67, 68, 70]
    assert isinstance(analysis.intonation, Measured)
    assert analysis.intonation.value.mean_absolute_cents == pytest.approx(6.0, abs=0.7)


@pytest.mark.parametrize(
    ("samples", "reason"),
    [
        (np.empty(0), Reason.TOO_SHORT),
        (np.empty((0, 2)), Reason.TOO_SHORT),
        (np.array([0.5]), Reason.TOO_SHORT),
        (np.full(100, 0.1), Reason.TOO_SHORT),
        (np.zeros(96_000), Reason.SILENT),
        (np.full(96_000, np.nan), Reason.INPUT_BROKEN),
        (np.concatenate([np.full(48_000, 0.1), [np.inf]]), Reason.INPUT_BROKEN),
    ],
)
def test_takes_that_hold_nothing(samples: np.ndarray, reason: Reason) -> None:
    analysis = analyse_take(samples, 48_000)
    assert isinstance(analysis.pitch, NotMeasurable)
    assert analysis.pitch.reason is reason
    assert all(isinstance(part, NotMeasurable) for part in parts(analysis))
    assert analysis.notes == ()


def test_noise_clicks_and_a_constant_do_not_break_anything() -> None:
    rng = np.random.default_rng(0)
    clicks = np.zeros(96_000)
    clicks[::12_000] = 1.0
    for samples in (0.2 * rng.standard_normal(96_000), clicks, np.full(96_000, 0.5)):
        analysis = analyse_take(np.clip(samples, -1.0, 1.0), 48_000)
        assert isinstance(analysis.intonation, NotMeasurable)


def test_an_a_estimated_from_the_take(phrase: Phrase) -> None:
    analysis = analyse_take(
        phrase.samples, phrase.sample_rate_hz, TakeSettings(reference_a_hz="auto")
    )
    assert isinstance(analysis.intonation, Measured)
    assert isinstance(analysis.intonation.value.accuracy_cents, NotMeasurable)
    few = analyse_take(
        phrase.samples[: 2 * phrase.sample_rate_hz],
        phrase.sample_rate_hz,
        TakeSettings(reference_a_hz="auto"),
    )
    assert isinstance(few.intonation, NotMeasurable)
    assert few.notes
    assert few.notes[0].midi is None


@pytest.mark.parametrize(
    ("wrong", "said"),
    [
        ({"instrument": "kazoo"}, "known are violin"),
        ({"reference_a_hz": 300.0}, "between 380 and 480"),
        ({"temperament": Temperament.JUST}, "tonic"),
        ({"tonic": "H"}, "note name"),
        ({"pulse_bpm": 0.0}, "between 15 and 400"),
        ({"pulse_bpm": float("nan")}, "between 15 and 400"),
        ({"open_strings": ("G3", "oops")}, "note name"),
    ],
)
def test_settings_that_make_no_sense(wrong: dict[str, Any], said: str) -> None:
    with pytest.raises(ValueError, match=said):
        analyse_take(np.zeros(10), 48_000, TakeSettings(**wrong))


def test_shapes_and_rates_that_make_no_sense() -> None:
    for samples, rate in ((np.zeros((2, 2, 2)), 48_000), (np.zeros(10), 0)):
        with pytest.raises(ValueError, match=r"samples|sample rate"):
            analyse_take(samples, rate)
    low = analyse_take(np.full(4000, 0.1), 4_000)
    assert isinstance(low.pitch, NotMeasurable)
    assert low.pitch.reason is Reason.LOW_SAMPLE_RATE


@pytest.mark.parametrize("after", [0, 1, 5, 12])
def test_stops_wherever_it_is_asked(phrase: Phrase, after: int) -> None:
    asked = 0

    def should_stop() -> bool:
        nonlocal asked
        asked += 1
        return asked > after

    with pytest.raises(Stopped):
        analyse_take(phrase.samples, phrase.sample_rate_hz, should_stop=should_stop)
    assert asked == after + 1


def test_reads_a_mapped_file_piece_by_piece(phrase: Phrase, tmp_path: Any) -> None:
    path = tmp_path / "take.npy"
    np.save(path, phrase.samples.astype(np.float32))
    mapped = np.load(path, mmap_mode="r")
    analysis = analyse_take(mapped, phrase.sample_rate_hz)
    assert len(analysis.notes) == len(DEVIATIONS)


def test_settings_are_made_without_the_heavy_libraries() -> None:
    """A window that offers instruments and temperaments must not wait for compilers."""
    code = (
        "import sys; import analysis.take_settings; "
        "assert not {'numba', 'librosa', 'matplotlib'} & set(sys.modules)"
    )
    subprocess.run([sys.executable, "-c", code], check=True)
