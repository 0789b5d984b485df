"""Which channel of an input with several is recorded."""

from collections.abc import Iterable
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class InputChannel:
    """The channel of an input that is recorded, ``channel`` counted from 1."""

    device: str
    channel: int


def remembered(channels: Iterable[InputChannel], device: str) -> int | None:
    """Give the channel chosen for a device; ``None``: as the system gives it."""
    for chosen in channels:
        if chosen.device == device and chosen.channel > 0:
            return chosen.channel
    return None


def with_choice(
    channels: Iterable[InputChannel], device: str, channel: int | None
) -> tuple[InputChannel, ...]:
    """Remember a choice in place of the device's last one; ``None`` forgets it."""
    others = tuple(chosen for chosen in channels if chosen.device != device)
    return others if channel is None else (*others, InputChannel(device, channel))


def channel_gone(name: str, channel: int) -> str:
    """Say that an input no longer has its channel, and what is recorded instead."""
    return f"The input '{name}' has no channel {channel} any more; its first channel is recorded."
