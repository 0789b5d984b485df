"""Click, count-in and drone while a take is recorded, and where their beats lie in it.

The output and the input each have a clock of their own. Where a place of the click's
sound lies in the take is worked out from both several times a second; a straight line
through all of it gives the beats on the take's own clock, whatever the two drift apart,
and the round trip that was measured for the devices is added.
"""

import threading
from collections.abc import Callable
from dataclasses import replace
from typing import TYPE_CHECKING, Protocol

from app.journal.clicks import ClickBeats, RoundTripRecord
from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.guide_settings import GuideSettings, checked, drone_hz
from app.services.inputs import output_buffer_s
from app.services.plain import plain_failures
from app.store.store import Store

if TYPE_CHECKING:
    from audio.player import Player
    from audio.sources import SoundSource

LARGEST_STEP_S = 0.010
"""A click that jumps by more than this in its take is no anchor."""

_RATE_HZ = 48_000
_SAMPLE_EVERY_S = 0.2
_KEEP_EVERY = 10  # samples: what is known of the beats is kept every two seconds
_FEWEST_PAIRS = 3
_SETTLING_S = 3.0
_WANDERING_S = 0.003
_USUAL_DRIFT = 1e-4


class Places(Protocol):
    """Says where in a take a moment was recorded: :class:`audio.recorder.Recorder`."""

    def take_s_at(self, clock_s: float) -> float | None:
        """Give seconds of the take; None where there is none."""


def straight_line(pairs: list[tuple[float, float]]) -> tuple[float, float, float] | None:
    """Fit ``y = a + b x`` to two clocks that run nearly alike.

    The slope of least squares is drawn towards 1 as far as the pairs leave it open: two
    sound devices differ by a ten-thousandth at most (common practice, no source), and
    readings of their clocks wander by some milliseconds.

    Returns
    -------
    a, b, largest : float
        With the largest distance of a pair from the line; ``None`` for fewer than three
        pairs or pairs without any extent.
    """
    count = len(pairs)
    if count < _FEWEST_PAIRS:
        return None
    mean_x = sum(x for x, _ in pairs) / count
    mean_y = sum(y for _, y in pairs) / count
    extent = sum((x - mean_x) ** 2 for x, _ in pairs)
    length_s = max(x for x, _ in pairs) - min(x for x, _ in pairs)
    if extent <= 0:
        return None
    found = sum((x - mean_x) * (y - mean_y) for x, y in pairs) / extent
    doubt = (_WANDERING_S / length_s) ** 2
    b = 1.0 + (found - 1.0) * _USUAL_DRIFT**2 / (_USUAL_DRIFT**2 + doubt)
    a = mean_y - b * mean_x
    return a, b, max(abs(y - a - b * x) for x, y in pairs)


def _settled(pairs: list[tuple[float, float]]) -> list[tuple[float, float]]:
    """Leave out the first seconds, in which the streams' clocks find their feet."""
    late = [pair for pair in pairs if pair[1] >= _SETTLING_S]
    half = pairs[len(pairs) // 2 :]
    return late if len(late) >= len(half) else half


def beats_of(
    pairs: list[tuple[float, float]], settings: GuideSettings, offset_s: float = 0.0
) -> ClickBeats | None:
    """Work out the beats of a click in a take.

    Parameters
    ----------
    pairs : list of (float, float)
        Places in the click's sound and where they are in the take, as the drivers say,
        both in seconds.
    settings : GuideSettings
        With a click.
    offset_s : float
        Sound is recorded this much later than the drivers say.

    Returns
    -------
    ClickBeats or None
        ``None`` without a click, after a count-in alone, and where the pairs do not lie
        on a straight line: the click stumbled, and false beats are worse than none.
    """
    line = straight_line(_settled(pairs))
    if settings.click_bpm is None or line is None or not settings.goes_on:
        return None
    start_s, pace, largest_s = line
    if largest_s > LARGEST_STEP_S:
        return None
    return ClickBeats(
        first_beat_s=start_s + pace * settings.count_in_s + offset_s,
        interval_s=pace * 60.0 / settings.click_bpm,
        beats_a_bar=settings.beats_a_bar,
    )


def with_pulse(playing: PlayingSettings, guides: GuideSettings) -> PlayingSettings:
    """State the tempo of a click as the beat that is meant: it holds whatever becomes of it."""
    if guides.click_bpm is None:
        return playing
    return replace(playing, pulse_bpm=guides.click_bpm)


class GuidePlayer:
    """Plays click and drone, and notes where they are in the take that is recorded.

    :meth:`start` opens the output and takes a moment; :meth:`stop` is quick.
    """

    def __init__(self, store: Store) -> None:
        self._store = store
        self._player: Player | None = None
        self._settings = GuideSettings()
        self._output_key = ""
        self._offset_s = 0.0
        self._pairs: list[tuple[float, float]] = []
        self._quit = threading.Event()
        self._noting: threading.Thread | None = None

    @property
    def is_playing(self) -> bool:
        """Whether a guide is on (instant)."""
        return self._player is not None

    def prepare(self, settings: GuideSettings) -> None:
        """Open the output with everything ready to sound.

        Raises
        ------
        PlainFailure
            Where the settings make no sense or there is no output.
        """
        from audio.devices import find_device  # noqa: PLC0415 - loads PortAudio
        from audio.player import Player  # noqa: PLC0415

        self.stop()
        source = _source_of(checked(settings))
        with plain_failures():
            device = find_device("output", self._store.settings.get().output_device)
            player = Player(device, latency_s=output_buffer_s(self._store))
            player.open()
        player.load(source, _RATE_HZ)
        self._settings, self._output_key, self._player = settings, device.key, player
        if not player.wait_until_running():
            self.stop()
            raise PlainFailure("The sound output does not run.", "Check that it is plugged in.")

    def play(
        self,
        places: Places,
        keep: Callable[[ClickBeats | None], None] | None = None,
        input_key: str = "",
    ) -> None:
        """Sound from now on, into a take that is recorded already or begins later.

        Parameters
        ----------
        places : Places
            Says where in the take a moment lies.
        keep : callable, optional
            Given the beats as they are known so far, every two seconds.
        input_key : str
            What is recorded from, to find the round trip of the two devices.
        """
        player = self._player
        if player is None:
            raise RuntimeError("a guide is prepared before it plays")
        with plain_failures():
            player.play()
        known = round_trip(self._store, self._output_key, input_key)
        self._offset_s = known.offset_s if known else 0.0
        self._pairs = []
        self._quit.clear()
        self._noting = threading.Thread(
            target=self._note, args=(player, places, keep), name="guide", daemon=True
        )
        self._noting.start()

    def stop(self) -> ClickBeats | None:
        """Fall silent.

        Returns
        -------
        ClickBeats or None
            The beats in the take; see :func:`beats_of`.
        """
        self._quit.set()
        if self._noting is not None:
            self._noting.join()
            self._noting = None
        player, self._player = self._player, None
        if player is None:
            return None
        player.close()
        return beats_of(self._pairs, self._settings, self._offset_s)

    def _note(
        self,
        player: "Player",
        places: Places,
        keep: Callable[[ClickBeats | None], None] | None,
    ) -> None:
        while not self._quit.wait(_SAMPLE_EVERY_S):
            position_s = player.position_s
            heard_s = player.heard_at_s(position_s) if player.is_playing else None
            place_s = None if heard_s is None else places.take_s_at(heard_s)
            if place_s is not None:
                self._pairs.append((position_s, place_s))
                if keep is not None and len(self._pairs) % _KEEP_EVERY == 0:
                    keep(beats_of(self._pairs, self._settings, self._offset_s))


def round_trip(store: Store, output_key: str, input_key: str) -> RoundTripRecord | None:
    """Give what was measured of a pair of devices."""
    for known in store.settings.get().round_trips:
        if (known.output_device, known.input_device) == (output_key, input_key):
            return known
    return None


def _source_of(settings: GuideSettings) -> "SoundSource":
    from audio.guides import Click, Drone, FirstPart, Together  # noqa: PLC0415 - numpy

    sources: list[SoundSource] = []
    if settings.drone.strip():
        sources.append(Drone(drone_hz(settings), _RATE_HZ, level_dbfs=settings.level_dbfs - 6.0))
    if settings.click_bpm is not None:
        usual = (1.0, *(0.6,) * (settings.beats_a_bar - 1))
        click: SoundSource = Click(
            settings.click_bpm,
            _RATE_HZ,
            accents=settings.accents or usual,
            level_dbfs=settings.level_dbfs,
        )
        if not settings.goes_on:
            # Up to just before the first beat of the take.
            click = FirstPart(click, round((settings.count_in_s - 0.02) * _RATE_HZ))
        sources.append(click)
    if not sources:
        raise PlainFailure("There is nothing to play.", "Choose a click or a drone.")
    return Together(sources)
