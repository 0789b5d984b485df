"""How a take is to be measured, as far as the player has a say."""

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np
from numpy.typing import NDArray

from analysis.harmonics import check_harmonics
from analysis.instruments import Instrument, instrument
from analysis.notices import AUTOMATIC_GAIN_ANSWERS, AutomaticGain
from analysis.results import ParameterValue
from analysis.tuning import HIGHEST_A_HZ, LOWEST_A_HZ, Temperament
from analysis.units import parse_note_name, parse_pitch_class

SLOWEST_PULSE_BPM: Final = 15.0
FASTEST_PULSE_BPM: Final = 400.0


@dataclass(frozen=True, slots=True)
class TakeSettings:
    """How a take is to be measured.

    Attributes
    ----------
    instrument : str
        A name in :data:`analysis.instruments.INSTRUMENTS`.
    reference_a_hz : float or 'auto'
        The A the player tuned to, 380 to 480 Hz, or estimated from the take.
    temperament : Temperament
        Pythagorean and just need a ``tonic``.
    tonic : str or None
        Note name, ``'D'``.
    pulse_bpm : float or None
        The player's stated beat, 15 to 400 BPM; anchors the tempo.
    open_strings : tuple of str or None
        Sounding note names of the open strings where they are tuned otherwise.
    accompanied : bool
        Something else sounds as well, in equal temperament; intonation is then measured
        only where the line sounds alone.
    automatic_gain : str
        What is known of the input: ``'off'``, ``'on'`` or ``'unknown'``; where its gain
        was, or probably was, automatic, the dynamic span is not measurable.
    with_mute : bool
        Played with a mute: said beside the loudness.
    click_first_beat_s, click_interval_s : float or None
        A click that was heard while the take was recorded: where in the take one of its
        beats lies, and how far apart they are. It anchors the tempo before the pulse.
    harmonics : tuple of str
        Sounding names of the notes that are harmonics (``'A5'``), or ``'all'``.
    """

    instrument: str = "violin"
    reference_a_hz: float | Literal["auto"] = 440.0
    temperament: Temperament = Temperament.EQUAL
    tonic: str | None = None
    pulse_bpm: float | None = None
    open_strings: tuple[str, ...] | None = None
    accompanied: bool = False
    automatic_gain: AutomaticGain = "off"
    with_mute: bool = False
    click_first_beat_s: float | None = None
    click_interval_s: float | None = None
    harmonics: tuple[str, ...] = ()

    def checked(self) -> Instrument:
        """Return the instrument once every setting has been found to make sense.

        Raises
        ------
        ValueError
            If one does not; the message says which.
        """
        player = instrument(self.instrument)
        if self.reference_a_hz != "auto" and not (
            LOWEST_A_HZ <= self.reference_a_hz <= HIGHEST_A_HZ
        ):
            raise ValueError(
                f"reference A must lie between {LOWEST_A_HZ:g} and {HIGHEST_A_HZ:g} Hz,"
                f" not {self.reference_a_hz!r}"
            )
        if self.tonic is not None:
            parse_pitch_class(self.tonic)
        elif Temperament(self.temperament) is not Temperament.EQUAL:
            raise ValueError(f"{self.temperament} targets need a tonic, for example 'D'")
        pulse = self.pulse_bpm
        if pulse is not None and not SLOWEST_PULSE_BPM <= pulse <= FASTEST_PULSE_BPM:
            raise ValueError(
                f"the pulse must lie between {SLOWEST_PULSE_BPM:g} and"
                f" {FASTEST_PULSE_BPM:g} BPM, not {pulse!r}"
            )
        for name in self.open_strings or ():
            parse_note_name(name)
        check_harmonics(self.harmonics)
        if self.automatic_gain not in AUTOMATIC_GAIN_ANSWERS:
            raise ValueError(
                f"automatic gain is {', '.join(AUTOMATIC_GAIN_ANSWERS)},"
                f" not {self.automatic_gain!r}"
            )
        interval = self.click_interval_s
        if (
            interval is not None
            and not 60 / FASTEST_PULSE_BPM <= interval <= 60 / SLOWEST_PULSE_BPM
        ):
            raise ValueError(
                f"the click must lie between {SLOWEST_PULSE_BPM:g} and"
                f" {FASTEST_PULSE_BPM:g} BPM, its beats not {interval!r} s apart"
            )
        return player

    def click_beats_s(self, duration_s: float) -> NDArray[np.float64] | None:
        """Return the beats of the click that lie in a take of some length, from its first.

        Returns
        -------
        (n,) array or None
            Seconds of the take, rising; ``None`` without a click.
        """
        first, interval = self.click_first_beat_s, self.click_interval_s
        if first is None or interval is None:
            return None
        begin = max(0, int(np.ceil(-first / interval)))
        end = max(begin, int(np.floor((duration_s - first) / interval)) + 1)
        return np.asarray(first + interval * np.arange(begin, end), dtype=np.float64)

    def as_parameters(self) -> dict[str, ParameterValue]:
        """Return the settings as JSON-compatible scalars."""
        found: dict[str, ParameterValue] = {
            "instrument": self.instrument,
            "reference_a_hz": self.reference_a_hz,
            "temperament": Temperament(self.temperament).value,
            "tonic": self.tonic,
            "pulse_bpm": self.pulse_bpm,
            "open_strings": ",".join(self.open_strings) if self.open_strings else None,
            "accompanied": self.accompanied,
            "automatic_gain": self.automatic_gain,
            "with_mute": self.with_mute,
        }
        if self.click_interval_s is not None:
            found["click_first_beat_s"] = self.click_first_beat_s
            found["click_interval_s"] = self.click_interval_s
        if self.harmonics:
            found["harmonics"] = ",".join(self.harmonics)
        return found
