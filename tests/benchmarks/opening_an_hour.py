"""How long a take of an hour needs to open on the Listen page, in the real window.

    QT_QPA_PLATFORM=offscreen python tests/benchmarks/opening_an_hour.py

The hour is a measured phrase said over and over, every other time in silence as far as
its notes go: 2,000 notes, with 500 markers.
Printed is the time from choosing the take until it is seen, until it can be heard, and until
its sound is drawn too, without and with the overview of the sound in the journal's cache
(measuring a take makes one); in brackets the processor time of the whole program in that
time, which does not count other programs; and the longest piece of work on the window's
thread. Nothing is asserted.
"""

import sys
import tempfile
import time
from dataclasses import dataclass, replace
from datetime import UTC, datetime
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

import numpy as np
import soundfile

from app.journal.records import PlayingSettings
from app.services.encoding import encode
from app.services.workbench import Workbench
from app.ui.application import Window, application_object
from app.wiring import open_workbench

PHRASE = Path(__file__).parents[2] / "sample_audio" / "takes" / "viola-study-first-day.flac"
LENGTH_S = 3600.0
MARKERS = 500
NOW = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)


def hour_of(bench: Workbench, folder: Path) -> str:
    """File an hour with its measurement and markers; give its take."""
    samples, rate = soundfile.read(PHRASE, dtype="float32")
    times = round(LENGTH_S * rate / len(samples))
    long = folder / "hour.flac"
    with soundfile.SoundFile(long, "w", rate, 1, "PCM_16") as file:
        for _ in range(times):
            file.write(samples)
    short, hour = (
        bench.importing.file(bench.importing.propose([path], None, None))[0]
        for path in (PHRASE, long)
    )
    bench.filing.change_settings(short.id, PlayingSettings("viola", pulse_bpm=76.0))
    bench.measuring.measure(short.id)
    store = bench.measuring._store
    kept = store.measurements.get(short.id)
    analysis = bench.measuring.analysis(short.id)
    whole = repeated(analysis, times)
    store.measurements.put(replace(kept, take_id=hour.id, curves=encode(whole)))
    categories = bench.practising.settings().categories
    for at in range(MARKERS):
        start_s = at * LENGTH_S / MARKERS + 0.5
        bench.marking.add(hour.id, start_s, category=categories[at % 8], weight=1 + at % 3)
    print(f"{len(whole.notes)} notes, {MARKERS} markers, {hour.duration_s / 60:.1f} min")
    return hour.id


def repeated(analysis, times: int):
    """Say a measured phrase over and over."""
    step = analysis.duration_s
    shifts = step * np.arange(times)

    def along(time_s):
        return (time_s[np.newaxis] + shifts[:, np.newaxis]).ravel()

    def moved(judged, by):
        note = judged.note
        spans = ("start_s", "end_s", "steady_start_s", "steady_end_s")
        shifted = replace(note, **{name: getattr(note, name) + by for name in spans})
        return replace(judged, note=shifted)

    def with_value(measured, **arrays):
        return replace(measured, value=replace(measured.value, **arrays))

    pitch, tempo, dynamics = analysis.pitch, analysis.tempo, analysis.dynamics
    values = pitch.value
    return replace(
        analysis,
        duration_s=step * times,
        notes=tuple(moved(judged, by) for by in shifts[::2] for judged in analysis.notes),
        pitch=with_value(
            pitch,
            time_s=along(values.time_s),
            f0_hz=np.tile(values.f0_hz, times),
            confidence=np.tile(values.confidence, times),
            level_dbfs=np.tile(values.level_dbfs, times),
        ),
        tempo=with_value(
            tempo,
            beat_s=along(tempo.value.beat_s),
            local_time_s=along(tempo.value.local_time_s),
            local_bpm=np.tile(tempo.value.local_bpm, times),
        ),
        dynamics=with_value(
            dynamics,
            momentary_time_s=along(dynamics.value.momentary_time_s),
            momentary_lufs=np.tile(dynamics.value.momentary_lufs, times),
        ),
    )


@dataclass
class Opening:
    """What happened when, seconds after the take was chosen: on the clock, and busy.

    Attributes
    ----------
    seen, playable, drawn : (float, float) or None
        Until its lanes are there; until it can be heard; until the sound is drawn too.
    longest_step_s : float
        The longest piece of work on the window's thread, busy.
    """

    seen: tuple[float, float] | None = None
    playable: tuple[float, float] | None = None
    drawn: tuple[float, float] | None = None
    longest_step_s: float = 0.0


def opened(window: Window, take_id: str, other: str) -> Opening:
    """Open the take anew."""
    application = application_object()
    listen = window.main.listen
    listen.show_take(other)
    window.jobs.wait_until_idle(60)
    waves = []
    listen._columns.read.connect(waves.append)
    found = Opening()
    start, start_busy = time.perf_counter(), time.process_time()
    listen.show_take(take_id)
    while found.drawn is None or found.playable is None or not window.jobs.is_idle:
        step = time.thread_time()
        application.processEvents()
        found.longest_step_s = max(found.longest_step_s, time.thread_time() - step)
        now = (time.perf_counter() - start, time.process_time() - start_busy)
        is_shown = listen.view is not None and listen.view.row.id == take_id
        if found.seen is None and is_shown:
            found.seen = now
        if found.playable is None and is_shown and listen.transport.is_ready:
            found.playable = now
        if found.drawn is None and waves:
            found.drawn = now
        time.sleep(0.0005)
    return found


def told(words: str, found: Opening) -> None:
    """Print a line of the table."""
    times = (found.seen, found.playable, found.drawn)
    cells = [f"{clock:7.2f} ({busy:5.2f})" for clock, busy in times]
    print(f"{words:28}", *cells, f"{1000 * found.longest_step_s:10.0f}")


def main() -> None:
    """Print the table."""
    application_object()
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        with open_workbench(folder / "journal", clock=lambda: NOW) as bench:
            take_id = hour_of(bench, folder)
            window = Window(bench, preferences_file=folder / "window.ini")
            try:
                measure(bench, window, take_id)
            finally:
                window.close()
                bench.playing.unload()


def measure(bench: Workbench, window: Window, take_id: str) -> None:
    """Open the take in all ways, and seek in it."""
    other = next(row.id for row in bench.filing.takes() if row.id != take_id)
    window.main.resize(1280, 800)
    window.main.show()
    window.main.ahead.begin()
    while not window.main.ahead.is_over:
        application_object().processEvents()
        time.sleep(0.001)
    window.main.listen_to(other)
    window.jobs.wait_until_idle(60)
    print(
        f"{'seconds (busy)':28} {'seen':>15} {'playable':>15} {'sound drawn':>15} longest step ms"
    )
    for words in ("first time, no overview yet", "again", "again"):
        told(words, opened(window, take_id, other))
        bench.listening.forget_lanes()
    opened(window, take_id, other)
    told("looked at a moment ago", opened(window, take_id, other))
    listen = window.main.listen
    for words, start_s in (("at once in the middle", 1800.0), ("near the end", 3500.0)):
        start = time.perf_counter()
        listen.transport.seek(start_s)
        application_object().processEvents()
        print(f"seek, {words:28} {1000 * (time.perf_counter() - start):6.1f} ms")


if __name__ == "__main__":
    main()
