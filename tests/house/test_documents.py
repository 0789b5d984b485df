"""Rules for what is written: long files say why, documents name what exists."""

import ast
import re
from pathlib import Path

import pytest

REPOSITORY = Path(__file__).parents[2]
ROOMS = ("analysis", "audio", "app", "sample_audio")
LONGEST = 300

MODULES = sorted(path for room in ROOMS for path in (REPOSITORY / room).rglob("*.py"))
GUIDE = sorted((REPOSITORY / "app" / "guide").glob("*.md"))
DOCUMENTS = sorted(
    path
    for path in [*REPOSITORY.glob("*.md"), *REPOSITORY.glob("*_audio/*.md"), *GUIDE]
    if path.name != "CHANGELOG.md"
)


def _name(path: Path) -> str:
    return path.relative_to(REPOSITORY).as_posix()


def test_a_long_module_says_why_it_is_long():
    silent = []
    for path in (*MODULES, *sorted((REPOSITORY / "tests").rglob("*.py"))):
        text = path.read_text(encoding="utf-8")
        docstring = ast.get_docstring(ast.parse(text)) or ""
        if text.count("\n") > LONGEST and not re.search(rf"\b{LONGEST} lines\b", docstring):
            silent.append(f"{_name(path)} ({text.count(chr(10))})")
    assert not silent, (
        f"Split these by what they know, or say in their docstring why they are longer than "
        f"{LONGEST} lines: {', '.join(silent)}"
    )


def test_modules_are_named_for_what_they_know():
    vague = {"utils", "util", "helpers", "misc", "common", "tools"}
    assert not [_name(path) for path in MODULES if path.stem in vague]


@pytest.mark.parametrize("path", DOCUMENTS, ids=_name)
def test_links_to_files_lead_somewhere(path):
    text = path.read_text(encoding="utf-8")
    for target in re.findall(r"\]\(([^)#\s]+)(?:#[^)]*)?\)", text):
        if not re.match(r"[a-z]+:", target):
            assert (path.parent / target).exists(), f"{_name(path)} links to {target}"


@pytest.mark.parametrize("path", DOCUMENTS, ids=_name)
def test_named_source_files_exist(path):
    text = path.read_text(encoding="utf-8")
    for target in re.findall(
        r"`((?:analysis|audio|app|sample_audio|tests)/[\w./-]+\.(?:py|sh|json|md))`", text
    ):
        assert (REPOSITORY / target).exists(), f"{_name(path)} names {target}"


def test_every_command_is_in_the_readme():
    import typer.main

    from app.cli.commands import build

    readme = (REPOSITORY / "README.md").read_text(encoding="utf-8")
    names = sorted(typer.main.get_command(build()).commands)
    assert names
    missing = [name for name in names if not re.search(rf"(passagework |`){name}\b", readme)]
    assert not missing, f"not in the README: {', '.join(missing)}"


def test_nothing_is_left_half_made():
    unfinished = re.compile(r"\b(TODO|FIXME|XXX)\b|not yet implemented|coming soon")
    found = [_name(path) for path in MODULES if unfinished.search(path.read_text(encoding="utf-8"))]
    assert not found
