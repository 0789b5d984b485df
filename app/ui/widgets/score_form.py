"""What the notes of a passage are read from: nothing, a score file, or a scale by rule."""

from collections.abc import Callable
from pathlib import Path

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFileDialog, QLineEdit, QStackedWidget, QWidget

from app.journal.failures import PlainFailure
from app.journal.records import Passage
from app.journal.scales import scale_title
from app.journal.scores import Score, bar_span, spans_text
from app.services.scores import chosen_part, score_words
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.widgets.basics import Button, column, fill, heading, labelled, row, sentence, soft
from app.ui.widgets.choices import Choice
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.scale_form import ScaleForm
from app.ui.words import counted

NOTHING, FILE, SCALE = "nothing", "file", "scale"
_SUBJECT = "passage.score"

Keep = Callable[[Passage], Passage]
"""Gives a passage its score; runs on the storage thread."""


class ScoreForm(QWidget):
    """Chooses a passage's score; :meth:`keeping` then puts it there.

    Signals
    -------
    scaleChosen(str)
        The scale in words, empty where none is chosen: a name for the passage.
    """

    scaleChosen = Signal(str)

    def __init__(self, desk: Desk) -> None:
        super().__init__()
        self._desk = desk
        self._path: Path | None = None
        self._parts: tuple[Score, ...] = ()
        self._there = ""
        self.source: Choice[str] = Choice(tr("Score"))
        self.source.offer([
            (NOTHING, tr("No score")),
            (FILE, tr("From a file")),
            (SCALE, tr("Scale, arpeggio, broken thirds")),
        ])  # fmt: skip
        self.source.picked.connect(lambda _: self._turn())
        self.scale = ScaleForm(desk.workbench.scores.start_octaves)
        self.scale.changed.connect(self._tell_scale)
        self.part: Choice[int] = Choice(tr("Part"))
        self.bars = QLineEdit()
        self.bars.setMaxLength(12)
        self.bars.setPlaceholderText(tr("1-24; empty: all of it"))
        self._words = sentence()
        self._bar = ThinProgressBar(tr("Reading the score"))
        self._choose = Button(tr("Choose a score"), "import")
        self._choose.clicked.connect(self.ask_for_file)
        self._stack = QStackedWidget()
        for page in (self._nothing_page(), self._file_page(), self._scale_page()):
            self._stack.addWidget(page)
        box = column(self)
        fill(box, heading(tr("What is written")), self.source, self._stack)
        box.setStretch(2, 1)

    def _nothing_page(self) -> QWidget:
        page = QWidget()
        about = tr(
            "With a score, wrong, missing and added notes are found, rhythm is held against the"
            " notation, and F sharp is told from G flat. A scale needs no file."
        )
        fill(column(page), soft(about), 1)
        return page

    def _file_page(self) -> QWidget:
        page = QWidget()
        buttons = row()
        fill(buttons, self._choose, 1)
        about = soft(tr("MusicXML or MIDI. A copy stays in the journal; the file is not changed."))
        fill(
            column(page),
            about,
            buttons,
            self._bar,
            self._words,
            labelled(tr("Part"), self.part),
            labelled(tr("Bars of the score"), self.bars),
            1,
        )
        return page

    def _scale_page(self) -> QWidget:
        page = QWidget()
        fill(column(page), self.scale, 1)
        return page

    def show_passage(self, passage: Passage | None) -> None:
        """Begin with the score of a passage, or with none."""
        score = passage.score if passage is not None else None
        self._path, self._parts = None, ()
        self._there = score_words(passage) if passage is not None else ""
        self.bars.clear()
        self.part.offer([])
        self.source.choose(NOTHING)
        if score is not None and score.scale is not None:
            self.source.choose(SCALE)
            self.scale.show_spec(score.scale)
        elif score is not None and score.file is not None:
            self.source.choose(FILE)
            self.bars.setText(spans_text((score.file.bars,)) if score.file.bars else "")
        self._turn()

    def fit(self, instrument: str) -> None:
        """Offer only scales that the instrument reaches."""
        self.scale.fit(instrument)

    def ask_for_file(self) -> None:
        """Let the player choose a score file."""
        kinds = tr("Scores (*.musicxml *.mxl *.xml *.mid *.midi)")
        name, _ = QFileDialog.getOpenFileName(self, tr("Choose a score"), "", kinds)
        if name:
            self.read(Path(name))

    def read(self, path: Path) -> None:
        """Read the parts of a score; long, and in the background."""
        scores = self._desk.workbench.scores
        self._choose.setEnabled(False)
        self._words.setText(tr("Reading {name} …").format(name=path.name))
        self._bar.setRange(0, 0)
        self._bar.show()
        self._desk.jobs.analyse(
            lambda progress, should_stop: scores.parts_of(path, progress, should_stop),
            lambda parts: self._read(path, parts),
            subject=_SUBJECT,
            failed=self._not_read,
            ended=self._ended,
        )

    def _read(self, path: Path, parts: tuple[Score, ...]) -> None:
        self._path, self._parts = path, parts
        names = [
            (number, f"{part.part}: {counted(len(part.notes), 'note')}")
            for number, part in enumerate(parts)
        ]
        self.part.offer(names)
        notices = " ".join(parts[0].notices)
        self._words.setText(f"{path.name}. {notices}".strip())
        self._turn()

    def _not_read(self, failure: PlainFailure) -> None:
        self._words.setText(f"{failure.sentence} {failure.next_step}")

    def _ended(self) -> None:
        self._choose.setEnabled(True)
        self._bar.hide()

    def _turn(self) -> None:
        pages = (NOTHING, FILE, SCALE)
        self._stack.setCurrentIndex(pages.index(self.source.key or NOTHING))
        if self._path is None:
            self._words.setText(self._there)
            self._bar.hide()
        self.part.setEnabled(bool(self._parts))
        self._tell_scale()

    def _tell_scale(self) -> None:
        is_scale = self.source.key == SCALE
        self.scaleChosen.emit(scale_title(self.scale.spec) if is_scale else "")

    def keeping(self) -> Keep:
        """Say what to do with a passage once it is in the journal.

        Raises
        ------
        PlainFailure
            Where the form cannot be meant so: no file, or no such bars.
        """
        scores = self._desk.workbench.scores
        kind = self.source.key or NOTHING
        if kind == SCALE:
            spec = self.scale.spec
            return lambda passage: scores.write_scale(passage.id, spec)
        if kind == NOTHING:
            return lambda passage: scores.remove(passage.id) if passage.score else passage
        bars = bar_span(self.bars.text()) if self.bars.text().strip() else None
        path, part = self._path, self.part.key or 0
        if path is not None:
            chosen_part(self._parts, part, bars)
            return lambda passage: scores.attach(passage.id, path, part, bars)
        if not self._there:
            raise PlainFailure(tr("No score is chosen."), tr("Choose a file, or 'No score'."))
        return lambda passage: scores.choose_bars(passage.id, bars)
