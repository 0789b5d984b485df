"""The dynamics of a take: what is left out stays out, and what would mislead is refused."""

from dataclasses import dataclass, replace

from analysis.blocks import SampleArray
from analysis.dynamics import ALGORITHM, measure_dynamics
from analysis.notices import SENTENCES, AutomaticGain, find_notices
from analysis.results import (
    Dynamics,
    LeftOut,
    Measured,
    Note,
    Notice,
    NoticeCode,
    NotMeasurable,
    Provenance,
    Reason,
    Swell,
)
from analysis.stopping import Progress, StopQuestion, part_of
from analysis.swells import find_swells


@dataclass(frozen=True, slots=True)
class TakeDynamics:
    """Loudness of a take, its crescendos and diminuendos, and what to know about it."""

    dynamics: Measured[Dynamics] | NotMeasurable
    swells: tuple[Swell, ...]
    notices: tuple[Notice, ...]


def dynamics_of_take(
    samples: SampleArray,
    sample_rate_hz: int,
    playing: tuple[Note, ...],
    left_out: tuple[LeftOut, ...],
    *,
    automatic_gain: AutomaticGain = "off",
    with_mute: bool = False,
    progress: Progress | None = None,
    should_stop: StopQuestion | None = None,
) -> TakeDynamics:
    """Measure the dynamics of a take.

    Parameters
    ----------
    samples, sample_rate_hz
        The take; may be memory-mapped.
    playing : tuple of Note
        The notes outside the stretches left out, in order.
    left_out : tuple of LeftOut
        Those before the first and after the last of the notes are not measured at all,
        so that nobody's voice is the loudest moment.
    automatic_gain, with_mute
        See :class:`analysis.take_settings.TakeSettings`.
    progress, should_stop : callable, optional
        Told the share done, 0 to 1, and asked often.

    Returns
    -------
    TakeDynamics
        Where the input's gain was, or probably was, automatic the dynamic span is not
        measurable and there are no swells.
    """
    spans = [(note.start_s, note.end_s) for note in playing]
    notices = find_notices(
        samples,
        sample_rate_hz,
        spans,
        automatic_gain=automatic_gain,
        with_mute=with_mute,
        should_stop=should_stop,
    )
    start_s, end_s = _body_s(playing, left_out, len(samples) / sample_rate_hz)
    first, last = round(start_s * sample_rate_hz), round(end_s * sample_rate_hz)
    measured = measure_dynamics(
        samples[first:last],
        sample_rate_hz,
        playing=[(a - start_s, b - start_s) for a, b in spans] or None,
        progress=part_of(progress, 0.1, 1.0),
        should_stop=should_stop,
    )
    if isinstance(measured, NotMeasurable):
        return TakeDynamics(measured, (), notices)
    value = replace(measured.value, momentary_time_s=measured.value.momentary_time_s + start_s)
    if any(notice.code is NoticeCode.AUTOMATIC_GAIN for notice in notices):
        refused = NotMeasurable(
            Reason.AUTOMATIC_GAIN,
            SENTENCES[NoticeCode.AUTOMATIC_GAIN],
            Provenance(ALGORITHM, {"automatic_gain": automatic_gain}),
        )
        value = replace(value, dynamic_span_db=refused)
        return TakeDynamics(Measured(value, measured.provenance), (), notices)
    found = find_swells(value, playing=spans or None)
    return TakeDynamics(Measured(value, measured.provenance), found, notices)


def _body_s(
    playing: tuple[Note, ...], left_out: tuple[LeftOut, ...], duration_s: float
) -> tuple[float, float]:
    """Return the part of a take between what is left out at its start and at its end."""
    if not playing:
        return 0.0, duration_s
    before = [span.end_s for span in left_out if span.end_s <= playing[0].start_s]
    after = [span.start_s for span in left_out if span.start_s >= playing[-1].end_s]
    return max(before, default=0.0), min(after, default=duration_s)
