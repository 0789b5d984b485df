"""Click, drone and output while listening."""

from dataclasses import replace

from PySide6.QtCore import QObject

from app.services.guide_settings import GuideSettings
from app.services.reading_views import Reading
from app.services.views import TakeView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.along_strip import BEATS, AlongStrip
from app.ui.widgets.transport import Transport


class AlongControl(QObject):
    """Lets a click or a drone sound with the take that is shown."""

    def __init__(self, desk: Desk, transport: Transport, strip: AlongStrip) -> None:
        super().__init__(strip)
        self._desk = desk
        self._transport = transport
        self._strip = strip
        self._view: TakeView | None = None
        self._drone = ""
        self._sounds = False
        self._plays_on = False
        strip.changed.connect(self.apply)
        strip.outputPicked.connect(self._choose_output)
        transport.loaded.connect(self._loaded)

    def show_take(self, view: TakeView | None) -> None:
        """Begin with a take: its beats and its tempo are what the click offers."""
        if self._view is None or view is None or view.row.id != self._view.row.id:
            self._plays_on = False
        self._view = view
        if view is None:
            return
        self._strip.offer_beats(available=bool(view.beat_s.size))
        tempo = view.settings.pulse_bpm
        if tempo is None and isinstance(view.row.tempo, Reading):
            tempo = view.row.tempo.value
        if tempo:
            self._strip.suggest_bpm(tempo)

    def toggle(self) -> None:
        """Show the strip with output, click and drone, or hide it."""
        self._strip.setVisible(self._strip.isHidden())
        if not self._strip.isHidden():
            bench = self._desk.workbench
            self._desk.jobs.store(
                lambda: (bench.playing.outputs(), bench.practising.settings().output_device),
                lambda found: self._strip.offer_outputs(found[0], found[1] or ""),
                subject="listen.outputs",
            )
            self._strip.output.setFocus()

    def toggle_click(self) -> None:
        """Have a click, or none."""
        self._strip.toggle_click()
        words = self._strip.click.currentText()
        self._desk.tell(tr("Click: {which}.").format(which=words))

    def toggle_drone(self) -> None:
        """Have the drone that was written last, or none; at first it is the tuning A."""
        field = self._strip.drone
        self._drone = field.text().strip() or self._drone or "A3"
        field.setText("" if field.text().strip() else self._drone)
        self._desk.tell(tr("Drone: {notes}.").format(notes=field.text() or tr("none")))
        self.apply()

    @property
    def guides(self) -> GuideSettings:
        """What is wanted."""
        strip, view = self._strip, self._view
        guides = GuideSettings(
            click_bpm=strip.bpm.value() if strip.click.key else None,
            drone=strip.drone.text().strip(),
            volume=strip.volume.value() / 100,
        )
        if view is None:
            return guides
        settings = view.settings
        return replace(
            guides,
            temperament=settings.temperament,
            tonic=settings.tonic,
            reference_a_hz=settings.reference_a_hz or _measured_a(view) or guides.reference_a_hz,
        )

    def apply(self) -> None:
        """Let sound what is wanted; nothing is touched while nothing was ever wanted."""
        guides, view, playing = self.guides, self._view, self._desk.workbench.playing
        if view is None or not self._transport.is_ready:
            return
        if guides.is_silent and not self._sounds:
            return
        self._sounds = not guides.is_silent
        beat_s = tuple(view.beat_s.tolist()) if self._strip.click.key == BEATS else ()
        first_s = float(view.beat_s[0]) if view.beat_s.size else 0.0
        if not view.beat_s.size and view.notes:
            first_s = view.notes[0].start_s
        self._desk.jobs.store(
            lambda: playing.play_along(guides, beat_s=beat_s, first_beat_s=first_s),
            subject="listen.along",
        )

    def _loaded(self) -> None:
        self._sounds = False
        self.apply()
        if self._plays_on:
            self._plays_on = False
            self._transport.toggle()

    def _choose_output(self, device_key: str) -> None:
        """Play through another output, from the same place on."""
        bench, wanted = self._desk.workbench, device_key or None
        self._plays_on = self._transport.is_playing
        self._transport.stop()

        def choose() -> None:
            settings = replace(bench.practising.settings(), output_device=wanted)
            bench.practising.change_settings(settings)
            bench.playing.choose_output(wanted)

        self._desk.jobs.store(choose, lambda _: self._transport.load_again())


def _measured_a(view: TakeView) -> float | None:
    for line in view.summary:
        if line.key == "reference_a_hz" and isinstance(line.reading, Reading):
            return line.reading.value
    return None
