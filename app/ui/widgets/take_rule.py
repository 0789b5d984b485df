"""What holds for the next take of a passage: its rule, and whether the input is the usual one."""

from collections.abc import Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QLineEdit, QWidget

from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, column, fill, row, soft

if TYPE_CHECKING:
    from app.services.no_retake import NoRetakeView
    from app.services.views import TakeRow


class TakeRule(QWidget):
    """Shows the no-retake rule kindly, keeps a device's failure, and warns of the input."""

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._passage_id: str | None = None
        self._takes: tuple[TakeRow, ...] = ()
        self._rule = soft()
        self._failed = Button(tr("The device spoilt it"), plain=True)
        self._failed.setToolTip(tr("A second take is possible, with the reason on record."))
        self._reason = QLineEdit()
        self._reason.setMaxLength(200)
        self._reason.setAccessibleName(tr("What the device did"))
        self._reason.setPlaceholderText(tr("What it did, such as: the microphone was muted"))
        self._allow = Button(tr("Keep the reason"))
        self._warning = soft()
        words = row()
        fill(words, self._rule, self._failed)
        words.setStretch(0, 1)
        reason = row()
        fill(reason, self._reason, self._allow)
        reason.setStretch(0, 1)
        fill(column(self, spacing=4), words, reason, self._warning)
        self._failed.clicked.connect(self._ask_reason)
        self._allow.clicked.connect(self._keep_reason)
        self._reason.returnPressed.connect(self._keep_reason)
        self._show_parts()

    def look(
        self, passage_id: str | None, device_key: str | None, quiet_dbfs: float | None
    ) -> None:
        """Ask what holds for a take of a passage with an input."""
        bench, self._passage_id = self._desk.workbench, passage_id
        if not passage_id:
            self._show(None, "")
            return

        def read() -> tuple["NoRetakeView", str]:
            warning = bench.input_memory.warning(passage_id, device_key or None, quiet_dbfs)
            return bench.no_retake.view(passage_id), warning

        self._desk.jobs.store(
            read, lambda found: self._show(*found), subject="practice.rule", failed=lambda _: None
        )

    def know_takes(self, takes: Sequence["TakeRow"]) -> None:
        """Take note of the takes of today."""
        self._takes = tuple(takes)

    @property
    def text(self) -> str:
        """What is said."""
        return f"{self._rule.text()} {self._warning.text()}".strip()

    def _show(self, view: "NoRetakeView | None", warning: str) -> None:
        self._rule.setText(view.sentence if view else "")
        self._warning.setText(warning)
        self._show_parts(refused=view is not None and not view.may_record)

    def _show_parts(self, *, refused: bool = False) -> None:
        self._rule.setVisible(bool(self._rule.text()))
        self._warning.setVisible(bool(self._warning.text()))
        self._failed.setVisible(refused)
        for part in (self._reason, self._allow):
            part.hide()
        self.setVisible(bool(self.text))

    def _ask_reason(self) -> None:
        self._failed.hide()
        self._reason.show()
        self._allow.show()
        self._reason.setFocus()

    def _keep_reason(self) -> None:
        own = [take for take in self._takes if take.passage_id == self._passage_id]
        if not own:
            self._desk.tell(tr("There is no take of this passage today."), tr("Record it."))
            return
        take_id = max(own, key=lambda take: take.recorded_at).id
        reason, rule = self._reason.text(), self._desk.workbench.no_retake
        self._desk.jobs.store(lambda: rule.note_device_failure(take_id, reason), self._kept)

    def _kept(self, _nothing: None) -> None:
        self._reason.clear()
        self._desk.tell(tr("The reason is on record; one more take is possible today."))
        self._desk.takesChanged.emit()
