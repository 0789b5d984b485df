"""What a clip is to be."""

import math
from dataclasses import dataclass, replace
from enum import StrEnum

from app.journal.failures import PlainFailure
from app.journal.records import Take

LONGEST_S = 60.0
"""How long a clip is at most, where nothing else is asked for."""

TARGET_LUFS = -16.0
"""Loudness of a clip: common among what phones play, no standard for it."""

SHORTEST_S = 0.5


class ShareForm(StrEnum):
    """What is made."""

    SOUND = "m4a"
    CARD = "card"
    MEASURED = "measured"
    FILM = "film"


SUFFIXES = {
    ShareForm.SOUND: ".m4a",
    ShareForm.CARD: ".mp4",
    ShareForm.MEASURED: ".mp4",
    ShareForm.FILM: ".mp4",
}


@dataclass(frozen=True, slots=True)
class ShareChoice:
    """A clip as the player wants it.

    Attributes
    ----------
    take_id : str
    start_s, end_s : float
        From where to where; without an end up to the longest that is allowed.
    form : ShareForm
        Sound alone; a film of a still title card; of deviation and sound moving with
        the music; or the phone's own picture with the title laid over.
    longest_s : float
        The player's own limit.
    fade_s : float
        In and out.
    target_lufs : float
        Integrated loudness (ITU-R BS.1770), -30 to -10.
    card_s : float
        How long the title card stands before the music; 0 for none.
    promise_id : str or None
        Whose numbers are printed.
    says : str
        A line of the player's own under the title.
    """

    take_id: str
    start_s: float = 0.0
    end_s: float | None = None
    form: ShareForm = ShareForm.SOUND
    longest_s: float = LONGEST_S
    fade_s: float = 0.5
    target_lufs: float = TARGET_LUFS
    card_s: float = 2.0
    promise_id: str | None = None
    says: str = ""


def checked_choice(choice: ShareChoice, take: Take) -> ShareChoice:
    """Give a choice with its end filled in.

    Raises
    ------
    PlainFailure
        Where the stretch lies outside the take or is too long or short, or a level or
        time makes no sense.
    """
    start_s = choice.start_s
    end_s = choice.end_s
    if end_s is None:
        end_s = min(take.duration_s, start_s + choice.longest_s)
    end_s = min(end_s, take.duration_s)
    if not (math.isfinite(start_s) and 0 <= start_s < take.duration_s):
        raise PlainFailure("The clip would begin outside the take.", "Choose another place.")
    if end_s - start_s < SHORTEST_S:
        raise PlainFailure("The clip would be shorter than half a second.", "Choose more of it.")
    if end_s - start_s > choice.longest_s + 1e-6:
        raise PlainFailure(
            f"The clip would be {end_s - start_s:.0f} s long, and {choice.longest_s:.0f} s is"
            " the most.",
            "Choose a shorter stretch, or allow longer clips.",
        )
    if not -30.0 <= choice.target_lufs <= -10.0:
        raise PlainFailure("A clip has -30 to -10 LUFS.", "Choose a loudness between them.")
    if not (0.0 <= choice.fade_s <= 10.0 and 0.0 <= choice.card_s <= 10.0):
        raise PlainFailure("Fades and the title last 0 to 10 s.", "Choose a time between them.")
    return replace(choice, end_s=end_s, says=" ".join(choice.says.split()))
