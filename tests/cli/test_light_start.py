"""What is loaded for which command, and the plainest ways to start."""

import os
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest
import soundfile
import typer.main

from app.cli.commands import GROUPS, build
from app.cli.windows import plainly_open
from app.wiring import open_workbench

ROOT = Path(__file__).parents[2]


def names_of(app: typer.Typer) -> list[str]:
    return list(typer.main.get_group(app).commands)


def test_the_table_names_every_command_of_every_group():
    assert sorted(names_of(build())) == sorted(n for names in GROUPS.values() for n in names)
    for names in GROUPS.values():
        for name in names:
            assert sorted(names_of(build([name, "--json"]))) == sorted(names)


def sentences(app: typer.Typer) -> list[str]:
    commands = [(c.callback, c.short_help) for c in app.registered_commands]
    for group in app.registered_groups:
        commands += [(c.callback, c.short_help) for c in group.typer_instance.registered_commands]
    assert [short for _, short in commands] == [
        callback.__doc__.splitlines()[0] for callback, _ in commands
    ]
    return [short for _, short in commands]


@pytest.mark.parametrize("columns", ["80", "120"])
def test_help_tells_every_first_sentence_whole(monkeypatch, capsys, columns):
    monkeypatch.setenv("COLUMNS", columns)
    app = build()
    typer.main.get_command(app)(["--help"], standalone_mode=False)
    told = capsys.readouterr().out
    assert max(map(len, told.splitlines())) <= int(columns)
    told = " ".join(told.split())
    for command in app.registered_commands:
        assert command.callback.__doc__.splitlines()[0] in told
    for group in app.registered_groups:
        assert group.typer_instance.info.help.splitlines()[0] in told
    assert all(text.endswith(".") for text in sentences(app))


def test_an_unknown_command_is_looked_for_among_all():
    for arguments in ([], ["--help"], ["nonsense"], ["--version"]):
        assert len(names_of(build(arguments))) == sum(map(len, GROUPS.values()))


@pytest.mark.parametrize(
    ("arguments", "found"),
    [
        ([], (None,)),
        (["open"], (None,)),
        (["open", "--journal", "my days"], (Path("my days"),)),
        (["open", "--journal"], None),
        (["open", "--journal", ""], None),
        (["open", "--journal", "--help"], None),
        (["open", "days.pwbundle"], None),
        (["open", "days.pwbundle", "--journal", "x"], None),
        (["open", "--help"], None),
        (["--help"], None),
        (["count"], None),
    ],
)
def test_only_the_plainest_start_needs_no_options_read(arguments, found):
    assert plainly_open(arguments) == found


@pytest.mark.parametrize(
    ("arguments", "not_loaded"),
    [
        (["open"], ["typer", "pydantic", "rich", "app.cli.count", "app.cli.share"]),
        (["measure", "SOUND"], ["sqlalchemy", "alembic", "app.store.store", "PySide6"]),
        (["count"], ["app.cli.share", "app.cli.measure", "numpy", "PySide6", "scipy"]),
    ],
)
def test_what_a_command_does_not_need_is_not_loaded(tmp_path, arguments, not_loaded):
    with open_workbench(tmp_path / "journal"):
        pass
    sound = tmp_path / "sound.wav"
    wave = np.sin(2 * np.pi * 440.0 * np.arange(44_100) / 44_100) / 4
    soundfile.write(sound, wave, 44_100)
    arguments = [str(sound) if argument == "SOUND" else argument for argument in arguments]
    script = (
        "import sys; import app.__main__ as program\n"
        "from app.services.window_end import WindowEnd\n"
        "program._run_window = lambda bench, **_: WindowEnd(0)\n"
        "code = program.main([*sys.argv[2:], '--journal', sys.argv[1]])\n"
        f"print(code, [name for name in {not_loaded!r} if name in sys.modules])"
    )
    done = subprocess.run(
        [sys.executable, "-c", script, str(tmp_path / "journal"), *arguments],
        cwd=ROOT,
        env=os.environ | {"QT_QPA_PLATFORM": "offscreen"},
        capture_output=True,
        text=True,
        timeout=120,
        check=True,
    )
    assert done.stdout.splitlines()[-1] == "0 []"
