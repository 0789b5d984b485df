"""The window in another language: nothing is missing, nothing is mixed up, nothing escapes."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication, QTranslator
from PySide6.QtWidgets import QAbstractButton, QHeaderView, QLabel
from pytestqt.qtbot import QtBot

from app.ui import spoken
from app.ui.language import ENGLISH, SYSTEM, tr, use_language
from app.ui.models.rows import Column
from app.ui.preferences import Preferences
from app.ui.spoken import word
from app.ui.theme import CELL_PADDING_PX
from app.ui.widgets.table import RowTable
from tests.ui import gather_words

catalogue_file, window_words = gather_words.catalogue_file, gather_words.window_words
read_catalogue = gather_words.read_catalogue

FIELD = re.compile(r"\{[^}]*\}")
FORM = re.compile(r":\w+(?=\})")
SHOWING = {
    "setText", "setWindowTitle", "setToolTip", "setAccessibleName", "setPlaceholderText",
    "setSpecialValueText", "addTab", "addAction", "tell", "Button", "heading", "soft",
    "sentence", "labelled", "Card", "EmptyState",
}  # fmt: skip
NAMES = {"Passagework"}
ROOT = gather_words.ROOT


@pytest.fixture
def german(qapp: QCoreApplication) -> Iterator[None]:
    assert use_language("de") == "de"
    spoken.forget()
    yield
    use_language(ENGLISH)
    spoken.forget()


def test_every_word_of_the_window_is_translated() -> None:
    catalogue = read_catalogue(catalogue_file("de"))
    assert {key for key in window_words() if not catalogue.get(key)} == set()


def test_the_catalogue_holds_nothing_that_the_window_no_longer_says() -> None:
    assert set(read_catalogue(catalogue_file("de"))) - window_words() == set()


def test_a_translation_fills_in_the_same_values() -> None:
    for (_, source), text in read_catalogue(catalogue_file("de")).items():
        fields = [FORM.sub("", field) for field in FIELD.findall(text)]
        assert sorted(FIELD.findall(source)) == sorted(fields), source


def test_long_names_of_measures_part_where_their_column_is_narrow(
    german: None, qtbot: QtBot
) -> None:
    """As in the columns of Compare; the hyphenation is by the rules of German spelling."""
    names = ("Mean deviation", "Unevenness", "Dynamic span")
    table: RowTable[str] = RowTable("", (Column("", word),), dense=True)
    qtbot.addWidget(table)
    table.show_rows(names)
    table.setFixedWidth(400)
    table.show()
    table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Fixed)
    table.setColumnWidth(0, 220)
    qtbot.waitUntil(lambda: len({table.rowHeight(at) for at in range(3)}) == 1)
    before = table.rowHeight(1)
    table.setColumnWidth(0, 85)
    qtbot.waitUntil(lambda: all(table.rowHeight(at) > before for at in range(3)))
    # Where the words would only fit without the cell's padding they are broken too.
    words_px = table.fontMetrics().horizontalAdvance(word("Mean deviation"))
    table.setColumnWidth(0, words_px + 2 * CELL_PADDING_PX)
    qtbot.waitUntil(lambda: table.rowHeight(2) == before)
    assert table.rowHeight(0) > before


def test_what_is_shipped_was_made_from_the_catalogue(qapp: QCoreApplication) -> None:
    path = catalogue_file("de")
    translator = QTranslator()
    assert translator.load(str(path.with_suffix(".qm")))
    for (context, source), text in read_catalogue(path).items():
        assert translator.translate(context, source) == text


def bare_words(path: Path) -> Iterator[str]:
    for call in ast.walk(ast.parse(path.read_text("utf-8"))):
        if not isinstance(call, ast.Call):
            continue
        name = call.func.attr if isinstance(call.func, ast.Attribute) else ""
        name = call.func.id if isinstance(call.func, ast.Name) else name
        if name not in SHOWING:
            continue
        shown = call.args[:1] if name == "Button" else call.args[:2]
        shown += [word.value for word in call.keywords if word.arg == "name"]
        shown += [
            way for part in shown if isinstance(part, ast.IfExp) for way in (part.body, part.orelse)
        ]
        for part in shown:
            if isinstance(part, ast.JoinedStr):
                text = "".join(
                    one.value for one in part.values
                    if isinstance(one, ast.Constant) and isinstance(one.value, str)
                )  # fmt: skip
            elif isinstance(part, ast.Constant) and isinstance(part.value, str):
                text = part.value
            else:
                continue
            if re.search(r"[A-Za-z]{3,}", text) and text not in NAMES:
                yield f"{path.name}:{part.lineno}: {text}"


def test_nothing_is_shown_that_cannot_be_translated() -> None:
    files = sorted((ROOT / "app" / "ui").rglob("*.py"))
    assert [words for path in files for words in bare_words(path)] == []


@pytest.mark.usefixtures("german")
def test_a_sentence_from_below_keeps_its_values() -> None:
    assert spoken.said("Mon 9 Mar 2026") == "Mo 9. März 2026"
    assert spoken.said("+7.2 ± 1.1 cents") == "+7,2 ± 1,1 Cent"
    assert spoken.said("marker at 1:23.4 added") == "Anmerkung bei 1:23,4 hinzugefügt"
    assert (
        spoken.said("The disk is full: the recording did not start. Check the disk.")
        == "Die Platte ist voll: die Aufnahme begann nicht. Die Platte prüfen."
    )


@pytest.mark.usefixtures("german")
def test_words_of_the_player_stay_as_they_are() -> None:
    for text in (
        "scale",
        "Play it to the end",
        "Mon amour",
        "In May again",
        "Spread apart",
        "Study no. 3",
        "Third finger higher in bar 5.",
    ):
        assert spoken.said(text) == text
    assert spoken.word("scale") == "Tonleiter"


def test_in_english_everything_is_said_as_it_is(qapp: QCoreApplication) -> None:
    use_language(ENGLISH)
    spoken.forget()
    assert spoken.said("Mon 9 Mar 2026") == "Mon 9 Mar 2026"
    assert tr("Zoom in") == "Zoom in"


@pytest.mark.usefixtures("german")
def test_qts_own_buttons_speak_german_too() -> None:
    assert QCoreApplication.translate("QPlatformTheme", "Cancel") == "Abbrechen"


def test_the_language_is_remembered(tmp_path: Path) -> None:
    file = tmp_path / "window.ini"
    assert Preferences(file).language == SYSTEM
    Preferences(file).language = "de"
    assert Preferences(file).language == "de"


def test_a_language_nobody_wrote_falls_back(qapp: QCoreApplication) -> None:
    assert use_language("xx") in (ENGLISH, "de")
    use_language(ENGLISH)
    spoken.forget()


def test_no_page_mixes_english_words_in(qapp, bench, tmp_path, open_window) -> None:
    Preferences(tmp_path / "window.ini").language = "de"
    window = open_window(bench)
    try:
        catalogue = read_catalogue(catalogue_file("de"))
        english = {source for (_, source), text in catalogue.items() if source != text}
        german = set(catalogue.values())
        left = []
        for index in range(window.main.pages.count()):
            window.main.show_page(index)
            assert window.jobs.wait_until_idle(60)
            qapp.processEvents()
            for kind in (QLabel, QAbstractButton):
                left += [w.text() for w in window.main.findChildren(kind) if w.text() in english]
        assert set(left) - german == set()
        texts = {label.text() for label in window.main.findChildren(QLabel)}
        assert tr("Practice clock") == "Übeuhr"
        assert "Übeuhr" in texts
    finally:
        use_language(ENGLISH)
        spoken.forget()
