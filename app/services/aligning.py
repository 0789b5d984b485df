"""Alignments of takes, made once and kept until a take is measured again."""

import json
import struct
import zlib
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import numpy as np

from app.journal.failures import PlainFailure
from app.services.following_views import AlignedPair, OnlyKind, OnlyPart
from app.services.latest import Latest
from app.services.long_sounds import read_for_measuring
from app.services.measuring import MeasuringService
from app.services.records_there import take_there
from app.services.stopping import (
    Progress,
    ShouldStop,
    never_stop,
    no_progress,
    part_of,
    stop_if,
    stopped_by,
)
from app.services.wording import length_text, position_text
from app.store.following import KeptAlignment
from app.store.store import Store

if TYPE_CHECKING:
    from analysis.alignment import Heard
    from analysis.results import Alignment, JudgedNote, Measured, NotMeasurable
    from analysis.slips import Slip

_HEADER = struct.Struct("<III")
_MOST_READY = 2
_LARGEST_READY_BYTES = 64_000_000
_SAYS: dict[OnlyKind, str] = {
    "before": "Before the passage begins",
    "after": "After the passage has ended",
    "repeated": "Played once more",
    "stopped": "A stop",
    "only_here": "Played in this take only",
}


class AligningService:
    """Finds equal musical moments of two takes; a pair is aligned once."""

    def __init__(self, store: Store, measuring: MeasuringService) -> None:
        self._store = store
        self._measuring = measuring
        self._ready: Latest[tuple[str, int, int], Heard] = Latest(_MOST_READY)

    def pair(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> AlignedPair:
        """Align two takes; quick where it was done before with the same measurements.

        A take that is not measured yet is measured first.

        Raises
        ------
        PlainFailure
            Where a take is not there or cannot be read, or it is the same take twice.
        """
        if take_a == take_b:
            raise PlainFailure("That is the same take twice.", "Choose another one.")
        notes_a = self._notes(take_a, part_of(progress, 0.0, 0.3), should_stop)
        notes_b = self._notes(take_b, part_of(progress, 0.3, 0.6), should_stop)
        kept = self._kept(take_a, take_b)
        if kept is not None:
            return kept
        reverse = self._kept(take_b, take_a)
        if reverse is not None:
            return reverse.swapped()
        stop_if(should_stop)
        found = self._align(
            (take_a, notes_a), (take_b, notes_b), part_of(progress, 0.6, 1.0), should_stop
        )
        return self._keep(take_a, take_b, found, (notes_a, notes_b))

    def alignment(
        self,
        take_a: str,
        take_b: str,
        progress: Progress = no_progress,
        should_stop: ShouldStop = never_stop,
    ) -> "Measured[Alignment] | NotMeasurable":
        """Give the alignment of two takes as the measuring code has it; see :meth:`pair`."""
        from analysis.alignment import ALGORITHM  # noqa: PLC0415 - numba, only when needed
        from analysis.results import (  # noqa: PLC0415
            Alignment,
            Measured,
            NotMeasurable,
            Provenance,
            Reason,
        )

        found = self.pair(take_a, take_b, progress, should_stop)
        provenance = Provenance(ALGORITHM, {"notes": True})
        if not found.aligned:
            return NotMeasurable(Reason(found.reason), found.sentence, provenance)
        return Measured(Alignment(found.a_s, found.b_s, found.confidence), provenance)

    def _notes(
        self, take_id: str, progress: Progress, should_stop: ShouldStop
    ) -> "Sequence[JudgedNote]":
        take_there(self._store, take_id)
        return self._measuring.analysed(take_id, progress, should_stop).notes

    def _kept(self, take_a: str, take_b: str) -> AlignedPair | None:
        kept = self._store.alignments.get(take_a, take_b)
        if kept is None or kept.made_from != self._made_from(take_a, take_b):
            return None
        return _read(kept)

    def _made_from(self, take_a: str, take_b: str) -> str:
        """Name what an alignment rests on: the algorithms and both measurements."""
        from analysis import alignment, slips  # noqa: PLC0415 - numba, only when needed

        headlines = self._store.measurements.headlines((take_a, take_b))
        made = [headlines[take_id].measured_at.isoformat() for take_id in (take_a, take_b)]
        return "|".join((alignment.ALGORITHM, slips.ALGORITHM, *made))

    def _align(
        self,
        a: "tuple[str, Sequence[JudgedNote]]",
        b: "tuple[str, Sequence[JudgedNote]]",
        progress: Progress,
        should_stop: ShouldStop,
    ) -> "Measured[Alignment] | NotMeasurable":
        from analysis.alignment import AlignmentStopped, align_heard  # noqa: PLC0415

        heard_a = self._heard(a[0], part_of(progress, 0.0, 0.4), should_stop)
        heard_b = self._heard(b[0], part_of(progress, 0.4, 0.7), should_stop)
        with stopped_by(AlignmentStopped):
            return align_heard(
                heard_a,
                heard_b,
                notes_a=a[1],
                notes_b=b[1],
                progress=part_of(progress, 0.7, 1.0),
                should_stop=should_stop,
            )

    def _heard(self, take_id: str, progress: Progress, should_stop: ShouldStop) -> "Heard":
        """Make a take ready, or give it from the last time: one is held against many."""
        from analysis.alignment import AlignmentStopped, hear  # noqa: PLC0415

        path = self._file(take_id)
        state = path.stat() if path.exists() else None
        key = (str(path), state.st_mtime_ns, state.st_size) if state else None
        ready = self._ready.get(key) if key is not None else None
        if ready is not None:
            return ready
        found = read_for_measuring(path, progress, should_stop)
        samples = found.sound.samples
        with stopped_by(AlignmentStopped):
            heard = hear(
                samples, found.sound.sample_rate_hz, should_stop=found.watched(should_stop)
            )
        progress(1.0)
        if key is not None and samples.nbytes <= _LARGEST_READY_BYTES:
            self._ready.put(key, heard)
        return heard

    def _keep(
        self,
        take_a: str,
        take_b: str,
        found: "Measured[Alignment] | NotMeasurable",
        notes: "tuple[Sequence[JudgedNote], Sequence[JudgedNote]]",
    ) -> AlignedPair:
        from analysis.results import NotMeasurable  # noqa: PLC0415
        from analysis.slips import slips  # noqa: PLC0415

        made_from = self._made_from(take_a, take_b)
        if isinstance(found, NotMeasurable):
            kept = KeptAlignment(take_a, take_b, made_from, str(found.reason), found.sentence)
        else:
            of_a, of_b = slips(found.value, *notes)
            kept = KeptAlignment(take_a, take_b, made_from, block=_block(found.value, of_a, of_b))
        if not self._store.read_only:
            self._store.alignments.put(kept)
        return _read(kept)

    def _file(self, take_id: str) -> Path:
        return self._store.folders.absolute(take_there(self._store, take_id).file)


def _block(alignment: "Alignment", of_a: "Sequence[Slip]", of_b: "Sequence[Slip]") -> bytes:
    told = [[(s.start_s, s.end_s, str(s.kind)) for s in side] for side in (of_a, of_b)]
    head = json.dumps({"confidence": alignment.confidence, "only": told}).encode()
    arrays = np.concatenate((alignment.a_s, alignment.b_s)).astype("<f8").tobytes()
    size = alignment.a_s.size
    return _HEADER.pack(len(head), size, len(arrays)) + zlib.compress(head + arrays)


def _read(kept: KeptAlignment) -> AlignedPair:
    """Read a kept alignment; one without a block says that the takes do not match."""
    if not kept.block:
        empty = np.empty(0)
        return AlignedPair(
            kept.take_a,
            kept.take_b,
            False,
            kept.sentence,
            empty,
            empty,
            0.0,
            reason=kept.reason,
        )
    head_size, size, _ = _HEADER.unpack_from(kept.block)
    raw = zlib.decompress(kept.block[_HEADER.size :])
    head = json.loads(raw[:head_size])
    both = np.frombuffer(raw[head_size:], dtype="<f8").astype(np.float64)
    only_a, only_b = (tuple(_part(*one) for one in side) for side in head["only"])
    return AlignedPair(
        kept.take_a,
        kept.take_b,
        True,
        "",
        both[:size],
        both[size:],
        float(head["confidence"]),
        only_a,
        only_b,
    )


def _part(start_s: float, end_s: float, kind: OnlyKind) -> OnlyPart:
    length = length_text(end_s - start_s)
    return OnlyPart(
        start_s, end_s, kind, f"{_SAYS[kind]}: {position_text(start_s)}, for {length}; left out."
    )
