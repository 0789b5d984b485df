"""What was given away, and when."""

from dataclasses import dataclass
from datetime import date, datetime


@dataclass(frozen=True, slots=True)
class SharedClip:
    """A clip that was made to be shared.

    Attributes
    ----------
    take_id : str
        The take it was cut from.
    practice_day : date
    start_s, end_s : float
        From where to where in the take.
    form : str
        What was made of it: ``"m4a"``, ``"card"``, ``"measured"`` or ``"film"``.
    file_name : str
        Of the clip, without the folder: where it went is nobody's business.
    numbers : str
        The numbers it bears, as printed; empty for none.
    """

    id: str
    take_id: str
    practice_day: date
    shared_at: datetime
    start_s: float
    end_s: float
    form: str
    file_name: str
    numbers: str = ""
