"""Damaged score files: a plain sentence, within seconds, and nothing is written.

A few hundred seeded mutations of small valid files: bytes flipped, cut, doubled and
shuffled, numbers blown up, tags swapped.
"""

import random
import re
import signal
import sys
import tempfile
import threading
from contextlib import contextmanager
from pathlib import Path

import pytest

from app.journal.failures import PlainFailure
from app.services import score_worker
from app.services.score_reading import read_parts
from app.services.score_worker import read_apart
from app.services.stopping import Stopped
from tests.services.writing_scores import (
    BACKWARD,
    FORWARD,
    attributes,
    compressed,
    ending,
    grace,
    line_of,
    measure,
    midi_file,
    partwise,
    pitched,
    transposed,
    words,
)

LONGEST_S = 10.0
TEXT = partwise(
    [
        measure(1, attributes(3, 4, 2, transposed(-1, -2)) + line_of("D5", "F#5", "A5"), FORWARD),
        measure(2, line_of("B5", "A5") + grace("G5") + pitched("G5", 1, tie="start")),
        measure(3, pitched("G5", 1, tie="stop") + line_of("F#5", "E5"), ending("1", "start"),
                ending("1", "stop") + BACKWARD),
        measure(4, line_of("F#5", "E5", "D5"), ending("2", "start"), ending("2", "stop")),
        measure(5, line_of("C#5", "D5", "E5") + words("D.C. al Fine", 'dacapo="yes"')),
    ],
    [measure(1, attributes(3) + line_of("D3", "A3", "D3"))]
    + [measure(k, line_of("D3", "A3", "D3")) for k in range(2, 6)],
)  # fmt: skip
MIDI = midi_file([(62, 1), (64, 0.5), (66, 0.5), (67, 2), (69, 1)], "D")


@contextmanager
def within(seconds: float):
    """Fail instead of hanging, where the system can."""
    can = hasattr(signal, "setitimer") and threading.current_thread() is threading.main_thread()
    if can:

        def told(_signal, _frame):
            pytest.fail(f"took longer than {seconds:g} s")

        before = signal.signal(signal.SIGALRM, told)
        signal.setitimer(signal.ITIMER_REAL, seconds)
    try:
        yield
    finally:
        if can:
            signal.setitimer(signal.ITIMER_REAL, 0)
            signal.signal(signal.SIGALRM, before)


def mutated_bytes(data: bytes, rng: random.Random) -> bytes:
    found = bytearray(data)
    for _ in range(rng.randint(1, 6)):
        kind, at = rng.randrange(4), rng.randrange(len(found))
        if kind == 0:
            found[at] = rng.randrange(256)
        elif kind == 1:
            del found[at : at + rng.randint(1, 40)]
        elif kind == 2:
            found[at:at] = found[at : at + rng.randint(1, 40)]
        else:
            found[at:at] = bytes(rng.randrange(256) for _ in range(rng.randint(1, 12)))
        if not found:
            return b"?"
    return bytes(found)


def mutated_text(text: str, rng: random.Random) -> bytes:
    kind = rng.randrange(4)
    if kind == 0:
        numbers = list(re.finditer(r">(-?\d+)<", text))
        chosen = rng.choice(numbers)
        odd = rng.choice(["-1", "0", "999999999999", "1e308", "nan", "x", "", "0.333", "-7"])
        return (text[: chosen.start(1)] + odd + text[chosen.end(1) :]).encode()
    if kind == 1:
        tags = list(re.finditer(r"</?([a-z-]+)", text))
        one, other = rng.choice(tags), rng.choice(tags)
        return (text[: one.start(1)] + other.group(1) + text[one.end(1) :]).encode()
    if kind == 2:
        elements = list(re.finditer(r"<(note|measure|barline|attributes)\b.*?</\1>", text))
        chosen, place = rng.choice(elements), rng.choice(elements)
        return (text[: place.start()] + chosen.group(0) * rng.randint(1, 3) + text[place.start() :]
                ).encode()  # fmt: skip
    return mutated_bytes(text.encode(), rng)


@pytest.mark.parametrize("kind", ["musicxml", "mxl", "mid"])
def test_a_damaged_score_is_read_or_refused_in_words_and_writes_nothing(
    kind, tmp_path, monkeypatch
):
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    monkeypatch.setattr(tempfile, "tempdir", str(elsewhere))
    monkeypatch.setenv("HOME", str(elsewhere))
    monkeypatch.chdir(elsewhere)
    rng = random.Random(f"damage {kind}")
    path = tmp_path / f"damaged.{kind}"
    read, sentences = 0, []
    for _ in range(120):
        if kind == "musicxml":
            data = mutated_text(TEXT, rng)
        elif kind == "mxl":
            whole = compressed(mutated_text(TEXT, rng).decode("utf-8", "replace"))
            data = whole if rng.random() < 0.3 else mutated_bytes(whole, rng)
        else:
            data = mutated_bytes(MIDI, rng)
        path.write_bytes(data)
        try:
            with within(LONGEST_S):
                parts = read_parts(path)
        except PlainFailure as told:
            sentences += [told.sentence, told.next_step]
            continue
        read += 1
        assert all(note.onset_beats >= 0 for part in parts for note in part.notes)
    assert read
    assert sentences
    assert all(sentence.endswith(".") for sentence in sentences)
    assert list(elsewhere.iterdir()) == []
    assert sorted(entry.name for entry in tmp_path.iterdir()) == [path.name, "elsewhere"]


def test_reading_in_a_process_of_its_own_gives_the_same(tmp_path):
    path = tmp_path / "score.musicxml"
    path.write_text(TEXT, encoding="utf-8")
    assert read_apart(path) == read_parts(path)
    broken = tmp_path / "broken.musicxml"
    broken.write_text(TEXT[:400], encoding="utf-8")
    with pytest.raises(PlainFailure, match="damaged"):
        read_apart(broken)


def test_reading_that_takes_too_long_is_ended_and_said(tmp_path, monkeypatch):
    path = tmp_path / "score.musicxml"
    path.write_text(TEXT, encoding="utf-8")
    monkeypatch.setattr(score_worker, "_STARTING_S", 0.0)
    monkeypatch.setattr(score_worker, "_SHORTEST_S", 0.0)
    monkeypatch.setattr(score_worker, "_SECONDS_A_MEGABYTE", 0.0)
    with pytest.raises(PlainFailure, match="takes too long"):
        read_apart(path)


def test_reading_stops_when_it_is_no_longer_wanted(tmp_path):
    path = tmp_path / "score.musicxml"
    path.write_text(TEXT, encoding="utf-8")
    with pytest.raises(Stopped):
        read_apart(path, lambda: True)


def test_nothing_of_the_reader_is_loaded_before_a_score_is_read():
    import subprocess

    looked = "import sys, app.services.scores, app.cli.score; print('music21' in sys.modules)"
    found = subprocess.run(
        [sys.executable, "-c", looked], capture_output=True, text=True, check=True, cwd=Path.cwd()
    )
    assert found.stdout.strip() == "False"
