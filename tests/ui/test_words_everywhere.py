"""Everything a window shows goes through translation, wherever its words come from.

The window speaks a made-up language: full-width letters in place of every known sentence,
filled in with values as they come. What is shown in ordinary letters is the player's own
(read from the database), a name or a unit, or it has escaped.
"""

import json
import re
from pathlib import Path

import pytest
from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QLabel

from app.ui import spoken
from app.ui.language import ENGLISH, tr, use_language
from app.wiring import open_workbench
from tests.ui import said_below, walk_words, walking

FIELD = re.compile(r"\{(\w+)(?::\w+)?\}")
BEYOND_A_TEMPLATE = 4
"""Templates of which two fields stand together: made-up values cannot be told apart there."""


@pytest.fixture
def marked(qapp: QCoreApplication):
    use_language(ENGLISH)
    with walking.marked_language():
        spoken.forget()
        yield
    spoken.forget()


@pytest.mark.qt_log_ignore("This plugin does not support")  # of dialogs, on the offscreen one
def test_no_word_of_any_page_escapes_translation(
    marked, open_window, real_journal, settle, capsys
) -> None:
    with open_workbench(real_journal) as bench:
        window = open_window(bench)
        settle(window)
        escaped = [
            f"[{state}] {kind}: {words} in {text!r}"
            for state, kind, text, words in walk_words.walk(
                window, real_journal, lambda: settle(window), walk_words.untranslated
            )
        ]
        window.close()
    assert not escaped, "\n".join(escaped)


def test_a_word_that_escapes_is_found(marked, qapp: QCoreApplication) -> None:
    label, known = QLabel("Plain words of nobody"), QLabel(tr("Zoom in"))
    texts = {text for kind, text in walking.shown_words() if kind == "QLabel"}
    assert {label.text(), known.text()} <= texts
    assert walk_words.untranslated(label.text(), []) == ["Plain", "words", "of", "nobody"]
    assert walk_words.untranslated(known.text(), []) == []
    assert walk_words.untranslated("Study: 3 ｔａｋｅｓ at 440 Hz", ["Study"]) == ["at"]


def test_what_is_known_was_gathered_from_the_rooms_below() -> None:
    shipped = json.loads(walk_words_file().read_text("utf-8"))
    assert shipped == said_below.everything(), "run tests/ui/gather_words.py"


def walk_words_file() -> Path:
    return Path(spoken.__file__).parent / "translations" / "said.json"


def test_a_sentence_put_together_elsewhere_is_found_in_the_source() -> None:
    source = 'def f(n):\n    "Not this."\n    raise ValueError(f"nor {n} this")\n'
    source += "    return f\"{n:.1f} dB too loud for {x.name}, {counted(n, 'bar')}\"\n"
    found = {one.template: one.numbers for one in said_below.sentences_of(source)}
    assert found == {
        "{n} dB too loud for {x}, {n2}": {"n", "n2"},
        "1 bar": set(),
        "{n} bars": {"n"},
    }


def test_each_template_is_recognised_by_itself(qapp: QCoreApplication) -> None:
    """Values that are nobody's words must not lead to another template."""
    use_language("de")
    spoken.forget()
    unlike = []
    try:
        for template, numbers in said_below.everything()["sentences"].items():
            guarded = set(numbers.split())
            values = {name: "7" if name in guarded else "Zqx" for name in FIELD.findall(template)}
            text = FIELD.sub(lambda field, of=values: of[field[1]], template)
            german = QCoreApplication.translate(spoken.SAID, template)
            wanted = FIELD.sub(lambda field, of=values: of[field[1]], german)
            if spoken._said(text, 1) != wanted:
                unlike.append((template, spoken._said(text, 1)))
    finally:
        use_language(ENGLISH)
        spoken.forget()
    assert len(unlike) <= BEYOND_A_TEMPLATE, unlike
