"""Kept analyses come back as they were."""

import dataclasses

import numpy as np
import pytest

from analysis.results import (
    Measured,
    NotMeasurable,
    PitchTrack,
    Provenance,
    Reason,
    TakeAnalysis,
)
from app.journal.records import PlayingSettings
from app.services.encoding import EXACT_SIZE, UnreadableMeasurement, decode, encode
from app.services.file_measuring import measure_file


@pytest.fixture(scope="module")
def analysis(wav_a) -> TakeAnalysis:
    return measure_file(wav_a, PlayingSettings(pulse_bpm=96.0)).analysis


def assert_same(a, b):
    """Compare results field by field; arrays over the exact size to single precision."""
    assert type(a) is type(b)
    if isinstance(a, np.ndarray):
        assert a.shape == b.shape
        if a.size <= EXACT_SIZE:
            np.testing.assert_array_equal(a, b)
        else:
            np.testing.assert_allclose(a, b, rtol=1e-6, atol=1e-6, equal_nan=True)
    elif dataclasses.is_dataclass(a):
        for f in dataclasses.fields(a):
            assert_same(getattr(a, f.name), getattr(b, f.name))
    elif isinstance(a, tuple):
        assert len(a) == len(b)
        for x, y in zip(a, b, strict=True):
            assert_same(x, y)
    else:
        assert a == b


def test_a_measured_take_comes_back_whole(analysis):
    assert isinstance(analysis.pitch, Measured)
    assert isinstance(analysis.tempo, Measured)
    assert_same(decode(encode(analysis)), analysis)


def test_hundreds_of_notes_come_back_and_share_how_they_were_measured(analysis):
    notes = analysis.notes * (200 // len(analysis.notes) + 1)
    back = decode(encode(dataclasses.replace(analysis, notes=notes)))
    assert len(back.notes) > 200
    assert_same(back, dataclasses.replace(analysis, notes=notes))
    pitches = [judged.note.pitch for judged in back.notes]
    measured = [pitch.provenance for pitch in pitches if pitch.provenance == pitches[0].provenance]
    assert len(measured) > 100
    assert all(one is measured[0] for one in measured), "written once, read once"


def test_reasons_come_back(analysis):
    why = NotMeasurable(Reason.SILENT, "The take is silent.", Provenance("take-9", {"a": None}))
    silent = TakeAnalysis(1.0, 48_000, why, (), why, why, why, why.provenance)
    assert decode(encode(silent)) == silent


def test_long_curves_are_kept_in_single_precision_and_even_times_by_rule(analysis):
    n = 50_000
    rng = np.random.default_rng(3)
    track = PitchTrack(
        time_s=0.004 + 0.005 * np.arange(n),
        f0_hz=np.where(rng.random(n) < 0.2, np.nan, 440.0 + rng.normal(0, 3, n)),
        confidence=rng.random(n),
        level_dbfs=-40 + rng.normal(0, 5, n),
        hop_s=0.005,
    )
    long = dataclasses.replace(analysis, pitch=Measured(track, Provenance("pitch-1")))
    block = encode(long)
    found = decode(block)
    assert isinstance(found.pitch, Measured)
    np.testing.assert_allclose(found.pitch.value.time_s, track.time_s, atol=1e-7)
    # 0.0001 cents = a ratio of 5.8e-8; single precision rounds to 6.0e-8 (IEEE 754, binary32).
    cents = 1200 * np.log2(found.pitch.value.f0_hz / track.f0_hz)
    assert np.nanmax(np.abs(cents)) < 2e-4
    assert np.array_equal(np.isnan(found.pitch.value.f0_hz), np.isnan(track.f0_hz))
    assert len(block) < n * 4 * 3


@pytest.mark.parametrize("cut", [0, 3, 8, 40, -1])
def test_a_damaged_block_is_refused(analysis, cut):
    with pytest.raises(UnreadableMeasurement):
        decode(encode(analysis)[:cut])


def test_a_block_of_another_version_is_refused(analysis):
    block = bytearray(encode(analysis))
    block[3] += 1
    with pytest.raises(UnreadableMeasurement):
        decode(bytes(block))


def test_a_block_with_an_unknown_type_is_refused(analysis):
    import json
    import zlib

    from app.services.encoding import _HEADER

    tree = json.dumps({"=": "TakeOpinion", "f": {}}).encode()
    block = _HEADER.pack(b"PWM", 1, len(tree)) + zlib.compress(tree)
    with pytest.raises(UnreadableMeasurement):
        decode(block)
