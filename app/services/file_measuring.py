"""Measuring and comparing sound files that need not be in any journal."""

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.loading import load_measuring
from app.services.long_sounds import read_for_measuring
from app.services.machine_readable import measure_object
from app.services.plain import plain_failures
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)

if TYPE_CHECKING:
    from analysis.notices import AutomaticGain
    from analysis.results import NotMeasurable, TakeAnalysis
    from analysis.take import TakeSettings, WrittenLine
    from app.journal.scores import Score
    from audio.files import Sound

_READ = 0.1


@dataclass(frozen=True, slots=True)
class MeasureReport:
    """What was measured on one file.

    ``notice`` is one plain sentence about the file itself, empty where there is
    nothing to say.
    """

    file: str
    analysis: "TakeAnalysis"
    settings: PlayingSettings
    notice: str = ""

    def as_json(self, curves: bool = False) -> dict[str, object]:
        """Give the machine-readable object (``app/schemas/measure.schema.json``).

        Parameters
        ----------
        curves : bool
            Whether to add the pitch, tempo and loudness curves.
        """
        return measure_object(self.analysis, self.file, curves=curves)


def measure_file(
    path: Path,
    settings: PlayingSettings,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
    *,
    score: "Score | None" = None,
) -> MeasureReport:
    """Measure a sound file.

    Parameters
    ----------
    path : Path
        Any sound file, or a clip with sound.
    settings : PlayingSettings
        What the measures need to know about the playing.
    score : Score, optional
        What is written for it.

    Raises
    ------
    PlainFailure
        Where the file cannot be read or the settings make no sense.
    Stopped
        Once `should_stop` says so.
    """
    load_measuring(should_stop)
    checked_settings(settings)
    found = read_for_measuring(path, part_of(progress, 0.0, _READ), should_stop)
    stop_if(should_stop)
    watched = found.watched(should_stop)
    line = written_line(score, score.title or score.part) if score else None
    rest = part_of(progress, _READ, 1.0)
    analysis = analyse_sound(found.sound, settings, rest, watched, score=line)
    return MeasureReport(str(path), analysis, settings, notice_of(found.sound))


def read_whole(path: Path) -> "Sound":
    """Decode a file, or say plainly why that cannot be."""
    from audio.files import read_sound  # noqa: PLC0415 - loads libsndfile; only when needed

    with plain_failures("the file was not read"):
        return read_sound(path)


def notice_of(sound: "Sound") -> str:
    """Say what is odd about a file that could be read all the same."""
    if sound.non_finite_samples:
        return f"{sound.non_finite_samples} samples of the file are not numbers; taken as silence."
    return sound.damage or ""


def analyse_sound(
    sound: "Sound",
    settings: PlayingSettings,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
    *,
    score: "WrittenLine | None" = None,
) -> "TakeAnalysis":
    """Measure decoded sound, against its score where there is one."""
    load_measuring(should_stop)
    from analysis.stopping import Stopped as AnalysisStopped  # noqa: PLC0415
    from analysis.take import analyse_take  # noqa: PLC0415 - scipy and numba, only when needed

    with stopped_by(AnalysisStopped):
        return analyse_take(
            sound.samples,
            sound.sample_rate_hz,
            checked_settings(settings),
            score=score,
            progress=progress,
            should_stop=should_stop,
        )


def written_line(score: "Score", name: str) -> "WrittenLine":
    """Turn a score of the journal into what the measuring code holds a take against.

    Parameters
    ----------
    score : Score
    name : str
        What tells it from any other score.
    """
    import numpy as np  # noqa: PLC0415 - only when needed

    from analysis.take import WrittenLine  # noqa: PLC0415

    return WrittenLine(score.notes, np.array(score.counted_beats, dtype=np.float64), name)


def without_score(sentence: str) -> "NotMeasurable":
    """Say why a take could not be held against its score."""
    from analysis.results import NotMeasurable, Provenance, Reason  # noqa: PLC0415
    from analysis.score_take import ALGORITHM  # noqa: PLC0415

    return NotMeasurable(Reason.NO_SCORE, sentence, Provenance(ALGORITHM))


def _known_of_gain(answer: str) -> "AutomaticGain":
    """Take an answer that is none of the three for not knowing."""
    return "off" if answer == "off" else "on" if answer == "on" else "unknown"


def checked_settings(settings: PlayingSettings) -> "TakeSettings":
    """Turn the journal's settings into the measuring code's.

    Raises
    ------
    PlainFailure
        Where they make no sense; the sentence says which.
    """
    from analysis.take import TakeSettings  # noqa: PLC0415 - scipy and numba, only when needed
    from analysis.tuning import Temperament  # noqa: PLC0415

    try:
        found = TakeSettings(
            instrument=settings.instrument,
            reference_a_hz="auto" if settings.reference_a_hz is None else settings.reference_a_hz,
            temperament=Temperament(settings.temperament),
            tonic=settings.tonic,
            pulse_bpm=settings.pulse_bpm,
            open_strings=settings.open_strings,
            accompanied=settings.accompanied,
            automatic_gain=_known_of_gain(settings.automatic_gain),
            with_mute=settings.with_mute,
            click_first_beat_s=settings.click.first_beat_s if settings.click else None,
            click_interval_s=settings.click.interval_s if settings.click else None,
            harmonics=settings.harmonics,
        )
        found.checked()
    except ValueError as problem:
        sentence = str(problem)
        raise PlainFailure(
            sentence[:1].upper() + sentence[1:] + ("" if sentence.endswith(".") else "."),
            "Change it and try again.",
        ) from problem
    return found
