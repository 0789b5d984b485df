"""The scores of a journal: copied beside the passages, read once, given bar by bar."""

import hashlib
import json
import os
from contextlib import suppress
from pathlib import Path
from typing import Final

from app.journal.codec import encoded, readable
from app.journal.failures import PlainFailure
from app.journal.naming import slug
from app.journal.records import Passage, Take
from app.journal.scales import scale_score, scale_title
from app.journal.scores import PassageScore, Score, ScoreFile, spans_text, within_bars
from app.services.plain import failure_from
from app.services.score_worker import read_apart
from app.services.stopping import ShouldStop, never_stop
from app.store.folders import open_new, sync_folder, write_atomically
from app.store.repair import sha256_of
from app.store.store import Store

READING: Final = "reading-1"
"""Version of what is read from a score file; a cached reading of another one is passed over."""


class ScoreShelf:
    """Gives the scores of passages and takes; what was read stays in the cache folder."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._known: dict[str, tuple[Score, ...]] = {}

    def of_passage(self, passage: Passage, should_stop: ShouldStop = never_stop) -> Score | None:
        """Give the score of a passage, as far as its bars are chosen; long the first time.

        Raises
        ------
        PlainFailure
            Where the score's file is gone or cannot be read any more.
        """
        chosen = passage.score
        if chosen is None:
            return None
        if chosen.scale is not None:
            return scale_score(chosen.scale)
        if chosen.file is None:
            return None
        parts = self._parts_of(chosen.file, should_stop)
        if not 0 <= chosen.file.part < len(parts):
            raise PlainFailure(
                f"The score has no part number {chosen.file.part + 1}.",
                "Put the score there again.",
            )
        spans = (chosen.file.bars,) if chosen.file.bars else ()
        return within_bars(parts[chosen.file.part], spans)

    def of_take(self, take: Take, should_stop: ShouldStop = never_stop) -> Score | None:
        """Give what is written for a take: of its passage the bars that it holds."""
        passage = self._store.passages.get(take.passage_id)
        if passage is None:
            return None
        score = self.of_passage(passage, should_stop)
        return within_bars(score, take.parts) if score is not None else None

    def parts_of_path(
        self, path: Path, should_stop: ShouldStop = never_stop
    ) -> tuple[str, tuple[Score, ...]]:
        """Read the parts of any score file; gives the hash of its bytes too."""
        sha256 = sha256_of(path) if path.is_file() else ""
        parts = self._known.get(sha256) or read_apart(path, should_stop)
        self._known[sha256] = parts
        return sha256, parts

    def copy_in(self, path: Path, sha256: str) -> str:
        """Copy a score into the journal, once; gives its name relative to the journal."""
        folder = self._store.folders.scores
        suffix = path.suffix.lower()
        name = f"{sha256[:12]}-{slug(path.stem)}{suffix}"
        target = folder / name
        try:
            folder.mkdir(parents=True, exist_ok=True)
            there = next(iter(sorted(folder.glob(f"{sha256[:12]}-*"))), None)
            if there is not None and sha256_of(there) == sha256:
                return self._store.folders.relative(there)
            _copy(path, target, sha256)
        except OSError as problem:
            raise failure_from(problem, "the score was not copied") from problem
        self._remember(sha256, self._known.get(sha256, ()))
        return self._store.folders.relative(target)

    def _parts_of(self, kept: ScoreFile, should_stop: ShouldStop) -> tuple[Score, ...]:
        known = self._known.get(kept.sha256) or self._remembered(kept.sha256)
        if not known:
            path = self._place_of(kept)
            known = read_apart(path, should_stop)
            self._remember(kept.sha256, known)
        self._known[kept.sha256] = known
        return known

    def _place_of(self, kept: ScoreFile) -> Path:
        gone = PlainFailure(
            f"The score {kept.original_name or kept.file} is not in the journal any more.",
            "Put the score beside the passage again.",
        )
        try:
            path = self._store.folders.absolute(kept.file)
        except ValueError as problem:  # a sidecar written by hand may lead anywhere
            raise gone from problem
        if not path.is_file():
            raise gone
        return path

    def _cache_file(self, sha256: str) -> Path:
        return self._store.folders.cache / "scores" / f"{sha256[:32]}.json"

    def _remembered(self, sha256: str) -> tuple[Score, ...]:
        try:
            data = json.loads(self._cache_file(sha256).read_text(encoding="utf-8"))
        except (OSError, ValueError):
            return ()
        if not isinstance(data, dict) or data.get("reading") != READING:
            return ()
        return tuple(readable(Score, data.get("parts")))

    def _remember(self, sha256: str, parts: tuple[Score, ...]) -> None:
        if self._store.read_only or not parts:
            return
        text = json.dumps({"reading": READING, "parts": [encoded(part) for part in parts]})
        with suppress(OSError):  # a cache can do without: the file is read again next time
            write_atomically(self._cache_file(sha256), text, sync=False)


def held_against(store: Store, take: Take) -> str:
    """Name what a take is held against: score, part and bars; empty without a score.

    A measurement that was held against anything else is stale.
    """
    passage = store.passages.get(take.passage_id)
    return _named(passage.score, spans_text(take.parts)) if passage else ""


def _named(score: PassageScore | None, parts: str) -> str:
    if score is None or (score.file is None and score.scale is None):
        return ""
    if score.scale is not None:
        given = " ".join(f"{key}={value}" for key, value in encoded(score.scale).items())
        return f"{scale_title(score.scale)} ({given}) {parts}".strip()
    file = score.file
    if file is None:
        return ""
    bars = spans_text((file.bars,)) if file.bars else "all"
    return f"{file.sha256[:16]} part {file.part + 1} bars {bars} {parts}".strip()


def _copy(source: Path, target: Path, sha256: str) -> None:
    """Copy to a new file so that a crash leaves it whole or not at all."""
    data = source.read_bytes()
    if hashlib.sha256(data).hexdigest() != sha256:
        raise PlainFailure(f"{source.name} was changed while it was read.", "Try again.")
    partial = target.with_name(f".{target.name}.part")
    partial.unlink(missing_ok=True)
    try:
        with open_new(partial) as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
        partial.replace(target)
    except BaseException:
        with suppress(OSError):
            partial.unlink(missing_ok=True)
        raise
    sync_folder(target.parent)
