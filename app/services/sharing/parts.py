"""The parts of a clip: what it says, its sound, its pictures, and what stays behind."""

from collections.abc import Generator
from contextlib import closing
from itertools import repeat
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.records import Take
from app.services.listening import ListeningService
from app.services.passages import passage_title
from app.services.plain import plain_failures
from app.services.promising import PromiseService
from app.services.sharing.choice import ShareChoice, ShareForm
from app.services.wording import day_text
from app.store.store import Store

if TYPE_CHECKING:
    from app.services.sharing.frames import Picture, TitleLines
    from app.services.sharing.sound import ClipSound

NOT_WRITTEN = "the clip was not written"
_TITLE_OVER_FILM_S = 4.0


class ClipParts:
    """Makes the parts of clips; writes nothing."""

    def __init__(self, store: Store, listening: ListeningService, promises: PromiseService) -> None:
        self._store = store
        self._listening = listening
        self._promises = promises

    def title(self, take: Take, choice: ShareChoice) -> "TitleLines":
        """Give the lines of the title."""
        from app.services.sharing.frames import TitleLines  # noqa: PLC0415

        passage = self._store.passages.get(take.passage_id)
        return TitleLines(
            passage=passage_title(passage) if passage else "",
            day=day_text(take.practice_day),
            numbers=self.numbers(take, choice),
            says=choice.says,
        )

    def numbers(self, take: Take, choice: ShareChoice) -> str:
        """Give the promise's numbers of the day as printed; empty where none are wanted."""
        if choice.promise_id is None:
            return ""
        for numbers in self._promises.numbers_for(take.practice_day):
            if numbers.promise_id == choice.promise_id:
                return numbers.text
        raise PlainFailure(
            "That promise has no number for this day.", "Choose another promise, or none."
        )

    def sound(self, take: Take, choice: ShareChoice) -> "ClipSound":
        """Cut and level the sound."""
        from app.services.sharing.sound import clip_sound  # noqa: PLC0415 - scipy when needed

        with plain_failures(NOT_WRITTEN):
            return clip_sound(
                self._store.folders.absolute(take.file),
                choice.start_s,
                choice.end_s or take.duration_s,
                fade_s=choice.fade_s,
                target_lufs=choice.target_lufs,
            )

    def pictures(
        self, take: Take, choice: ShareChoice, title: "TitleLines", sound: "ClipSound"
    ) -> "tuple[Picture, Generator[Picture]] | None":
        """Give the card and the pictures of the music; ``None`` for sound alone."""
        from app.services.sharing.frames import card_picture  # noqa: PLC0415 - matplotlib

        if choice.form is ShareForm.SOUND:
            return None
        if choice.form is ShareForm.FILM:
            moving = self._film(take, choice, title)
            first = next(moving)
            return first, _beginning_with(first, moving)
        card = card_picture(title)
        if choice.form is ShareForm.CARD:
            return card, (card for _ in repeat(None))
        return card, self._lanes(take, choice, title, sound)

    def _lanes(
        self, take: Take, choice: ShareChoice, title: "TitleLines", sound: "ClipSound"
    ) -> "Generator[Picture]":
        from app.services.sharing.frames import (  # noqa: PLC0415
            PICTURES_PER_SECOND,
            lane_picture,
        )

        notes = self._listening.open_take(take.id).notes
        if not notes:
            raise PlainFailure(
                "There is no note to show: the take is not measured, or nothing could be.",
                "Measure it first, or choose the title card.",
            )
        end_s = choice.end_s or take.duration_s
        lanes = lane_picture(title, notes, sound.samples, choice.start_s, end_s)
        duration_s = len(sound.samples) / sound.sample_rate_hz
        number = 0
        while True:
            yield lanes.at(number / PICTURES_PER_SECOND / duration_s)
            number += 1

    def _film(self, take: Take, choice: ShareChoice, title: "TitleLines") -> "Generator[Picture]":
        from app.services.sharing.frames import film_pictures  # noqa: PLC0415
        from audio.film import Film  # noqa: PLC0415 - av, only when needed

        with plain_failures(NOT_WRITTEN):
            film = Film(self._store.folders.absolute(take.file))
        with closing(film):
            yield from film_pictures(film.picture_at, title, choice.start_s, _TITLE_OVER_FILM_S)

    def left_out(self, take: Take) -> tuple[str, ...]:
        """Give what the recording's file says of place, device and dates."""
        from audio.clip_film import told_by  # noqa: PLC0415 - av, only when needed

        with plain_failures(NOT_WRITTEN):
            told = told_by(self._store.folders.absolute(take.file))
        return tuple(f"{key}: {value}" for key, value in told.items())


def _beginning_with(first: "Picture", rest: "Generator[Picture]") -> "Generator[Picture]":
    """Put a picture that was taken to look at back in front."""
    yield first
    yield from rest
