"""What the Listen page draws of a take."""

from collections.abc import Iterator
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from app.journal.records import MeasurementHeadline, Take
from app.services.findings import finding_readings, notice_sentences, place_rows
from app.services.lanes import Lanes, lanes_of
from app.services.latest import Latest
from app.services.measuring import MeasuringService
from app.services.plain import plain_failures
from app.services.readings import named_readings
from app.services.records_there import take_there
from app.services.rows import Rows
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    stop_if,
)
from app.services.views import TakeView, Waveform
from app.store.store import Store

if TYPE_CHECKING:
    from audio.peaks import Peaks

_MOST_IN_MEMORY = 4
_NOT_MEASURED = "Not measured yet."


class ListeningService:
    """Prepares a take's lanes, already sized for the screen."""

    def __init__(self, store: Store, measuring: MeasuringService) -> None:
        self._store = store
        self._measuring = measuring
        self._rows = Rows(store)
        self._peaks: Latest[str, Peaks] = Latest(_MOST_IN_MEMORY)
        self._lanes: Latest[tuple[str, object], Lanes] = Latest(_MOST_IN_MEMORY)

    def open_take(self, take_id: str) -> TakeView:
        """Give everything the Listen page draws of one take.

        A take that is not measured yet has empty lanes that say so.
        """
        take = take_there(self._store, take_id)
        row = self._rows.of_take(take)
        summary = self._store.measurements.summaries((take_id,)).get(take_id, {})
        found = self._lanes_of(take_id, self._store.measurements.headline(take_id))
        return TakeView(
            row=row,
            passage=self._store.passages.get(take.passage_id),
            settings=take.settings,
            duration_s=take.duration_s,
            summary=(*named_readings(summary), *finding_readings(summary)),
            markers=self._store.markers.for_take(take_id),
            categories=self._store.settings.get().categories,
            notes=found.notes,
            notes_sentence=found.notes_sentence,
            pitch_cents=found.pitch_cents,
            tempo_bpm=found.tempo_bpm,
            beat_s=found.beat_s,
            loudness_lufs=found.loudness_lufs,
            places=place_rows(summary),
            notices=notice_sentences(summary),
        )

    def _lanes_of(self, take_id: str, kept: MeasurementHeadline | None) -> Lanes:
        """Give a take's lanes; of the last few takes they are still there."""
        if kept is None or kept.failure:
            return lanes_of(None, (kept.failure if kept else "") or _NOT_MEASURED)
        known = (take_id, kept.measured_at)
        found = self._lanes.get(known)
        if found is None:
            found = lanes_of(self._measuring.analysis(take_id), _NOT_MEASURED)
            self._lanes.put(known, found)
        return found

    def forget_lanes(self) -> None:
        """Read the lanes of every take again when it is opened next."""
        self._lanes.clear()

    def prepare(
        self,
        take_id: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> None:
        """Build the waveform's overview once; it is kept in the journal's cache folder.

        Raises
        ------
        PlainFailure
            Where the take's file cannot be read.
        """
        self._overview(take_id, progress, should_stop)
        progress(1.0)

    def waveform(self, take_id: str, start_s: float, end_s: float, columns: int) -> Waveform:
        """Give lowest and highest sample per screen column between two times.

        Instant once :meth:`prepare` ran for the take; otherwise it runs first.
        """
        peaks = self._peaks.get(take_id)
        if peaks is None:
            peaks = self._overview(take_id, no_progress, never_stop)
        start_s = max(0.0, start_s)
        end_s = min(peaks.duration_s, end_s)
        low, high = peaks.columns(start_s, end_s, max(1, columns))
        edges = np.linspace(start_s, max(start_s, end_s), low.size + 1)
        return Waveform(edges[:-1], low.astype(np.float64), high.astype(np.float64))

    def _overview(self, take_id: str, progress: Progress, should_stop: ShouldStop) -> "Peaks":
        from audio.files import open_sound  # noqa: PLC0415 - libsndfile, only when needed
        from audio.peaks import Peaks, build_peaks  # noqa: PLC0415

        known = self._peaks.get(take_id)
        if known is not None:
            return known
        take = take_there(self._store, take_id)
        cached = Peaks.load(self._cache_file(take))
        if cached is None:
            path = self._store.folders.absolute(take.file)
            total = max(1.0, take.duration_s * take.sample_rate_hz)

            with plain_failures("the take was not read"), open_sound(path) as sound:

                def blocks() -> Iterator[NDArray[np.float32]]:
                    for block in sound.blocks():
                        stop_if(should_stop)
                        progress(min(1.0, sound.frames_read / total))
                        yield block

                cached = build_peaks(blocks(), sound.info.sample_rate_hz)
            self._save(cached, take)
        self._peaks.put(take_id, cached)
        return cached

    def _save(self, peaks: "Peaks", take: Take) -> None:
        if self._store.read_only:
            return
        try:
            peaks.save(self._cache_file(take))
        except OSError:
            return  # a cache can do without: the overview is built again next time

    def _cache_file(self, take: Take) -> Path:
        return self._store.folders.cache / "peaks" / f"{take.sha256[:32]}.npz"
