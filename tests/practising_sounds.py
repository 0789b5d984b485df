"""An hour (or a few minutes) of somebody practising, with exactly known truth.

Playing comes from the generator, speech from the synthesiser espeak-ng, and the room's
own noise lies under all of it. The parts follow one another with gaps of known length.
"""

import io
import shutil
import subprocess
from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import soundfile
from numpy.typing import NDArray
from scipy import signal

from sample_audio.generator import NoteSpec, PhraseSpec, render

FloatArray = NDArray[np.float64]

RATE_HZ = 48_000
SPEAKER = "espeak-ng"

LOWEST = {"violin": 55, "viola": 48, "cello": 36, "double bass": 28}
VOICES = ("en-gb", "en-us", "de", "fr-fr", "en-gb+f3", "en-us+m7", "de+f2", "en-gb+m3", "it+f4")
SENTENCES = (
    "Let us hear the second line once more, and think of the whole bar as one breath.",
    "I am not sure about the fingering there. Could you try it with the third finger?",
    "Yes, that was much better. Now a little slower, and listen to the open string.",
    "Tomorrow at half past four? No, wait, let me have a look at the other calendar first.",
    "One, two, three, four. And then the upbeat comes late, do you hear what I mean?",
    "Why does the bow skip? It may be the weight of the arm, or simply old rosin.",
)


@dataclass(frozen=True, slots=True)
class Part:
    """A stretch of the sound: what it is, and how much of it is playing."""

    kind: str
    samples: FloatArray
    playing_s: float


def speaker_is_missing() -> bool:
    """Whether this machine has no speech synthesiser."""
    return shutil.which(SPEAKER) is None


@lru_cache(maxsize=64)
def spoken(sentence: str, voice: str, words_a_minute: int, pitch: int) -> FloatArray:
    """Speak one sentence, (n,) at :data:`RATE_HZ`, RMS 1 while it speaks."""
    done = subprocess.run(
        [SPEAKER, "--stdout", "-v", voice, "-s", str(words_a_minute), "-p", str(pitch), sentence],
        capture_output=True,
        check=True,
        timeout=30,
    )
    samples, rate = soundfile.read(io.BytesIO(_with_true_length(done.stdout)))
    sound = signal.resample_poly(samples, RATE_HZ // 50, rate // 50)
    loud = np.abs(sound) > 0.05 * np.max(np.abs(sound))
    return np.asarray(sound / np.sqrt(np.mean(sound[loud] ** 2)))


def _with_true_length(wav: bytes) -> bytes:
    # Written to a pipe, the header claims two gigabytes.
    data = bytearray(wav)
    at = data.find(b"data") + 4
    data[at : at + 4] = (len(data) - at - 4).to_bytes(4, "little")
    data[4:8] = (len(data) - 8).to_bytes(4, "little")
    return bytes(data)


def speech(rng: np.random.Generator, seconds: float) -> Part:
    """Somebody talks for about as long as asked, in one voice, with short pauses."""
    voice = str(rng.choice(VOICES))
    pace, pitch = int(rng.choice((120, 160, 200))), int(rng.choice((30, 50, 75)))
    level = 10 ** (rng.uniform(-34, -18) / 20)
    pieces: list[FloatArray] = []
    while sum(map(len, pieces)) < seconds * RATE_HZ:
        pieces.append(level * spoken(str(rng.choice(SENTENCES)), voice, pace, pitch))
        pieces.append(np.zeros(round(rng.uniform(0.1, 1.5) * RATE_HZ)))
    return Part("speech", np.concatenate(pieces), 0.0)


def nobody(rng: np.random.Generator, seconds: float) -> Part:
    """Nobody plays or speaks; a knock or a rustle now and then."""
    samples = np.zeros(round(seconds * RATE_HZ))
    for _ in range(rng.poisson(seconds / 10)):
        length = round(rng.uniform(0.02, 0.4) * RATE_HZ)
        at = int(rng.integers(0, max(1, len(samples) - length)))
        knock = rng.normal(size=length) * np.exp(-np.arange(length) / (0.3 * length))
        samples[at : at + length] += 10 ** (rng.uniform(-45, -25) / 20) * knock
    return Part("nobody", samples, 0.0)


def _scale(low: int, rng: np.random.Generator) -> tuple[NoteSpec, ...]:
    steps = np.cumsum([0, 2, 2, 1, 2, 2, 2, 1, 2, 2, 1, 2, 2, 2, 1])
    up = low + steps[: int(rng.integers(8, 16))]
    beats = float(rng.choice((0.5, 1.0)))
    return tuple(NoteSpec(float(m), beats) for m in (*up, *up[::-1]))


def _long_tones(low: int, rng: np.random.Generator) -> tuple[NoteSpec, ...]:
    return tuple(
        NoteSpec(
            float(low + rng.integers(0, 24)),
            float(rng.choice((4, 6))),
            vibrato_rate_hz=float(rng.uniform(5, 7)),
            vibrato_extent_cents=float(rng.choice((0, 12, 25, 40))),
        )
        for _ in range(5)
    )


def _fast(low: int, rng: np.random.Generator) -> tuple[NoteSpec, ...]:
    return tuple(
        NoteSpec(float(low + rng.integers(0, 26)), 0.25, attack_s=0.015, release_s=0.02)
        for _ in range(64)
    )


def _plucked(low: int, rng: np.random.Generator) -> tuple[NoteSpec, ...]:
    return tuple(
        NoteSpec(float(low + rng.integers(0, 24)), float(rng.choice((0.5, 1.0))),
                 articulation="pizzicato")
        for _ in range(24)
    )  # fmt: skip


def _phrase(low: int, rng: np.random.Generator) -> tuple[NoteSpec, ...]:
    notes: list[NoteSpec] = []
    midi = low + int(rng.integers(4, 16))
    for _ in range(24):
        midi = int(np.clip(midi + rng.integers(-4, 5), low, low + 30))
        if rng.random() < 0.08:
            notes.append(NoteSpec(None, 1.0))
            continue
        beats = float(rng.choice((0.5, 1.0, 2.0), p=(0.5, 0.35, 0.15)))
        kind = str(rng.choice(("detache", "legato", "slide_in", "staccato", "tremolo"),
                              p=(0.45, 0.3, 0.05, 0.15, 0.05)))  # fmt: skip
        notes.append(
            NoteSpec(
                float(midi), beats, articulation=kind,  # type: ignore[arg-type]
                deviation_cents=float(rng.normal(0, 15)),
                scoop_cents=float(rng.choice((0, -40))),
                vibrato_rate_hz=5.8, vibrato_extent_cents=25.0 if beats >= 1 else 0.0,
                second_midi=float(midi + 7) if rng.random() < 0.06 else None,
            )
        )  # fmt: skip
    return tuple(notes)


WAYS = {
    "scale": _scale, "long tones": _long_tones, "fast": _fast,
    "plucked": _plucked, "phrase": _phrase,
}  # fmt: skip


def played(rng: np.random.Generator, way: str, instrument: str) -> Part:
    """Somebody plays once through something of a kind."""
    notes = WAYS[way](LOWEST[instrument], rng)
    spec = PhraseSpec(
        notes=notes,
        tempo=float(rng.uniform(60, 112)),
        instrument=instrument,  # type: ignore[arg-type]
        level_dbfs=float(rng.uniform(-36, -16)),
        pitch_jitter_cents=3.0,
        interval_spread_percent=3.0,
        bow_noise_db=float(rng.uniform(-40, -26)),
        reverb_time_s=float(rng.choice((0.3, 0.8, 1.4))),
        reverb_db=float(rng.uniform(-14, -5)),
        lead_in_s=0.1,
        tail_s=0.3,
        seed=int(rng.integers(1 << 30)),
    )
    phrase = _rendered(spec)
    truth = phrase.truth.notes
    return Part(way, phrase.samples, truth[-1].end_s - truth[0].start_s)


def _rendered(spec: PhraseSpec):
    try:
        return render(spec)
    except ValueError:  # a peak over full scale
        return _rendered(replace(spec, level_dbfs=spec.level_dbfs - 6))


def playing(rng: np.random.Generator, seconds: float) -> Part:
    """Somebody practises one kind of thing for a while, with short rests in between."""
    instrument = str(rng.choice(tuple(LOWEST)))
    way = str(rng.choice(tuple(WAYS)))
    once = played(rng, way, instrument)
    pieces: list[FloatArray] = [once.samples]
    true_s = once.playing_s
    while sum(map(len, pieces)) < seconds * RATE_HZ:
        rest_s = rng.uniform(0.2, 1.8)
        pieces += [np.zeros(round(rest_s * RATE_HZ)), once.samples * rng.uniform(0.5, 1.0)]
        true_s += rest_s + len(once.samples) / RATE_HZ  # rests this short count
    return Part(way, np.concatenate(pieces), true_s)


def practising(seed: int, minutes: float, with_speech: bool = True) -> Iterator[Part]:
    """Give parts of playing, speech and nothing until the time is over.

    The room's noise lies under every part; between two parts nobody does anything for
    at least four seconds, so that no gap is a rest of the playing.
    """
    rng = np.random.default_rng(seed)
    noise_dbfs = rng.uniform(-72, -52)
    done_s = 0.0
    while done_s < minutes * 60:
        kind = rng.choice(("playing", "speech", "nobody"), p=(0.55, 0.25, 0.2))
        seconds = float(rng.uniform(8, 40))
        if kind == "playing":
            part = playing(rng, seconds)
        elif kind == "speech" and with_speech:
            part = speech(rng, seconds)
        else:
            part = nobody(rng, seconds)
        gap = np.zeros(round(rng.uniform(4.0, 6.0) * RATE_HZ))
        samples = np.concatenate([part.samples, gap])
        samples += 10 ** (noise_dbfs / 20) * _pink(len(samples), rng)
        yield replace(part, samples=samples)
        done_s += len(samples) / RATE_HZ


def _pink(count: int, rng: np.random.Generator) -> FloatArray:
    size = 1 << (count - 1).bit_length()
    spectrum = np.fft.rfft(rng.normal(size=size))
    spectrum /= np.sqrt(np.maximum(np.fft.rfftfreq(size, 1 / RATE_HZ), 30.0))
    noise = np.fft.irfft(spectrum)[:count]
    return np.asarray(noise / np.std(noise))
