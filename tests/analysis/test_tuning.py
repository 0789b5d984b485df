import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from analysis.instruments import INSTRUMENTS, instrument
from analysis.tuning import (
    Temperament,
    estimate_reference_a,
    open_string_targets_hz,
    target_hz,
    temperament_offset_cents,
)
from analysis.units import cents_between, midi_to_hz, parse_note_name

# Source: exact ratios, cents computed outside the project; semitones above the tonic.
PYTHAGOREAN = {
    1: 90.225, 2: 203.910, 3: 294.135, 4: 407.820, 5: 498.045, 6: 611.730,
    7: 701.955, 8: 792.180, 9: 905.865, 10: 996.090, 11: 1109.775,
}  # fmt: skip
JUST = {
    1: 111.731, 2: 203.910, 3: 315.641, 4: 386.314, 5: 498.045, 6: 590.224,
    7: 701.955, 8: 813.686, 9: 884.359, 10: 996.090, 11: 1088.269,
}  # fmt: skip


@pytest.mark.parametrize(
    ("temperament", "table"), [(Temperament.PYTHAGOREAN, PYTHAGOREAN), (Temperament.JUST, JUST)]
)
@pytest.mark.parametrize("tonic", ["C4", "D4", "Eb4", "G#4", "A4"])
def test_intervals_above_the_tonic(
    temperament: Temperament, table: dict[int, float], tonic: str
) -> None:
    root = parse_note_name(tonic)
    base = target_hz(root, 440.0, temperament, tonic)
    for semitones, cents in table.items():
        found = cents_between(base, target_hz(root + semitones, 440.0, temperament, tonic))
        assert found == pytest.approx(cents, abs=6e-4)


@pytest.mark.parametrize("temperament", list(Temperament))
@given(tonic=st.sampled_from(["C", "F#", "Bb", "A"]), reference=st.floats(390.0, 470.0))
def test_every_temperament_keeps_its_a(
    temperament: Temperament, tonic: str, reference: float
) -> None:
    assert target_hz(69, reference, temperament, tonic) == pytest.approx(reference, rel=1e-12)
    assert target_hz(57, reference, temperament, tonic) == pytest.approx(reference / 2, rel=1e-12)


@pytest.mark.parametrize("temperament", [Temperament.PYTHAGOREAN, Temperament.JUST])
def test_unequal_temperaments_need_a_tonic(temperament: Temperament) -> None:
    with pytest.raises(ValueError, match="tonic"):
        target_hz(60, 440.0, temperament)
    assert temperament_offset_cents(60, Temperament.EQUAL, None) == 0.0


def test_violin_and_viola_strings_in_pure_fifths() -> None:
    # Source: pure fifths from A = 440 Hz, computed outside the project: D4 293.333
    # (-1.96 cents), G3 195.556 (-3.91), viola C3 130.370 (-5.87), E5 660.0 (+1.96).
    violin = open_string_targets_hz(INSTRUMENTS["violin"])
    viola = open_string_targets_hz(INSTRUMENTS["viola"])
    expected = {62: (293.333, -1.955), 55: (195.556, -3.910), 76: (660.0, 1.955)}
    for midi, (hertz, cents) in expected.items():
        assert violin[midi] == pytest.approx(hertz, abs=6e-4)
        assert cents_between(midi_to_hz(midi), violin[midi]) == pytest.approx(cents, abs=6e-4)
    assert viola[48] == pytest.approx(130.370, abs=6e-4)
    assert cents_between(midi_to_hz(48), viola[48]) == pytest.approx(-5.865, abs=6e-4)


def test_bass_in_pure_fourths_guitar_tempered() -> None:
    bass = open_string_targets_hz(INSTRUMENTS["double bass"])
    assert bass[33] == pytest.approx(55.0)
    assert bass[28] == pytest.approx(55.0 * 3 / 4)
    assert bass[38] == pytest.approx(55.0 * 4 / 3)
    guitar = open_string_targets_hz(INSTRUMENTS["guitar"])
    for midi, hertz in guitar.items():
        assert hertz == pytest.approx(midi_to_hz(midi))


def test_scordatura_moves_the_strings() -> None:
    # The A string lowered to G: what remains is tuned from the highest string left.
    strings = open_string_targets_hz(INSTRUMENTS["cello"], 442.0, ("C2", "G2", "D3", "G3"))
    assert set(strings) == {36, 43, 50, 55}
    assert strings[43] / strings[36] == pytest.approx(1.5)
    assert strings[55] == pytest.approx(midi_to_hz(55, 442.0))
    assert open_string_targets_hz(INSTRUMENTS["flute"]) == {}


def test_instruments_are_found_by_name() -> None:
    assert instrument(" Viola ").open_strings == ("C3", "G3", "D4", "A4")
    with pytest.raises(ValueError, match="violin, viola, cello"):
        instrument("theremin")
    for each in INSTRUMENTS.values():
        assert 0.0 < each.floor_hz < midi_to_hz(each.lowest_midi)
        assert each.ceiling_hz > midi_to_hz(each.highest_midi)


def _played(offset_cents: float, scatter: float, count: int, seed: int) -> np.ndarray:
    rng = np.random.default_rng(seed)
    midi = rng.integers(55, 86, count)
    return midi_to_hz(midi + (offset_cents + rng.normal(0.0, scatter, count)) / 100.0)


@pytest.mark.parametrize("offset_cents", [-48.0, -20.0, 0.0, 7.9, 45.0])
def test_estimated_a_finds_the_offset(offset_cents: float) -> None:
    pitch = _played(offset_cents, 8.0, 60, 3)
    estimate = estimate_reference_a(pitch, np.full(60, 1.0))
    assert estimate is not None
    found = cents_between(440.0, estimate.reference_a_hz)
    assert found == pytest.approx(offset_cents, abs=2.0 * estimate.uncertainty_cents)
    assert 0.5 < estimate.uncertainty_cents < 4.0


@pytest.mark.parametrize("scatter", [4.0, 9.0])
def test_estimated_a_holds_the_truth_19_times_in_20(scatter: float) -> None:
    held = 0
    for seed in range(400):
        offset = float(np.random.default_rng([seed, 1]).uniform(-40, 40))
        estimate = estimate_reference_a(_played(offset, scatter, 30, seed), np.full(30, 1.0))
        assert estimate is not None
        error = abs(cents_between(440.0, estimate.reference_a_hz) - offset)
        held += error <= estimate.uncertainty_cents
    # 92 to 98 %, give or take what 400 draws can tell
    assert 0.91 <= held / 400 <= 0.985


def test_estimated_a_in_a_temperament_and_with_strays() -> None:
    rng = np.random.default_rng(5)
    midi = rng.integers(55, 86, 50)
    pitch = np.array([target_hz(int(m), 442.0, Temperament.PYTHAGOREAN, "D") for m in midi])
    pitch[:4] *= 2.0 ** (35.0 / 1200.0)
    estimate = estimate_reference_a(pitch, np.full(50, 1.0), Temperament.PYTHAGOREAN, "D")
    assert estimate is not None
    assert estimate.reference_a_hz == pytest.approx(442.0, abs=0.2)


def test_too_few_notes_give_no_estimate() -> None:
    assert estimate_reference_a(np.array([440.0, 220.0]), np.array([1.0, 1.0])) is None
