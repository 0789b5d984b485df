"""The forms of the Practice page, each loaded and made when it is first wanted."""

from collections.abc import Callable, Iterator
from functools import cached_property
from typing import TYPE_CHECKING, Any, TypeVar

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QStackedWidget, QWidget

from app.ui.desk import Desk
from app.ui.models.practice_clock import PracticeClock
from app.ui.models.recorder import Recorder
from app.ui.pages.page import settle_in

if TYPE_CHECKING:
    from app.ui.widgets.assignments_form import AssignmentsForm
    from app.ui.widgets.guide_form import GuideForm
    from app.ui.widgets.import_panel import ImportPanel
    from app.ui.widgets.items_form import ItemsForm
    from app.ui.widgets.passage_form import PassageForm
    from app.ui.widgets.rehearsal_form import RehearsalForm
    from app.ui.widgets.score_form import ScoreForm
    from app.ui.widgets.settings_form import SettingsForm

_FORMS_AND_PARTS = (
    *("imports", "_settings", "_score", "passage"),
    *("assignments", "items", "guides", "rehearsal"),
)

_F = TypeVar("_F", bound=QWidget)


class PracticeForms(QStackedWidget):
    """Today, or one of the forms in its place.

    Parameters
    ----------
    desk : Desk
    clock : PracticeClock
    recorder : Recorder
    closed : callable
        Called when a form has nothing more to do.

    Signals
    -------
    passageMade(Passage)
        A passage was made or changed.
    guidesChosen(str)
        What sounds along with the next takes, in words.
    """

    passageMade = Signal(object)
    guidesChosen = Signal(str)

    def __init__(
        self, desk: Desk, clock: PracticeClock, recorder: Recorder, closed: Callable[[], None]
    ) -> None:
        super().__init__()
        self._desk, self._clock, self._recorder = desk, clock, recorder
        self._closed = closed

    @cached_property
    def passage(self) -> "PassageForm":
        """Makes or changes a passage."""
        from app.ui.widgets.passage_form import PassageForm  # noqa: PLC0415 - when first wanted

        form = self._taken_in(PassageForm(self._desk, self._settings, self._score))
        form.made.connect(self.passageMade)
        return form

    @cached_property
    def _settings(self) -> "SettingsForm":
        from app.ui.widgets.settings_form import SettingsForm  # noqa: PLC0415 - when first wanted

        return SettingsForm()

    @cached_property
    def _score(self) -> "ScoreForm":
        from app.ui.widgets.score_form import ScoreForm  # noqa: PLC0415 - when first wanted

        return ScoreForm(self._desk)

    @cached_property
    def imports(self) -> "ImportPanel":
        """The table of files that come in."""
        from app.ui.widgets.import_panel import ImportPanel  # noqa: PLC0415 - when first wanted

        return self._taken_in(ImportPanel(self._desk))

    @cached_property
    def items(self) -> "ItemsForm":
        """What can be practised."""
        from app.ui.widgets.items_form import ItemsForm  # noqa: PLC0415 - when first wanted

        return self._taken_in(ItemsForm(self._desk, self._clock))

    @cached_property
    def assignments(self) -> "AssignmentsForm":
        """What is set for the lesson."""
        from app.ui.widgets.assignments_form import (  # noqa: PLC0415 - when first wanted
            AssignmentsForm,
        )

        return self._taken_in(AssignmentsForm(self._desk))

    @cached_property
    def guides(self) -> "GuideForm":
        """Click and drone."""
        from app.ui.widgets.guide_form import GuideForm  # noqa: PLC0415 - when first wanted

        form = self._taken_in(GuideForm(self._desk, self._recorder))
        form.chosen.connect(self.guidesChosen)
        return form

    @cached_property
    def rehearsal(self) -> "RehearsalForm":
        """The audition rehearsal."""
        from app.ui.models.rehearsal import RehearsalRun  # noqa: PLC0415 - when first wanted
        from app.ui.widgets.rehearsal_form import RehearsalForm  # noqa: PLC0415

        run = RehearsalRun(self._desk, self._recorder)
        return self._taken_in(RehearsalForm(self._desk.theme, run, self._recorder))

    def make_ahead(self) -> Iterator[None]:
        """Make the forms that nobody wanted yet, one before each yield."""
        for name in _FORMS_AND_PARTS:
            if not self.has_made(name):
                getattr(self, name)
                yield

    def has_made(self, name: str) -> bool:
        """Say whether somebody wanted this form before."""
        return name in vars(self)

    def shows(self, name: str) -> bool:
        """Say whether this form is in view."""
        return self.has_made(name) and bool(getattr(self, name).isVisible())

    def _taken_in(self, form: _F) -> _F:
        self.addWidget(form)
        signals: Any = form
        signals.closed.connect(self._closed)
        settle_in(form, self._desk)
        return form
