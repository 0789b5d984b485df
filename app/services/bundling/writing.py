"""Write some days of a journal into one file."""

import uuid
import zipfile
from dataclasses import replace
from datetime import date, datetime
from pathlib import Path, PurePosixPath
from tempfile import TemporaryDirectory

from app.journal.bundle_names import MANIFEST_NAME
from app.journal.bundles import BundleManifest, manifest_text
from app.journal.failures import PlainFailure
from app.journal.records import JournalSettings, Take
from app.journal.sidecar import Card, DayCard, JournalCard, TakeCard, card_text
from app.services.new_files import name_taken
from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, stop_if, stopped_by
from app.store.repair import sha256_of
from app.store.store import Store

_NOT_WRITTEN = "the bundle was not written"
_FILMS = frozenset({".mp4", ".mov", ".m4v", ".mkv", ".webm", ".avi", ".3gp"})


def write_bundle(
    store: Store,
    target: Path,
    days: tuple[date, date],
    now: datetime,
    *,
    with_video: bool,
    whole_record: bool,
    progress: Progress,
    should_stop: ShouldStop,
) -> BundleManifest:
    """Write the days from one to another, both included, into a new file.

    Deleted takes stay behind. Without video a filmed take is represented by its sound,
    sample for sample. Without the whole record the journal's card holds the passages
    and items of those days and what was set for them, and nothing else.

    Raises
    ------
    PlainFailure
        Where there is nothing in these days, the file exists or the disk refuses.
    Stopped
        Once `should_stop` says so; nothing is left then.
    """
    from audio.publishing import partial_name, publish, sync_file  # noqa: PLC0415

    cards = [card for card in _cards(store, days) if not _is_deleted(card)]
    takes = [card for card in cards if isinstance(card, TakeCard)]
    if not takes:
        raise PlainFailure("There is no take in these days.", "Choose other days.")
    manifest = BundleManifest(
        uuid.uuid4().hex, now, *days, len(takes), with_video=with_video, whole_record=whole_record
    )
    partial = partial_name(target)
    with plain_failures(_NOT_WRITTEN):
        if target.exists():
            raise name_taken(target)
        try:
            with zipfile.ZipFile(partial, "w", zipfile.ZIP_DEFLATED) as bundle:
                bundle.writestr(MANIFEST_NAME, manifest_text(manifest))
                for done, card in enumerate(takes):
                    stop_if(should_stop)
                    _add_take(store, bundle, card, with_video, should_stop)
                    progress((done + 1) / len(takes))
                _add_cards(store, bundle, cards, days, whole_record)
            sync_file(partial)
            publish(partial, target)
        except FileExistsError as error:
            raise name_taken(target) from error
        finally:
            partial.unlink(missing_ok=True)
    return manifest


def _cards(store: Store, days: tuple[date, date]) -> tuple[Card, ...]:
    return store.sidecars.cards(first_day=days[0], last_day=days[1])


def _is_deleted(card: Card) -> bool:
    return isinstance(card, TakeCard) and card.take.deleted_at is not None


def _add_take(
    store: Store,
    bundle: zipfile.ZipFile,
    card: TakeCard,
    with_video: bool,
    should_stop: ShouldStop,
) -> None:
    source = store.folders.absolute(card.take.file)
    if not source.is_file():
        raise PlainFailure(
            f"The recording {card.take.file} is missing.",
            "Run 'passagework repair', or leave its day out.",
        )
    if source.suffix.lower() in _FILMS and not with_video:
        with TemporaryDirectory(prefix="passagework-") as folder:
            sound = Path(folder) / "sound.flac"
            card = replace(card, take=_sound_alone(card.take, source, sound, should_stop))
            bundle.write(sound, card.take.file, zipfile.ZIP_STORED)
    else:
        bundle.write(source, card.take.file, zipfile.ZIP_STORED)
    bundle.writestr(_beside(card.take.file), card_text(card))


def _sound_alone(take: Take, source: Path, sound: Path, should_stop: ShouldStop) -> Take:
    from audio.encoding import EncodingStopped  # noqa: PLC0415 - libsndfile when needed
    from audio.marked_copies import write_flac_with_chapters  # noqa: PLC0415

    with stopped_by(EncodingStopped):
        write_flac_with_chapters(source, sound, (), should_stop=should_stop)
    file = str(PurePosixPath(take.file).with_suffix(".flac"))
    return replace(take, file=file, sha256=sha256_of(sound))


def _add_cards(
    store: Store,
    bundle: zipfile.ZipFile,
    cards: list[Card],
    days: tuple[date, date],
    whole_record: bool,
) -> None:
    used: set[str] = {c.passage.id for c in cards if isinstance(c, TakeCard) and c.passage}
    for card in cards:
        if isinstance(card, DayCard):
            folder = f"{card.practice_day.year}/{card.practice_day}"
            bundle.writestr(
                f"{folder}/day.json", card_text(card if whole_record else replace(card, plan=None))
            )
        elif isinstance(card, JournalCard):
            some = card if whole_record else _for_a_teacher(card, used, days)
            bundle.writestr("journal.json", card_text(some))
            _add_scores(store, bundle, some)


def _for_a_teacher(card: JournalCard, used: set[str], days: tuple[date, date]) -> JournalCard:
    return JournalCard(
        written_at=card.written_at,
        passages=tuple(passage for passage in card.passages if passage.id in used),
        settings=JournalSettings(
            day_turn_hour=card.settings.day_turn_hour, categories=card.settings.categories
        ),
        assignments=tuple(
            replace(a, item_id=None)
            for a in card.assignments
            if a.set_on <= days[1] and a.due_on >= days[0]
        ),
    )


def _add_scores(store: Store, bundle: zipfile.ZipFile, card: JournalCard) -> None:
    files = {p.score.file.file for p in card.passages if p.score and p.score.file}
    for file in sorted(files):
        path = store.folders.absolute(file)
        if path.is_file():
            bundle.write(path, file)


def _beside(file: str) -> str:
    return str(PurePosixPath(file).with_suffix(".json"))
