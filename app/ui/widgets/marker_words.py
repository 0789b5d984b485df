"""What markers are called in lists, filters and for screen readers."""

from typing import TYPE_CHECKING

from app.journal.kinds import DEFAULT_CATEGORIES, Author, MarkerState
from app.ui.language import tr
from app.ui.spoken import word
from app.ui.words import position_text

if TYPE_CHECKING:
    from app.journal.records import Marker


def state_words() -> dict[MarkerState, str]:
    """Give the states in words."""
    return {
        MarkerState.TO_WORK_ON: tr("to work on"),
        MarkerState.SETTLED: tr("settled"),
        MarkerState.RETURNED: tr("returned"),
    }


def author_words() -> dict[Author, str]:
    """Give the authors in words."""
    return {Author.SELF: tr("myself"), Author.TEACHER: tr("teacher")}


def weight_words() -> dict[int, str]:
    """Give the weights in words."""
    return {1: tr("1, slight"), 2: tr("2, clear"), 3: tr("3, first to fix")}


def category_word(name: str) -> str:
    """Give a category's name; those the program brought along are in its language."""
    return word(name) if name in DEFAULT_CATEGORIES else name


def heard_words(text: str) -> str:
    """Put the program's own categories of markers into its language, the words after them not."""
    parts = (part.partition(": ") for part in text.split(", "))
    return ", ".join(category_word(name) + sign + rest for name, sign, rest in parts)


def place_of(marker: "Marker") -> str:
    """Give where a marker begins; a dash says that it lasts."""
    span = "" if marker.end_s is None else "\N{EN DASH}"
    return position_text(marker.start_s) + span


def line_of(marker: "Marker") -> str:
    """Give category, text and state in one line."""
    name = category_word(marker.category)
    text = f"{name}: {marker.text}" if marker.text else name
    if marker.state is MarkerState.TO_WORK_ON:
        return text
    return f"{text} ({state_words()[marker.state]})"


def all_of(marker: "Marker") -> str:
    """Give everything about a marker in a sentence."""
    until = (
        tr(" to {time}").format(time=position_text(marker.end_s))
        if marker.end_s is not None
        else ""
    )
    return tr("{time}{until}: {category}, weight {weight}, {state}, by {author}. {text}").format(
        time=position_text(marker.start_s),
        until=until,
        category=category_word(marker.category),
        weight=marker.weight,
        state=state_words()[marker.state],
        author=author_words()[marker.author],
        text=marker.text,
    )
