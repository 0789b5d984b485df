"""Whether two takes were recorded with the same input at the same setting.

A program cannot read the knob of a microphone's amplifier. What moves with it is the
level of a take's quiet moments: the room and the amplifier's own noise. The same input
with quiet moments several dB apart was probably set differently (or the room was
another), and then loudness cannot be compared across the takes.
"""

from dataclasses import dataclass

from app.journal.records import Take

APART_DB = 6.0
"""Twice the amplitude; quiet rooms differ by less from day to day (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class InputTrace:
    """What an input left on a take; empty and ``None`` where nobody knows.

    ``quiet_dbfs`` is the level of the quietest moment in which nothing was played;
    ``channel``, counted from 1, is ``None`` where the system gave what it gives.
    """

    device: str = ""
    quiet_dbfs: float | None = None
    channel: int | None = None


def trace_of(take: Take) -> InputTrace:
    """Give the trace of a take."""
    return InputTrace(take.input_device, take.quiet_dbfs, take.input_channel)


def differences(before: InputTrace, now: InputTrace) -> tuple[str, ...]:
    """Say in sentences in what two inputs differ; empty where they seem the same.

    Parameters
    ----------
    before, now : InputTrace
        The earlier take's and the later one's (or that of the input as it is now).
    """
    found = []
    if before.device and now.device and before.device != now.device:
        found.append(f"Another input: {before.device}, then {now.device}.")
    elif before.device and now.device and before.channel != now.channel:
        found.append(
            f"Another channel of the input: {_channel(before.channel)}, then"
            f" {_channel(now.channel)}."
        )
    if before.quiet_dbfs is not None and now.quiet_dbfs is not None:
        step_db = now.quiet_dbfs - before.quiet_dbfs
        if abs(step_db) > APART_DB:
            way = "higher" if step_db > 0 else "lower"
            found.append(
                f"The quiet moments lie {abs(step_db):.0f} dB {way}: the input was probably set"
                " differently."
            )
    return tuple(found)


def _channel(number: int | None) -> str:
    return "the usual one" if number is None else f"channel {number}"
