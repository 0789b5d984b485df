"""First listen, then look: measurements wait until the player has marked what was heard."""

from dataclasses import replace
from datetime import datetime

import numpy as np

from app.journal.failures import PlainFailure
from app.journal.first_listen import (
    FirstListen,
    agreement,
    measured_places,
    placed_by_ear,
)
from app.journal.practice_days import Clock
from app.journal.records import Marker
from app.services.listening import ListeningService
from app.services.reading_views import NoReading
from app.services.rows import HIDDEN
from app.services.suggesting import SuggestingService
from app.services.suggestion_views import AgreementRow, AgreementView, FirstListenView
from app.services.suggestion_words import place_text
from app.services.views import Curve, TakeView
from app.services.wording import counted
from app.store.store import Store


class FirstListenService:
    """Hides what was measured on a take until the ear has spoken, then compares the two."""

    def __init__(
        self,
        store: Store,
        clock: Clock,
        listening: ListeningService,
        suggesting: SuggestingService,
    ) -> None:
        self._store = store
        self._clock = clock
        self._listening = listening
        self._suggesting = suggesting

    def open_take(self, take_id: str) -> TakeView:
        """Give what the Listen page draws of a take, without what is still hidden.

        Raises
        ------
        PlainFailure
            Where there is no such take.
        """
        view = self._listening.open_take(take_id)
        is_hidden = (
            self._store.settings.get().ear_first_since is not None
            and self._store.first_listens.get(take_id) is None
        )
        return hidden(view) if is_hidden else view

    def switch(self, on: bool) -> None:
        """Let the ear come first in this journal from now on, or no longer."""
        settings = self._store.settings.get()
        if on == (settings.ear_first_since is not None):
            return
        since = self._clock() if on else None
        self._store.settings.replace(replace(settings, ear_first_since=since))

    def state(self, take_id: str) -> FirstListenView:
        """Say whether a take's measurements may be seen, and how ear and numbers compare.

        Raises
        ------
        PlainFailure
            Where there is no such take.
        """
        since = self._store.settings.get().ear_first_since
        listen = self._store.first_listens.get(take_id)
        markers = self._store.markers.for_take(take_id)
        if listen is None:
            heard = placed_by_ear(markers, since) if since is not None else ()
            return FirstListenView(since is not None, since is not None, heard, None)
        heard = placed_by_ear(markers, listen.began_at, listen.shown_at)
        return FirstListenView(
            since is not None, False, heard, listen.shown_at, self._compare(take_id, heard)
        )

    def show(self, take_id: str, *, heard_nothing: bool = False) -> FirstListenView:
        """Show what was measured on a take from now on.

        Parameters
        ----------
        take_id : str
        heard_nothing : bool
            The player has listened and found nothing to mark.

        Raises
        ------
        PlainFailure
            Where nothing was marked by ear yet.
        """
        state = self.state(take_id)
        if not state.is_hidden:
            return state
        if not state.own_markers and not heard_nothing:
            raise PlainFailure(
                "No marker of yours stands on this take yet.",
                "Mark what you hear, or say that you heard nothing to mark.",
            )
        now = self._clock()
        since: datetime = self._store.settings.get().ear_first_since or now
        self._store.first_listens.add(FirstListen(take_id, since, max(now, since)))
        return self.state(take_id)

    def _compare(self, take_id: str, heard: tuple[Marker, ...]) -> AgreementView:
        found = agreement(measured_places(self._suggesting.findings(take_id)), heard)
        rows = [
            AgreementRow(
                "hit",
                hit.place.start_s,
                hit.place.end_s,
                place_text(hit.place),
                ", ".join(dict.fromkeys(_marker_text(marker) for marker in hit.markers)),
            )
            for hit in found.hits
        ]
        rows += [
            AgreementRow("missed", place.start_s, place.end_s, place_text(place), "")
            for place in found.missed
        ]
        rows += [
            AgreementRow(
                "heard_only",
                marker.start_s,
                marker.start_s if marker.end_s is None else marker.end_s,
                "",
                _marker_text(marker),
            )
            for marker in found.heard_only
        ]
        rows.sort(key=lambda row: (row.start_s, row.end_s))
        hits, missed, alone = len(found.hits), len(found.missed), len(found.heard_only)
        return AgreementView(tuple(rows), hits, missed, alone, _sum(hits, missed, alone))


def hidden(view: TakeView) -> TakeView:
    """Give a take as it looks while nothing measured is shown; its sound and markers stay."""
    nothing = NoReading(HIDDEN)
    row = replace(
        view.row,
        intonation=nothing,
        tempo=nothing,
        dynamics=nothing,
        notice=HIDDEN,
        state="waiting",
    )
    return replace(
        view,
        row=row,
        summary=(),
        notes=(),
        notes_sentence=HIDDEN,
        pitch_cents=Curve((), view.pitch_cents.unit, HIDDEN),
        tempo_bpm=Curve((), view.tempo_bpm.unit, HIDDEN),
        beat_s=np.empty(0),
        loudness_lufs=Curve((), view.loudness_lufs.unit, HIDDEN),
        places=(),
        notices=(),
    )


def _marker_text(marker: Marker) -> str:
    return f"{marker.category}: {marker.text}" if marker.text else marker.category


def _sum(hits: int, missed: int, alone: int) -> str:
    if not hits and not missed:
        measured = "Nothing was measured outside its uncertainty."
    else:
        measured = f"{hits} of {counted(hits + missed, 'measured place')} heard and marked."
    if not alone:
        return measured
    return f"{measured} {counted(alone, 'marker')} where nothing of the kind was measured."
