"""The commands, from the player's side.

Longer than 300 lines: cases of one subject, each of them read by itself.
"""

import json
import shutil
import subprocess
import sys
import tomllib
from importlib.resources import files
from pathlib import Path

import pytest
from jsonschema import Draft202012Validator

from app import __version__
from app.journal.failures import PlainFailure
from app.services.window_end import WindowEnd


def validate(found, name):
    schema = json.loads(files("app.schemas").joinpath(name).read_text(encoding="utf-8"))
    Draft202012Validator(schema).validate(found)


def test_help_names_every_command_and_loads_nothing_heavy():
    code = (
        "import sys\n"
        "from app.__main__ import main\n"
        "assert main(['--help']) == 0\n"
        "heavy = {'numpy','scipy','numba','librosa','matplotlib','av','soundfile',"
        "'sounddevice','PySide6','sqlalchemy'} & set(sys.modules)\n"
        "sys.exit(f'loaded {heavy}' if heavy else 0)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    for command in (
        "open", "demo", "import", "export", "record", "recover", "measure", "mark", "compare",
        "clock", "count", "report", "repair",
    ):  # fmt: skip
        assert f"  {command} " in done.stdout


def test_the_version_is_the_one_of_the_project(run):
    about = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text())
    assert about["tool"]["setuptools"]["dynamic"]["version"]["attr"] == "app.__version__"
    ran = run("--version")
    assert (ran.code, ran.out) == (0, f"Passagework {__version__}\n")


def test_the_services_load_nothing_heavy_before_they_are_used():
    code = (
        "import sys, app.wiring\n"
        "heavy = {'scipy','numba','librosa','matplotlib','av','soundfile','sounddevice',"
        "'PySide6'} & set(sys.modules)\n"
        "sys.exit(f'loaded {heavy}' if heavy else 0)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr


def test_a_file_is_measured_without_a_journal(run, journal_dir, wav_a):
    ran = run("measure", wav_a, "--json", "--pulse", "96")
    assert ran.code == 0
    validate(ran.json, "measure.schema.json")
    assert ran.json["file"] == str(wav_a)
    assert "time_s" not in ran.json["pitch"]
    assert ran.json["tempo"]["mean_bpm"] == pytest.approx(96.0, abs=0.5)
    assert not journal_dir.exists()


def test_every_option_of_measuring_arrives(run, wav_a):
    ran = run(
        "measure", wav_a, "--json", "--curves", "--instrument", "Viola", "--reference-a", "442",
        "--temperament", "just", "--tonic", "D", "--pulse", "96",
        "--open-strings", "C3 G3 D4 A4", "--accompanied",
        "--automatic-gain", "on", "--with-mute",
    )  # fmt: skip
    assert ran.code == 0
    validate(ran.json, "measure.schema.json")
    assert (
        ran.json["parameters"].items()
        >= {
            "instrument": "viola",
            "reference_a_hz": 442.0,
            "temperament": "just",
            "tonic": "D",
            "pulse_bpm": 96.0,
            "open_strings": "C3,G3,D4,A4",
            "accompanied": True,
            "automatic_gain": "on",
            "with_mute": True,
        }.items()
    )
    # what is played alone is measured; with a piano its targets are equal-tempered
    assert {r["target"] for note in ran.json["notes"] for r in note["readings"]} <= {
        "equal", "open_string", "open_string_pure",
    }  # fmt: skip
    assert ran.json["dynamics"]["dynamic_span_reason"] == "automatic_gain"
    assert [n["code"] for n in ran.json["notices"]] == ["automatic_gain", "played_with_mute"]
    assert len(ran.json["pitch"]["time_s"]) > 100


def test_an_estimated_reference(run, wav_a):
    found = run("measure", wav_a, "--json", "--reference-a", "auto").json
    assert found["parameters"]["reference_a_hz"] == "auto"
    assert found["intonation"]["accuracy_cents"] is None


def test_measuring_in_words(run, wav_a):
    ran = run("measure", wav_a, "--pulse", "96")
    assert ran.code == 0
    assert "6 notes" in ran.out
    assert "cents" in ran.out
    assert "BPM" in ran.out


@pytest.mark.parametrize(
    ("options", "words"),
    [
        (["--instrument", "kazoo"], "kazoo"),
        (["--reference-a", "high"], "not a frequency"),
        (["--reference-a", "200"], "380"),
        (["--temperament", "wild"], "wild"),
        (["--temperament", "just"], "tonic"),
        (["--tonic", "H"], "H"),
        (["--pulse", "5000"], "pulse"),
        (["--open-strings", "Q7"], "Q7"),
    ],
)
def test_options_that_make_no_sense_are_told_in_a_sentence(run, wav_a, options, words):
    ran = run("measure", wav_a, *options)
    assert ran.code == 2
    assert ran.out == ""
    assert words in ran.err
    assert ran.err.count("\n") == 1
    assert "Traceback" not in ran.err


def test_two_files_are_compared_without_a_journal(run, journal_dir, wav_a, wav_b):
    ran = run("compare", wav_a, wav_b, "--json")
    assert ran.code == 0
    validate(ran.json, "compare.schema.json")
    assert len(ran.json["notes"]) == 6
    assert not journal_dir.exists()
    text = run("compare", wav_a, wav_b)
    assert "6 notes in both" in text.out
    assert "+6." in text.out or "+5." in text.out


def test_import_measure_mark_compare_count_report(run, journal_dir, wav_a, wav_b):
    ran = run("import", wav_a, wav_b, "--passage", "Study: opening", "--json")
    assert ran.code == 0
    assert "new passage" in ran.err
    filed = ran.json["filed"]
    assert [take["practice_day"] for take in filed] == ["2026-03-10", "2026-03-12"]
    assert {take["passage"] for take in filed} == {"Study: opening"}

    assert "2 takes measured" in run("measure").out
    assert "Every take is measured" in run("measure").out
    measured = run("measure", filed[0]["id"][:8], "--json")
    validate(measured.json, "measure.schema.json")

    placed = run(
        "mark", "opening:2026-03-12:1", "--at", "1.2", "--until", "1.9",
        "--category", "shift", "--weight", "3", "--text", "late", "--author", "teacher", "--json",
    )  # fmt: skip
    assert placed.json[0]["end_s"] == 1.9
    assert placed.json[0]["author"] == "teacher"
    assert "late" in run("mark").out
    assert run("mark", "--json").json[0]["passage"] == "Study: opening"
    assert "0:01.2 to 0:01.9" in run("mark", filed[1]["id"]).out
    assert run("mark", filed[0]["id"]).out.strip() == "No markers."

    inside = Path(filed[0]["file"]).relative_to(journal_dir).as_posix()
    other = Path(filed[1]["file"]).relative_to(journal_dir).as_posix()
    assert run("measure", inside, "--json").json == measured.json
    assert run("compare", inside, other, "--json").json["a"] == inside
    missing = run("compare", wav_a, "not there.wav")
    assert missing.code == 2
    assert missing.err.startswith("not there.wav is not there.")

    compared = run("compare", "opening:2026-03-10:1", "opening:2026-03-12:1", "--json")
    validate(compared.json, "compare.schema.json")
    assert compared.json["a"].startswith("2026/2026-03-10/")
    assert "in both" in run("compare", filed[0]["id"], filed[1]["id"]).out

    counted = run("count", "--date", "2026-03-11", "--minutes", "25", "--json")
    assert counted.json["days_practised"] == 3
    assert "3 days practised" in run("count").out
    report = run("report", "--from", "2026-03-09", "--to", "2026-03-15")
    assert "Study: opening" in report.out
    assert "late" in report.out
    repaired = run("repair", "--json")
    assert repaired.json["takes"] == 2
    assert repaired.json["recordings_changed"] == []


def test_a_dot_in_a_passage_does_not_make_it_a_file(run, wav_a):
    assert run("import", wav_a, "--passage", "Op. 3: Largo").code == 0
    assert run("measure", "Op. 3: Largo:2026-03-10:1", "--json").code == 0


def test_the_journal_option_wins_over_the_variable(run, journal_dir, tmp_path, tone_file):
    other = tmp_path / "other journal"
    assert run("import", tone_file(), "--journal", other).code == 0
    assert (other / "journal.db").exists()
    assert not journal_dir.exists()


def test_a_day_can_be_given_and_must_be_one(run, tone_file):
    path = tone_file()
    ran = run("import", path, "--date", "yesterday")
    assert ran.code == 2
    assert "year-month-day" in ran.err
    ran = run("import", path, "--date", "2026-02-01", "--json")
    assert ran.json["filed"][0]["practice_day"] == "2026-02-01"


def test_a_duplicate_is_told_kindly(run, tone_file):
    path = tone_file()
    assert run("import", path, "--passage", "Scale", "--date", "2026-02-01").code == 0
    ran = run("import", path)
    assert ran.code == 2
    assert ran.err == ("tone.wav is in the journal already: take 1 of Scale, Sun 1 Feb 2026.\n")


@pytest.mark.parametrize(
    "arguments",
    [
        ["measure", "opening:2026-03-10:1"],
        ["compare", "a", "b"],
        ["mark"],
        ["count"],
        ["report"],
        ["repair"],
        ["recover"],
    ],
)
def test_without_a_journal_it_says_so_and_makes_none(run, journal_dir, arguments):
    ran = run(*arguments)
    assert ran.code == 2
    assert ran.out == ""
    assert ran.err.count("\n") == 1
    assert not journal_dir.exists()


def test_a_bug_is_logged_and_named(run, monkeypatch, caplog):
    from app.__main__ import log_file

    def broken(*_arguments, **_options):
        raise RuntimeError("the cat walked over it")

    monkeypatch.setattr("app.services.file_measuring.measure_file", broken)
    ran = run("measure", "x.wav")
    assert ran.code == 1
    assert str(log_file()) in ran.err
    assert "the cat walked over it" in log_file().read_text(encoding="utf-8")


def test_ctrl_c_stops_cleanly(run, monkeypatch, wav_a):
    import os
    import signal

    def interrupted(*arguments, **_options):
        from app.services.stopping import stop_if

        os.kill(os.getpid(), signal.SIGINT)
        stop_if(arguments[3])
        raise AssertionError("went on")

    monkeypatch.setattr("app.services.file_measuring.measure_file", interrupted)
    before = signal.getsignal(signal.SIGINT)
    ran = run("measure", wav_a)
    assert ran.code == 130
    assert ran.err == "Stopped.\n"
    assert signal.getsignal(signal.SIGINT) is before


def test_an_unknown_command_and_option_exit_2(run):
    assert run("fly").code == 2
    assert run("measure", "--fly").code == 2


def test_open_without_a_display_is_told(run, monkeypatch):
    monkeypatch.setattr("app.services.display.display_problem", lambda: "There is no display.")
    ran = run("open")
    assert ran.code == 2
    assert ran.err.startswith("There is no display.")


@pytest.mark.parametrize("arguments", [[], ["open"]])
def test_the_window_opens_on_the_journal(run, journal_dir, monkeypatch, arguments):
    seen = []

    def window(workbench, *, told=""):
        assert not told
        seen.append((workbench.journal_dir, workbench.read_only))
        return WindowEnd(0)

    monkeypatch.setattr("app.services.display.display_problem", lambda: "")
    monkeypatch.setattr("app.__main__._run_window", window)
    assert run(*arguments).code == 0
    assert seen == [(journal_dir, False)]


def test_going_back_to_a_backup_opens_the_window_again(run, journal_dir, monkeypatch):
    run("count", "--minutes", "20")
    assert run("repair", "--back-up").code == 0
    run("count", "--minutes", "45")
    ends = [WindowEnd(0, restore="journal-20"), WindowEnd(0, restore="journal-1999"), WindowEnd(0)]
    seen = []

    def window(workbench, *, told=""):
        seen.append((told, workbench.practising.today().minutes))
        return ends[len(seen) - 1]

    monkeypatch.setattr("app.services.display.display_problem", lambda: "")
    monkeypatch.setattr("app.__main__._run_window", window)
    assert run("open").code == 0
    assert [minutes for _, minutes in seen] == [45, 20, 20]
    assert seen[1][0].startswith("The journal is as it was in backups/journal-20")
    assert "There is no backup 'journal-1999'" in seen[2][0]


def test_a_bundle_opens_in_the_window_and_leads_back_home(run, journal_dir, tmp_path, monkeypatch):
    broken, visits = tmp_path / "broken.pwbundle", tmp_path / "visits"
    broken.write_bytes(b"no zip")
    assert run("count", "--minutes", "20").code == 0
    ends = [WindowEnd(0, visit=broken), WindowEnd(0, visit=tmp_path / "days.pwbundle")]
    ends += [WindowEnd(0, home=True), WindowEnd(0)]
    seen = []

    def window(workbench, *, told=""):
        seen.append((workbench.journal_dir, told))
        return ends[len(seen) - 1]

    def opened(bundle, *_arguments):
        if bundle == broken:
            raise PlainFailure("This is no bundle.", "Ask for it again.")
        return visits

    monkeypatch.setattr("app.services.display.display_problem", lambda: "")
    monkeypatch.setattr("app.__main__._run_window", window)
    monkeypatch.setattr("app.services.bundling.visiting.open_visit", opened)
    assert run("open").code == 0
    assert seen == [
        (journal_dir, ""),
        (journal_dir, "This is no bundle. Ask for it again."),
        (visits, ""),
        (journal_dir, ""),
    ]


def test_who_clicked_on_a_damaged_bundle_sees_a_dialog(run, tmp_path, monkeypatch):
    broken, shown = tmp_path / "broken.pwbundle", []
    broken.write_bytes(b"no zip")
    monkeypatch.setattr("app.services.display.display_problem", lambda: "")
    monkeypatch.setattr("app.__main__._show_failure", shown.append)
    ran = run("open", broken)
    assert (ran.code, len(shown)) == (2, 1)
    assert shown[0].sentence in ran.err
    monkeypatch.setattr("app.cli.windows.on_terminal", lambda: True)
    assert run("open", broken).code == 2
    assert len(shown) == 1, "a terminal has said it already"


def test_repair_lists_makes_and_goes_back_to_backups(run, journal_dir):
    run("count", "--minutes", "20")
    made = run("repair", "--back-up", "--json").json[0]
    earlier = "journal-2020-05-01-120000.db"
    shutil.copy(journal_dir / "backups" / made["name"], journal_dir / "backups" / earlier)
    run("count", "--minutes", "45")
    listed = [row["name"] for row in run("repair", "--backups", "--json").json]
    # The day's ordinary one may be beside it, if both are of the same second.
    assert (listed[0], listed[-1]) == (made["name"], earlier)
    gone_back = run("repair", "--restore", made["name"], "--json").json
    assert gone_back["takes_kept"] == []
    assert run("count", "--json").json["minutes"] == 20
    assert run("repair", "--restore", "1999").code == 2
    assert run("repair", "--restore", made["name"], "--backups").code == 2


def test_a_take_days_and_everything_are_exported(run, tone_file, tmp_path):
    run("import", tone_file(), "--date", "2026-03-14", "--passage", "Tone")
    take = run("export", "Tone:2026-03-14:1", "--format", "wav", "--to", tmp_path)
    assert Path(take.out.strip()) == tmp_path / "2026-03-14-tone-take-1.wav"
    everything = run("export", "everything", "--to", tmp_path / "all", "--json")
    assert (Path(everything.json["written"]) / "tables" / "take.csv").exists()
    days = ("export", "days", "--to", tmp_path / "days.ics", "--format")
    assert run(*days, "icalendar").code == 0
    assert (tmp_path / "days.ics").read_bytes().startswith(b"BEGIN:VCALENDAR")
    for refused in (
        (*days, "icalendar"),
        (*days, "jams"),
        ("export", "no such take"),
        ("export", "everything", "--to", tmp_path),
        ("export", "Tone:2026-03-14:1", "--format", "midi", "--to", tmp_path),
    ):
        ran = run(*refused)
        assert ran.code == 2, refused
        assert ran.err.count("\n") == 1


def test_a_report_is_written_as_page_and_paper(run, tmp_path):
    run("count", "--minutes", "20")
    page, paper = tmp_path / "week.html", tmp_path / "week.pdf"
    ran = run("report", "--html", page, "--pdf", paper)
    assert ran.out.split() == [str(page), str(paper)]
    assert page.read_text(encoding="utf-8").startswith("<!DOCTYPE html>")
    assert paper.read_bytes().startswith(b"%PDF")
    assert run("report", "--html", page).code == 2


def test_a_clip_is_looked_at_and_then_made(run, tone_file, tmp_path):
    run("import", tone_file(seconds=3.0), "--date", "2026-03-14", "--passage", "Tone")
    take = ("share", "Tone:2026-03-14:1", "--until", "2")
    seen = run(*take, "--preview", "--json").json[0]
    assert seen["title"] == ["Tone", "Sat 14 Mar 2026"]
    assert seen["duration_s"] == 2.0
    out = tmp_path / "clips"
    out.mkdir()
    made = run(*take, "--form", "card", "--to", out, "--json").json[0]
    assert (out / made["file_name"]).stat().st_size > 1000
    assert run(*take, "--form", "measured", "--to", out).code == 2
    assert run(*take, "--form", "unknown", "--to", out).code == 2
    assert run(*take, "--promise", "none such", "--to", out).code == 2


def test_a_bundle_goes_to_a_teacher_and_a_reply_comes_back(
    run, tone_file, tmp_path, monkeypatch, journal_dir
):
    monkeypatch.setattr("platformdirs.user_data_dir", lambda *_names, **_more: str(tmp_path / "d"))
    monkeypatch.setattr("app.services.display.display_problem", lambda: "There is no display.")
    run("import", tone_file(), "--date", "2026-03-14", "--passage", "Tone")
    bundle, reply = tmp_path / "lesson.pwbundle", tmp_path / "back.pwreply"
    assert run("export", "bundle", "--to", bundle).code == 0
    assert run("export", "bundle", "--to", tmp_path / "wrong.zip").code == 2
    opened = run("open", bundle)
    assert opened.code == 2
    folder = opened.err.split("'")[1]
    mark = ("mark", "Tone:2026-03-14:1", "--at", "0.1", "--category", "sound")
    assert run(*mark, "--journal", folder, "--json").json[0]["author"] == "teacher"
    assert run("export", "reply", "--to", reply, "--journal", folder).code == 0
    assert run("import", reply).out == "The reply brought 1 new marker.\n"
    assert run("import", bundle, "--json").json["brought"][0]["takes_known"] == 1
    assert [m["author"] for m in run("mark", "Tone:2026-03-14:1", "--json").json] == ["teacher"]
    assert run("import", tone_file("new.wav"), "--journal", folder).code == 2


def test_record_lists_inputs_or_says_what_to_plug_in(run, monkeypatch):
    from audio.errors import AudioFailure

    def none():
        raise AudioFailure("No microphone was found.", "Plug in a microphone.")

    monkeypatch.setattr("audio.devices.input_devices", none)
    ran = run("record", "--inputs")
    assert ran.code == 2
    assert ran.err == "No microphone was found. Plug in a microphone.\n"


@pytest.mark.room
def test_recording_from_the_command_line(run, virtual_room, phrase_a, journal_dir):
    _path, phrase = phrase_a
    inputs = run("record", "--inputs", "--json").json
    assert virtual_room.device in [row["name"] for row in inputs]
    with virtual_room.playing(phrase.samples, phrase.sample_rate_hz):
        ran = run(
            "record", "--seconds", "3", "--input", virtual_room.device,
            "--passage", "Scale", "--aim", "even", "--json",
        )  # fmt: skip
    assert ran.code == 0, ran.err
    assert ran.json["duration_s"] == pytest.approx(3.0, abs=0.3)
    validate(ran.json["measurement"], "measure.schema.json")
    assert list(journal_dir.rglob("*scale-take-1.flac"))
    assert list((journal_dir / ".recording").iterdir()) == []
    ran = run("record", "--seconds", "1", "--input", "no such thing")
    assert ran.code == 2


def test_a_lost_database_is_rebuilt_by_repair(run, journal_dir, wav_a):
    assert run("import", wav_a, "--passage", "Scale").code == 0
    for file in [*journal_dir.glob("journal.db*"), *(journal_dir / "backups").glob("*")]:
        file.unlink()
    lost = run("count")
    assert lost.code == 2
    assert "passagework repair" in lost.err
    ran = run("repair")
    assert ran.code == 0
    assert "rebuilt" in ran.out
    assert "1 take in the journal." in ran.out
    assert "Every recording is there" in ran.out
    assert run("measure", "Scale:2026-03-10:1").code == 0
    stray = journal_dir / "2026" / "2026-03-10" / "stray.wav"
    stray.write_bytes(wav_a.read_bytes())
    ran = run("repair")
    assert "2026/2026-03-10/stray.wav" in ran.out
    assert "rebuilt" not in ran.out


def test_repair_ends_with_2_where_a_recording_is_missing(run, journal_dir, wav_a):
    assert run("import", wav_a, "--passage", "Scale").code == 0
    assert run("repair").code == 0
    recording = next(journal_dir.glob("2026/*/*.wav"))
    aside = recording.rename(journal_dir / "aside.wav")
    for arguments in (["repair"], ["repair", "--json"]):
        ran = run(*arguments)
        assert ran.code == 2
        assert recording.name in ran.out
    aside.rename(recording)
    assert run("repair").code == 0


def test_rest_days_are_marked_and_planned(run):
    from datetime import datetime, timedelta

    from app.journal.practice_days import practice_day

    today = practice_day(datetime.now().astimezone())
    assert run("count", "--minutes", "20").code == 0
    assert run("count", "--rest", "--date", today - timedelta(days=1)).code == 0
    assert run("count", "--rest", "--date", today + timedelta(days=3)).code == 0
    ran = run("count")
    assert "20 min, 0 takes today" in ran.out
    assert "1 day practised; day 1 since the first." in ran.out
    ran = run("report", "--from", today, "--to", today - timedelta(days=1))
    assert ran.code == 2
    assert "Swap" in ran.err


def test_progress_shows_on_a_terminal_only(monkeypatch, capsys):
    import sys

    from app.cli.console import watched

    def work(progress, _stop):
        progress(0.5)
        return 7

    assert watched("measuring", work) == 7
    assert capsys.readouterr().err == ""
    # A bar is drawn for the terminal it is told of, not for the one the tests were started from.
    for name in ("TTY_COMPATIBLE", "TTY_INTERACTIVE", "FORCE_COLOR", "NO_COLOR"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.setattr(sys.stderr, "isatty", lambda: True, raising=False)
    assert watched("measuring", work) == 7
    assert "measuring" in capsys.readouterr().err


def test_a_bug_without_a_place_for_its_log_is_told_all_the_same(run, monkeypatch, tmp_path, caplog):
    taken = tmp_path / "file"
    taken.write_text("not a folder")
    monkeypatch.setattr("app.__main__.log_file", lambda: taken / "x" / "passagework.log")

    def broken(*_arguments, **_options):
        raise RuntimeError("the cat walked over it")

    monkeypatch.setattr("app.services.file_measuring.measure_file", broken)
    ran = run("measure", "x.wav")
    assert ran.code == 1
    assert "the cat walked over it" in ran.err


def test_an_import_says_when_a_day_is_only_the_time_of_the_file(run, wav_a, wav_b, tmp_path):
    dateless = tmp_path / "clip.wav"
    dateless.write_bytes(wav_a.read_bytes())
    ran = run("import", dateless, wav_b, "--passage", "Scale")
    assert ran.code == 0
    assert ran.err.count("clip.wav: the day comes from the time the file was last changed") == 1
    assert ran.err.count("the day comes from") == 1
    other = tmp_path / "other.wav"
    other.write_bytes(wav_b.read_bytes() + b"\0\0")
    given = run("import", other, "--date", "2026-03-09")
    assert given.code == 0
    assert "the day comes from" not in given.err
