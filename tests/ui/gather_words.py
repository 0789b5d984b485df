"""Gather the words of the window into its catalogue, and compile the catalogue.

    python tests/ui/gather_words.py [--language CODE]

Reads what stands in ``tr(...)`` and ``mark(...)`` under app/ui, the table of actions, the
names of the pages, and the sentences of the rooms below (``said_below.py``); writes these
into ``app/ui/translations/said.json``, and everything into
``app/ui/translations/passagework_CODE.ts``, where translations that are there stay, and
makes the ``.qm`` that the program ships. Qt's own lupdate does not find a ``tr`` outside a
class, nor words that a table hands on.
"""

import argparse
import ast
import json
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from xml.etree import ElementTree

sys.path.insert(0, str(Path(__file__).parents[2]))

from app.ui.keys import ACTIONS, Where
from app.ui.language import CONTEXT
from app.ui.spoken import DATIVE, SAID
from tests.ui.said_below import everything

ROOT = Path(__file__).resolve().parents[2]
FOLDER = ROOT / "app" / "ui" / "translations"
SAID_FILE = FOLDER / "said.json"
MARKING = ("tr", "mark")

Catalogue = dict[tuple[str, str], str]
"""Translation (empty: none yet) by context and source."""


def catalogue_file(language: str) -> Path:
    return FOLDER / f"passagework_{language}.ts"


def marked_literals(source: str) -> Iterator[str]:
    """Give the literal of each ``tr("...")`` and ``mark("...")``; a call with a name has none."""
    for node in ast.walk(ast.parse(source)):
        if not isinstance(node, ast.Call) or not isinstance(node.func, ast.Name):
            continue
        if node.func.id not in MARKING:
            continue
        for argument in node.args:
            yield from (
                part.value
                for part in ast.walk(argument)
                if isinstance(part, ast.Constant) and isinstance(part.value, str)
            )


def window_words() -> set[tuple[str, str]]:
    """Give all that the window shows, by context and source."""
    below = everything()
    found = {(SAID, text) for text in (*below["sentences"], *below["words"])}
    found |= {(DATIVE, text) for text in below["dative"]}
    found |= {(CONTEXT, spec.text) for spec in ACTIONS}
    found |= {(CONTEXT, where.value) for where in Where}
    for path in sorted((ROOT / "app" / "ui").rglob("*.py")):
        found |= {(CONTEXT, text) for text in marked_literals(path.read_text("utf-8")) if text}
    return found


def read_catalogue(path: Path) -> Catalogue:
    entries: Catalogue = {}
    if not path.exists():
        return entries
    for context in ElementTree.parse(path).getroot().iter("context"):  # noqa: S314 - our own file
        for message in context.iter("message"):
            found = message.find("translation")
            is_done = found is not None and found.get("type") is None
            text = (found.text or "") if found is not None and is_done else ""
            entries[context.findtext("name") or "", message.findtext("source") or ""] = text
    return entries


def write_catalogue(path: Path, language: str, entries: Catalogue) -> None:
    root = ElementTree.Element("TS", version="2.1", language=language, sourcelanguage="en")
    for name in sorted({name for name, _ in entries}):
        context = ElementTree.SubElement(root, "context")
        ElementTree.SubElement(context, "name").text = name
        for (_, source), text in sorted(item for item in entries.items() if item[0][0] == name):
            message = ElementTree.SubElement(context, "message")
            ElementTree.SubElement(message, "source").text = source
            translation = ElementTree.SubElement(message, "translation")
            translation.text = text
            if not text:
                translation.set("type", "unfinished")
    ElementTree.indent(root, "    ")
    body = ElementTree.tostring(root, encoding="unicode")
    path.write_text(f'<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n{body}\n', "utf-8")


def compile_catalogue(source: Path, target: Path) -> None:
    tool = Path(sys.executable).with_name("pyside6-lrelease")
    subprocess.run([tool, "-silent", source, "-qm", target], check=True)


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--language", default="de")
    language = parser.parse_args().language
    path = catalogue_file(language)
    SAID_FILE.write_text(json.dumps(everything(), indent=0, ensure_ascii=False) + "\n", "utf-8")
    known = read_catalogue(path)
    entries = {key: known.get(key, "") for key in window_words()}
    write_catalogue(path, language, entries)
    compile_catalogue(path, path.with_suffix(".qm"))
    missing = sum(not text for text in entries.values())
    print(f"{len(entries)} messages, {missing} of them without a translation")


if __name__ == "__main__":
    main()
