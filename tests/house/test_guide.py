"""The guide and the README name only keys, commands, options and sentences that exist.

The guide in another language says what the English one says, in the words of its window.
"""

import ast
import re
import shlex
from pathlib import Path
from xml.etree import ElementTree

import pytest
import typer.main

from app.cli.commands import build
from app.services.measures import MEASURES
from app.ui.keys import ACTIONS

REPOSITORY = Path(__file__).parents[2]
GUIDE = sorted((REPOSITORY / "app" / "guide").glob("*.md"))
GERMAN = sorted((REPOSITORY / "app" / "guide" / "de").glob("*.md"))
DOCUMENTS = [*GUIDE, *GERMAN, REPOSITORY / "README.md"]
LARGEST_PICTURE_BYTES = 150_000

_COMMAND = typer.main.get_command(build())
_MODIFIER = r"(?:Ctrl|Alt|Shift)\+"
_NAMED = r"F\d{1,2}|Space|Esc|Home|End|Del|Left|Right|Up|Down|PgUp|PgDown|Tab|Enter"
_KEY = re.compile(rf"\*\*((?:{_MODIFIER})*(?:{_NAMED}|\S))\*\*")
# As the catalogue that Qt 6 brings with it (qtbase_de) names them in menus and help.
_GERMAN_KEYS = {"Strg": "Ctrl", "Umschalt": "Shift", "Leertaste": "Space", "Entf": "Del"}


def _name(path: Path) -> str:
    return f"{path.parent.name}-{path.name}" if path in GERMAN else path.name


def _german() -> dict[str, str]:
    """All words of the window, English to German, without the hyphens for narrow columns."""
    catalogue = REPOSITORY / "app" / "ui" / "translations" / "passagework_de.ts"
    messages = ElementTree.parse(catalogue).iter("message")  # noqa: S314 - our own file
    return {
        m.findtext("source", ""): m.findtext("translation", "").replace("\N{SOFT HYPHEN}", "")
        for m in messages
    }


def _command_lines(text: str) -> list[str]:
    """Every ``passagework …`` in code, indented, fenced or in a sentence."""
    spans = re.findall(r"(?<!`)`(passagework [^`]+)`(?!`)", text)
    lines = re.findall(r"^\s*(passagework .+?)(?:\s{2,}#.*|\s+#.*)?$", text, re.MULTILINE)
    return [" ".join(found.split()) for found in (*spans, *lines)]


def _problem(line: str) -> str:
    """Say what of a command line does not exist; empty where all of it does."""
    command = _COMMAND
    words = shlex.split(line)[1:]
    while words and not words[0].startswith("-") and hasattr(command, "commands"):
        if words[0] not in command.commands:
            return f"no command {words[0]!r}"
        command, words = command.commands[words[0]], words[1:]
    known = {name for parameter in command.params for name in parameter.opts}
    known |= {name for parameter in command.params for name in parameter.secondary_opts}
    known |= {"--help"}
    wrong = [word for word in words if word.startswith("--") and word not in known]
    return f"no option {', '.join(wrong)}" if wrong else ""


@pytest.mark.parametrize("path", DOCUMENTS, ids=_name)
def test_commands_and_options_in_the_documents_exist(path):
    wrong = {
        line: problem
        for line in _command_lines(path.read_text(encoding="utf-8"))
        if (problem := _problem(line))
    }
    assert not wrong


def test_a_wrong_command_or_option_would_be_seen():
    assert _problem("passagework fiddle") == "no command 'fiddle'"
    assert _problem("passagework report --fiddle") == "no option --fiddle"
    assert _problem("passagework follow change Opening --fiddle")
    assert not _problem('passagework share Opening:2026-03-14:1 --longest 90 --says "a line"')
    lines = _command_lines("    passagework a --b   # why\n\nType `passagework c\nd`.\n")
    assert lines == ["passagework c d", "passagework a --b"]


@pytest.mark.parametrize("path", GUIDE, ids=_name)
def test_keys_in_the_guide_are_in_the_table_of_actions(path):
    keys = {key for spec in ACTIONS for key in spec.keys}
    named = set(_KEY.findall(path.read_text(encoding="utf-8")))
    assert named <= keys, f"no such keys: {sorted(named - keys)}"


@pytest.mark.parametrize("path", GERMAN, ids=_name)
def test_a_page_in_german_names_the_keys_commands_links_and_rows_of_the_english_page(path):
    german, english = (
        page.read_text(encoding="utf-8") for page in (path, path.parents[1] / path.name)
    )
    for ours, qts in _GERMAN_KEYS.items():
        german = re.sub(rf"(\*\*|\+){ours}(?=\+|\*\*)", rf"\g<1>{qts}", german)
    assert sorted(_KEY.findall(german)) == sorted(_KEY.findall(english))
    assert set(_command_lines(german)) == set(_command_lines(english))
    for what in (r"\]\((?:\.\./)?([^)]+)\)", r"^(#+) ", r"^(\|)", r"^(- |\d\. )"):
        ours, theirs = (re.findall(what, text, re.MULTILINE) for text in (german, english))
        assert ours == theirs, what


def test_every_page_is_there_in_german():
    assert [page.name for page in GERMAN] == [page.name for page in GUIDE]


def test_sentences_quoted_under_a_symptom_are_what_the_german_window_says():
    said = "\n".join(re.sub(r"\{[^{}\n]*\}", "@", text) for text in _german().values())
    said = " ".join(said.split())
    text = (GERMAN[0].parent / "troubleshooting.md").read_text(encoding="utf-8")
    # A name inside a quotation has quotation marks of its own.
    text = text.replace("„NAME“", "NAME")
    quoted = [
        " ".join(fragment.split())
        for symptom in re.findall(r"^\*\*(.+?)\*\*", text, re.MULTILINE | re.DOTALL)
        for sentence in re.findall(r"„(.+?)“", symptom, re.DOTALL)
        for fragment in re.split(r"NAME|…|\b\d+\b", sentence)
        if fragment.strip(" .,")
    ]
    assert len(quoted) > 40
    unsaid = [words for words in quoted if words.strip(" .") not in said.replace("„@“", "")]
    assert not unsaid


@pytest.mark.parametrize("path", GERMAN, ids=_name)
def test_other_words_quoted_in_german_are_those_of_the_german_window(path):
    """What the English page quotes from the window, the German one quotes from it too."""
    english = (path.parents[1] / path.name).read_text(encoding="utf-8")
    german = " ".join(path.read_text(encoding="utf-8").split())
    words = _german()
    labels = {" ".join(label.split()) for label in re.findall(r"(?<!\w)'([^']+?)'(?!\w)", english)}
    missing = {
        label: words[label]
        for label in labels
        if words.get(label) and f"„{words[label].strip('.')}" not in german
    }
    assert not missing


def _strings(room: str) -> str:
    """All texts of a room's code, what is filled in left out, one after the other."""
    found = []
    for module in (REPOSITORY / room).rglob("*.py"):
        for node in ast.walk(ast.parse(module.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Constant) and isinstance(node.value, str):
                found.append(node.value)
            elif isinstance(node, ast.JoinedStr):
                parts = (v.value if isinstance(v, ast.Constant) else "@" for v in node.values)
                found.append("".join(map(str, parts)))
    return "\n".join(found)


def test_sentences_quoted_under_a_symptom_are_what_the_program_says():
    said = "\n".join(map(_strings, ("app", "audio", "analysis")))
    said = re.sub(r"\{[^{}\n]*\}", "@", said)
    text = (REPOSITORY / "app" / "guide" / "troubleshooting.md").read_text(encoding="utf-8")
    quoted = [
        " ".join(fragment.split())
        for symptom in re.findall(r"^\*\*(.+?)\*\*", text, re.MULTILINE | re.DOTALL)
        for sentence in re.findall(r"(?<!\w)'(.+?)'(?!\w)", symptom, re.DOTALL)
        for fragment in re.split(r"NAME|…|\b\d+\b", sentence)
        if fragment.strip(" .,")
    ]
    assert len(quoted) > 40
    unsaid = [words for words in quoted if words.strip(" .") not in said]
    assert not unsaid


def test_every_measure_that_is_shown_is_explained():
    text = (REPOSITORY / "app" / "guide" / "numbers.md").read_text(encoding="utf-8")
    explained = text.casefold()
    unexplained = [m.label for m in MEASURES if m.label.casefold() not in explained]
    # 'Within 10, within 25 cents' is one row.
    assert set(unexplained) <= {"Within 10 cents"}


def test_every_measure_that_is_shown_is_explained_in_german_by_its_german_name():
    words = _german()
    text = (GERMAN[0].parent / "numbers.md").read_text(encoding="utf-8").casefold()
    labels = {words[measure.label] for measure in MEASURES}
    assert not {label for label in labels if label.casefold() not in text}


# Beside the measures of a take: words that stand with a number in the window, and where the
# page on what each number means has them. The first is looked for among what the window says.
_OTHER_NUMBERS = {
    "Rhythm as written": "Rhythm as written",
    " as printed": "as printed",
    "slope {slope}, scatter {scatter}": "Slope a week",
    "up to {held_bpm} BPM": "Tempo held",
    " in a row inside your bounds": "In a row",
    "Likeness of the two shapes": "Likeness of two shapes",
    "two ordinarily differ by": "Ordinarily differ by",
    ", played {value} softer": "Played softer",
    " heard and marked.": "Heard and marked",
    " answers chose the take that measured better": "Answers for the take that measured better",
    "(confidence {share})": "Confidence of a proposed passage",
    "{delay} ms ± {scatter} ms": "Delay, measured",
    "Busier and quieter times": "Busier and quieter times",
    "rank correlation": "Rank correlation",
    "p = {p_value}": "| p |",
    "They spread by": "A pitch with its count",
}


def test_numbers_beside_the_measures_of_a_take_are_explained_too():
    said = _german()
    text = (REPOSITORY / "app" / "guide" / "numbers.md").read_text(encoding="utf-8").casefold()
    gone = [words for words in _OTHER_NUMBERS if not any(words in one for one in said)]
    assert not gone, f"the window says this no more: {gone}"
    assert not [row for row in _OTHER_NUMBERS.values() if row.casefold() not in text]


def test_every_page_is_reached_from_the_list_and_every_picture_is_used_and_small():
    text = "".join(page.read_text(encoding="utf-8") for page in GUIDE)
    for pages in (GUIDE, GERMAN):
        shown = "".join(page.read_text(encoding="utf-8") for page in pages)
        for picture in (pages[0].parent / "pictures").glob("*.png"):
            assert f"(pictures/{picture.name})" in shown, f"no page shows {picture.name}"
            assert picture.stat().st_size < LARGEST_PICTURE_BYTES
    missing = [name for name in ("numbers", "troubleshooting") if f"({name}.md" not in text]
    assert not missing, f"no page leads to {missing}"
