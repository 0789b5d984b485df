"""What the measuring code and the journal hand on cannot be changed by who gets it."""

import ast
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
GATHERED = {"Contents"}  # filled piece by piece, as a journal is read


def records_of(room: str) -> dict[str, dict[str, bool]]:
    """Name each record of a room, and what it asks of its decorator."""
    found = {}
    for path in (ROOT / room).rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if not isinstance(node, ast.ClassDef):
                continue
            for decorator in node.decorator_list:
                if ast.unparse(decorator).startswith("dataclass"):
                    asked = getattr(decorator, "keywords", [])
                    found[node.name] = {word.arg: ast.literal_eval(word.value) for word in asked}
    return found


@pytest.mark.parametrize(("room", "fewest"), [("analysis", 60), ("app/journal", 60)])
def test_records_are_frozen_and_take_no_further_attributes(room, fewest):
    found = records_of(room)
    assert len(found) >= fewest
    loose = {
        name
        for name, asked in found.items()
        if not (asked.get("frozen") and asked.get("slots")) and name not in GATHERED
    }
    assert loose == set()
