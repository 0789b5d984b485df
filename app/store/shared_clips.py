"""The clips that were made to be shared."""

from app.journal.sharing import SharedClip
from app.store.keeping_models import SharedClipModel
from app.store.kept_by_id import KeptById

_CLIP = SharedClipModel.__table__.c


class SharedClipRepository(KeptById[SharedClip]):
    """Clips in the order in which they were made."""

    model = SharedClipModel
    record = SharedClip
    order = (_CLIP.shared_at, _CLIP.id)
