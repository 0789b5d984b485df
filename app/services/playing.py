"""Playing a take."""

from collections.abc import Callable, Sequence
from contextlib import suppress
from typing import TYPE_CHECKING

from app.journal.failures import PlainFailure
from app.services.guide_settings import GuideSettings, checked, drone_hz
from app.services.heard_sound import HeardSound, heard_sound
from app.services.inputs import output_buffer_s
from app.services.plain import plain_failures
from app.services.stopping import Progress, ShouldStop, never_stop, no_progress, stop_if
from app.services.views import InputRow, PlaybackState
from app.store.store import Store
from audio.errors import AudioFailure

if TYPE_CHECKING:
    from audio.player import Player
    from audio.sources import SoundSource


class PlayingService:
    """Plays one take at a time, and keeps another one ready to go over to.

    :meth:`load`, :meth:`keep_ready`, :meth:`outputs` and :meth:`choose_output` may take a while;
    everything else is instant.
    """

    def __init__(self, store: Store) -> None:
        self._store = store
        self._player: Player | None = None
        self._device_key: str | None = None
        self._loop: tuple[float, float] | None = None
        self._heard: HeardSound | None = None
        self._ready: HeardSound | None = None
        self._volume = 1.0
        self._speed = 1.0

    def outputs(self) -> tuple[InputRow, ...]:
        """Give the playback outputs; empty where there are none."""
        from audio.devices import output_devices  # noqa: PLC0415 - loads PortAudio

        try:
            found = output_devices()
        except AudioFailure:
            return ()
        return tuple(InputRow(d.key, d.name, d.channels, d.is_default) for d in found)

    def choose_output(self, device_key: str | None) -> None:
        """Play through another output from the next :meth:`load` on."""
        self._device_key = device_key
        self.unload()

    def load(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
        *,
        gain_db: float = 0.0,
    ) -> None:
        """Make a take ready to play, and open the output if there is one.

        Parameters
        ----------
        take_id : str
        gain_db : float
            What is added to its level, at most 0.

        Raises
        ------
        PlainFailure
            Where the take is not there or cannot be read. A missing output is told
            by :meth:`play`.
        """
        player = self._ready_player()
        # A new output sounds only after a while: it warms up while the take is read.
        with suppress(AudioFailure):
            player.open()
        sound = self._read(take_id, gain_db, progress, should_stop)
        stop_if(should_stop)
        progress(0.8)
        player.load(sound.source, sound.sample_rate_hz)
        player.loop_off()
        self._loop = None
        self._keep(sound, self._ready)
        progress(1.0)

    def keep_ready(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
        *,
        gain_db: float = 0.0,
    ) -> None:
        """Make another take ready, for :meth:`switch`; what plays plays on.

        Raises
        ------
        PlainFailure
            Where the take is not there or cannot be read.
        """
        sound = self._read(take_id, gain_db, progress, should_stop)
        stop_if(should_stop)
        self._keep(self._heard, sound)
        progress(1.0)

    @property
    def ready_take_id(self) -> str:
        """The take that :meth:`switch` goes over to; empty where there is none."""
        return self._ready.take_id if self._ready is not None else ""

    def switch(self, place: Callable[[float], float]) -> None:
        """Go over to the take that is kept ready, playing or not, without a gap.

        What was heard is kept ready from then on, so that it goes back and forth.

        Parameters
        ----------
        place : callable
            Gives the place in the other take, in seconds, for a place in the one of
            now; a loop is moved with it.

        Raises
        ------
        PlainFailure
            Where no other take was read yet.
        """
        if self._player is None or self._ready is None:
            raise PlainFailure("The other take is not read yet.", "Wait a moment and try again.")
        self._heard, self._ready = self._ready, self._heard
        self._player.switch(self._heard.source, self._heard.sample_rate_hz, place)
        if self._loop is not None:
            self._loop = (place(self._loop[0]), place(self._loop[1]))

    def play_along(
        self,
        guides: GuideSettings | None,
        *,
        beat_s: Sequence[float] = (),
        first_beat_s: float = 0.0,
    ) -> None:
        """Let a click or a drone sound with the take, or neither; :meth:`load` ends it.

        They are mixed into the take before it is slowed, so they keep in step with it
        at every speed and in every loop. What plays goes on without a gap.

        Parameters
        ----------
        guides : GuideSettings or None
            Tempo, drone and its tuning, volume; ``None``: the take alone.
        beat_s : sequence of float
            Beats of the take; the click falls on these instead of a steady tempo.
        first_beat_s : float
            Where the first beat of a steady click is.

        Raises
        ------
        PlainFailure
            Where the guides make no sense.
        """
        heard = self._heard
        if self._player is None or heard is None:
            return
        source = heard.source
        if guides is not None and not guides.is_silent:
            source = _with_guides(heard, checked(guides), beat_s, first_beat_s)
        self._player.switch(source, heard.sample_rate_hz, lambda place: place)

    def unload(self) -> None:
        """Stop, forget the takes and close the output."""
        player, self._player = self._player, None
        if player is not None:
            player.close()
        self._keep(None, None)
        self._loop = None

    def play(self) -> None:
        """Play from the position; PlainFailure where there is nothing to play on."""
        if self._player is None:
            raise PlainFailure("No take is open.", "Open a take first.")
        with plain_failures():
            self._player.play()

    def pause(self) -> None:
        """Stop at the position."""
        if self._player is not None:
            self._player.pause()

    def toggle(self) -> None:
        """Play or pause."""
        if self._player is not None and self._player.is_playing:
            self.pause()
        else:
            self.play()

    def seek(self, position_s: float) -> None:
        """Move the position; held within the take."""
        if self._player is not None:
            self._player.seek(position_s)

    def set_loop(self, start_s: float | None, end_s: float | None = None) -> None:
        """Repeat a span; ``set_loop(None)`` plays straight on."""
        if self._player is None:
            return
        if start_s is None or end_s is None:
            self._loop = None
            self._player.loop_off()
            return
        self._loop = (min(start_s, end_s), max(start_s, end_s))
        self._player.loop(*self._loop)

    def set_speed(self, speed: float) -> None:
        """Set the speed, 0.25 to 1.5, pitch unchanged."""
        self._speed = speed
        if self._player is not None:
            self._player.speed = speed
            self._speed = self._player.speed

    def set_volume(self, volume: float) -> None:
        """Set the volume, 0 to 1."""
        self._volume = min(max(float(volume), 0.0), 1.0)
        if self._player is not None:
            self._player.volume = self._volume

    def state(self) -> PlaybackState:
        """Say where playback stands, from the stream's own clock."""
        player = self._player
        if player is None:
            return PlaybackState(0.0, False, None, self._speed, self._volume)
        return PlaybackState(
            player.position_s, player.is_playing, self._loop, player.speed, player.volume
        )

    def failure(self) -> PlainFailure | None:
        """Say why the output went away by itself, if it did."""
        found = self._player.failure if self._player is not None else None
        return PlainFailure(found.sentence, found.next_step) if found is not None else None

    def _read(
        self, take_id: str, gain_db: float, progress: Progress, should_stop: ShouldStop
    ) -> HeardSound:
        for known in (self._heard, self._ready):
            if known is not None and (known.take_id, known.gain_db) == (take_id, gain_db):
                return known
        return heard_sound(self._store, take_id, gain_db, progress, should_stop)

    def _keep(self, heard: HeardSound | None, ready: HeardSound | None) -> None:
        """Keep these sounds and let go of the files of all others."""
        before = (self._heard, self._ready)
        self._heard, self._ready = heard, ready
        for sound in before:
            if sound is not None and sound is not heard and sound is not ready:
                sound.close()

    def _ready_player(self) -> "Player":
        if self._player is None:
            from audio.devices import find_device  # noqa: PLC0415 - loads PortAudio
            from audio.player import Player  # noqa: PLC0415

            device = None
            if self._device_key is not None:
                try:
                    device = find_device("output", self._device_key)
                except AudioFailure:
                    device = None  # the remembered output is gone: the default one plays
            self._player = Player(device, latency_s=output_buffer_s(self._store))
            self._player.volume = self._volume
            self._player.speed = self._speed
        return self._player


def _with_guides(
    heard: HeardSound, guides: GuideSettings, beat_s: Sequence[float], first_beat_s: float
) -> "SoundSource":
    from audio.beat_click import BeatClick  # noqa: PLC0415 - only when wanted
    from audio.guides import Click, Drone, Together  # noqa: PLC0415

    rate, level = heard.sample_rate_hz, guides.level_dbfs
    sources: list[SoundSource] = [heard.source]
    if guides.click_bpm is not None and len(beat_s):
        sources.append(BeatClick(beat_s, rate, level_dbfs=level))
    elif guides.click_bpm is not None:
        beat = 60.0 / guides.click_bpm
        sources.append(
            Click(
                guides.click_bpm,
                rate,
                accents=guides.accents or (0.6,),
                first_beat_s=first_beat_s % beat,
                level_dbfs=level,
            )
        )
    if guides.drone.strip():
        sources.append(Drone(drone_hz(guides), rate, level_dbfs=level))
    return Together(sources)
