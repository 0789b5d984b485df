"""Lines of notes played by sampled instruments, every note moved by known cents.

From a sound font by fluidsynth, or joined from single recorded notes; see
``sampled_instruments.py`` for where both come from.
"""

import os
import re
import subprocess
import tempfile
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path
from typing import Final

import numpy as np
import soundfile
from midi_writer import MidiNote, write_midi
from scipy import signal

from analysis.units import parse_note_name

RATE_HZ: Final = 44_100
SOUND_FONT: Final = Path(os.environ.get("SOUND_FONT", "/usr/share/sounds/sf2/FluidR3_GM.sf2"))
SAMPLES: Final = Path(
    os.environ.get("SAMPLES", Path(tempfile.gettempdir()) / "passagework-samples")
)
TEMPO_RATIO: Final = 1.17
FURTHEST_CENTS: Final = 15
RUBATO: Final = (0.05, 0.15)
LENGTHS_MS: Final = (90, 130, 180, 280, 400, 600, 900, 1400)
STEPS: Final = (-5, -4, -3, -2, -2, -1, -1, 1, 1, 2, 2, 3, 4, 5)


@dataclass(frozen=True, slots=True)
class Played:
    """One note in both takes: onsets, sounding lengths, how far it is moved, how hard it is played.

    ``velocity`` is that of MIDI, 1 to 127.
    """

    midi: int
    start_s: tuple[float, float]
    length_s: tuple[float, float]
    cents: tuple[float, float]
    velocity: tuple[int, int] = (90, 90)


def passage(seed: int, low: int, high: int, gap_ms: int = 20, count: int = 40) -> list[Played]:
    """Make up a line of notes from 90 ms to 1.4 s, each moved by whole cents in each take."""
    rng = np.random.default_rng([seed, 9])
    midi = int(rng.integers(low + 4, high - 4))
    at_ms, notes = np.array([500.0, 700.0]), []
    for _ in range(count):
        step = int(rng.choice(STEPS))
        midi = midi + step if low <= midi + step <= high else midi - step
        length = float(rng.choice(LENGTHS_MS) * rng.uniform(0.9, 1.1))
        both = np.rint([length, length * TEMPO_RATIO])
        cents = rng.integers(-FURTHEST_CENTS, FURTHEST_CENTS + 1, 2)
        notes.append(
            Played(
                midi,
                tuple(at_ms / 1000.0),
                tuple((both - gap_ms) / 1000.0),
                (float(cents[0]), float(cents[1])),
            )
        )
        at_ms = at_ms + both
    return notes


def passage_with_rubato(
    seed: int, low: int, high: int, tempo_ratio: float, *, repeated: bool, count: int = 40
) -> list[Played]:
    """Make up a line played twice: another tempo, both with rubato, other levels and tuning.

    Lengths from 120 ms to 1.9 s in the first take; the second lasts ``1 / tempo_ratio``
    times as long. With ``repeated``, every seventh note or so repeats the one before it.
    """
    rng = np.random.default_rng([seed, 19])
    midi = int(rng.integers(low + 4, high - 4))
    steps = (*STEPS, 0, 0) if repeated else STEPS
    beats = rng.choice([0.25, 0.5, 0.5, 1.0, 1.0, 2.0], count)
    place = np.cumsum(beats)
    points = np.arange(0.0, place[-1] + 8.0, 4.0)
    bend = np.array(
        [np.interp(place, points, much * rng.standard_normal(points.size)) for much in RUBATO]
    )
    at_ms, notes = np.array([500.0, 700.0]), []
    for i in range(count):
        step = int(rng.choice(steps))
        midi = midi + step if low <= midi + step <= high else midi - step
        beat_ms = np.array([700.0, 700.0 / tempo_ratio]) * np.exp(bend[:, i])
        length = np.rint(np.maximum(beats[i] * beat_ms, 90.0))
        gap = rng.integers(5, 40, 2)
        cents = rng.integers(-FURTHEST_CENTS, FURTHEST_CENTS + 1, 2)
        velocity = rng.integers(60, 115, 2)
        notes.append(
            Played(
                midi,
                tuple(at_ms / 1000.0),
                tuple((length - gap) / 1000.0),
                (float(cents[0]), float(cents[1])),
                (int(velocity[0]), int(velocity[1])),
            )
        )
        at_ms = at_ms + length
    return notes


def rendered_by_fluidsynth(
    notes: list[Played], take: int, program: int, cents_of_range: float
) -> np.ndarray:
    """Render one take of a passage, (n,)."""
    line = [
        MidiNote(
            round(note.start_s[take] * 1000),
            round((note.start_s[take] + note.length_s[take]) * 1000),
            note.midi,
            8192 + round((note.cents[take] + 0.5) / cents_of_range * 8192),
            note.velocity[take],
        )
        for note in notes
    ]
    with tempfile.TemporaryDirectory() as name:
        midi, wav = Path(name, "line.mid"), Path(name, "line.wav")
        write_midi(midi, program, line)
        command = ["fluidsynth", "-ni", "-C", "0", "-R", "0", "-r", str(RATE_HZ), "-g", "0.8"]
        command += ["-O", "s24", "-F", str(wav), str(SOUND_FONT), str(midi)]
        subprocess.run(command, check=True, capture_output=True, timeout=300)
        samples, _ = soundfile.read(wav)
    return np.asarray(samples.mean(axis=1))


def bend_scale_cents() -> float:
    """Cents of a full bend as this fluidsynth reads it, seen by praat on a held trumpet note."""
    import parselmouth

    found = []
    for cents in (-90.0, 90.0):
        note = Played(67, (0.5, 0.5), (2.5, 2.5), (cents, cents))
        samples = rendered_by_fluidsynth([note], 0, 56, 200.0)
        pitch = parselmouth.Sound(samples, RATE_HZ).to_pitch_ac(
            0.005, pitch_floor=200.0, pitch_ceiling=800.0
        )
        f0 = pitch.selected_array["frequency"]
        found.append(np.median(f0[(pitch.xs() > 1.0) & (pitch.xs() < 2.8) & (f0 > 0)]))
    ratio = 1200.0 * np.log2(found[1] / found[0]) / 180.0
    return min((198.4375, 200.0), key=lambda scale: abs(scale / 200.0 - ratio))


@dataclass(frozen=True, slots=True)
class SampledNotes:
    """The single notes of one package: note number to samples at ``RATE_HZ``."""

    by_midi: dict[int, np.ndarray]

    @staticmethod
    def read(folder: Path, left_out: set[str]) -> "SampledNotes":
        """Read what a package's folder holds; silence before the attack is cut."""
        notes = {}
        for path in sorted(folder.glob("*.wav")):
            if not re.fullmatch(r"[A-G]s?\d", path.stem) or path.stem in left_out:
                continue
            samples, rate = soundfile.read(path)
            samples = samples.mean(axis=1) if samples.ndim == 2 else samples
            assert rate == RATE_HZ, path
            loud = np.flatnonzero(np.abs(samples) > 0.02 * np.abs(samples).max())
            notes[parse_note_name(path.stem.replace("s", "#"))] = samples[loud[0] :]
        return SampledNotes(notes)

    def play(self, notes: list[Played], take: int) -> tuple[np.ndarray, list[float]]:
        """Join re-pitched notes to one take; also the cents each was truly moved by."""
        end_s = notes[-1].start_s[take] + notes[-1].length_s[take] + 0.5
        out = np.zeros(int(end_s * RATE_HZ))
        moved = []
        for note in notes:
            nearest = min(self.by_midi, key=lambda midi, note=note: abs(midi - note.midi))
            cents = 100.0 * (note.midi - nearest) + note.cents[take]
            ratio = Fraction(2.0 ** (-cents / 1200.0)).limit_denominator(400)
            moved.append(-1200.0 * np.log2(float(ratio)) - 100.0 * (note.midi - nearest))
            count = int(note.length_s[take] * RATE_HZ)
            source = self.by_midi[nearest][: int(count / ratio) + 4000]
            tone = signal.resample_poly(source, ratio.numerator, ratio.denominator)[:count]
            fade = np.minimum(1.0, (tone.size - np.arange(tone.size)) / (0.02 * RATE_HZ))
            first = int(note.start_s[take] * RATE_HZ)
            out[first : first + tone.size] += 0.5 * tone * fade
        return out + 1e-4 * np.random.default_rng(take).standard_normal(out.size), moved
