"""Passages: what is practised and compared."""

import uuid

from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.records import Passage, PlayingSettings
from app.services.wording import listed
from app.store.store import Store

_MOST_NAMED = 8


def passage_title(passage: Passage) -> str:
    """Name a passage in one line: ``piece: name``."""
    return f"{passage.piece}: {passage.name}" if passage.piece else passage.name


class PassageService:
    """Lists, adds, changes and finds passages."""

    def __init__(self, store: Store, clock: Clock) -> None:
        self._store = store
        self._clock = clock

    def list(self) -> tuple[Passage, ...]:
        """Give all passages, by piece and name."""
        return self._store.passages.list()

    def add(
        self, piece: str, name: str, bars: str = "", settings: PlayingSettings | None = None
    ) -> Passage:
        """Add a passage.

        Parameters
        ----------
        piece, name, bars : str
            What it is called; the name must not be empty.
        settings : PlayingSettings, optional
            The journal's own settings where left out.

        Raises
        ------
        PlainFailure
            Where there is one of that piece and name already, or no name.
        """
        with self._store.transaction():
            passage = Passage(
                id=uuid.uuid4().hex,
                piece=" ".join(piece.split()),
                name=" ".join(name.split()),
                bars=" ".join(bars.split()),
                settings=settings or self._store.settings.get().default_settings,
                created_at=self._clock(),
            )
            self._check(passage)
            self._store.passages.add(passage)
        return passage

    def change(self, passage: Passage) -> Passage:
        """Replace a passage by its changed record; its takes keep their own settings."""
        with self._store.transaction():
            self._check(passage)
            try:
                self._store.passages.replace(passage)
            except KeyError as problem:
                raise PlainFailure("That passage is not there.", "Add it anew.") from problem
        return passage

    def find(self, text: str) -> Passage:
        """Find a passage by id, name, or ``piece: name``; upper and lower case are the same.

        Raises
        ------
        PlainFailure
            Where there is none or more than one; names those that there are.
        """
        passages = self.list()
        wanted = _folded(text)
        exact = [p for p in passages if p.id == text.strip()]
        titled = [p for p in passages if _folded(passage_title(p)) == wanted]
        named = [p for p in passages if _folded(p.name) == wanted]
        for found in (exact, titled, named):
            if len(found) == 1:
                return found[0]
            if found:
                titles = listed([f"'{passage_title(p)}'" for p in found])
                raise PlainFailure(f"'{text}' could be {titles}.", "Name the piece too.")
        raise PlainFailure(f"There is no passage '{text}'.", _known(passages))

    def find_or_add(self, text: str) -> tuple[Passage, bool]:
        """Find a passage, or add it by this name; says whether it is new.

        ``piece: name`` gives a new passage both.
        """
        try:
            return self.find(text), False
        except PlainFailure:
            passages = self.list()
            titles = {_folded(passage_title(p)) for p in passages}
            names = {_folded(p.name) for p in passages}
            if _folded(text) in titles | names:
                raise
        piece, colon, name = text.partition(":")
        return self.add(piece if colon else "", name if colon else text), True

    def _check(self, passage: Passage) -> None:
        if not passage.name:
            raise PlainFailure("A passage needs a name.", "Type one, for instance its bars.")
        for other in self._store.passages.list():
            if other.id != passage.id and _folded(passage_title(other)) == _folded(
                passage_title(passage)
            ):
                raise PlainFailure(
                    f"There is a passage '{passage_title(other)}' already.", "Choose another name."
                )


def _folded(text: str) -> str:
    return " ".join(text.replace(":", ": ").split()).casefold()


def _known(passages: tuple[Passage, ...]) -> str:
    if not passages:
        return "Add it on the Practice page, or by recording or importing into it."
    titles = [f"'{passage_title(p)}'" for p in passages[:_MOST_NAMED]]
    if len(passages) > _MOST_NAMED:
        titles.append("others")
    return f"There are {listed(titles)}." if len(titles) > 1 else f"There is {titles[0]}."
