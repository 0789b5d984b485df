"""Records by their id; one that is not there, or deleted, is a plain failure."""

from app.journal.failures import PlainFailure
from app.journal.records import Marker, Passage, Take
from app.store.store import Store


def take_there(store: Store, take_id: str) -> Take:
    """Give a take that is not deleted.

    Raises
    ------
    PlainFailure
        Where there is none.
    """
    take = store.takes.get(take_id)
    if take is None or take.deleted_at is not None:
        raise PlainFailure("That take is not there.", "Choose a take of the journal.")
    return take


def passage_there(store: Store, passage_id: str) -> Passage:
    """Give a passage.

    Raises
    ------
    PlainFailure
        Where there is none.
    """
    passage = store.passages.get(passage_id)
    if passage is None:
        raise PlainFailure("That passage is not there.", "Choose another one.")
    return passage


def marker_there(store: Store, marker_id: str) -> Marker:
    """Give a marker.

    Raises
    ------
    PlainFailure
        Where there is none.
    """
    marker = store.markers.get(marker_id)
    if marker is None:
        raise PlainFailure("That marker is not there any more.", "Look at the list again.")
    return marker
