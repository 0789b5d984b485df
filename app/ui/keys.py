"""The one table of actions and their keys.

Shortcuts, menus, tooltips and the help sheet are all made from :data:`ACTIONS`; a key
that is not in this table does not exist.
"""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QWidget

from app.ui.calendar_actions import CALENDAR_ACTIONS
from app.ui.compare_actions import COMPARE_ACTIONS
from app.ui.language import tr
from app.ui.lesson_actions import LESSON_ACTIONS
from app.ui.listen_actions import LISTEN_ACTIONS, MARKER_KEY_COUNT
from app.ui.listen_ear_actions import LISTEN_EAR_ACTIONS

__all__ = ["ACTIONS", "MARKER_KEY_COUNT", "PEDAL_IDS", "ActionSpec", "KeyMap", "Where"]


class Where(StrEnum):
    """On which page an action exists, in the order of the rail; the value is a heading."""

    EVERYWHERE = "Everywhere"
    PRACTICE = "Practice"
    LISTEN = "Listen"
    COMPARE = "Compare"
    CALENDAR = "Calendar"
    LESSON = "Lesson"


@dataclass(frozen=True, slots=True)
class ActionSpec:
    """An action: a stable id, what it does in words, its keys, and where it exists."""

    id: str
    text: str
    keys: tuple[str, ...]
    where: Where


ITEM_KEY_COUNT = 9


def _specs(where: Where, *rows: tuple[str, str, str]) -> tuple[ActionSpec, ...]:
    return tuple(ActionSpec(key, text, tuple(keys.split()), where) for key, text, keys in rows)


ACTIONS: tuple[ActionSpec, ...] = (
    *_specs(
        Where.EVERYWHERE,
        ("page.practice", "Go to Practice", "Ctrl+1"),
        ("page.listen", "Go to Listen", "Ctrl+2"),
        ("page.compare", "Go to Compare", "Ctrl+3"),
        ("page.calendar", "Go to Calendar", "Ctrl+4"),
        ("page.lesson", "Go to Lesson", "Ctrl+5"),
        ("import", "Import recordings", "Ctrl+I"),
        ("import_folder", "Import a folder of recordings", "Ctrl+Shift+I"),
        ("undo", "Undo", "Ctrl+Z"),
        ("redo", "Redo", "Ctrl+Shift+Z Ctrl+Y"),
        ("work.cancel", "Cancel the long work that is running", "Ctrl+."),
        ("escape", "Put the message or the form away, or clear the selection", "Esc"),
        ("settings", "Settings of this journal", "Ctrl+,"),
        ("categories", "Change the marker categories", "Ctrl+Shift+K"),
        ("theme", "Change between light and dark", "Ctrl+T"),
        ("help", "Show all keys", "F1"),
        ("guide", "Open the guide", "Shift+F1"),
        ("keys", "Keys of your own, for a pedal", "Ctrl+K"),
        ("backups", "Backups of this journal", "Ctrl+B"),
        ("rehearsal.next", "Hear the next take of the rehearsal", "Ctrl+J"),
        ("quit", "Close the program", "Ctrl+Q"),
    ),
    *_specs(
        Where.PRACTICE,
        ("practice.record", "Record, or stop recording", "R"),
        ("practice.stop", "Stop recording", "Shift+R"),
        ("practice.mark", "Mark this moment of the take that is recorded", "M"),
        ("practice.large", "Large view for the music stand, or back", "F"),
        ("practice.plan", "Propose a plan for the minutes there are", "O"),
        ("practice.assignments", "What is set for the lesson", "Shift+L"),
        ("practice.rehearsal", "Audition rehearsal, or back to today", "Shift+A"),
        ("practice.arm", "Record from the first note on, or wait no longer", "W"),
        ("practice.guides", "Click and drone for the next takes", "C"),
        ("practice.file_clip", "File the first new clip as proposed", "K"),
        ("practice.look_clips", "Look at all new clips", "Shift+K"),
        ("practice.level", "Check the input level, or stop checking", "L"),
        ("practice.aim", "Write the aim of the next take", "A"),
        ("practice.minutes", "Type today's minutes", "T"),
        ("practice.passage", "New passage", "N"),
        ("practice.edit_passage", "Change the chosen passage", "E"),
        ("practice.met", "Aim: met", "Alt+1"),
        ("practice.partly", "Aim: partly met", "Alt+2"),
        ("practice.not_met", "Aim: not met", "Alt+3"),
        ("practice.listen", "Listen to the latest take of today", "G"),
        ("practice.year_ago", "Hear this week a year ago, then now", "Y"),
        ("clock.toggle", "Start the practice clock, pause it, or go on", "P"),
        ("clock.stop", "Stop the practice clock", "S"),
        ("clock.next_item", "Switch the clock to the next item", "I"),
        *(
            (f"clock.item_{n}", f"Clock on item {n} of the list", str(n))
            for n in range(1, ITEM_KEY_COUNT + 1)
        ),
        ("clock.listen", "Count the minutes in which the instrument sounds, or stop", "H"),
        ("clock.items", "Change the list of items", "Shift+I"),
    ),
    *_specs(Where.LISTEN, *LISTEN_ACTIONS, *LISTEN_EAR_ACTIONS),
    *_specs(Where.COMPARE, *COMPARE_ACTIONS),
    *_specs(Where.CALENDAR, *CALENDAR_ACTIONS),
    *_specs(
        Where.LESSON,
        *LESSON_ACTIONS,
    ),
)

_BY_ID = {spec.id: spec for spec in ACTIONS}


def spec_of(action_id: str) -> ActionSpec:
    """Return the action with `action_id`; KeyError where the table has none."""
    return _BY_ID[action_id]


PEDAL_IDS: tuple[str, ...] = (
    "practice.record",
    "practice.stop",
    "practice.mark",
    "practice.arm",
    "clock.next_item",
    "clock.toggle",
    "clock.stop",
    "practice.large",
    "practice.level",
)
"""Actions that may have a key of the player's own beside their usual ones."""

_REPEATING = frozenset(
    {
        *("listen.back", "listen.forward", "listen.back_note", "listen.forward_note"),
        *("listen.slower", "listen.faster", "listen.louder", "listen.quieter"),
        *("listen.zoom_in", "listen.zoom_out", "listen.pan_left", "listen.pan_right"),
        *("listen.lane_taller", "listen.lane_lower"),
        *("listen.next_marker", "listen.previous_marker"),
        *("listen.next_suggestion", "listen.previous_suggestion"),
        *("compare.back", "compare.forward", "compare.slower", "compare.faster"),
        *("calendar.previous", "calendar.next", "lesson.previous", "lesson.next"),
    }
)
"""Actions that go on step by step while their key is held; all others happen once."""

# Without these nobody gets about without a mouse.
_KEPT_FREE = {"Tab", "Shift+Tab", "Esc"}


def keys_text(action_id: str, own: str = "") -> str:
    """Return the keys as the platform writes them, e.g. ``"Ctrl+Z"``."""
    keys = (*_BY_ID[action_id].keys, *((own,) if own else ()))
    return tr(" or ").join(
        QKeySequence(key).toString(QKeySequence.SequenceFormat.NativeText) for key in keys
    )


def refusal(action_id: str, key: str, own_keys: Mapping[str, str]) -> str:
    """Say why a key cannot be an action's own; empty where it can."""
    wanted = QKeySequence(key).toString()
    if not wanted:
        return tr("That key has no name here; another one may work.")
    if wanted in _KEPT_FREE:
        needed = tr("{key} is needed to get about with the keyboard; choose another key.")
        return needed.format(key=wanted)
    where = (Where.EVERYWHERE, _BY_ID[action_id].where)
    for spec in ACTIONS:
        if spec.where not in where or (spec.id == action_id and wanted not in spec.keys):
            continue
        taken = {QKeySequence(k).toString() for k in spec.keys}
        if spec.id != action_id and own_keys.get(spec.id):
            taken.add(QKeySequence(own_keys[spec.id]).toString())
        if wanted in taken:
            words = tr(spec.text)
            said = tr("{key} already means: {words}. Choose another key.")
            return said.format(key=wanted, words=words[:1].lower() + words[1:])
    return ""


class KeyMap(QObject):
    """Binds actions of the table to widgets and remembers which are bound.

    Parameters
    ----------
    own_keys : mapping
        Keys of the player's own by action id, such as a pedal types.

    Signals
    -------
    changed()
        The player's own keys are other ones now.
    """

    changed = Signal()

    def __init__(self, own_keys: Mapping[str, str], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._bound: dict[str, QAction] = {}
        self._own = {key: value for key, value in own_keys.items() if key in PEDAL_IDS}
        self._off: dict[str, tuple[Callable[[], object], str]] = {}
        self.last_triggered = ""
        """The id of what happened since a key went down last; see :class:`KeyRepeats`."""

    def bind(self, widget: QWidget, action_id: str, slot: Callable[[], object]) -> QAction:
        """Make the action on `widget`; its keys work while that widget is shown."""
        action = QAction(tr(spec_of(action_id).text), widget)
        # Hidden pages do not answer, so the keys of five pages never meet.
        action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
        action.setAutoRepeat(self.repeats(action_id))
        action.triggered.connect(lambda _checked=False: self._happen(action_id, slot))
        widget.addAction(action)
        self._bound[action_id] = action
        self._give_keys(action_id)
        return action

    def turn_off(self, action_ids: Iterable[str], answer: Callable[[], object], words: str) -> None:
        """Let these actions say why they do nothing here, in place of doing it.

        `words` are for the tooltips of their buttons, which are greyed; see
        :func:`describe_again`.
        """
        self._off.update(dict.fromkeys(action_ids, (answer, words)))

    @property
    def are_usual(self) -> bool:
        """No action has a key of the player's own, and none is turned off."""
        return not (self._own or self._off)

    def off_words(self, action_id: str) -> str:
        """Say why an action does nothing here; empty where it does something."""
        return self._off[action_id][1] if action_id in self._off else ""

    def _happen(self, action_id: str, slot: Callable[[], object]) -> None:
        self.last_triggered = action_id
        (self._off[action_id][0] if action_id in self._off else slot)()

    def action(self, action_id: str) -> QAction:
        """Return the bound action."""
        return self._bound[action_id]

    @staticmethod
    def repeats(action_id: str) -> bool:
        """Tell whether an action goes on step by step while its key is held."""
        return action_id in _REPEATING

    def own_key(self, action_id: str) -> str:
        """Return the player's own key of an action, empty where there is none."""
        return self._own.get(action_id, "")

    def text(self, action_id: str) -> str:
        """Return all keys of an action as the platform writes them."""
        return keys_text(action_id, self.own_key(action_id))

    def use_own(self, own_keys: Mapping[str, str]) -> None:
        """Use these keys of the player's own in the place of those there were."""
        self._own = {key: value for key, value in own_keys.items() if value}
        for action_id in self._bound:
            self._give_keys(action_id)
        self.changed.emit()

    @property
    def bound_ids(self) -> frozenset[str]:
        """Ids of all actions that somebody answers."""
        return frozenset(self._bound)

    def _give_keys(self, action_id: str) -> None:
        own = self.own_key(action_id)
        keys = (*spec_of(action_id).keys, *((own,) if own else ()))
        self._bound[action_id].setShortcuts([QKeySequence(key) for key in keys])


def describe(button: QAbstractButton, action_id: str, name: str = "") -> None:
    """Give `button` the action's words and keys as tooltip, and an accessible name."""
    button.setProperty("actionId", action_id)
    button.setToolTip(f"{tr(spec_of(action_id).text)} ({keys_text(action_id)})")
    button.setAccessibleName(name or tr(spec_of(action_id).text))


def describe_again(root: QWidget, keys: KeyMap) -> None:
    """Let the tooltips of all buttons under `root` name the keys of now.

    Buttons of actions that do nothing here are greyed and say why.
    """
    for button in root.findChildren(QAbstractButton):
        action_id = button.property("actionId")
        if not action_id:
            continue
        if words := keys.off_words(action_id):
            button.setEnabled(False)
            button.setToolTip(words)
        else:
            button.setToolTip(f"{tr(spec_of(action_id).text)} ({keys.text(action_id)})")
