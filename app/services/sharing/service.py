"""Clips to be shared: looked at first, then written, then remembered."""

import io
import uuid
from collections.abc import Generator, Sequence
from contextlib import closing
from dataclasses import dataclass
from itertools import chain, repeat
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.naming import slug
from app.journal.practice_days import Clock
from app.journal.records import Take
from app.journal.sharing import SharedClip
from app.services.listening import ListeningService
from app.services.plain import plain_failures
from app.services.promising import PromiseService
from app.services.records_there import take_there
from app.services.sharing.choice import SUFFIXES, ShareChoice, ShareForm, checked_choice
from app.services.sharing.parts import NOT_WRITTEN, ClipParts
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)
from app.store.store import Store

if TYPE_CHECKING:
    from app.services.sharing.frames import Picture
    from app.services.sharing.sound import ClipSound

FACES = (
    "Who and what is to be seen or heard in it is for you to judge: look at it before you give"
    " it away."
)


@dataclass(frozen=True, slots=True)
class SharePreview:
    """What a clip will be, before anything is written.

    Attributes
    ----------
    title : tuple of str
        What it says, line by line.
    duration_s : float
        With the title card.
    card_png, picture_png : bytes
        The card, and the picture in the middle of the music; empty for sound alone.
    sound_sentence : str
        What was done to the level.
    left_out : tuple of str
        What the recording's file says of place, device and dates; none of it comes along.
    file_name : str
        Proposed.
    caution : str
    """

    title: tuple[str, ...]
    duration_s: float
    card_png: bytes
    picture_png: bytes
    sound_sentence: str
    left_out: tuple[str, ...]
    file_name: str
    caution: str = FACES


class ShareService:
    """Makes clips; they go where the player says, and never anywhere by themselves."""

    def __init__(
        self, store: Store, clock: Clock, listening: ListeningService, promises: PromiseService
    ) -> None:
        self._store = store
        self._clock = clock
        self._promises = promises
        self._parts = ClipParts(store, listening, promises)

    def preview(self, choice: ShareChoice) -> SharePreview:
        """Make one picture of each kind and level the sound; writes nothing."""
        take, choice = self._checked(choice)
        title, sound = self._parts.title(take, choice), self._parts.sound(take, choice)
        pictures = self._parts.pictures(take, choice, title, sound)
        card_png = picture_png = b""
        if pictures is not None:
            card, moving = pictures
            with closing(moving):
                card_png = _png(card) if choice.card_s else b""
                picture_png = _png(next(moving))
        return SharePreview(
            title=title.lines,
            duration_s=self._card_s(choice) + len(sound.samples) / sound.sample_rate_hz,
            card_png=card_png,
            picture_png=picture_png,
            sound_sentence=sound.sentence,
            left_out=self._parts.left_out(take),
            file_name=self.file_name(choice),
        )

    def file_name(self, choice: ShareChoice) -> str:
        """Propose a name: day, passage, number of the take."""
        take = take_there(self._store, choice.take_id)
        passage = self._store.passages.get(take.passage_id)
        name = slug(passage.name) if passage else "take"
        return f"{take.practice_day}-{name}-{take.number}{SUFFIXES[choice.form]}"

    def make(
        self,
        choice: ShareChoice,
        target: Path,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> SharedClip:
        """Write a clip and remember that it was made.

        The numbers it bears are given away with it: from now on that day keeps them.

        Parameters
        ----------
        choice : ShareChoice
        target : Path
            The file, or a folder to write it in under its proposed name.
        progress, should_stop
            As everywhere.

        Raises
        ------
        PlainFailure
            Where the choice makes no sense, the take cannot be read, the file exists
            or the disk refuses.
        Stopped
            Once `should_stop` says so; nothing is left then, and nothing remembered.
        """
        from audio.clip_film import FilmStopped, write_film  # noqa: PLC0415 - av when needed

        take, choice = self._checked(choice)
        path = target / self.file_name(choice) if target.is_dir() else target
        if path.suffix.lower() != SUFFIXES[choice.form]:
            raise PlainFailure(
                f"This clip's name ends in {SUFFIXES[choice.form]}.",
                f"Name it {path.stem}{SUFFIXES[choice.form]}.",
            )
        title, sound = self._parts.title(take, choice), self._parts.sound(take, choice)
        stop_if(should_stop)
        pictures = self._parts.pictures(take, choice, title, sound)
        with plain_failures(NOT_WRITTEN), stopped_by(FilmStopped):
            if pictures is None:
                write_film(
                    path, sound.samples, sound.sample_rate_hz, None,
                    should_stop=should_stop, on_progress=progress,
                )  # fmt: skip
            else:
                self._write_pictures(
                    path, choice, sound, pictures, progress=progress, should_stop=should_stop
                )
        return self._remember(take, choice, path)

    def make_several(
        self,
        choices: Sequence[ShareChoice],
        folder: Path,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> tuple[SharedClip, ...]:
        """Write several clips, each with the numbers of its own day.

        All are checked before the first is written; stopped or failed in between, those
        that are finished stay.
        """
        if not folder.is_dir():
            raise PlainFailure(f"There is no folder {folder}.", "Choose a folder that is there.")
        for choice in choices:
            self._checked(choice)
        return tuple(
            self.make(
                choice,
                folder,
                part_of(progress, number / len(choices), (number + 1) / len(choices)),
                should_stop,
            )
            for number, choice in enumerate(choices)
        )

    def shared(self) -> tuple[SharedClip, ...]:
        """List what was made to be shared, in the order of time."""
        return self._store.shared_clips.list()

    def _write_pictures(
        self,
        path: Path,
        choice: ShareChoice,
        sound: "ClipSound",
        pictures: "tuple[Picture, Generator[Picture]]",
        *,
        progress: Progress,
        should_stop: ShouldStop,
    ) -> None:
        from app.services.sharing.frames import PICTURES_PER_SECOND  # noqa: PLC0415
        from app.services.sharing.sound import with_silence  # noqa: PLC0415
        from audio.clip_film import write_film  # noqa: PLC0415

        card, moving = pictures
        card_count = round(self._card_s(choice) * PICTURES_PER_SECOND)
        card_s = card_count / PICTURES_PER_SECOND
        write_film(
            path,
            with_silence(sound, card_s),
            sound.sample_rate_hz,
            chain(repeat(card, card_count), moving),
            pictures_per_second=PICTURES_PER_SECOND,
            should_stop=should_stop,
            on_progress=progress,
        )

    def _card_s(self, choice: ShareChoice) -> float:
        """Give how long the card stands: a film has its title over it, sound alone has none."""
        return choice.card_s if choice.form in {ShareForm.CARD, ShareForm.MEASURED} else 0.0

    def _remember(self, take: Take, choice: ShareChoice, path: Path) -> SharedClip:
        numbers = self._parts.numbers(take, choice)
        clip = SharedClip(
            id=uuid.uuid4().hex,
            take_id=take.id,
            practice_day=take.practice_day,
            shared_at=self._clock(),
            start_s=choice.start_s,
            end_s=choice.end_s or take.duration_s,
            form=choice.form.value,
            file_name=path.name,
            numbers=numbers,
        )
        with self._store.transaction():
            self._store.shared_clips.add(clip)
            if choice.promise_id is not None:
                self._promises.share(choice.promise_id, take.practice_day, take.id)
        return clip

    def _checked(self, choice: ShareChoice) -> tuple[Take, ShareChoice]:
        take = take_there(self._store, choice.take_id)
        checked = checked_choice(choice, take)
        self._parts.numbers(take, checked)
        return take, checked


def _png(picture: "Picture") -> bytes:
    from matplotlib.image import imsave  # noqa: PLC0415 - matplotlib, only when needed

    out = io.BytesIO()
    imsave(out, picture, format="png")
    return out.getvalue()
