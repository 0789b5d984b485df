"""What else differs between two takes than how they were played, said beside the changes."""

from typing import TYPE_CHECKING

from analysis.results import Measured, NoticeCode, TakeAnalysis

if TYPE_CHECKING:
    from app.services.file_comparing import Side

_TEMPO_APART = 0.08
_LEVEL_APART_DB = 3.0


def confounders(a: "Side", b: "Side") -> tuple[str, ...]:
    """Say what else differs between two takes, so that a change is not misread."""
    found = []
    if a.settings.instrument != b.settings.instrument:
        found.append(f"Another instrument: {a.settings.instrument} and {b.settings.instrument}.")
    if (a.settings.temperament, a.settings.tonic) != (b.settings.temperament, b.settings.tonic):
        found.append("The notes are held against another temperament.")
    if a.settings.reference_a_hz != b.settings.reference_a_hz:
        found.append("The notes are held against another A.")
    tempo_a, tempo_b = a.analysis.tempo, b.analysis.tempo
    if isinstance(tempo_a, Measured) and isinstance(tempo_b, Measured):
        bpm_a, bpm_b = tempo_a.value.mean_bpm, tempo_b.value.mean_bpm
        if abs(bpm_b - bpm_a) > _TEMPO_APART * bpm_a:
            found.append(f"Another tempo: {bpm_a:.0f} and {bpm_b:.0f} BPM.")
    level_a, level_b = _loudness(a.analysis), _loudness(b.analysis)
    if level_a is not None and level_b is not None and abs(level_b - level_a) > _LEVEL_APART_DB:
        found.append("Another recording level: dynamics are not comparable as such.")
    return (*found, *_of_the_recording(a.analysis, b.analysis))


_ONLY_ONE = {
    NoticeCode.DUAL_MONO: "One take holds the same sound twice (in both channels), which reads"
    " 3 dB louder.",
    NoticeCode.PLAYED_WITH_MUTE: "One take was played with a mute.",
}


def _of_the_recording(a: TakeAnalysis, b: TakeAnalysis) -> list[str]:
    """Name what about the two recordings keeps their loudness from being compared."""
    codes_a, codes_b = ({notice.code for notice in side.notices} for side in (a, b))
    found = [
        sentence for code, sentence in _ONLY_ONE.items() if (code in codes_a) != (code in codes_b)
    ]
    if NoticeCode.AUTOMATIC_GAIN in codes_a | codes_b:
        found.append("The level was set automatically, so dynamics are not compared.")
    elif NoticeCode.AUTOMATIC_GAIN_UNKNOWN in codes_a | codes_b:
        found.append(
            "It is not known whether the recorder set the level automatically; if it did,"
            " the dynamics cannot be compared."
        )
    return found


def _loudness(analysis: TakeAnalysis) -> float | None:
    dynamics = analysis.dynamics
    return dynamics.value.integrated_lufs if isinstance(dynamics, Measured) else None
