"""Recording a take: what sounds is on disk within a second, and stays until it is filed.

Longer than 300 lines because every way to begin and to end a recording shares one
state: by hand, by the first note, with a click, by a lost device.
"""

import threading
import uuid
from collections.abc import Callable
from contextlib import suppress
from dataclasses import replace
from datetime import timedelta
from pathlib import Path
from typing import TYPE_CHECKING

from app.journal.clicks import ClickBeats
from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.journal.records import PlayingSettings
from app.services import unfiled
from app.services.arming import (
    DEFAULT_SILENCE_S,
    LONGEST_DOUBT_S,
    LONGEST_SILENCE_S,
    PRE_ROLL_S,
    SHORTEST_SILENCE_S,
    FirstNote,
)
from app.services.attempts import Attempts
from app.services.finishing import Finisher
from app.services.guide_settings import GuideSettings
from app.services.guides import GuidePlayer, with_pulse
from app.services.input_levels import SILENT, LevelWatch
from app.services.inputs import Inputs, InputUsed
from app.services.plain import plain_failures
from app.services.records_there import passage_there
from app.services.rows import Rows
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
)
from app.services.take_filing import TakeFiler
from app.services.views import InputRow, LevelReading, PendingTake, TakeRow
from app.store.store import Store
from audio.errors import AudioFailure

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray

    from audio.recorder import Recorder

_LEARNING_S = 2.0
"""So long an armed input listens to a click or a drone before it waits for a first note."""


class RecordingService:
    """Listens to an input, records from it, and files what was recorded.

    :meth:`level`, :meth:`poll` and :attr:`is_recording` are instant; :meth:`finish`
    is long; the rest may take as long as opening a device does.
    """

    def __init__(
        self,
        store: Store,
        clock: Clock,
        filer: TakeFiler,
        attempts: Attempts,
        *,
        touch_clock: Callable[[], None],
        inputs: Inputs,
    ) -> None:
        self._store = store
        self._inputs = inputs
        self._clock = clock
        self._attempts = attempts
        self._touch_clock = touch_clock
        self._filer = filer
        self._finisher = Finisher(store, clock, filer, attempts)
        self._levels = LevelWatch()
        self._rows = Rows(store)
        self._lock = threading.RLock()
        self._recorder: Recorder | None = None
        self._device_key: str | None = None
        self._input = InputUsed("")
        self._channel: int | None = None
        self._begun: set[Path] = set()
        self._running: unfiled.Running | None = None
        self._guides = GuidePlayer(store)
        self._armed: FirstNote | None = None
        self._armed_failure: PlainFailure | None = None

    def inputs(self) -> tuple[InputRow, ...]:
        """Give the recording inputs, the system's default first.

        Raises
        ------
        PlainFailure
            Where there is none; the next step says what to install or plug in.
        """
        from audio.devices import input_devices  # noqa: PLC0415 - loads PortAudio

        with plain_failures():
            found = input_devices()
        channel_of = self._inputs.channel_of
        return tuple(
            InputRow(d.key, d.name, d.channels, d.is_default, channel_of(d.key)) for d in found
        )

    def use_channel(self, device_key: str, channel: int | None) -> None:
        """Record this channel of an input from now on (instant); not yet in the journal.

        Parameters
        ----------
        device_key : str
        channel : int or None
            Counted from 1; ``None``: as the system gives it.
        """
        self._inputs.use_channel(device_key, channel)

    def remember_channel(self, device_key: str, channel: int | None) -> None:
        """Record this channel of an input from now on, and keep the choice."""
        self._check_open()
        self._inputs.remember_channel(device_key, channel)

    def rescan(self) -> tuple[InputRow, ...]:
        """Look for devices again, after something was plugged in."""
        from audio.devices import refresh  # noqa: PLC0415 - loads PortAudio

        self.stop_listening()
        with plain_failures():
            refresh()
        return self.inputs()

    def listen(self, device_key: str | None = None) -> None:
        """Open an input to show its level; another one is closed first."""
        with self._lock:
            if self.is_recording or self._armed is not None:
                return
            if self._recorder is not None and not self._is_other(device_key):
                return
            self.stop_listening()
            self._recorder = self._opened(device_key)
            self._device_key = device_key

    def stop_listening(self) -> None:
        """Close the input that shows its level; a recording, running or armed, goes on."""
        with self._lock:
            if self.is_recording or self._armed is not None:
                return
            recorder, self._recorder = self._recorder, None
            if recorder is not None:
                with suppress(AudioFailure):  # the input had gone already
                    recorder.stop()
                self._inputs.closed(recorder)

    def level(self) -> LevelReading:
        """Give the level now (instant)."""
        recorder = self._recorder
        if recorder is None:
            return SILENT
        return self._levels.reading(recorder, is_recording=self.is_recording)

    def start(
        self,
        passage_id: str | None = None,
        aim: str = "",
        device_key: str | None = None,
        settings: PlayingSettings | None = None,
        guides: GuideSettings | None = None,
    ) -> None:
        """Start to record.

        Parameters
        ----------
        passage_id : str or None
        aim : str
            What the player wants from this take.
        device_key : str or None
            The journal's own choice, or the system's default, where left out.
        settings : PlayingSettings, optional
            Those of the passage, or of the journal, where left out.
        guides : GuideSettings, optional
            A click, counted in, or a drone to play along with; a click's beats are kept
            with the take. Show :data:`app.services.guide_settings.HEARING_CAUTION` beside it.

        Raises
        ------
        PlainFailure
            Where the passage's one take of today is made, the input will not open or the
            journal cannot be written to.
        """
        with self._lock:
            if self.is_recording:
                raise PlainFailure("A recording runs already.", "Stop it first.")
            self._check_open()
            self._filer.check_open()
            self.disarm()
            pending = self._new_pending(passage_id, aim.strip(), settings)
            if self._recorder is None or self._is_other(device_key or self._device_key):
                self.stop_listening()
                self._recorder = self._opened(device_key)
                self._device_key = device_key
            pending = self._with_input(pending)
            if guides is not None and not guides.is_silent:
                pending = replace(pending, settings=with_pulse(pending.settings, guides))
                self._guides.prepare(guides)
                self._recorder.wait_until_heard()
            with plain_failures("the recording did not start"):
                pending.pcm.parent.mkdir(parents=True, exist_ok=True)
                unfiled.write_note(pending)
                self._attempts.begun(pending)
                try:
                    self._recorder.begin(pending.pcm)
                except BaseException:
                    self._guides.stop()
                    self._forget(pending)
                    raise
            self._running = unfiled.Running(pending)
            if self._guides.is_playing:
                self._guides.play(self._recorder, self._running.keep_beats, self._input.device)
        self._touch_clock()

    def arm(
        self,
        passage_id: str | None = None,
        aim: str = "",
        device_key: str | None = None,
        settings: PlayingSettings | None = None,
        *,
        silence_s: float = DEFAULT_SILENCE_S,
        guides: GuideSettings | None = None,
    ) -> None:
        """Record from the first note on, with a second of what came before it.

        It ends by itself after silence: :meth:`poll` gives the recording then, and
        :meth:`stop` ends it earlier.

        Parameters
        ----------
        passage_id, aim, device_key, settings
            As for :meth:`start`.
        silence_s : float
            How long it has to be silent, 1 to 120.
        guides : GuideSettings, optional
            A click or a drone that sounds from now on, in headphones: the input should not
            hear it. It stays in the take's beats all the same.

        Raises
        ------
        PlainFailure
            As for :meth:`start`.
        """
        if not SHORTEST_SILENCE_S <= silence_s <= LONGEST_SILENCE_S:
            raise PlainFailure(
                "The silence that ends a take lasts 1 to 120 seconds.", "Choose another time."
            )
        with self._lock:
            if self.is_recording:
                raise PlainFailure("A recording runs already.", "Stop it first.")
            self._check_open()
            self.disarm()
            self.stop_listening()
            pending = self._new_pending(passage_id, aim.strip(), settings)
            is_guided = guides is not None and not guides.is_silent
            if guides is not None and is_guided:
                pending = replace(pending, settings=with_pulse(pending.settings, guides))
                self._guides.prepare(guides)
            heard: list[FirstNote] = []
            try:
                recorder = self._opened(
                    device_key,
                    pre_roll_s=PRE_ROLL_S + LONGEST_DOUBT_S,
                    on_block=lambda block: heard[0].hear(block) if heard else None,
                )
            except PlainFailure:
                self._guides.stop()
                raise
            pending = self._with_input(pending)

            def begin(since_s: float) -> None:
                self._begin_armed(recorder, pending, since_s)

            self._recorder, self._armed_failure = recorder, None
            deaf_s = _LEARNING_S if is_guided else 0.0
            self._armed = FirstNote(recorder.sample_rate_hz, silence_s, begin, deaf_s)
            if is_guided:
                recorder.wait_until_heard()
                self._guides.play(recorder, self._keep_beats, self._input.device)
            heard.append(self._armed)

    @property
    def is_armed(self) -> bool:
        """Whether a recording waits for its first note (instant)."""
        return self._armed is not None and self._running is None

    def disarm(self) -> None:
        """Wait for no first note any more; a recording that has begun goes on."""
        with self._lock:
            armed = self._armed
            if armed is None:
                return
            armed.call_off()
            if self._running is None:
                self._armed = None
                self._guides.stop()
                self.stop_listening()

    @property
    def is_recording(self) -> bool:
        """Whether a recording runs, or ended by itself and was not polled yet (instant)."""
        return self._running is not None

    def mark(self, at_s: float) -> None:
        """Mark a moment of the running take; it becomes a marker once the take is filed.

        It is on the disk at once, beside the sound.

        Parameters
        ----------
        at_s : float
            Seconds of the take.

        Raises
        ------
        PlainFailure
            Where nothing is being recorded.
        """
        running = self._running
        if running is None:
            raise PlainFailure("Nothing is being recorded.", "Record first, then mark.")
        running.mark(at_s)

    def wait_until_heard(self, timeout_s: float = 10.0) -> bool:
        """Wait until the input delivers; some sound servers take a second or two."""
        recorder = self._recorder
        return recorder is not None and recorder.wait_until_heard(timeout_s)

    def stop(self) -> PendingTake:
        """Stop the recording; what was recorded is safe on disk.

        Raises
        ------
        PlainFailure
            Where nothing was recorded.
        """
        with self._lock:
            running, recorder = self._running, self._recorder
            if running is None or recorder is None:
                raise PlainFailure("Nothing is being recorded.", "Start a recording first.")
            if self._guides.is_playing:
                running.keep_beats(self._guides.stop())
            pending = running.pending
            self._running = self._recorder = self._armed = None
            try:
                with plain_failures():
                    recorded = recorder.stop()
            except PlainFailure:
                self._forget(pending)
                raise
            finally:
                self._inputs.closed(recorder)
            if recorded is None:
                self._forget(pending)
                raise PlainFailure("Nothing was recorded.", "Check the input, then try again.")
            stopped = unfiled.stopped(pending, recorded)
            if stopped.pcm == pending.pcm:
                with suppress(PlainFailure, OSError):
                    unfiled.write_note(stopped)  # what was lost is known only now
            self._attempts.ended(stopped)
            self._touch_clock()
            return stopped

    def poll(self) -> PendingTake | None:
        """Give the recording that ended by itself, once (instant).

        The device was lost or the disk is full, :attr:`PendingTake.ended` says which; or
        an armed recording was followed by silence.

        Raises
        ------
        PlainFailure
            Where it ended before any sound arrived, or an armed one could not begin;
            nothing is recorded any more then.
        """
        recorder, armed = self._recorder, self._armed
        if recorder is None:
            return None
        if self._running is None:
            if armed is not None and (self._armed_failure or recorder.state == "ended"):
                self._give_up_armed(recorder)
            return None
        if recorder.state != "ended" and not (armed and armed.is_over):
            return None
        return self.stop()

    def finish(
        self,
        pending: PendingTake,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> TakeRow:
        """Encode, verify, tag and file a recording; only then remove its PCM.

        Raises
        ------
        PlainFailure
            Where anything goes wrong: the PCM stays and :meth:`unfinished` gives it.
        Stopped
            Once `should_stop` says so; the PCM stays.
        """
        return self._rows.of_take(self._finisher.finish(pending, progress, should_stop))

    def unfinished(self) -> tuple[PendingTake, ...]:
        """Give recordings that a crash or a failure left unfiled, the oldest first.

        What an earlier run began and never heard anything in is removed.
        """
        if not self._store.read_only:
            unfiled.remove_empty(self._store.folders, self._begun)
        running = self._running.pending if self._running else None

        def default() -> PlayingSettings:
            return self._store.settings.get().default_settings

        return tuple(
            pending
            for pending in unfiled.left_behind(self._store.folders, default)
            if running is None or pending.pcm != running.pcm
        )

    def discard(self, pending: PendingTake) -> None:
        """Move an unfiled recording to the journal's trash.

        Raises
        ------
        PlainFailure
            Where it was made without retakes: it is kept whatever it is.
        """
        if pending.no_retake:
            raise PlainFailure(
                "This is the day's one take of its passage: it is kept whatever it is.",
                "Keep it; an ordinary day is what it is there to show.",
            )
        today = self._clock().date()
        for path in tuple(unfiled.files_of(pending)):
            self._store.folders.to_trash(path, today)

    def close(self) -> None:
        """Stop everything; a running recording stays as an unfiled one."""
        self.disarm()
        if self.is_recording:
            try:
                self.stop()
            except PlainFailure:
                return
        self.stop_listening()

    def _is_other(self, device_key: str | None) -> bool:
        """Whether the open input is another one than is wanted, or at another channel."""
        if device_key != self._device_key:
            return True
        return self._inputs.channel_of(self._input.device) != self._channel

    def _with_input(self, pending: PendingTake) -> PendingTake:
        used = self._input
        return replace(
            pending, input_device=used.device, input_channel=used.channel, input_note=used.note
        )

    def _new_pending(
        self, passage_id: str | None, aim: str, settings: PlayingSettings | None
    ) -> PendingTake:
        if passage_id is not None and settings is None:
            passage = passage_there(self._store, passage_id)
            settings = passage.settings
        allowed = self._attempts.permission(passage_id)
        take_id = uuid.uuid4().hex
        pcm = unfiled.pcm_file(self._store.folders, take_id)
        self._begun.add(pcm)
        return PendingTake(
            id=take_id,
            pcm=pcm,
            started_at=self._clock(),
            duration_s=0.0,
            passage_id=passage_id,
            aim=aim,
            settings=settings or self._store.settings.get().default_settings,
            no_retake=allowed.under_rule,
            retake_reason=allowed.after_failure,
        )

    def _forget(self, pending: PendingTake) -> None:
        """Leave nothing of a recording without any sound."""
        unfiled.remove(pending)
        self._attempts.nothing_came(pending)

    def _check_open(self) -> None:
        if self._store.read_only:
            raise PlainFailure("This journal is open for looking only.", "Open it to write.")

    def _begin_armed(self, recorder: "Recorder", pending: PendingTake, since_s: float) -> None:
        """Begin a take from the recorder's own thread: without the lock, which may wait for it."""
        before_s = PRE_ROLL_S + since_s
        begun = replace(pending, started_at=self._clock() - timedelta(seconds=before_s))
        try:
            with plain_failures("the recording did not start"):
                begun.pcm.parent.mkdir(parents=True, exist_ok=True)
                unfiled.write_note(begun)
                recorder.begin(begun.pcm, before_s)
        except PlainFailure as failure:
            unfiled.remove(begun)
            self._armed_failure = failure
            return
        self._running = unfiled.Running(begun)
        with suppress(PlainFailure):  # tried again once it has ended
            self._attempts.begun(begun)

    def _keep_beats(self, beats: ClickBeats | None) -> None:
        """Keep the beats of a click that sounds since before its take began."""
        if (running := self._running) is not None:
            running.keep_beats(beats)

    def _give_up_armed(self, recorder: "Recorder") -> None:
        with self._lock:
            failure = self._armed_failure
            self._recorder = self._armed = self._armed_failure = None
            self._guides.stop()
            try:
                with plain_failures():
                    recorder.stop()
            finally:
                self._inputs.closed(recorder)
            if failure is not None:
                raise failure

    def _opened(
        self,
        device_key: str | None,
        *,
        pre_roll_s: float = 0.0,
        on_block: "Callable[[NDArray[np.float32]], None] | None" = None,
    ) -> "Recorder":
        recorder, self._input = self._inputs.open(
            device_key, pre_roll_s=pre_roll_s, on_block=on_block
        )
        self._channel = self._inputs.channel_of(self._input.device)
        self._levels.forget()
        return recorder
