"""Which takes of a passage can fairly be held against each other, and what is left out."""

from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from app.journal.input_levels import differences, trace_of
from app.journal.records import Take
from app.services.wording import counted

UNFAIR_INTONATION = frozenset(
    {"mean_absolute_cents", "precision_cents", "accuracy_cents", "within_10_cents"}
)
UNFAIR_DYNAMICS = frozenset({"dynamic_span_db"})


@dataclass(frozen=True, slots=True)
class FairTakes:
    """Takes that are comparable with the latest one.

    ``no_intonation`` and ``no_dynamics`` are ids of takes whose intonation or dynamics
    are not; ``left_out`` says in plain sentences what was left out and why.
    """

    takes: tuple[Take, ...]
    no_intonation: frozenset[str]
    no_dynamics: frozenset[str]
    left_out: tuple[str, ...]
    other_instruments: tuple[str, ...] = ()
    intonation: str = ""
    dynamics: str = ""

    def about(self, key: str) -> tuple[str, ...]:
        """Say what was left out of one measure."""
        said = [*self.other_instruments]
        if key in UNFAIR_INTONATION and self.intonation:
            said.append(self.intonation)
        if key in UNFAIR_DYNAMICS and self.dynamics:
            said.append(self.dynamics)
        return tuple(said)

    def with_measure(self, key: str) -> tuple[Take, ...]:
        """Give the takes of which a measure may be compared."""
        return tuple(take for take in self.takes if self.has(take, key))

    def has(self, take: Take, key: str) -> bool:
        """Tell whether a measure of a take may be compared."""
        if key in UNFAIR_INTONATION:
            return take.id not in self.no_intonation
        return key not in UNFAIR_DYNAMICS or take.id not in self.no_dynamics


def fair_takes(takes: Sequence[Take]) -> FairTakes:
    """Choose what can be compared with the latest take.

    Another instrument is left out altogether. Another temperament or tuning of the
    strings moves the targets, so intonation is left out; another A does not, because
    every take is held against its own. Another level, another input or an automatic
    level leaves out the dynamics.
    """
    if not takes:
        return FairTakes((), frozenset(), frozenset(), ())
    model = takes[-1]
    instrument = model.settings.instrument
    same = tuple(t for t in takes if t.settings.instrument == instrument)
    others = Counter(t.settings.instrument for t in takes if t.settings.instrument != instrument)
    played = tuple(f"{counted(n, 'take')} left out: played on {one}." for one, n in others.items())
    retuned = frozenset(t.id for t in same if _tuning(t) != _tuning(model))
    intonation = dynamics = ""
    if retuned:
        intonation = (
            f"{counted(len(retuned), 'take')} left out of intonation: held against another"
            " temperament, tonic or tuning of the strings."
        )
    levels = frozenset(t.id for t in same if not _same_level(t, model))
    if levels:
        dynamics = (
            f"{counted(len(levels), 'take')} left out of dynamics: recorded at another level,"
            " through another input, with a mute, or with a level that sets itself or may do so."
        )
    said = tuple(sentence for sentence in (*played, intonation, dynamics) if sentence)
    return FairTakes(same, retuned, levels, said, played, intonation, dynamics)


def tunings_text(takes: Iterable[Take]) -> str:
    """Say that takes were tuned to different As, where so."""
    found = sorted({t.settings.reference_a_hz or 0.0 for t in takes})
    if len(found) < 2:
        return ""
    return "Tuned to different As; each take is held against its own."


def _tuning(take: Take) -> tuple[object, ...]:
    settings = take.settings
    return settings.temperament, settings.tonic, settings.open_strings


def _same_level(take: Take, model: Take) -> bool:
    gain = take.settings.automatic_gain
    if gain == "on" or gain != model.settings.automatic_gain:
        return False
    if take.settings.with_mute != model.settings.with_mute:
        return False
    return not differences(trace_of(take), trace_of(model))
