"""The round trip from an output back to an input, measured once for each pair of devices."""

from dataclasses import replace

from app.journal.clicks import RoundTripRecord
from app.journal.failures import PlainFailure
from app.journal.practice_days import Clock
from app.services.guides import round_trip
from app.services.inputs import Inputs, output_buffer_s
from app.services.plain import plain_failures
from app.services.stopping import ShouldStop, Stopped, never_stop
from app.store.store import Store

SWEEP_CAUTION = "Short, fairly loud sweeps are played: take headphones off your ears first."


class LatencyService:
    """Measures what the drivers do not know of the delay, and remembers it."""

    def __init__(self, store: Store, clock: Clock, inputs: Inputs) -> None:
        self._store = store
        self._inputs = inputs
        self._clock = clock

    def known(
        self, output_key: str | None = None, input_key: str | None = None
    ) -> RoundTripRecord | None:
        """Give what was measured of two devices; the journal's own where left out.

        Raises
        ------
        PlainFailure
            Where there is no device.
        """
        output, source = self._keys(output_key, input_key)
        return round_trip(self._store, output, source)

    def measure(
        self,
        output_key: str | None = None,
        input_key: str | None = None,
        should_stop: ShouldStop = never_stop,
    ) -> RoundTripRecord:
        """Play sweeps, listen for them and keep the result; about six seconds.

        The microphone has to hear the loudspeaker, or a cable joins output and input.
        Show :data:`SWEEP_CAUTION` before.

        Raises
        ------
        PlainFailure
            Where there is no device, or the sweeps were not heard clearly.
        Stopped
            Once `should_stop` says so.
        """
        from audio.devices import find_device  # noqa: PLC0415 - loads PortAudio
        from audio.round_trip import measure_round_trip  # noqa: PLC0415

        if self._store.read_only:
            raise PlainFailure("This journal is open for looking only.", "Open it to write.")
        output, source = self._keys(output_key, input_key)
        channel = self._inputs.chosen(source).channel
        with self._inputs.lent(source), plain_failures():
            found = measure_round_trip(
                find_device("output", output),
                find_device("input", source),
                buffer_s=output_buffer_s(self._store),
                first_channel=None if channel is None else channel - 1,
                should_stop=should_stop,
            )
        if found is None:
            raise Stopped
        record = RoundTripRecord(output, source, found.offset_s, found.scatter_s, self._clock())
        with self._store.transaction():
            settings = self._store.settings.get()
            others = tuple(
                other
                for other in settings.round_trips
                if (other.output_device, other.input_device) != (output, source)
            )
            self._store.settings.replace(replace(settings, round_trips=(*others, record)))
        return record

    def _keys(self, output_key: str | None, input_key: str | None) -> tuple[str, str]:
        from audio.devices import find_device  # noqa: PLC0415 - loads PortAudio

        settings = self._store.settings.get()
        with plain_failures():
            output = find_device("output", output_key or settings.output_device)
            source = find_device("input", input_key or settings.input_device)
        return output.key, source.key
