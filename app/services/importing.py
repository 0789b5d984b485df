"""Filing recordings that were made elsewhere."""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta, tzinfo
from pathlib import Path

from app.journal.failures import PlainFailure
from app.journal.kinds import Origin
from app.journal.practice_days import Clock, practice_day
from app.journal.records import JournalSettings, PlayingSettings, Take
from app.services.attempts import Attempts
from app.services.clip_days import (
    ENTERED,
    day_question,
    days_in_doubt,
    recorded_at_and_source,
    same_time_on,
)
from app.services.clip_files import copied, decoded_whole, part_of_clip
from app.services.clip_folders import files_of
from app.services.day_now import check_has_come, day_of
from app.services.passages import passage_title
from app.services.plain import plain_failures
from app.services.rows import NO_PASSAGE, Rows
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)
from app.services.take_filing import NewTake, PlacedFile, TakeFiler, safe_suffix
from app.services.views import ImportProposal, TakeRow
from app.services.wording import day_text, position_text
from app.store.store import Store

_NAME_LENGTH = 32


class SomeNotFiled(PlainFailure):
    """Some files could not be filed; the others were.

    Attributes
    ----------
    rows : tuple of TakeRow
        What was filed.
    failures : tuple of (Path, PlainFailure)
        What was not, and why.
    """

    def __init__(
        self, rows: tuple[TakeRow, ...], failures: tuple[tuple[Path, PlainFailure], ...]
    ) -> None:
        sentences = " ".join(failure.sentence for _, failure in failures)
        super().__init__(sentences, failures[0][1].next_step)
        self.rows = rows
        self.failures = failures


@dataclass(frozen=True, slots=True)
class _Wish:
    """Where the player wants the files, and the rules that hold."""

    passage_id: str | None
    day: date | None
    settings: JournalSettings


class ImportingService:
    """Looks at files, proposes where they belong, and files them.

    Parameters
    ----------
    store, clock, filer
    zone : tzinfo
        Where a clip was played that does not say so itself.
    """

    def __init__(
        self, store: Store, clock: Clock, filer: TakeFiler, zone: tzinfo, attempts: Attempts
    ) -> None:
        self._store = store
        self._attempts = attempts
        self._clock = clock
        self._filer = filer
        self._zone = zone
        self._rows = Rows(store)

    def propose(
        self,
        paths: Sequence[Path],
        passage_id: str | None = None,
        day: date | None = None,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[ImportProposal, ...]:
        """Say for each file where it would be filed, or what is wrong with it.

        Every file is decoded from end to end, so that a damaged one is found before
        anything is filed.

        Parameters
        ----------
        paths : sequence of Path
            Files, and folders whose clips are meant.
        passage_id : str or None
        day : date, optional
            The practice day where the player says so; else from the file itself, by
            the day-turn rule.
        """
        wish = _Wish(passage_id, day, self._store.settings.get())
        found: list[ImportProposal] = []
        seen: dict[str, Path] = {}
        paths = files_of(paths)
        for number, path in enumerate(paths):
            step = part_of(progress, number / len(paths), (number + 1) / len(paths))
            proposal = self._proposal(path, wish, (step, should_stop), seen)
            found.append(proposal)
        progress(1.0)
        return tuple(found)

    def file(
        self,
        proposals: Sequence[ImportProposal],
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[TakeRow, ...]:
        """File the proposals that carry neither a failure nor a duplicate.

        Each file is copied byte for byte into the journal; the player's own file is
        only read.

        Raises
        ------
        SomeNotFiled
            Where some could not be filed; the others are.
        Stopped
            Once `should_stop` says so; the file being copied is not filed.
        """
        wanted = [p for p in proposals if not p.failure and not p.duplicate_of]
        rows: list[TakeRow] = []
        failures: list[tuple[Path, PlainFailure]] = []
        for number, proposal in enumerate(wanted):
            stop_if(should_stop)
            step = part_of(progress, number / len(wanted), (number + 1) / len(wanted))
            try:
                rows.append(self._file_one(proposal, step, should_stop))
            except PlainFailure as failure:
                failures.append((proposal.path, failure))
        progress(1.0)
        if failures:
            raise SomeNotFiled(tuple(rows), tuple(failures))
        return tuple(rows)

    def is_kept_whole(self, digest: str) -> bool:
        """Tell whether a clip of this content is kept already, with a part of it as a take."""
        return any(self._store.folders.originals.glob(f"{digest[:_NAME_LENGTH]}.*"))

    def _proposal(
        self,
        path: Path,
        wish: _Wish,
        watch: tuple[Progress, ShouldStop],
        seen: dict[str, Path],
    ) -> ImportProposal:
        from audio.importing import CopyStopped, probe, sha256_of  # noqa: PLC0415

        empty = self._empty_proposal(path, wish)
        try:
            with plain_failures("the file was not read"), stopped_by(CopyStopped):
                info = probe(path)
                checked = decoded_whole(path, info, *watch)
                digest = sha256_of(path, should_stop=watch[1])
        except PlainFailure as failure:
            return replace(empty, failure=f"{failure.sentence} {failure.next_step}")
        recorded_at, source = recorded_at_and_source(info, self._zone, self._clock())
        turn = wish.settings.day_turn_hour
        days = () if wish.day is not None else days_in_doubt(info, recorded_at, turn)
        if wish.day is not None and practice_day(recorded_at, turn_hour=turn) != wish.day:
            recorded_at, source = same_time_on(wish.day, recorded_at, turn), ENTERED
        duplicate = self._duplicate_of(digest) or _twin_words(seen.get(digest))
        seen.setdefault(digest, path)
        return replace(
            empty,
            practice_day=practice_day(recorded_at, turn_hour=turn),
            recorded_at=recorded_at,
            recorded_at_source=source,
            duration_s=checked.duration_s,
            has_video=info.has_video,
            duplicate_of=duplicate,
            notice=checked.notice,
            question=day_question(recorded_at, days) if days else "",
            days=days,
        )

    def _empty_proposal(self, path: Path, wish: _Wish) -> ImportProposal:
        now = self._clock()
        day = wish.day or practice_day(now, turn_hour=wish.settings.day_turn_hour)
        return ImportProposal(path, day, now, "", 0.0, wish.passage_id, False, "", "")

    def _duplicate_of(self, digest: str) -> str:
        if self.is_kept_whole(digest):
            return "a take is a part of this clip"
        found = [take for take in self._store.takes.by_sha256(digest) if take.deleted_at is None]
        if not found:
            return ""
        take = found[0]
        passage = self._store.passages.get(take.passage_id)
        name = passage_title(passage) if passage else NO_PASSAGE
        return f"take {take.number} of {name}, {day_text(take.practice_day)}"

    def _file_one(
        self, proposal: ImportProposal, progress: Progress, should_stop: ShouldStop
    ) -> TakeRow:
        if proposal.question:
            raise PlainFailure(proposal.question, "Say on which day, then file it.")
        of_the_clip = day_of(self._store, proposal.recorded_at)
        if proposal.recorded_at_source == ENTERED or proposal.practice_day != of_the_clip:
            check_has_come(self._store, self._clock, proposal.practice_day)
        new = NewTake(
            practice_day=proposal.practice_day,
            recorded_at=proposal.recorded_at,
            passage_id=proposal.passage_id,
            origin=Origin.IMPORTED,
            settings=self._settings_for(proposal.passage_id),
            suffix=safe_suffix(proposal.path),
            original_name=proposal.path.name,
            recorded_at_source=proposal.recorded_at_source,
            ended=proposal.notice,
            no_retake=self._attempts.is_the_one(proposal.passage_id, proposal.practice_day),
        )

        if proposal.is_trimmed:
            return self._file_part(proposal, new, (progress, should_stop))

        def place(path: Path, _tags: dict[str, str]) -> PlacedFile:
            return copied(proposal, path, progress, should_stop)

        with plain_failures(f"{proposal.path.name} was not filed"):
            take: Take = self._filer.file(new, place)
        return self._rows.of_take(take)

    def _file_part(
        self, proposal: ImportProposal, new: NewTake, watch: tuple[Progress, ShouldStop]
    ) -> TakeRow:
        """File a part of a clip; the whole of it is kept among the originals first."""
        from audio.importing import CopyStopped, copy_original, sha256_of  # noqa: PLC0415
        from audio.trimming import PART_OF  # noqa: PLC0415

        progress, should_stop = watch
        end_s = proposal.duration_s if proposal.to_s is None else proposal.to_s
        with plain_failures(f"{proposal.path.name} was not filed"), stopped_by(CopyStopped):
            digest = sha256_of(proposal.path, should_stop=should_stop)
            kept = self._store.folders.originals / (digest[:_NAME_LENGTH] + new.suffix)
            kept.parent.mkdir(parents=True, exist_ok=True)
            copy_original(proposal.path, kept, should_stop=should_stop, on_progress=progress)
        part = f"{position_text(proposal.from_s)} to {position_text(end_s)}"
        relative = self._store.folders.relative(kept)
        words = f"The part from {part} of {proposal.path.name}, which is kept whole as {relative}."
        trimmed = replace(
            new,
            recorded_at=new.recorded_at + timedelta(seconds=proposal.from_s),
            suffix=".flac",
            ended=" ".join(part for part in (new.ended, words) if part),
        )

        def place(path: Path, tags: dict[str, str]) -> PlacedFile:
            return part_of_clip(proposal, path, tags | {PART_OF: kept.name}, end_s, should_stop)

        try:
            with plain_failures(f"{proposal.path.name} was not filed"):
                take = self._filer.file(trimmed, place)
        except BaseException:
            kept.unlink(missing_ok=True)
            raise
        return self._rows.of_take(take)

    def _settings_for(self, passage_id: str | None) -> PlayingSettings:
        passage = self._store.passages.get(passage_id)
        known = passage.settings if passage else self._store.settings.get().default_settings
        # What made the clip may have set its level by itself; the player can say.
        return replace(known, automatic_gain="unknown")


def _twin_words(path: Path | None) -> str:
    return f"{path.name}, which holds the same sound" if path is not None else ""
