"""Bundles and replies: some days given to somebody, and what comes back."""

from datetime import date
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QFileDialog, QWidget

from app.journal.bundle_names import suffix_of
from app.services.bundling.replying import ReplyReport
from app.services.bundling.service import MergeReport
from app.services.bundling.words import brought_sentence
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, column, fill, heading, sentence, soft
from app.ui.widgets.file_asking import ask_file, ask_new_file
from app.ui.widgets.job_strip import JobStrip
from app.ui.words import counted


class BundlesPane(QWidget):
    """Writes a bundle of the days shown, takes one or a reply in, opens one, answers one.

    Signals
    -------
    cameIn()
        Takes, markers, remarks or tasks came with a bundle or a reply.
    """

    cameIn = Signal()

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._span: tuple[date, date] | None = None
        self.asking: QFileDialog | None = None
        self.visit = desk.workbench.bundles.visiting
        self.with_video = QCheckBox(tr("With the picture of filmed takes"))
        self.whole_record = QCheckBox(tr("Everything, for a second computer"))
        self.whole_record.setToolTip(tr("Promises, plans and settings go along."))
        for box in (self.with_video, self.whole_record):
            box.setAccessibleName(box.text())
        self.write_button = Button(tr("Write a bundle"), "save", action_id="lesson.bundle")
        self.in_button = Button(tr("Take in"), "import", action_id="lesson.take_in")
        self.look_button = Button(tr("Look into a bundle"), action_id="lesson.look")
        self.reply_button = Button(tr("Write the reply"), action_id="lesson.reply", primary=True)
        self.home_button = Button(tr("Back to your own journal"), action_id="lesson.home")
        self.job = JobStrip(desk, "lesson.bundle", narrow=True)
        self._build()
        self.write_button.clicked.connect(self.choose_target)
        self.in_button.clicked.connect(self.choose_file)
        self.look_button.clicked.connect(self.choose_visit)
        self.reply_button.clicked.connect(self.choose_reply)
        self.home_button.clicked.connect(desk.close_to_go_home)

    def _build(self) -> None:
        box = column(self)
        if self.visit is not None:
            words = tr(
                "Place markers on Listen and write remarks here. The reply holds what you"
                " added, and is sent back like any other file."
            )
            fill(box, heading(tr("Reply")), soft(words), self.reply_button, self.home_button)
        else:
            words = tr(
                "The recordings and markers of the days shown in one file, for a teacher."
                " Remarks and markers come back in a small reply."
            )
            fill(box, heading(tr("Give these days")), soft(words), self.with_video)
            fill(box, self.whole_record, self.write_button)
            taken = tr("A bundle from another computer, or a teacher's reply; or drop it here.")
            fill(box, heading(tr("What came back")), soft(taken), self.in_button)
            look = tr("A bundle opens beside your journal and changes nothing in it.")
            fill(box, heading(tr("Somebody else's days")), soft(look), self.look_button)
        unused: tuple[QWidget, ...] = (
            (self.reply_button, self.home_button)
            if self.visit is None
            else (
                self.write_button,
                self.in_button,
                self.look_button,
                self.with_video,
                self.whole_record,
            )
        )
        for field in unused:
            field.setParent(self)
            field.hide()
        self.came = sentence()
        fill(box, self.job, self.came, 1)

    def show_span(self, first: date, last: date) -> None:
        """Write these days, once a bundle is wanted."""
        self._span = (first, last)

    def choose_target(self) -> None:
        """Ask where to write the bundle."""
        if self._span is None or self._is_elsewhere(visiting=False):
            return
        name = f"{self._span[0]}-{self._span[1]}.pwbundle"
        kinds = tr("Bundles (*.pwbundle)")
        self.asking = ask_new_file(self, tr("Write a bundle"), name, kinds, self.write)

    def write(self, target: Path) -> None:
        """Write the bundle."""
        if self._span is None:
            return
        bundles, span = self._desk.workbench.bundles, self._span
        video, whole = self.with_video.isChecked(), self.whole_record.isChecked()
        self.job.run(
            tr("Writing {name}").format(name=target.name),
            lambda progress, should_stop: bundles.write(
                *span,
                target,
                with_video=video,
                whole_record=whole,
                progress=progress,
                should_stop=should_stop,
            ),
            lambda found: self.job.say(
                tr("{name} holds {count}.").format(
                    name=target.name, count=counted(found.takes, "take")
                ),
                target,
            ),
        )

    def choose_file(self) -> None:
        """Ask for a bundle or a reply to take in."""
        if not self._is_elsewhere(visiting=False):
            kinds = tr("Bundles and replies (*.pwbundle *.pwreply)")
            self.asking = ask_file(self, tr("Take in"), kinds, self.take_in)

    def take_in(self, path: Path) -> None:
        """Take a bundle or a reply into this journal."""
        if self._is_elsewhere(visiting=False):
            return
        bench = self._desk.workbench
        is_reply = suffix_of(path) == ".pwreply"
        self.came.setText("")
        self.job.run(
            tr("Reading {name}").format(name=path.name),
            lambda progress, should_stop: (
                bench.replies.receive(path)
                if is_reply
                else bench.bundles.merge(path, progress, should_stop)
            ),
            self._came,
        )

    def choose_visit(self) -> None:
        """Ask for a bundle to open beside this journal."""
        if not self._is_elsewhere(visiting=False):
            kinds = tr("Bundles (*.pwbundle)")
            self.asking = ask_file(self, tr("Look into a bundle"), kinds, self._desk.close_to_visit)

    def choose_reply(self) -> None:
        """Ask where to write the reply."""
        if self._is_elsewhere(visiting=True):
            return
        name = f"reply-{self.visit.first_day}-{self.visit.last_day}.pwreply" if self.visit else ""
        kinds = tr("Replies (*.pwreply)")
        self.asking = ask_new_file(self, tr("Write the reply"), name, kinds, self.write_reply)

    def write_reply(self, target: Path) -> None:
        """Write what was added to the bundle that is open."""
        replies = self._desk.workbench.replies
        self.job.run(
            tr("Writing {name}").format(name=target.name),
            lambda _progress, _should_stop: replies.write(target),
            lambda reply: self.job.say(
                tr("The reply holds {markers}, {remarks} and {tasks}.").format(
                    markers=counted(len(reply.markers), "marker"),
                    remarks=counted(len(reply.remarks), "remark"),
                    tasks=counted(len(reply.assignments), "task"),
                ),
                target,
            ),
        )

    def _came(self, found: MergeReport | ReplyReport) -> None:
        self.job.hide()
        self.came.setText(brought_sentence(found))
        self._desk.tell(self.came.text())
        self.cameIn.emit()

    def _is_elsewhere(self, *, visiting: bool) -> bool:
        """Say what is wrong where a key belongs to the other kind of journal."""
        if visiting == (self.visit is not None):
            return False
        if visiting:
            self._desk.tell(
                tr("This journal is your own: there is nobody to reply to."),
                tr("Open a bundle first."),
            )
        else:
            self._desk.tell(
                tr("This is somebody else's bundle."), tr("Open your own journal first.")
            )
        return True
