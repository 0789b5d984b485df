"""The journal's settings and the window's own, beside the window."""

from dataclasses import replace
from pathlib import Path

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import (
    QDoubleSpinBox,
    QFileDialog,
    QGridLayout,
    QLineEdit,
    QSpinBox,
    QWidget,
)

from app.journal.failures import PlainFailure
from app.journal.records import JournalSettings
from app.services.inputs import BUFFERS_MS, USUAL_BUFFER_MS
from app.services.views import InputRow
from app.ui.desk import Desk
from app.ui.language import LANGUAGES, SYSTEM, mark, tr
from app.ui.theme import GRID_PX, Scheme
from app.ui.widgets.basics import ENTER_KEYS, Button, column, fill, heading, labelled, row
from app.ui.widgets.choices import Choice
from app.ui.widgets.focus_order import OrderedDialog
from app.ui.widgets.reminder_row import ReminderRow
from app.ui.widgets.settings_form import SettingsForm

_SYSTEM_OUTPUT = ""
_LATEST_TURN_HOUR = 11
_LATEST_BREAK_MIN = 120
_SLOWEST_REACTION_S = 2.0
_SCHEME_WORDS = (
    (Scheme.SYSTEM, mark("As the system")),
    (Scheme.LIGHT, mark("Light")),
    (Scheme.DARK, mark("Dark")),
)


class SettingsSheet(OrderedDialog):
    """Categories, day turn, output, reaction time, usual settings; never modal."""

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Settings"))
        self.setModal(False)
        self._desk = desk
        self._settings = JournalSettings()
        self.categories = Button(tr("Marker categories"), action_id="categories")
        self.categories.clicked.connect(lambda: desk.keys.action("categories").trigger())
        self.turn = QSpinBox()
        self.turn.setRange(0, _LATEST_TURN_HOUR)
        self.turn.setSuffix(":00")
        self.output: Choice[str] = Choice(tr("Sound output"))
        self.reaction = QDoubleSpinBox()
        self.reaction.setRange(0.0, _SLOWEST_REACTION_S)
        self.reaction.setSingleStep(0.05)
        self.reaction.setSuffix(" s")
        self.scheme: Choice[Scheme] = Choice(tr("Colours"))
        self.scheme.offer([(scheme, tr(words)) for scheme, words in _SCHEME_WORDS])
        self.language: Choice[str] = Choice(tr("Language"))
        self.language.offer([(SYSTEM, tr("As the system")), *LANGUAGES])
        self.pause = QSpinBox()
        self.pause.setRange(0, _LATEST_BREAK_MIN)
        self.pause.setSingleStep(5)
        self.pause.setSuffix(" min")
        self.pause.setSpecialValueText(tr("never"))
        self.buffer: Choice[int] = Choice(tr("Sound held ready"))
        self.buffer.setToolTip(
            tr("Longer where the sound breaks up on a busy machine; it then follows a key later.")
        )
        usual, *longer = BUFFERS_MS
        entries = [(ms, tr("{ms} ms").format(ms=ms)) for ms in longer]
        self.buffer.offer([(usual, tr("{ms} ms, the usual").format(ms=usual)), *entries])
        self.reminder = ReminderRow()
        self.watched = QLineEdit()
        self.watched.setPlaceholderText(tr("none; where your phone's clips arrive"))
        self._browse = Button(tr("Choose"), "folder", name=tr("Choose the watched folder"))
        self._browse.clicked.connect(self._choose_folder)
        self.form = SettingsForm()
        self.keep = Button(tr("Keep"), primary=True)
        self.keep.clicked.connect(self._keep)
        self._build()

    def _build(self) -> None:
        close = Button(tr("Cancel"), plain=True)
        close.clicked.connect(self.close)
        buttons = row()
        fill(buttons, 1, close, self.keep)
        grid = QGridLayout()
        grid.setSpacing(2 * GRID_PX)
        grid.addLayout(labelled(tr("The practice day turns at"), self.turn), 0, 0)
        grid.addLayout(labelled(tr("Reaction time taken off a marker"), self.reaction), 0, 1)
        grid.addLayout(labelled(tr("Sound output"), self.output), 1, 0)
        grid.addLayout(labelled(tr("Colours"), self.scheme), 1, 1)
        grid.addLayout(labelled(tr("Suggest a break after"), self.pause), 2, 0)
        grid.addLayout(labelled(tr("Sound held ready"), self.buffer), 3, 1)
        folder = row()
        fill(folder, labelled(tr("Watched folder"), self.watched), self._browse)
        folder.setAlignment(self._browse, Qt.AlignmentFlag.AlignBottom)
        grid.addLayout(folder, 2, 1)
        grid.addLayout(labelled(tr("Language"), self.language), 3, 0)
        grid.addWidget(self.categories, 4, 0)
        grid.addWidget(self.reminder, 4, 1)
        box = column(self, margin=2 * GRID_PX)
        fill(
            box,
            heading(tr("This window")),
            grid,
            heading(tr("A new passage begins with")),
            self.form,
            buttons,
        )
        box.insertStretch(box.count() - 1, 1)
        self.resize(520, 560)

    def keyPressEvent(self, event: QKeyEvent) -> None:
        """Keep the settings on Enter, whichever field has the focus."""
        if event.key() in ENTER_KEYS:
            self._keep()
            return
        super().keyPressEvent(event)

    def open_sheet(self) -> None:
        """Read the settings and show them."""
        bench = self._desk.workbench
        self._desk.jobs.store(
            lambda: (bench.practising.settings(), bench.playing.outputs()),
            lambda found: self._show(*found),
            subject="settings",
        )

    def _show(self, settings: JournalSettings, outputs: tuple[InputRow, ...]) -> None:
        self._settings = settings
        self.turn.setValue(settings.day_turn_hour)
        entries = [(output.key, output.name) for output in outputs]
        self.output.offer([(_SYSTEM_OUTPUT, tr("As the system")), *entries], settings.output_device)
        self.pause.setValue(settings.break_after_min)
        self.buffer.choose(settings.buffer_ms)
        self.reminder.show_minute(settings.reminder_minute)
        self.watched.setText(settings.watched_folder or "")
        self.reaction.setValue(self._desk.preferences.reaction_s)
        self.scheme.choose(self._desk.theme.scheme)
        self.language.choose(self._desk.preferences.language)
        self.form.show_settings(settings.default_settings)
        self.show()
        self.raise_()

    def _keep(self) -> None:
        try:
            usual = self.form.settings
        except PlainFailure as failure:
            self._desk.tell_failure(failure)
            return
        changed = replace(
            self._settings,
            day_turn_hour=self.turn.value(),
            output_device=self.output.key or None,
            break_after_min=self.pause.value(),
            buffer_ms=self.buffer.key or USUAL_BUFFER_MS,
            reminder_minute=self.reminder.minute,
            default_settings=usual,
        )
        bench, typed = self._desk.workbench, self.watched.text().strip()

        def keep() -> JournalSettings:
            # The categories have a sheet of their own, and a reminder may have come meanwhile.
            now = bench.practising.settings()
            wanted = replace(changed, categories=now.categories, reminded_on=now.reminded_on)
            kept = bench.practising.change_settings(wanted)
            if typed == (kept.watched_folder or ""):
                return kept
            return bench.watching.watch(Path(typed) if typed else None)

        self._desk.jobs.store(keep, self._kept)

    def _choose_folder(self) -> None:
        chosen = QFileDialog.getExistingDirectory(self, tr("Watched folder"), self.watched.text())
        if chosen:
            self.watched.setText(chosen)

    def _kept(self, settings: JournalSettings) -> None:
        preferences = self._desk.preferences
        preferences.reaction_s = self.reaction.value()
        scheme = self.scheme.key or Scheme.SYSTEM
        preferences.scheme = scheme
        self._desk.theme.choose(scheme)
        before = (self._settings.output_device, self._settings.buffer_ms)
        if (settings.output_device, settings.buffer_ms) != before:
            self._choose_output(settings.output_device)
        self._settings = settings
        self.close()
        self._keep_language()
        self._desk.takesChanged.emit()
        self._desk.daysChanged.emit()

    def _keep_language(self) -> None:
        language, preferences = self.language.key or SYSTEM, self._desk.preferences
        next_step = ""
        if language != preferences.language:
            preferences.language = language
            next_step = tr("The language holds from the next start of the program.")
        self._desk.tell(tr("The settings were kept."), next_step)

    def _choose_output(self, device_key: str | None) -> None:
        playing = self._desk.workbench.playing
        self._desk.loaded_take_id = ""
        self._desk.jobs.store(lambda: playing.choose_output(device_key))
