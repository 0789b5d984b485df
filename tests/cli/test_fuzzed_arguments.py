"""Whatever is written after a command: no traceback, a plain sentence, a known exit code.

The commands and their options are read from the parser itself, so that a new one is
covered. ``PASSAGEWORK_FUZZ=200`` tries as many argument lists for each command.
"""

import os
import shutil
import sys
from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, date, datetime
from enum import Enum
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import soundfile
import typer.main
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

import app.__main__ as program
from app.cli.commands import build
from app.services.window_end import WindowEnd
from app.wiring import open_workbench
from audio.errors import AudioFailure

TRIES = int(os.environ.get("PASSAGEWORK_FUZZ", "2"))
EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
DAY = date(2026, 3, 14)
CODES = {0, 2, 130}


def commands(command: Any, path: tuple[str, ...] = ()) -> Iterator[tuple[tuple[str, ...], Any]]:
    """Walk the parser."""
    for name, one in (getattr(command, "commands", None) or {}).items():
        yield from commands(one, (*path, name))
    if not getattr(command, "commands", None):
        yield path, command


COMMANDS = dict(commands(typer.main.get_command(build())))
NUMBERS = ("0", "-1", "1", "3", "0.5", "1e308", "-1e308", "nan", "inf", "9" * 30, "1_000", "٣")
DAYS = ("2026-03-14", "2026-03-15", "0001-01-01", "9999-12-31", "2026-02-30", "today", "14.3.2026")
NAMES = (
    "Study: Opening", "Opening", "Study: Opening:2026-03-14:1", "Study: Opening:2026-03-14:99",
    "2026-03-14", "all", "G", "C#4", "1-8", "8-1", "violin", "equal", "Thirty days",
)  # fmt: skip
FILES = (
    "clip-0.wav", "spare.wav", "days.pwbundle", "notes.txt", "missing.wav", "folder", "journal",
    "out.html", "out.mid", "x.pwreply", ".", "", "clip-0.wav/inside",
)  # fmt: skip
# No slash and no control sign but these: the tests run as root in some places.
WORDS = st.text(
    st.characters(exclude_characters="/\\\0~", exclude_categories=["Cs"]), max_size=12
) | st.sampled_from(["\udcff", "x" * 5000, "-", "--", "--no-such", "\n", "\u202eabc", "%s{0}"])


def values_of(parameter: Any) -> st.SearchStrategy[str]:
    """Give what may be written for a parameter, mostly of its own kind."""
    kind = parameter.type_descriptor.annotation
    anything = st.sampled_from(NUMBERS + DAYS + NAMES + FILES) | WORDS
    if isinstance(kind, type) and issubclass(kind, Enum):
        return st.sampled_from([str(one.value) for one in kind]) | anything
    if isinstance(kind, type) and issubclass(kind, Path):
        return st.sampled_from(FILES) | anything
    if kind in (int, float):
        return st.sampled_from(NUMBERS) | anything
    return anything


def words_of(parameter: Any) -> st.SearchStrategy[list[str]]:
    """Give the words of a command line that name a parameter, or none."""
    if parameter.param_type_name == "argument":
        most = 3 if parameter.nargs == -1 else 1
        return st.lists(values_of(parameter), max_size=most)
    names = st.sampled_from([*parameter.opts, *parameter.secondary_opts])
    if getattr(parameter, "is_flag", False):
        given_as = names.map(lambda name: [name])
    else:
        given_as = st.tuples(names, values_of(parameter)).map(list)
    return st.just([]) | st.just([]) | given_as


def command_lines(path: tuple[str, ...]) -> st.SearchStrategy[list[str]]:
    """Give argument lists for a command."""
    parts = [words_of(one) for one in COMMANDS[path].params]
    extra = st.just([]) | st.just([]) | st.lists(WORDS, max_size=2)
    return st.tuples(*parts, extra).map(lambda found: [*path, *(w for one in found for w in one)])


@pytest.fixture(scope="module")
def at_home(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """Run in a folder with a small journal and a few files, without a sound device."""
    folder = tmp_path_factory.mktemp("arguments")
    (folder / "folder").mkdir()
    (folder / "notes.txt").write_text("2026-03-14;40\n", encoding="utf-8")
    for number, name in enumerate(("clip-0.wav", "spare.wav")):
        noise = np.random.default_rng(number).uniform(-0.3, 0.3, 4800)
        soundfile.write(folder / name, noise, 48_000, "PCM_24")
    with open_workbench(folder / "journal", clock=lambda: EVENING) as bench:
        usual = bench.practising.settings().default_settings
        passage = bench.passages.add("Study", "Opening", "1-8", usual)
        proposed = bench.importing.propose([folder / "clip-0.wav"], passage.id, DAY)
        (take,) = bench.importing.file(proposed)
        bench.marking.add(take.id, 0.05, category="rhythm", text="late")
        bench.practising.set_minutes(DAY, 35)
        bench.bundles.write(DAY, DAY, folder / "days.pwbundle", whole_record=True)

    def no_device() -> None:
        raise AudioFailure("No sound device was found.", "Plug one in.")

    def no_demo(journal_dir: Path, **_: Any) -> None:
        shutil.copytree(folder / "journal", journal_dir)

    whole = program._program
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setenv("PASSAGEWORK_JOURNAL", str(folder / "journal"))
        patch.setattr("audio.devices.portaudio", no_device)
        # Minutes of work whatever is asked; their own tests look at them.
        patch.setattr("app.cli.check.watched", lambda *_: sys.exit(0))
        patch.setattr(
            program,
            "_program",
            lambda: replace(
                whole(),
                build_demo=no_demo,
                run_window=lambda _bench, told="": WindowEnd(0),
                show_failure=lambda _failure: None,  # a dialog that waits for somebody
            ),
        )
        yield folder


def test_the_walk_finds_every_group():
    assert len(COMMANDS) > 45
    assert {path[0] for path in COMMANDS} >= {"open", "record", "measure", "clock", "promise"}
    assert all(one.params is not None for one in COMMANDS.values())


@pytest.mark.parametrize("path", sorted(COMMANDS), ids=" ".join)
def test_no_argument_list_brings_a_traceback(path, at_home, capsys):
    @settings(
        max_examples=TRIES, deadline=None, derandomize="PASSAGEWORK_FUZZ" not in os.environ,
        suppress_health_check=list(HealthCheck), database=None,
    )  # fmt: skip
    @given(command_lines(path))
    def try_it(arguments: list[str]) -> None:
        capsys.readouterr()
        code = program.main(arguments)
        told = capsys.readouterr()
        look_at(arguments, code, told.out, told.err)

    try_it()


def look_at(arguments: list[str], code: int, out: str, err: str) -> None:
    """Say whether a run ended as every run must."""
    assert code in CODES, f"{arguments}: {code} {err}"
    assert "Traceback" not in out + err, arguments
    if code == 2 and "Usage:" not in err:
        last = err.strip().splitlines()[-1]
        assert last.endswith((".", "?")), f"{arguments}: {err}"
        assert " " in last.strip(), f"{arguments}: {err}"


@pytest.mark.parametrize(
    ("code", "err"), [(1, "Something went wrong."), (2, "Traceback (most"), (2, "KeyError: 'x'")]
)
def test_a_bug_would_be_seen(code, err):
    with pytest.raises(AssertionError):
        look_at([], code, "", err)
