"""Clips to be shared, beside the window: chosen, looked at, and only then written."""

from collections.abc import Sequence
from pathlib import Path

from PySide6.QtCore import Qt, QTimer, Signal
from PySide6.QtWidgets import QFileDialog, QListWidget, QListWidgetItem, QWidget

from app.journal.failures import PlainFailure
from app.journal.sharing import SharedClip
from app.services.sharing.choice import ShareChoice
from app.services.sharing.service import SharePreview
from app.services.views import TakeRow
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, row
from app.ui.widgets.file_asking import ask_folder, ask_new_file
from app.ui.widgets.focus_order import OrderedDialog
from app.ui.widgets.job_strip import JobStrip
from app.ui.widgets.share_form import ShareFields
from app.ui.widgets.share_preview import SharePreviewPane
from app.ui.words import counted, day_text

_WAIT_MS = 400


class ShareSheet(OrderedDialog):
    """No clip is written before it was shown as it stands; never modal.

    Signals
    -------
    hearWanted(take_id, start_s, end_s)
        The stretch is to be heard.
    shared()
        Clips were made.
    """

    hearWanted = Signal(str, float, float)
    shared = Signal()

    def __init__(self, desk: Desk, parent: QWidget) -> None:
        super().__init__(parent)
        self.setWindowTitle(tr("Share clips"))
        self.setModal(False)
        self._desk = desk
        self._stretches: dict[str, tuple[float, float]] = {}
        self._seen: set[ShareChoice] = set()
        self.asking: QFileDialog | None = None
        self.takes = QListWidget()
        self.takes.setAccessibleName(tr("Takes; those with a tick become clips"))
        self.takes.setWordWrap(True)
        self.fields = ShareFields()
        self.preview = SharePreviewPane()
        self.hear = Button(tr("Hear it"), "play")
        self.write_button = Button(tr("Write"), "save", primary=True)
        self.job = JobStrip(desk, "share")
        self._timer = QTimer(self, singleShot=True, interval=_WAIT_MS)
        self._build()
        self._timer.timeout.connect(self._look)
        self.takes.currentRowChanged.connect(lambda _: self._choose())
        self.takes.itemChanged.connect(lambda _: self._enable())
        self.fields.changed.connect(self._changed)
        self.hear.clicked.connect(lambda: self.hearWanted.emit(self._take_id, *self.fields.stretch))
        self.write_button.clicked.connect(self.choose_target)

    def _build(self) -> None:
        close = Button(tr("Close"), plain=True)
        close.clicked.connect(self.close)
        buttons = row()
        fill(buttons, self.hear, self.write_button, 1, close)
        left = column()
        fill(left, self.takes, self.fields)
        left.setStretch(0, 1)
        both = row(spacing=2 * GRID_PX)
        both.addLayout(left, 2)
        both.addWidget(self.preview, 3)
        box = column(self, margin=2 * GRID_PX)
        fill(box, both, self.job, buttons)
        box.setStretch(0, 1)
        self.resize(920, 680)

    def open_sheet(self, takes: Sequence[TakeRow], start_s: float, end_s: float) -> None:
        """Offer clips of these takes; of a single one this stretch."""
        longest = self.fields.longest.value()
        self._stretches = {t.id: (0.0, min(t.duration_s, longest)) for t in takes}
        if len(takes) == 1 and end_s > start_s:
            self._stretches[takes[0].id] = (start_s, min(end_s, start_s + longest))
        self._seen.clear()
        self.takes.clear()
        for take in takes:
            title = take.passage_name or tr("no passage")
            words = f"{day_text(take.practice_day)}, {title}, " + tr("take {number}").format(
                number=take.number
            )
            item = QListWidgetItem(words)
            item.setData(Qt.ItemDataRole.UserRole, take.id)
            item.setCheckState(Qt.CheckState.Checked)
            self.takes.addItem(item)
        promises = self._desk.workbench.promises
        self._desk.jobs.store(
            lambda: [(view.promise.id, view.promise.name) for view in promises.list()],
            self.fields.offer_promises,
            subject="share.promises",
        )
        self.preview.clear(tr("There is no take in these days.") if not takes else "")
        self.show()
        self.raise_()
        if takes:
            self.takes.setCurrentRow(0)
        self._enable()

    @property
    def choices(self) -> tuple[ShareChoice, ...]:
        """The clips that are wanted, in the order of the list."""
        items = [self.takes.item(at) for at in range(self.takes.count())]
        ids = [
            item.data(Qt.ItemDataRole.UserRole)
            for item in items
            if item.checkState() is Qt.CheckState.Checked
        ]
        return tuple(self.fields.choice(key, self._stretches[key]) for key in ids)

    @property
    def _take_id(self) -> str:
        at = self.takes.currentRow()
        return "" if at < 0 else str(self.takes.item(at).data(Qt.ItemDataRole.UserRole))

    def choose_target(self) -> None:
        """Ask for the file, or for the folder of several."""
        choices = self.choices
        if len(choices) == 1:
            name = self._desk.workbench.sharing.file_name(choices[0])
            kinds = tr("Clips (*{ending})").format(ending=Path(name).suffix)
            self.asking = ask_new_file(self, tr("Write the clip"), name, kinds, self.write)
        elif choices:
            self.asking = ask_folder(self, tr("Folder for the clips"), self.write)

    def write(self, target: Path) -> None:
        """Write the clips that are wanted."""
        sharing, choices = self._desk.workbench.sharing, self.choices
        self.job.run(
            tr("Writing {count}").format(count=counted(len(choices), "clip")),
            lambda progress, should_stop: (
                (sharing.make(choices[0], target, progress, should_stop),)
                if len(choices) == 1
                else sharing.make_several(choices, target, progress, should_stop)
            ),
            lambda clips: self._made(clips, target),
        )

    def _made(self, clips: tuple[SharedClip, ...], target: Path) -> None:
        words = tr("{count} written. Nothing was sent anywhere.")
        self.job.say(words.format(count=counted(len(clips), "clip")), target)
        self.shared.emit()

    def _choose(self) -> None:
        if self._take_id:
            self.fields.show_stretch(*self._stretches[self._take_id])
            self._changed()

    def _changed(self) -> None:
        if self._take_id:
            self._stretches[self._take_id] = self.fields.stretch
        self._enable()
        self._timer.start()

    def _look(self) -> None:
        if not self._take_id:
            return
        sharing = self._desk.workbench.sharing
        shown = self.fields.choice(self._take_id, self.fields.stretch)
        self.preview.clear(tr("Making the preview\N{HORIZONTAL ELLIPSIS}"))
        self._desk.jobs.analyse(
            lambda _progress, _should_stop: sharing.preview(shown),
            lambda found: self._show(found, shown),
            subject="share.preview",
            failed=self._refused,
        )

    def _show(self, found: SharePreview, shown: ShareChoice) -> None:
        self.preview.show_preview(found)
        self._seen.add(shown)
        self._enable()

    def _refused(self, failure: PlainFailure) -> None:
        self.preview.clear(f"{failure.sentence} {failure.next_step}".strip())

    def _enable(self) -> None:
        choices = self.choices
        count, unseen = len(choices), len(set(choices) - self._seen)
        words = tr("Write {count}").format(count=counted(count, "clip")) if count > 1 else ""
        if count > 1 and unseen:
            words = tr("Write, once all are looked at")
        self.write_button.setText(words or tr("Write"))
        self.write_button.setEnabled(count > 0 and not unseen)
        self.hear.setEnabled(bool(self._take_id))
