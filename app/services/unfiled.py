"""Recordings that are not filed yet: their PCM and the note that says what they are.

``<journal>/.recording/<id>.wav`` grows while it sounds; ``<id>.json`` beside it is
written first, and again whenever the player marks a moment or the beats of a click are
known better. Both stay until the take is filed and verified.
"""

import json
import math
import threading
from collections.abc import Callable, Container, Iterator
from contextlib import suppress
from dataclasses import replace
from datetime import UTC, datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any

from app.journal.clicks import ClickBeats
from app.journal.codec import Unreadable, decoded, encoded
from app.journal.failures import PlainFailure
from app.journal.records import PlayingSettings
from app.services.views import PendingTake
from app.store.folders import Folders, write_atomically

if TYPE_CHECKING:
    from audio.pcm_file import PcmLayout
    from audio.recorder import Recording

_ID_LENGTH = 32
_RECOVERED = "-recovered"
_SHORTEST_HEADER_BYTES = 44  # of a WAV file: RIFF, fmt and data, with no sound yet
CRASHED = "The program ended while recording; the take up to then is kept."


def pcm_file(folders: Folders, take_id: str) -> Path:
    """Give the place of a recording while it sounds."""
    return folders.recording / f"{take_id}.wav"


def write_note(pending: PendingTake) -> None:
    """Keep what is known of a recording beside its PCM."""
    note = {
        "started_at": pending.started_at.isoformat(),
        "passage_id": pending.passage_id,
        "aim": pending.aim,
        "settings": encoded(pending.settings),
        "no_retake": pending.no_retake,
        "retake_reason": pending.retake_reason,
        "input_device": pending.input_device,
        "input_channel": pending.input_channel,
        "input_note": pending.input_note,
        "dropped_frames": pending.dropped_frames,
        "marks_s": [round(at_s, 3) for at_s in pending.marks_s],
    }
    write_atomically(_note_of(pending.pcm), json.dumps(note, ensure_ascii=False, indent=2))


class Running:
    """A recording that goes on: what is known of it is on the disk at every moment.

    Any thread may add to it; a disk that refuses a note ends the recording by itself.

    Attributes
    ----------
    pending : PendingTake
        As far as it is known.
    """

    def __init__(self, pending: PendingTake) -> None:
        self._lock = threading.Lock()
        self.pending = pending

    def mark(self, at_s: float) -> None:
        """Mark a moment of the take."""
        with self._lock:
            self._keep(replace(self.pending, marks_s=(*self.pending.marks_s, max(0.0, at_s))))

    def keep_beats(self, beats: ClickBeats | None) -> None:
        """Keep where the beats of a click lie, as far as that is known."""
        with self._lock:
            if beats != self.pending.settings.click:
                settings = replace(self.pending.settings, click=beats)
                self._keep(replace(self.pending, settings=settings))

    def _keep(self, pending: PendingTake) -> None:
        self.pending = pending
        with suppress(OSError, PlainFailure):
            write_note(pending)


def stopped(pending: PendingTake, recorded: "Recording") -> PendingTake:
    """Give a recording as it is once it has ended."""
    return replace(
        pending,
        pcm=recorded.path,
        duration_s=recorded.duration_s,
        dropped_frames=recorded.dropped_frames,
        clipped_samples=recorded.clipped_samples,
        ended=recorded.sentence or "",
    )


def remove(pending: PendingTake) -> None:
    """Remove the PCM and note of a recording that is filed."""
    for path in (pending.pcm, _note_of(pending.pcm), _copy_of(pending.pcm)):
        with suppress(OSError):
            path.unlink(missing_ok=True)


def files_of(pending: PendingTake) -> Iterator[Path]:
    """Give the files of an unfiled recording that are there."""
    for path in (pending.pcm, _note_of(pending.pcm), _copy_of(pending.pcm)):
        if path.exists():
            yield path


def remove_empty(folders: Folders, mine: Container[Path]) -> None:
    """Remove what was begun and never heard anything, with its note.

    Not those of this run, `mine`: a recording that begins has no sound either. Whatever might
    hold sound stays, with a header or without.
    """
    if not folders.recording.is_dir():
        return
    pcms = {path.with_suffix(".wav") for path in folders.recording.glob("*.json")}
    for pcm in pcms.union(folders.recording.glob("*.wav")):
        with suppress(OSError):
            if pcm not in mine and not (pcm.exists() and _may_hold_sound(pcm)):
                _note_of(pcm).unlink(missing_ok=True)
                pcm.unlink(missing_ok=True)


def _may_hold_sound(path: Path) -> bool:
    layout, frames = _sound_of(path)
    return path.stat().st_size > _SHORTEST_HEADER_BYTES if layout is None else frames > 0


def _sound_of(path: Path) -> "tuple[PcmLayout | None, int]":
    """Give the layout of a PCM file, where its header is whole, and how many frames follow."""
    from audio.pcm_file import read_layout  # noqa: PLC0415 - numpy only when needed

    layout = read_layout(path)
    if layout is None:
        return None, 0
    return layout, (path.stat().st_size - layout.data_at) // layout.frame_bytes


def left_behind(
    folders: Folders, default: Callable[[], PlayingSettings]
) -> tuple[PendingTake, ...]:
    """Find recordings that were never filed, the oldest first.

    Settings that a note does not say are asked for only if there is such a recording. A
    file without any sound in it is no recording, or one that just begins, and is passed over.
    """
    if not folders.recording.is_dir():
        return ()
    found = []
    for path in sorted(folders.recording.glob("*.wav")):
        if path.stem.endswith(_RECOVERED):
            continue
        pending = _pending_of(path, default)
        if pending is not None:
            found.append(pending)
    return tuple(sorted(found, key=lambda pending: pending.started_at))


def _pending_of(path: Path, default: Callable[[], PlayingSettings]) -> PendingTake | None:
    try:
        layout, frames = _sound_of(path)
        written = path.stat().st_mtime
    except OSError:
        return None
    if layout is None or frames < 1:
        return None
    duration_s = frames / layout.sample_rate_hz
    note = _read_note(path)
    started = datetime.fromtimestamp(written - duration_s, UTC).astimezone()
    with suppress(KeyError, TypeError, ValueError):
        started = datetime.fromisoformat(note["started_at"])
    try:
        settings = decoded(PlayingSettings, note["settings"])
    except (KeyError, Unreadable):
        settings = default()
    passage_id = note.get("passage_id")
    is_id = len(path.stem) == _ID_LENGTH and set(path.stem) <= set("0123456789abcdef")
    return PendingTake(
        id=path.stem if is_id else "",
        pcm=path,
        started_at=started if started.tzinfo else started.astimezone(),
        duration_s=duration_s,
        passage_id=passage_id if isinstance(passage_id, str) else None,
        aim=str(note.get("aim") or ""),
        settings=settings,
        ended=CRASHED,
        recovered=True,
        no_retake=note.get("no_retake") is True,
        retake_reason=str(note.get("retake_reason") or ""),
        input_device=str(note.get("input_device") or ""),
        input_channel=int(_number(note.get("input_channel"))) or None,
        input_note=str(note.get("input_note") or ""),
        dropped_frames=int(_number(note.get("dropped_frames"))),
        marks_s=_numbers(note.get("marks_s")),
    )


def _read_note(path: Path) -> dict[str, Any]:
    try:
        note = json.loads(_note_of(path).read_text(encoding="utf-8"))
    except (OSError, ValueError):
        return {}
    return note if isinstance(note, dict) else {}


def _number(value: object) -> float:
    is_number = isinstance(value, (int, float)) and not isinstance(value, bool)
    return float(value) if is_number and math.isfinite(value) and value > 0 else 0.0  # type: ignore[arg-type,operator]


def _numbers(values: object) -> tuple[float, ...]:
    return tuple(map(_number, values)) if isinstance(values, list) else ()


def _note_of(pcm: Path) -> Path:
    return pcm.with_suffix(".json")


def _copy_of(pcm: Path) -> Path:
    return pcm.with_name(f"{pcm.stem}{_RECOVERED}.wav")
