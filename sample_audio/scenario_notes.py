"""What the demo's player and teacher wrote: aims, markers and a word about some days.

Keys are the day of the eight weeks (0 to 55) and the passage. Notes of a passage
are counted from 0, rests included.
"""

from dataclasses import dataclass
from typing import Literal

AimMet = Literal["yes", "partly", "no"]


@dataclass(frozen=True, slots=True)
class Mark:
    """A critique note on a note, or on a span of notes when ``last_note`` is given."""

    first_note: int
    last_note: int | None
    category: str
    weight: int
    text: str
    author: Literal["self", "teacher"] = "self"
    state: Literal["to_work_on", "settled", "returned"] = "to_work_on"


AIMS: dict[tuple[int, str], tuple[str, AimMet | None]] = {
    (1, "opening"): ("Just play it through without stopping", "yes"),
    (7, "opening"): ("Leading notes closer to G", "no"),
    (10, "opening"): ("Leading notes closer to G", "partly"),
    (13, "opening"): ("Hear the C before the hand moves", "no"),
    (15, "crossings"): ("Elbow leads, the wrist follows", "partly"),
    (21, "opening"): ("Same tempo in bar 8 as in bar 1", "partly"),
    (25, "opening"): ("Hear the C before the hand moves", "partly"),
    (29, "opening"): ("A real piano in bars 2 and 8", "yes"),
    (34, "opening"): ("Vibrato starts with the note, not after it", "partly"),
    (37, "opening"): ("Only check the hand, no pushing", "yes"),
    (41, "opening"): ("Shift with a light thumb", "partly"),
    (44, "opening"): ("Shift with a light thumb", "yes"),
    (46, "opening"): ("E flat lower, leave it close to D", "yes"),
    (50, "crossings"): ("The climb without rushing", "partly"),
    (52, "opening"): ("One breath in bar 4, then straight on", "yes"),
    (55, "opening"): ("Play it as on the day", None),
}

MARKS: dict[tuple[int, str], tuple[Mark, ...]] = {
    (0, "opening"): (
        Mark(19, None, "shift", 3, "C lands far too high", state="settled"),
        Mark(7, None, "intonation", 2, "F sharp sags", state="settled"),
        Mark(20, 25, "rhythm", 2, "Runs away after the shift", state="settled"),
    ),
    (3, "opening"): (
        Mark(17, 19, "shift", 3, "Old finger travels, new one drops", "teacher", "settled"),
        Mark(30, None, "sound", 1, "Keep the bow moving to the end", "teacher", "settled"),
    ),
    (7, "opening"): (Mark(7, None, "intonation", 2, "Still under pitch", state="settled"),),
    (8, "opening"): (Mark(13, None, "intonation", 1, "E flat a little wide", state="settled"),),
    (10, "opening"): (
        Mark(7, None, "intonation", 2, "Second finger against the third", "teacher", "settled"),
        Mark(0, 7, "expression", 1, "Where does this phrase go?", "teacher", "settled"),
    ),
    (13, "opening"): (Mark(19, None, "shift", 3, "Overshoots again", state="settled"),),
    (15, "crossings"): (
        Mark(0, 7, "string crossing", 2, "The D is louder than the tune"),
        Mark(16, 23, "rhythm", 2, "The climb rushes"),
    ),
    (18, "opening"): (Mark(0, None, "other", 1, "First notes after the cold", state="settled"),),
    (20, "opening"): (Mark(16, None, "memory", 2, "Blank after the rest", state="settled"),),
    (22, "opening"): (Mark(26, 27, "intonation", 1, "B flat low on the way down"),),
    (25, "opening"): (Mark(19, None, "shift", 2, "Nearer, slide still audible", state="settled"),),
    (28, "opening"): (Mark(24, 25, "rhythm", 1, "Late night, dragging a bit", state="settled"),),
    (29, "opening"): (Mark(4, 7, "expression", 1, "This is the piano", state="settled"),),
    (29, "crossings"): (Mark(8, 15, "string crossing", 2, "Better from the elbow"),),
    (34, "opening"): (Mark(14, None, "sound", 1, "Vibrato comes late", state="settled"),),
    (36, "opening"): (
        Mark(19, None, "shift", 3, "Loose again: too high, thumb tight", state="returned"),
        Mark(23, None, "intonation", 2, "F sharp under again", state="returned"),
    ),
    (37, "opening"): (Mark(19, None, "shift", 2, "Tight hand, stopped here", state="returned"),),
    (39, "opening"): (Mark(17, 19, "shift", 2, "Release before you move", state="returned"),),
    (44, "opening"): (Mark(19, None, "shift", 1, "Light thumb, lands", state="settled"),),
    (46, "opening"): (Mark(13, None, "intonation", 1, "This is the E flat", state="settled"),),
    (50, "crossings"): (Mark(16, 23, "rhythm", 1, "Nearly steady"),),
    (52, "opening"): (
        Mark(26, 29, "expression", 1, "Let bar 7 fall towards home", "teacher"),
        Mark(31, None, "intonation", 1, "Listen for the open fifth", "teacher"),
    ),
    (55, "opening"): (Mark(29, None, "intonation", 1, "Leading note could still come up"),),
}

DAY_NOTES: dict[int, str] = {
    0: "First reading. The seat is heard in eight weeks.",
    16: "In bed with a cold.",
    17: "In bed with a cold, lesson put off.",
    18: "Eight quiet minutes, good to be back.",
    28: "Home late: it was past midnight, with the practice mute off for one take only.",
    31: "Away for work.",
    35: "Left hand tired: short and slow, with breaks.",
    37: "Hand still tight, so stopped early. If it stays, ask the doctor.",
    44: "Hand is fine again.",
    53: "Less rather than more from here on.",
}
