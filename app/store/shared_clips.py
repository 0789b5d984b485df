"""The clips that were made to be shared."""

from app.journal.sharing import SharedClip
from app.store.keeping_models import SHARED_CLIP_TABLE
from app.store.kept_by_id import KeptById

_CLIP = SHARED_CLIP_TABLE.c


class SharedClipRepository(KeptById[SharedClip]):
    """Clips in the order in which they were made."""

    table = SHARED_CLIP_TABLE
    record = SharedClip
    order = (_CLIP.shared_at, _CLIP.id)
