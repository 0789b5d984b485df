"""The input's level: as a reading for the meter, and as a trace on a take."""

from collections import deque
from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.input_channels import remembered
from app.journal.input_levels import InputTrace, differences, trace_of
from app.services.plain import plain_failures
from app.services.records_there import take_there
from app.services.views import LevelReading
from app.store.store import Store

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from audio.recorder import Recorder

SILENT = LevelReading(None, None, "too quiet", False, 0.0, 0)
NOT_COMPARABLE = "Dynamics are then not comparable with that take."
_WORDS = {"too_quiet": "too quiet", "good": "good", "too_loud": "too loud"}
_WINDOW_S = 0.1
_QUIET_WINDOWS = 3  # a rest of a third of a second, such as that before the first note
_QUIET_BELOW_DB = 20.0
_PLAYING_BELOW_PEAK_DB = 30.0
_REMEMBERED = 1200  # at twenty readings a second the last minute


class LevelWatch:
    """Turns a recorder's level into a reading, and remembers how quiet it lately was."""

    def __init__(self) -> None:
        self._lately: deque[float] = deque(maxlen=_REMEMBERED)

    def forget(self) -> None:
        """Begin anew, with another input."""
        self._lately.clear()

    def reading(self, recorder: "Recorder", *, is_recording: bool) -> LevelReading:
        """Give the level now (instant)."""
        from audio.levels import FLOOR_DBFS, judge_level  # noqa: PLC0415 - loaded already

        level = recorder.level()
        if level.rms_dbfs > FLOOR_DBFS:
            self._lately.append(level.rms_dbfs)
        judged = level.highest_dbfs if is_recording else level.hold_dbfs
        return LevelReading(
            peak_dbfs=level.peak_dbfs if level.peak_dbfs > FLOOR_DBFS else None,
            hold_dbfs=level.hold_dbfs if level.hold_dbfs > FLOOR_DBFS else None,
            word=_WORDS[judge_level(judged).value],
            clipped=level.clipped_samples > 0,
            elapsed_s=recorder.elapsed_s,
            dropped_frames=recorder.losses[1],
            quiet_dbfs=min(self._lately) if self._lately else None,
        )


def opened_input(
    device_key: str | None,
    *,
    channel: int | None = None,
    pre_roll_s: float = 0.0,
    on_block: "Callable[[NDArray[np.float32]], None] | None" = None,
    latency_s: float | None = None,
) -> "tuple[Recorder, str]":
    """Open an input, or the default one, at one of its channels; gives its key too.

    Only :class:`app.services.inputs.Inputs` calls it, which knows what is open already.
    """
    from audio.devices import find_device  # noqa: PLC0415 - loads PortAudio
    from audio.recorder import Recorder  # noqa: PLC0415

    with plain_failures():
        device = find_device("input", device_key)
        recorder = Recorder(
            None,
            device,
            first_channel=None if channel is None else channel - 1,
            pre_roll_s=pre_roll_s,
            on_block=on_block,
            latency_s=latency_s,
        )
        recorder.start()
    return recorder, device.key


def levels_of(path: Path) -> tuple[float | None, float | None]:
    """Measure the peak and the quiet moments of a finished recording.

    Returns
    -------
    peak_dbfs, quiet_dbfs : float or None
        The highest sample, and the level (RMS, a full-scale sine at 0 dBFS) of the
        quietest 0.3 s; ``None`` for digital silence, and where nothing lies 20 dB below
        the loud moments: then nobody was quiet, and it would be the playing's level.
    """
    # Only after a recording.
    import numpy as np  # noqa: PLC0415

    from audio.files import open_sound  # noqa: PLC0415
    from audio.levels import FLOOR_DBFS, peak_dbfs, rms_dbfs  # noqa: PLC0415

    peak, levels = FLOOR_DBFS, []
    with plain_failures("its level was not read"), open_sound(path) as sound:
        rate = sound.info.sample_rate_hz
        for block in sound.blocks(round(_WINDOW_S * rate)):
            peak = max(peak, peak_dbfs(block))
            levels.append(rms_dbfs(block))
    if peak <= FLOOR_DBFS:
        return None, None
    power = 10.0 ** (np.array(levels) / 10.0)
    if len(power) < _QUIET_WINDOWS:
        return float(peak), None
    means = np.convolve(power, np.full(_QUIET_WINDOWS, 1.0 / _QUIET_WINDOWS), mode="valid")
    quiet = float(10.0 * np.log10(means.min()))
    is_quiet = FLOOR_DBFS < quiet <= float(np.quantile(levels, 0.95)) - _QUIET_BELOW_DB
    return float(peak), quiet if is_quiet else None


class InputMemory:
    """Remembers with which input each passage was recorded last."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def warning(
        self, passage_id: str | None, device_key: str | None, quiet_dbfs: float | None = None
    ) -> str:
        """Say in what the input differs from the one of the passage's last take.

        Parameters
        ----------
        passage_id : str or None
        device_key : str or None
            The input that would be used; the journal's own choice where left out.
        quiet_dbfs : float, optional
            How quiet it is now before playing: :attr:`LevelReading.quiet_dbfs`. What
            lies less than 30 dB under the last take's peak is taken for playing.

        Returns
        -------
        str
            Empty where they seem the same, or nobody knows.
        """
        takes = self._store.takes.list(passage_id=passage_id) if passage_id else ()
        known = [take for take in takes if trace_of(take) != InputTrace()]
        if not known:
            return ""
        settings = self._store.settings.get()
        chosen = device_key or settings.input_device or ""
        peak_dbfs = known[-1].peak_dbfs
        if peak_dbfs is None or (quiet_dbfs or 0.0) > peak_dbfs - _PLAYING_BELOW_PEAK_DB:
            quiet_dbfs = None
        now = InputTrace(chosen, quiet_dbfs, remembered(settings.input_channels, chosen))
        found = differences(trace_of(known[-1]), now)
        return " ".join((*found, NOT_COMPARABLE)) if found else ""

    def warning_about(self, take_id: str) -> str:
        """Say in what a take's input differs from that of the take of the passage before.

        Empty for a take without a passage: nothing is compared with it.
        """
        take = take_there(self._store, take_id)
        if take.passage_id is None:
            return ""
        earlier = [
            other
            for other in self._store.takes.list(passage_id=take.passage_id)
            if other.recorded_at.timestamp() < take.recorded_at.timestamp()
            and trace_of(other) != InputTrace()
        ]
        found = differences(trace_of(earlier[-1]), trace_of(take)) if earlier else ()
        return " ".join((*found, NOT_COMPARABLE)) if found else ""
