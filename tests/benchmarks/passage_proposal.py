"""Print which passage unfiled takes are taken for: 20 passages, some alike, and unknown ones.

    python tests/benchmarks/passage_proposal.py [FIRST_SEED]

Eight of the passages are variants of others: every fourth note changed, another rhythm,
a tone higher, or the same bars in another order. Every passage has one reference take;
takes are played on other days in other tempos, rooms and tunings, whole or broken off.
"""

import sys
from dataclasses import replace
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))
sys.path.insert(0, str(Path(__file__).parent))

import numpy as np
from accuracy_alignment import notes_of, play

from analysis.likeness import propose
from analysis.outline import Outline, outline
from sample_audio.generator import NoteSpec

COUNT, ORIGINALS, UNKNOWN, LENGTH = 20, 12, 12, 24
FIRST = int(sys.argv[1]) if len(sys.argv) > 1 else 0
ROOMS = ({}, {"reverb_time_s": 0.6, "snr_db": 25.0}, {"reference_a_hz": 431.0})


def variant(notes: tuple[NoteSpec, ...], kind: int, seed: int) -> tuple[NoteSpec, ...]:
    rng = np.random.default_rng([seed, 21])
    if kind == 0:
        moved = rng.choice(len(notes), len(notes) // 4, replace=False)
        steps = rng.choice([-4, -2, 2, 3, 5], len(notes))
        return tuple(
            replace(note, midi=note.midi + float(steps[i])) if i in moved else note
            for i, note in enumerate(notes)
        )
    if kind == 1:
        lengths = rng.permutation([note.beats for note in notes])
        return tuple(replace(n, beats=float(b)) for n, b in zip(notes, lengths, strict=True))
    if kind == 2:
        return tuple(replace(note, midi=note.midi + 2.0) for note in notes)
    third = len(notes) // 3
    return notes[third : 2 * third] + notes[:third] + notes[2 * third :]


def passages() -> list[tuple[NoteSpec, ...]]:
    originals = [
        notes_of(FIRST + 400 + i, "violin", repeated=i % 2 == 0)[:LENGTH] for i in range(ORIGINALS)
    ]
    alike = [variant(originals[i % 6], i % 4, i) for i in range(COUNT - ORIGINALS)]
    return originals + alike


def taken(notes: tuple[NoteSpec, ...], seed: int) -> Outline:
    rng = np.random.default_rng([seed, 22])
    ratio = float(rng.uniform(0.6, 1.6))
    room = dict(ROOMS[seed % len(ROOMS)])
    broken_off = seed % 4 == 0
    part = notes[: round(0.6 * len(notes))] if broken_off else notes
    phrase = play(part, seed, ratio, 0.12, instrument="violin", **room)
    return outline(phrase.samples, phrase.sample_rate_hz)


def main() -> None:
    written = passages()
    references = {i: [taken(notes, FIRST + 5001 + 4 * i)] for i, notes in enumerate(written)}
    table = np.zeros((COUNT + 1, COUNT + 1), dtype=np.int64)
    confident = []
    for i, notes in enumerate(written):
        for again in range(3):
            found = propose(taken(notes, FIRST + 8000 + 3 * i + again), references)
            answer = COUNT if found.key is None else found.key
            table[i, answer] += 1
            confident.append((found.confidence, answer == i))
    for i in range(UNKNOWN):
        other = notes_of(FIRST + 1200 + i, "violin", repeated=True)[:LENGTH]
        found = propose(taken(other, FIRST + 9000 + i), references)
        answer = COUNT if found.key is None else found.key
        table[COUNT, answer] += 1
        confident.append((found.confidence, answer == COUNT))
    print("rows: what was played; columns: what was proposed; last: none of them")
    print("      " + " ".join(f"{i:2d}" for i in range(COUNT)) + "  none")
    for i, row in enumerate(table):
        name = f"{i:4d}" if i < COUNT else "none"
        print(f"{name}  " + " ".join(f"{n or '.':>2}" for n in row[:-1]) + f"  {row[-1] or '.':>4}")
    right = int(np.trace(table))
    wrong = int(table[:, :-1].sum() - np.trace(table[:COUNT, :COUNT]))
    unsaid = int(table[:COUNT, -1].sum())
    print(f"right {right} of {table.sum()}; a wrong passage {wrong}; left open {unsaid}")
    value = np.array([c for c, _ in confident])
    good = np.array([r for _, r in confident])
    for low, high in ((0.0, 0.7), (0.7, 0.9), (0.9, 0.97), (0.97, 1.01)):
        there = (value >= low) & (value < high)
        if there.any():
            print(
                f"confidence {low:.2f} to {min(high, 1.0):.2f}: {there.sum():3d} answers,"
                f" {100 * good[there].mean():5.1f} % right (mean {100 * value[there].mean():.1f} %)"
            )


if __name__ == "__main__":
    main()
