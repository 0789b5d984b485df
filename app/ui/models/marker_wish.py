"""Which markers are wanted: by category, state, author and words."""

from collections.abc import Iterable
from dataclasses import dataclass

from app.journal.kinds import Author, MarkerState
from app.journal.records import Marker


@dataclass(frozen=True, slots=True)
class MarkerWish:
    """A filter; ``None`` and empty words let everything through."""

    category: str | None = None
    state: MarkerState | None = None
    author: Author | None = None
    words: str = ""

    @property
    def is_open(self) -> bool:
        """Whether it lets everything through."""
        return self == MarkerWish()

    def matches(self, marker: Marker) -> bool:
        """Say whether a marker is wanted; every word has to be in its text or category."""
        where = f"{marker.text} {marker.category}".casefold()
        return (
            self.category in (None, marker.category)
            and self.state in (None, marker.state)
            and self.author in (None, marker.author)
            and all(word in where for word in self.words.casefold().split())
        )

    def chosen(self, markers: Iterable[Marker]) -> tuple[Marker, ...]:
        """Give the wanted ones, in their order."""
        return tuple(marker for marker in markers if self.matches(marker))
