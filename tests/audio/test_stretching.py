from itertools import pairwise

import numpy as np
import parselmouth
import pytest

from audio.sources import ArraySource, ResampledSource, source_of
from audio.stretching import StretchStream, stretch

RATE = 48_000
SPEEDS = [0.25, 0.4, 0.5, 0.65, 0.8, 0.95, 1.25, 1.5]


def bowed(frequency_hz: float, seconds: float, rate: int = RATE) -> np.ndarray:
    """A tone with the falling harmonics of a bowed string."""
    time_s = np.arange(round(seconds * rate)) / rate
    partials = [
        np.sin(2 * np.pi * k * frequency_hz * time_s) / k
        for k in range(1, 20)
        if k * frequency_hz < 0.45 * rate
    ]
    return (0.25 * np.sum(partials, axis=0)).astype(np.float32)


def cents_and_purity(samples: np.ndarray, frequency_hz: float) -> tuple[float, float]:
    """Deviation of a sine's frequency, and its level above everything else in dB."""
    spectrum = np.abs(np.fft.rfft(samples * np.hanning(len(samples))))
    peak = int(spectrum.argmax())
    left, middle, right = np.log(spectrum[peak - 1 : peak + 2])
    offset = 0.5 * (left - right) / (left - 2 * middle + right)
    found_hz = (peak + offset) * RATE / len(samples)
    line = np.sum(spectrum[peak - 8 : peak + 9] ** 2)
    rest = np.sum(spectrum**2) - line
    return 1200 * np.log2(found_hz / frequency_hz), 10 * np.log10(line / rest)


@pytest.mark.parametrize(
    ("frequency_hz", "speed"),
    [
        (41.2, 0.5), (65.4, 0.4), (65.4, 1.5), (196.0, 0.25), (196.0, 0.8), (443.0, 0.25),
        (443.0, 0.5), (443.0, 1.25), (1318.5, 0.5), (1318.5, 0.95),
    ],
)  # fmt: skip
def test_a_steady_tone_keeps_pitch_level_and_purity(frequency_hz: float, speed: float) -> None:
    time_s = np.arange(6 * RATE) / RATE
    tone = (0.5 * np.sin(2 * np.pi * frequency_hz * time_s)).astype(np.float32)
    stretched = stretch(tone, RATE, speed)
    assert len(stretched) == round(len(tone) / speed)
    inner = stretched[RATE // 2 : -RATE // 2]
    cents, purity_db = cents_and_purity(inner, frequency_hz)
    assert abs(cents) < 0.2
    # Seams between the pieces would show as side lines: 35 dB below is inaudible under a tone.
    assert purity_db > 35
    envelope = np.abs(inner[: len(inner) // 4800 * 4800]).reshape(-1, 4800).max(axis=1)
    assert envelope.min() > 0.47
    assert envelope.max() < 0.53


@pytest.mark.parametrize("speed", [0.25, 0.5, 0.75, 1.25])
def test_a_bowed_tone_keeps_its_pitch_for_an_independent_tracker(speed: float) -> None:
    # Reference: Praat's autocorrelation pitch (Boersma 1993), through parselmouth.
    stretched = stretch(bowed(293.66, 4.0), RATE, speed)
    inner = stretched[RATE // 2 : -RATE // 2].astype(np.float64)
    pitch = parselmouth.Sound(inner, RATE).to_pitch_ac(
        time_step=0.02, pitch_floor=75.0, pitch_ceiling=1000.0
    )
    tracked = pitch.selected_array["frequency"]
    assert np.all(tracked > 0)
    cents = 1200 * np.log2(tracked / 293.66)
    assert abs(np.median(cents)) < 0.3
    assert np.percentile(np.abs(cents), 99) < 3.0


@pytest.mark.parametrize("speed", SPEEDS)
def test_attacks_stay_in_their_place(speed: float) -> None:
    sound = np.zeros(5 * RATE, np.float32)
    places_s = np.arange(0.4, 4.6, 0.5)
    for place in places_s:
        at = round(place * RATE)
        sound[at : at + 2400] = bowed(440.0, 0.05) * np.linspace(1, 0, 2400)
    stretched = stretch(sound, RATE, speed)
    for place in places_s:
        around = round(place / speed * RATE) + np.arange(-4800, 9600)
        window = np.abs(stretched[around])
        power = np.cumsum(window**2)
        middle = around[np.searchsorted(power, power[-1] / 2)] / RATE * speed
        # The middle of the burst's power lies 6 ms behind its attack; pieces may be
        # moved by 12.5 ms of output where they meet.
        assert middle - place == pytest.approx(0.006, abs=0.004 + 0.0125 * speed)


def test_speed_one_is_the_sound_itself() -> None:
    sound = bowed(440.0, 0.5)
    np.testing.assert_array_equal(stretch(sound, RATE, 1.0), sound)


@pytest.mark.parametrize("frames", [0, 1, 100, 5000])
@pytest.mark.parametrize("speed", [0.25, 0.7, 1.5])
def test_very_short_sounds_are_stretched_to_their_length(frames: int, speed: float) -> None:
    assert len(stretch(np.zeros(frames, np.float32), RATE, speed)) == round(frames / speed)


def test_channels_stay_apart_and_in_step() -> None:
    left, right = bowed(440.0, 2.0), bowed(660.0, 2.0)
    stretched = stretch(np.column_stack([left, right]), RATE, 0.5)
    assert stretched.shape == (4 * RATE, 2)
    for channel, frequency_hz in ((0, 440.0), (1, 660.0)):
        cents, _ = cents_and_purity(stretched[RATE // 2 : -RATE // 2, channel], frequency_hz)
        # Where pieces meet, one shift must do for both channels.
        assert abs(cents) < 0.5


def test_silence_stays_silent() -> None:
    assert not stretch(np.zeros(RATE, np.float32), RATE, 0.5).any()


def test_the_same_sound_is_stretched_the_same_way_every_time() -> None:
    sound = bowed(440.0, 1.0)
    np.testing.assert_array_equal(stretch(sound, RATE, 0.3), stretch(sound, RATE, 0.3))


def test_the_stream_begins_anywhere_and_names_its_places() -> None:
    sound = bowed(440.0, 4.0)[:, np.newaxis]
    stream = StretchStream(ArraySource(sound), RATE, 0.5, RATE, 3 * RATE)
    pieces = []
    while (piece := stream.read()) is not None:
        pieces.append(piece)
    assert pieces[0].start_frame == RATE
    assert pieces[-1].end_frame == 3 * RATE
    for earlier, later in pairwise(pieces):
        assert earlier.end_frame == later.start_frame
    assert sum(len(piece.samples) for piece in pieces) == 4 * RATE
    assert len(pieces[0].samples) < RATE, "the first piece is short, so that sound starts at once"


@pytest.mark.parametrize("speed", [0.1, 2.0, -1.0, float("nan")])
def test_other_speeds_are_refused(speed: float) -> None:
    with pytest.raises(ValueError, match="speed"):
        StretchStream(ArraySource(np.zeros((10, 1), np.float32)), RATE, speed)


@pytest.mark.parametrize(
    ("from_hz", "to_hz"), [(44_100, 48_000), (48_000, 44_100), (8_000, 48_000)]
)
def test_a_rate_is_converted_piece_by_piece_without_a_seam(from_hz: int, to_hz: int) -> None:
    # Truth: the sine itself, sampled at the other rate.
    frequency_hz = 997.0
    samples = np.sin(2 * np.pi * frequency_hz * np.arange(2 * from_hz) / from_hz)
    source = ResampledSource(source_of(samples.astype(np.float32)), from_hz, to_hz)
    assert source.frames == 2 * to_hz
    cuts = [0, 1, 777, 5000, 5001, to_hz // 2, to_hz, 2 * to_hz]
    pieces = [source.read(*span) for span in pairwise(cuts)]
    joined = np.concatenate(pieces)[:, 0]
    truth = np.sin(2 * np.pi * frequency_hz * np.arange(2 * to_hz) / to_hz)
    error = np.abs(joined - truth)[200:-200]
    assert error.max() < 0.001
