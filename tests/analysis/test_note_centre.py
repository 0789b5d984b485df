"""The centre of a vibrato that is no sinusoid, and intervals in noise and in rooms."""

import numpy as np

from analysis.note_centre import Reading, pitch_of, read_steady

HOP_S = 0.005


def steady(cents: np.ndarray, confidence: np.ndarray | float = 1.0) -> Reading:
    count = len(cents)
    reading = read_steady(
        HOP_S * np.arange(count),
        69.0 + cents / 100.0,
        np.broadcast_to(np.asarray(confidence, dtype=np.float64), (count,)).copy(),
        np.ones(count, dtype=np.bool_),
    )
    assert reading is not None
    return reading


def centre_cents(reading: Reading) -> float:
    return 100.0 * (reading.middle_midi - 69.0) + reading.centre_cents


def uneven_vibrato(seed: int, seconds: float) -> np.ndarray:
    """Turns about 0 cents, each with its own length and width, up and down alike.

    The truth is that of the construction: every whole turn has the mean 0.
    """
    rng = np.random.default_rng([seed, 3])
    turns = []
    while sum(map(len, turns)) * HOP_S < seconds:
        count = round(float(rng.uniform(0.14, 0.22)) / HOP_S)
        extent = float(rng.uniform(6.0, 22.0))
        turns.append(extent * np.sin(2.0 * np.pi * np.arange(count) / count))
    return np.concatenate(turns)[: round(seconds / HOP_S)]


def test_the_centre_of_an_uneven_vibrato_is_the_mean_of_its_turns() -> None:
    errors, of_fit = [], []
    for seed in range(40):
        reading = steady(uneven_vibrato(seed, 0.45))
        if reading.wobble is None:
            continue
        errors.append(abs(centre_cents(reading)))
        of_fit.append(abs(100.0 * (reading.middle_midi - 69.0) + reading.wobble.centre))
    assert len(errors) > 25
    assert np.mean(errors) < 0.9 * np.mean(of_fit)
    assert np.median(errors) < 1.0


def test_a_regular_vibrato_keeps_the_centre_of_its_fit() -> None:
    time_s = HOP_S * np.arange(110)
    for phase in np.linspace(0.0, 2.0 * np.pi, 9):
        reading = steady(7.0 + 20.0 * np.sin(2.0 * np.pi * 6.0 * time_s + phase))
        assert abs(centre_cents(reading) - 7.0) < 0.1


def test_noise_alone_widens_an_interval_less_than_another_sound_does() -> None:
    """The same spread of pitch and the same unevenness, with and without a periodic best."""
    rng = np.random.default_rng(5)
    cents = np.convolve(rng.normal(0.0, 3.0, 204), np.ones(5) / 5.0, "valid")
    uneven = 0.004 * np.abs(np.convolve(rng.normal(0.0, 1.0, 204), np.ones(5) / 2.2, "valid"))
    in_noise, in_room = steady(cents, 0.975 - uneven), steady(cents, 1.0 - uneven)
    widths = [pitch_of(r, 1.0, HOP_S).uncertainty_cents for r in (in_noise, in_room)]
    assert widths[0] < 0.85 * widths[1]
