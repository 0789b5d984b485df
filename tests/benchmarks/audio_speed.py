"""Print how fast the audio room works, each as a ratio against a reference in the same run.

python tests/benchmarks/audio_speed.py
"""

import sys
import tempfile
import time
from collections.abc import Callable
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import librosa
import numpy as np
import soundfile

from audio.encoding import encode_flac
from audio.files import open_sound, read_sound
from audio.peaks import Peaks, build_peaks
from audio.sources import ArraySource, open_source
from audio.stretching import StretchStream, stretch

RATE = 48_000


def seconds(work: Callable[[], object], repeats: int = 3) -> float:
    """Return the best of a few runs."""
    best = float("inf")
    for _ in range(repeats):
        begun = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - begun)
    return best


def show(what: str, took_s: float, reference: str, reference_s: float) -> None:
    print(f"{what:<44} {1000 * took_s:9.2f} ms   {took_s / reference_s:8.3f} x {reference}")


def stretching() -> None:
    sound = np.random.default_rng(0).normal(0, 0.1, 10 * RATE).astype(np.float32)
    reference_s = seconds(lambda: librosa.effects.time_stretch(sound, rate=0.5))
    for speed in (0.25, 0.5, 0.75, 1.25):
        took_s = seconds(lambda speed=speed: stretch(sound, RATE, speed))
        show(f"stretch 10 s at speed {speed}", took_s, "librosa.time_stretch at 0.5", reference_s)
    for speed in (0.25, 0.5, 0.75):
        source = ArraySource(sound[:, np.newaxis])
        stream = StretchStream(source, RATE, speed, longest_piece_s=0.12)
        first_s = seconds(stream.read, 1)
        longest_s = max(seconds(stream.read, 1) for _ in range(40))
        played_s = 0.12 / speed
        show(f"first piece at speed {speed}", first_s, "of the time it plays", played_s)
        show(f"longest piece at speed {speed}", longest_s, "of the time it plays", played_s)


def purity() -> None:
    """Level of a stretched sine above everything else, and its pitch."""
    print(f"\n{'sine stretched: purity dB (deviation, cents)':<44}")
    time_s = np.arange(6 * RATE) / RATE
    speeds = (0.25, 0.3, 0.4, 0.5, 0.6, 0.75, 0.9, 1.25, 1.5)
    print(" " * 12 + "".join(f"{speed:>15}" for speed in speeds))
    for frequency_hz in (41.2, 65.4, 98.0, 196.0, 293.7, 443.0, 659.3, 1318.5, 2637.0):
        tone = (0.5 * np.sin(2 * np.pi * frequency_hz * time_s)).astype(np.float32)
        cells = []
        for speed in speeds:
            inner = stretch(tone, RATE, speed)[RATE // 2 : -RATE // 2]
            spectrum = np.abs(np.fft.rfft(inner * np.hanning(len(inner))))
            peak = int(spectrum.argmax())
            left, middle, right = np.log(spectrum[peak - 1 : peak + 2])
            place = peak + 0.5 * (left - right) / (left - 2 * middle + right)
            cents = 1200 * np.log2(place * RATE / len(inner) / frequency_hz)
            line = np.sum(spectrum[peak - 8 : peak + 9] ** 2)
            level_db = 10 * np.log10(line / (np.sum(spectrum**2) - line))
            cells.append(f"{level_db:7.1f} ({cents:+.2f})")
        print(f"{frequency_hz:>9} Hz" + "".join(f"{cell:>15}" for cell in cells))
    print()


def an_hour(folder: Path) -> None:
    sound = np.random.default_rng(0).normal(0, 0.1, 3600 * RATE).astype(np.float32)
    whole_s = seconds(lambda: (sound.min(), sound.max()))
    show(
        "build peaks of 60 min",
        seconds(lambda: build_peaks(sound, RATE), 1),
        "min()+max()",
        whole_s,
    )
    peaks = build_peaks(sound, RATE)
    peaks.save(folder / "peaks.npz")
    show(
        "load peaks of 60 min",
        seconds(lambda: Peaks.load(folder / "peaks.npz")),
        "min()+max()",
        whole_s,
    )
    for span_s in (3600.0, 300.0, 30.0, 3.0, 0.3):
        took_s = seconds(lambda span_s=span_s: peaks.columns(10.0, 10.0 + span_s, 2000, sound), 9)
        show(f"2000 columns of {span_s} s", took_s, "a 60 Hz frame", 1 / 60)
    path = folder / "hour.flac"
    soundfile.write(path, sound[: 600 * RATE], RATE, subtype="PCM_24")
    whole_s = seconds(lambda: read_sound(path), 1)
    show("open 10 min FLAC for playing", seconds(lambda: open_source(path)), "reading it", whole_s)
    with open_sound(path) as opened:
        took_s = seconds(lambda: build_peaks(opened.blocks(), RATE), 1)
    show("peaks of 10 min FLAC, block by block", took_s, "reading it", whole_s)


def encoding(folder: Path) -> None:
    steps = np.random.default_rng(0).integers(-(2**20), 2**20, 300 * RATE).astype(np.int32) << 8
    soundfile.write(folder / "take.wav", steps, RATE, subtype="PCM_24")
    plain_s = seconds(lambda: soundfile.write(folder / "plain.flac", steps, RATE, subtype="PCM_24"))

    def encode() -> None:
        (folder / "take.flac").unlink(missing_ok=True)
        encode_flac(folder / "take.wav", folder / "take.flac", {"DATE": "2026-03-14"})

    show("encode, tag and verify 5 min", seconds(encode), "soundfile.write alone", plain_s)


if __name__ == "__main__":
    stretching()
    purity()
    with tempfile.TemporaryDirectory() as name:
        an_hour(Path(name))
        encoding(Path(name))
