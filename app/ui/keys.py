"""The one table of actions and their keys.

Shortcuts, menus, tooltips and the help sheet are all made from :data:`ACTIONS`; a key
that is not in this table does not exist.
"""

from collections.abc import Callable
from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction, QKeySequence
from PySide6.QtWidgets import QAbstractButton, QWidget


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


MARKER_KEY_COUNT = 9
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
        ("undo", "Undo", "Ctrl+Z"),
        ("redo", "Redo", "Ctrl+Shift+Z Ctrl+Y"),
        ("work.cancel", "Cancel the long work that is running", "Ctrl+."),
        ("escape", "Put the message away, or clear the selection", "Esc"),
        ("settings", "Settings of this journal", "Ctrl+,"),
        ("theme", "Change between light and dark", "Ctrl+T"),
        ("help", "Show all keys", "F1"),
        ("quit", "Close the program", "Ctrl+Q"),
    ),
    *_specs(
        Where.PRACTICE,
        ("practice.record", "Record, or stop recording", "R"),
        ("practice.level", "Check the input level, or stop checking", "L"),
        ("practice.aim", "Write the aim of the next take", "A"),
        ("practice.minutes", "Type today's minutes", "T"),
        ("practice.passage", "New passage", "N"),
        ("practice.edit_passage", "Change the chosen passage", "E"),
        ("practice.met", "Aim: met", "Alt+1"),
        ("practice.partly", "Aim: partly met", "Alt+2"),
        ("practice.not_met", "Aim: not met", "Alt+3"),
        ("practice.listen", "Listen to the latest take of today", "G"),
        ("clock.toggle", "Start the practice clock, pause it, or go on", "P"),
        ("clock.stop", "Stop the practice clock", "S"),
        ("clock.next_item", "Switch the clock to the next item", "I"),
        *(
            (f"clock.item_{n}", f"Clock on item {n} of the list", str(n))
            for n in range(1, ITEM_KEY_COUNT + 1)
        ),
        ("clock.items", "Change the list of items", "Shift+I"),
    ),
    *_specs(
        Where.LISTEN,
        ("listen.play", "Play, or pause", "Space"),
        ("listen.back", "Back 2 s", "Left"),
        ("listen.forward", "Forward 2 s", "Right"),
        ("listen.back_note", "To the note before", "Shift+Left"),
        ("listen.forward_note", "To the next note", "Shift+Right"),
        ("listen.start", "To the start", "Home"),
        ("listen.select_from", "Selection starts here", "["),
        ("listen.select_to", "Selection ends here", "]"),
        ("listen.loop", "Loop the selection, or stop looping", "O"),
        ("listen.slower", "Slower", "-"),
        ("listen.faster", "Faster", "="),
        ("listen.normal_speed", "Speed as played", "0"),
        ("listen.louder", "Louder", "Ctrl+Up"),
        ("listen.quieter", "Quieter", "Ctrl+Down"),
        ("listen.zoom_in", "Zoom in", "Ctrl+="),
        ("listen.zoom_out", "Zoom out", "Ctrl+-"),
        ("listen.zoom_all", "Show the whole take", "Ctrl+0"),
        *(
            (f"listen.mark_{n}", f"Marker of category {n} where it plays", str(n))
            for n in range(1, MARKER_KEY_COUNT + 1)
        ),
        ("listen.next_marker", "To the next marker", "M"),
        ("listen.previous_marker", "To the marker before", "Shift+M"),
        ("listen.edit_marker", "Write the text of the chosen marker", "E"),
        ("listen.move_marker", "Move the chosen marker to the playing position", "Shift+E"),
        ("listen.delete_marker", "Delete the chosen marker", "Del"),
        ("listen.previous_take", "To the take before, same passage", "Ctrl+Left"),
        ("listen.next_take", "To the next take, same passage", "Ctrl+Right"),
        ("listen.notes", "Show the notes", "Alt+1"),
        ("listen.markers", "Show the markers", "Alt+2"),
        ("listen.numbers", "Show the numbers", "Alt+3"),
        ("listen.take", "Show the take's settings", "Alt+4"),
        ("listen.compare", "Compare this take with the first of its passage", "C"),
        ("listen.delete_take", "Delete this take", "Ctrl+Del"),
    ),
    *_specs(
        Where.COMPARE,
        ("compare.play", "Play, or pause", "Space"),
        ("compare.switch", "Switch to the same place in the other take", "X"),
        ("compare.swap", "Swap A and B", "S"),
        ("compare.layout", "Overlaid, or one above the other", "V"),
        ("compare.trend", "Next measure of the trend", "T"),
    ),
    *_specs(
        Where.CALENDAR,
        ("calendar.previous", "Year before", "PgUp"),
        ("calendar.next", "Next year", "PgDown"),
        ("calendar.today", "To today", "H"),
        ("calendar.minutes", "Type the minutes of the chosen day", "T"),
        ("calendar.rest", "Rest day, or take the mark away", "R"),
    ),
    *_specs(
        Where.LESSON,
        ("lesson.previous", "Week before", "PgUp"),
        ("lesson.next", "Next week", "PgDown"),
        ("lesson.this_week", "The seven days up to today", "W"),
        ("lesson.copy", "Copy the text", "Ctrl+Shift+C"),
        ("lesson.save", "Save the text as a file", "Ctrl+S"),
    ),
)

_BY_ID = {spec.id: spec for spec in ACTIONS}


def spec_of(action_id: str) -> ActionSpec:
    """Return the action with `action_id`; KeyError where the table has none."""
    return _BY_ID[action_id]


def keys_text(action_id: str) -> str:
    """Return the keys as the platform writes them, e.g. ``"Ctrl+Z"``."""
    return " or ".join(
        QKeySequence(keys).toString(QKeySequence.SequenceFormat.NativeText)
        for keys in _BY_ID[action_id].keys
    )


class KeyMap:
    """Binds actions of the table to widgets and remembers which are bound."""

    def __init__(self) -> None:
        self._bound: dict[str, QAction] = {}

    def bind(self, widget: QWidget, action_id: str, slot: Callable[[], object]) -> QAction:
        """Make the action on `widget`; its keys work while that widget is shown."""
        spec = spec_of(action_id)
        action = QAction(spec.text, widget)
        action.setShortcuts([QKeySequence(keys) for keys in spec.keys])
        # Hidden pages do not answer, so the keys of five pages never meet.
        action.setShortcutContext(Qt.ShortcutContext.WindowShortcut)
        action.triggered.connect(lambda _checked=False: slot())
        widget.addAction(action)
        self._bound[action_id] = action
        return action

    def action(self, action_id: str) -> QAction:
        """Return the bound action."""
        return self._bound[action_id]

    @property
    def bound_ids(self) -> frozenset[str]:
        """Ids of all actions that somebody answers."""
        return frozenset(self._bound)


def describe(button: QAbstractButton, action_id: str, name: str = "") -> None:
    """Give `button` the action's words and keys as tooltip, and an accessible name."""
    spec = spec_of(action_id)
    button.setToolTip(f"{spec.text} ({keys_text(action_id)})")
    button.setAccessibleName(name or spec.text)
