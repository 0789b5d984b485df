"""What the notes of a take are held against: the A in use, temperament, key, strings."""

from dataclasses import dataclass
from typing import Final, Literal

import numpy as np

from analysis.instruments import INSTRUMENTS, Instrument
from analysis.results import Measured, Note, NoteKind, NotMeasurable, Provenance, Reason
from analysis.tuning import STANDARD_A_HZ, Temperament, estimate_reference_a

ALGORITHM: Final = "intonation-3"


@dataclass(frozen=True, slots=True)
class Tuning:
    """What notes are held against.

    ``reference_uncertainty_cents`` is ``None`` where the A was entered, half of its 95 %
    interval where it was estimated from the take. ``only_equal`` says that an
    equal-tempered instrument plays too, so that no other temperament is plausible.
    """

    reference_a_hz: float = STANDARD_A_HZ
    temperament: Temperament = Temperament.EQUAL
    tonic: str | None = None
    reference_uncertainty_cents: float | None = None
    instrument: Instrument = INSTRUMENTS["violin"]
    open_strings: tuple[str, ...] | None = None
    only_equal: bool = False

    @property
    def estimated(self) -> bool:
        """Whether the reference A came from the take itself."""
        return self.reference_uncertainty_cents is not None

    @property
    def provenance(self) -> Provenance:
        """The settings that judging depends on."""
        return Provenance(
            ALGORITHM,
            {
                "reference_a_hz": self.reference_a_hz,
                "reference_estimated": self.estimated,
                "temperament": self.temperament.value,
                "tonic": self.tonic,
                "instrument": self.instrument.name,
                "open_strings": ",".join(self.open_strings) if self.open_strings else None,
                "only_equal": self.only_equal,
            },
        )


def tuning_of_take(
    notes: tuple[Note, ...],
    *,
    reference_a_hz: float | Literal["auto"],
    temperament: Temperament,
    tonic: str | None,
    instrument: Instrument,
    open_strings: tuple[str, ...] | None = None,
) -> Tuning | NotMeasurable:
    """Settle what the notes of a take are held against, estimating the A if asked to.

    Raises
    ------
    ValueError
        If the temperament needs a tonic and there is none.
    """
    if reference_a_hz != "auto":
        return Tuning(reference_a_hz, temperament, tonic, None, instrument, open_strings)
    measured = [
        n.pitch.value for n in notes if n.kind is NoteKind.NOTE and isinstance(n.pitch, Measured)
    ]
    estimate = estimate_reference_a(
        np.array([p.pitch_hz for p in measured]),
        np.array([p.uncertainty_cents for p in measured]),
        temperament,
        tonic,
    )
    if estimate is None:
        return NotMeasurable(
            Reason.TOO_FEW_NOTES,
            "Too few notes agree on a reference A; enter the A instead.",
            Provenance(ALGORITHM, {"reference_a_hz": "auto"}),
        )
    return Tuning(
        estimate.reference_a_hz,
        temperament,
        tonic,
        estimate.uncertainty_cents,
        instrument,
        open_strings,
    )
