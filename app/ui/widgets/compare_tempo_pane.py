"""The tempo ladder of a passage, its bounds, and the runs through it in a long recording."""

from dataclasses import replace

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QCheckBox, QDoubleSpinBox, QGridLayout

from app.journal.bounds import PassageBounds
from app.journal.failures import PlainFailure
from app.journal.tempo_ladder import Rung
from app.services.following_views import LadderView, RepetitionsView, RunRow
from app.services.views import CompareView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.rows import Column
from app.ui.theme import GRID_PX
from app.ui.widgets.basics import Button, column, fill, heading, labelled, row, sentence
from app.ui.widgets.compare_pane import ComparePane
from app.ui.widgets.progress_bar import ThinProgressBar
from app.ui.widgets.table import RowTable
from app.ui.words import number_text, position_text, short_day_text, short_reading_text


class TempoPane(ComparePane):
    """How far up from slow the passage is, and how many runs in a row held the bounds.

    Signals
    -------
    placeWanted(float)
        Somebody wants to hear a run, seconds in B.
    """

    placeWanted = Signal(float)

    def __init__(self, desk: Desk) -> None:
        super().__init__(desk)
        self._bounds: PassageBounds | None = None
        self._words = sentence()
        self.rungs: RowTable[Rung] = RowTable(tr("Tempo ladder"), _rung_columns(), stretch=1)
        self._cents = _spin(tr("Mean deviation up to"), tr(" cents"), 0.5, 100.0, 0.5)
        self._percent = _spin(tr("Unevenness up to"), " %", 0.1, 50.0, 0.5)
        self._target = _spin(tr("Target tempo"), tr(" BPM"), 0.0, 400.0, 1.0)
        self._target.setSpecialValueText(tr("none"))
        self._step = _spin(tr("Step"), tr(" BPM"), 0.5, 60.0, 1.0)
        self._rubato = QCheckBox(tr("Rubato: no steady beat"))
        self._rubato.setAccessibleName(self._rubato.text())
        self._keep = Button(tr("Keep these bounds"), action_id="compare.keep_bounds")
        self._runs_words = sentence(
            tr("Practised in one long recording? Each run through the passage can be found.")
        )
        self._find = Button(tr("Find the runs in B"), action_id="compare.runs")
        self._bar = ThinProgressBar(tr("Finding runs through the passage"))
        self._bar.hide()
        self.runs: RowTable[RunRow] = RowTable(tr("Runs through the passage"), _run_columns())
        self._build()
        self._keep.clicked.connect(self.keep_bounds)
        self._find.clicked.connect(self.find_runs)
        self.runs.rowOpened.connect(lambda run: self.placeWanted.emit(run.start_s))

    def _build(self) -> None:
        grid = QGridLayout()
        grid.setHorizontalSpacing(GRID_PX)
        grid.setVerticalSpacing(GRID_PX)
        for at, field in enumerate((self._cents, self._percent, self._target, self._step)):
            grid.addLayout(labelled(field.accessibleName(), field), at // 2, at % 2)
        buttons = row()
        fill(buttons, self._rubato, 1, self._keep)
        finding = row()
        fill(finding, heading(tr("Repetitions")), 1, self._find)
        box = column(self)
        fill(box, self._words, self.rungs)
        box.addLayout(grid)
        fill(box, buttons, finding, self._bar, self._runs_words, self.runs)
        box.setStretch(1, 3)
        box.setStretch(7, 2)

    @property
    def words(self) -> str:
        """What the ladder and the runs come to."""
        return f"{self._words.text()}\n{self._runs_words.text()}"

    def read(self, view: CompareView) -> None:
        """Read the ladder."""
        passage_id, bounds = self.passage_id, self.desk.workbench.bounds
        if passage_id is None:
            self._words.setText(tr("These takes belong to no passage."))
            return
        self.desk.jobs.store(
            lambda: bounds.ladder(passage_id), self._take_over, subject="compare.ladder"
        )

    def keep_bounds(self) -> None:
        """Keep the bounds as they stand in the fields."""
        if self._bounds is None:
            return
        target = self._target.value()
        wanted = replace(
            self._bounds,
            mean_absolute_cents=self._cents.value(),
            steadiness_cv_percent=self._percent.value(),
            target_bpm=target if target > 0.0 else None,
            step_bpm=self._step.value(),
            is_rubato=self._rubato.isChecked(),
        )
        bounds = self.desk.workbench.bounds
        self.desk.jobs.store(lambda: bounds.set(wanted), lambda _: self.read_again())

    def find_runs(self) -> None:
        """Find every run through the passage in take B."""
        view, repetitions = self.view, self.desk.workbench.repetitions
        if view is None:
            return
        take_id = view.b.row.id
        self._bar.setValue(0)
        self._bar.show()
        self.desk.jobs.analyse(
            lambda progress, should_stop: repetitions.find(
                take_id, None, progress=progress, should_stop=should_stop
            ),
            self._take_over_runs,
            subject="compare.runs",
            progress=self._bar.show_fraction,
            failed=self._failed,
            ended=self._bar.hide,
        )

    def show_compared(self, view: CompareView) -> None:
        """Forget the runs of another take."""
        if self.view is not None and self.view.b.row.id != view.b.row.id:
            self.runs.show_rows(())
            self._runs_words.setText("")
        super().show_compared(view)

    def _failed(self, failure: PlainFailure) -> None:
        self._runs_words.setText(f"{failure.sentence} {failure.next_step}")

    def _take_over(self, view: LadderView) -> None:
        self._bounds = bounds = view.bounds
        self._words.setText(view.sentence)
        self.rungs.show_rows(view.ladder.rungs[::-1])
        self._cents.setValue(bounds.mean_absolute_cents)
        self._percent.setValue(bounds.steadiness_cv_percent)
        self._target.setValue(bounds.target_bpm or 0.0)
        self._step.setValue(bounds.step_bpm)
        self._rubato.setChecked(bounds.is_rubato)

    def _take_over_runs(self, view: RepetitionsView) -> None:
        self._runs_words.setText(view.sentence)
        self.runs.show_rows(view.runs)


def _spin(name: str, suffix: str, low: float, high: float, step: float) -> QDoubleSpinBox:
    field = QDoubleSpinBox()
    field.setAccessibleName(name)
    field.setRange(low, high)
    field.setSingleStep(step)
    field.setDecimals(1)
    field.setSuffix(suffix)
    return field


def _rung_columns() -> tuple[Column[Rung], ...]:
    return (
        Column(
            tr("Tempo"),
            lambda rung: tr("{bpm} BPM").format(bpm=number_text(rung.bpm, 0)),
            is_number=True,
        ),
        Column(tr("Inside the bounds"), _rung_words, _rung_more),
    )


def _rung_words(rung: Rung) -> str:
    if rung.held_on is not None:
        return tr("held since {day}").format(day=short_day_text(rung.held_on))
    return tr("one day so far") if rung.days else tr("not yet")


def _rung_more(rung: Rung) -> str:
    days = ", ".join(short_day_text(day) for day in rung.days)
    return f"{_rung_words(rung)}: {days}" if days else _rung_words(rung)


def _run_columns() -> tuple[Column[RunRow], ...]:
    def held(run: RunRow) -> str:
        if not run.complete:
            return tr("broken off")
        if run.holds is None:
            return tr("not measured")
        return tr("inside") if run.holds else tr("outside")

    return (
        Column("", lambda run: str(run.number), is_number=True),
        Column(tr("From"), lambda run: position_text(run.start_s), is_number=True),
        Column(tr("Tempo"), lambda run: short_reading_text(run.bpm), is_number=True),
        Column(
            tr("Deviation"), lambda run: short_reading_text(run.mean_absolute_cents), is_number=True
        ),
        Column(tr("Bounds"), held),
    )
