"""What a bundle or a reply brought, in words."""

from app.services.bundling.replying import ReplyReport
from app.services.bundling.service import MergeReport
from app.services.wording import counted, listed


def brought_sentence(found: MergeReport | ReplyReport) -> str:
    """Say what came in."""
    if isinstance(found, MergeReport):
        return _merged(found)
    parts = [
        counted(number, *words)
        for number, words in (
            (found.markers_new, ("new marker",)),
            (found.markers_changed, ("changed marker",)),
            (found.remarks_new, ("remark",)),
            (found.assignments_new, ("task",)),
        )
        if number
    ]
    text = f"The reply brought {listed(parts)}." if parts else "The reply brought nothing new."
    if found.takes_missing:
        gone = counted(found.takes_missing, "take")
        text += f" It speaks of {gone} that this journal does not have."
    return text


def _merged(found: MergeReport) -> str:
    text = (
        f"The bundle brought {counted(found.takes_new, 'new take')} and"
        f" {counted(found.markers_new, 'new marker')};"
        f" {counted(found.takes_known, 'take')} were here already."
    )
    if found.recordings_missing:
        gone = listed(list(found.recordings_missing))
        text += f" Left out, because the recording in the bundle is missing or changed: {gone}."
    if found.takes_unread:
        gone = counted(found.takes_unread, "take")
        text += (
            f" Left out, because what was noted of it cannot be read: {gone}."
            " Ask for the bundle once more."
        )
    return text
