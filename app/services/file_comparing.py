"""Two takes beside each other: aligned, notes against notes, take against take.

Works on decoded sound and finished analyses, wherever they come from.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import TYPE_CHECKING

from analysis.results import (
    Alignment,
    Measured,
    NotMeasurable,
    ParameterValue,
    TakeAnalysis,
    TakeChange,
)
from app.journal.records import PlayingSettings
from app.services.change_words import HOW_JUDGED, no_interval_text
from app.services.confounders import confounders
from app.services.file_measuring import analyse_sound, checked_settings
from app.services.loading import load_measuring
from app.services.long_sounds import MeasurableSound, read_for_measuring
from app.services.machine_readable import SCHEMA, Json, column, finite, pair_object
from app.services.readings import CHANGE_KEYS
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
    from analysis.change import MeasureChange


@dataclass(frozen=True, slots=True)
class Side:
    """One of the two takes of a comparison; ``heard`` is only needed to align it."""

    name: str
    heard: MeasurableSound | None
    analysis: TakeAnalysis
    settings: PlayingSettings


@dataclass(frozen=True, slots=True)
class Comparison:
    """What came of comparing; ``change`` is ``None`` where the two do not match.

    ``words`` has the one plain word of each measure that was judged against the scatter
    of the passage; without an entry two takes are too few.
    """

    a: Side
    b: Side
    alignment: Measured[Alignment] | NotMeasurable
    change: TakeChange | None
    measures: "Mapping[str, Measured[MeasureChange] | NotMeasurable]"
    confounders: tuple[str, ...]
    words: Mapping[str, str] = field(default_factory=dict)

    def word(self, key: str) -> str:
        """Give the one plain word for a measure; empty where it is not measurable."""
        result = self.measures[key]
        if isinstance(result, NotMeasurable):
            return ""
        return self.words.get(key, str(result.value.word))

    def no_interval(self, key: str) -> str:
        """Say why the change of a measure has no interval; empty where it has one, or none is."""
        result = self.measures[key]
        if isinstance(result, NotMeasurable) or result.value.uncertainty is not None:
            return ""
        return no_interval_text(key, is_judged=key in self.words)

    @property
    def how_judged(self) -> str:
        """Say what a word goes by, where a change beyond its interval is not called clear."""
        from analysis.change import Word  # noqa: PLC0415 - scipy, only when needed

        for key, word in self.words.items():
            result = self.measures[key]
            if word == Word.NO_CLEAR_CHANGE and isinstance(result, Measured):
                width = result.value.uncertainty
                if width is not None and abs(result.value.change) > width:
                    return HOW_JUDGED
        return ""

    def as_json(self) -> Json:
        """Give the machine-readable object (``app/schemas/compare.schema.json``)."""
        return compare_object(self)


def side_from_file(
    path: Path,
    settings: PlayingSettings,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> Side:
    """Read and measure a file for a comparison."""
    load_measuring(should_stop)
    checked_settings(settings)
    heard = read_for_measuring(path, part_of(progress, 0.0, 0.1), should_stop)
    stop_if(should_stop)
    rest = part_of(progress, 0.1, 1.0)
    analysis = analyse_sound(heard.sound, settings, rest, heard.watched(should_stop))
    return Side(str(path), heard, analysis, settings)


def compare_files(
    path_a: Path,
    path_b: Path,
    settings_a: PlayingSettings,
    settings_b: PlayingSettings | None = None,
    *,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
) -> Comparison:
    """Compare two sound files that need not be in any journal.

    Raises
    ------
    PlainFailure
        Where a file cannot be read or the settings make no sense.
    """
    a = side_from_file(path_a, settings_a, part_of(progress, 0.0, 0.35), should_stop)
    b = side_from_file(path_b, settings_b or settings_a, part_of(progress, 0.35, 0.7), should_stop)
    return compare_sides(a, b, part_of(progress, 0.7, 1.0), should_stop)


def compare_sides(
    a: Side,
    b: Side,
    progress: Progress = no_progress,
    should_stop: ShouldStop = never_stop,
    *,
    known: Measured[Alignment] | NotMeasurable | None = None,
) -> Comparison:
    """Align two takes and hold their notes and measures against each other.

    An alignment that is ``known`` already is not made again.
    """
    from analysis.change import compare_takes, take_level_change  # noqa: PLC0415

    alignment = known or _aligned(a, b, progress, should_stop)
    change = None
    if isinstance(alignment, Measured):
        change = compare_takes(a.analysis.notes, b.analysis.notes, alignment.value)
    progress(1.0)
    measures = take_level_change(a.analysis, b.analysis)
    return Comparison(a, b, alignment, change, measures, confounders(a, b))


def _aligned(
    a: Side, b: Side, progress: Progress, should_stop: ShouldStop
) -> Measured[Alignment] | NotMeasurable:
    from analysis.alignment import AlignmentStopped, align  # noqa: PLC0415 - only when needed

    if a.heard is None or b.heard is None:
        raise ValueError("takes are aligned by their sound")
    sound_a, sound_b = a.heard.sound, b.heard.sound
    with stopped_by(AlignmentStopped):
        return align(
            sound_a.samples,
            sound_a.sample_rate_hz,
            sound_b.samples,
            sound_b.sample_rate_hz,
            notes_a=a.analysis.notes,
            notes_b=b.analysis.notes,
            progress=progress,
            should_stop=a.heard.watched(b.heard.watched(should_stop)),
        )


def compare_object(comparison: Comparison) -> Json:
    """Describe a comparison, free of NaN."""
    a, b = comparison.a, comparison.b
    alignment, change = comparison.alignment, comparison.change
    notes_a, notes_b = a.analysis.notes, b.analysis.notes
    provenance = alignment.provenance
    parameters: dict[str, ParameterValue] = dict(provenance.parameters)
    return {
        "schema": SCHEMA,
        "a": a.name,
        "b": b.name,
        "algorithm": provenance.algorithm,
        "parameters": {
            name: finite(value) if isinstance(value, float) else value
            for name, value in parameters.items()
        },
        "alignment": _alignment_object(alignment),
        "notes": [
            pair_object(pair, notes_a[pair.a_index], notes_b[pair.b_index])
            for pair in (change.notes if change else ())
        ],
        "a_only": column(notes_a[i].note.start_s for i in (change.a_only if change else ())),
        "b_only": column(notes_b[i].note.start_s for i in (change.b_only if change else ())),
        "changes": {
            key: {
                **_change_object(comparison.measures[key], comparison.word(key)),
                "no_interval": comparison.no_interval(key) or None,
            }
            for key in CHANGE_KEYS
        },
        "confounders": list(comparison.confounders),
    }


def _alignment_object(alignment: Measured[Alignment] | NotMeasurable) -> Json:
    if isinstance(alignment, NotMeasurable):
        return {
            "status": alignment.status,
            "reason": str(alignment.reason),
            "sentence": alignment.sentence,
            "a_s": [],
            "b_s": [],
            "confidence": None,
        }
    return {
        "status": alignment.status,
        "reason": None,
        "sentence": None,
        "a_s": column(alignment.value.a_s, 4),
        "b_s": column(alignment.value.b_s, 4),
        "confidence": finite(alignment.value.confidence, 4),
    }


def _change_object(result: "Measured[MeasureChange] | NotMeasurable", word: str) -> Json:
    value = result.value if isinstance(result, Measured) else None
    missing = result if isinstance(result, NotMeasurable) else None
    return {
        "status": result.status,
        "reason": str(missing.reason) if missing else None,
        "sentence": missing.sentence if missing else None,
        "unit": value.unit if value else None,
        "a": finite(value.a, 4) if value else None,
        "b": finite(value.b, 4) if value else None,
        "change": finite(value.change, 4) if value else None,
        "uncertainty": finite(value.uncertainty, 4) if value else None,
        "word": word or None,
    }
