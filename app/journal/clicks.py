"""A click that was heard with a take, and the delay of the devices it went through."""

from dataclasses import dataclass
from datetime import datetime


@dataclass(frozen=True, slots=True)
class ClickBeats:
    """The beats of a click that was heard while a take was recorded.

    Attributes
    ----------
    first_beat_s : float
        Where in the take the first beat after the count-in lies; below 0 where the take
        begins later.
    interval_s : float
        From one beat to the next, on the recording's own clock.
    beats_a_bar : int
    """

    first_beat_s: float
    interval_s: float
    beats_a_bar: int = 4


@dataclass(frozen=True, slots=True)
class RoundTripRecord:
    """What was measured of the delay from an output back to an input.

    Attributes
    ----------
    output_device, input_device : str
        Their keys.
    offset_s : float
        Sound is recorded this much later than the drivers say.
    scatter_s : float
        Largest distance of a single measurement from it.
    measured_at : datetime
    """

    output_device: str
    input_device: str
    offset_s: float
    scatter_s: float
    measured_at: datetime
