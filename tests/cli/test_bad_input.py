"""Bad input: one plain sentence each, exit code 2, and nothing half-made."""

import os
import shutil
import subprocess
import sys
from contextlib import contextmanager
from pathlib import Path

import numpy as np
import pytest
import soundfile

ROOT = Path(__file__).parents[2]


def left_over(journal_dir):
    """Give every file of a journal that an import may have left, finished or not."""
    if not journal_dir.exists():
        return []
    years = [path for path in journal_dir.glob("[0-9]*") if path.is_dir()]
    days = [path for year in years for path in year.rglob("*") if path.is_file()]
    parts = list(journal_dir.rglob("*.part"))
    return [path for path in days + parts if path.name != "day.json"]


def one_sentence(ran, *words):
    assert ran.code == 2, ran.out
    assert "Traceback" not in ran.err
    assert ran.err.strip().count("\n") == 0
    assert ran.err.strip().endswith(".")
    for word in words:
        assert word in ran.err


def empty(tmp_path):
    path = tmp_path / "empty.wav"
    path.touch()
    return path


def text(tmp_path):
    path = tmp_path / "words.wav"
    path.write_text("This is not a sound.\n" * 100, encoding="utf-8")
    return path


def truncated(tmp_path):
    path = tmp_path / "short of it.flac"
    rng = np.random.default_rng(1)
    soundfile.write(path, rng.normal(0, 0.1, 200_000), 48_000, format="FLAC")
    whole = path.read_bytes()
    path.write_bytes(whole[: len(whole) // 2])
    return path


def missing(tmp_path):
    return tmp_path / "not there.wav"


def folder(tmp_path):
    path = tmp_path / "folder.wav"
    path.mkdir()
    return path


BAD = [
    (empty, "empty.wav is empty"),
    (text, "words.wav is not a sound file"),
    (truncated, "short of it.flac"),
    (missing, "not there.wav is not there"),
    (folder, "folder.wav"),
]


@pytest.mark.parametrize(("make", "words"), BAD)
def test_a_file_that_cannot_be_read_is_not_measured(run, tmp_path, make, words):
    ran = run("measure", make(tmp_path), "--json")
    one_sentence(ran, words)
    assert ran.out == ""


@pytest.mark.parametrize(("make", "words"), BAD)
def test_a_file_that_cannot_be_read_is_not_imported(run, tmp_path, journal_dir, make, words):
    ran = run("import", make(tmp_path))
    one_sentence(ran, words)
    assert left_over(journal_dir) == []


def test_good_files_beside_bad_ones_are_filed(run, tmp_path, journal_dir, tone_file):
    ran = run("import", empty(tmp_path), tone_file("good.wav"), text(tmp_path), "--json")
    assert ran.code == 2
    assert len(ran.json["filed"]) == 1
    assert [Path(f["file"]).name for f in ran.json["not_filed"]] == ["empty.wav", "words.wav"]
    assert len([path for path in left_over(journal_dir) if path.suffix == ".wav"]) == 1


def test_silence_is_measured_as_silence(run, tmp_path):
    path = tmp_path / "silence.wav"
    soundfile.write(path, np.zeros(96_000), 48_000)
    ran = run("measure", path, "--json")
    assert ran.code == 0
    for group in ("pitch", "intonation", "tempo", "dynamics"):
        assert ran.json[group]["reason"] == "silent"
    assert "silent" in run("measure", path).out
    assert run("import", path).code == 0
    assert run("measure").code == 0


def test_one_sample(run, tmp_path, journal_dir):
    path = tmp_path / "one.wav"
    soundfile.write(path, np.array([0.5]), 48_000)
    ran = run("measure", path, "--json")
    assert ran.code == 0
    assert ran.json["intonation"]["status"] == "not_measurable"
    assert ran.json["notes"] == []
    one_sentence(run("import", path), "too short")
    assert left_over(journal_dir) == []


def test_nan_samples_are_told_and_never_printed(run, tmp_path):
    path = tmp_path / "nan.wav"
    t = np.arange(96_000) / 48_000
    samples = 0.2 * np.sin(2 * np.pi * 440 * t)
    samples[1000:1010] = np.nan
    samples[2000] = np.inf
    soundfile.write(path, samples, 48_000, subtype="FLOAT")
    ran = run("measure", path, "--json", "--curves")
    assert ran.code == 0
    assert "11 samples" in ran.err
    assert ran.json["notes"][0]["name"] == "A4"
    imported = run("import", path)
    assert imported.code == 0
    assert "11 samples" in imported.out


@pytest.mark.parametrize(("rate", "channels"), [(8_000, 1), (192_000, 2), (48_000, 6), (44_100, 1)])
def test_rates_and_channels(run, tone_file, rate, channels):
    path = tone_file("tone.wav", seconds=2.0, rate=rate, channels=channels, subtype="PCM_24")
    ran = run("measure", path, "--json")
    assert ran.code == 0
    assert ran.json["sample_rate_hz"] == rate
    (note,) = ran.json["notes"]
    assert note["name"] == "A4"
    assert note["deviation_cents"] == pytest.approx(0.0, abs=1.0)
    assert run("import", path).code == 0


def test_spaces_and_letters_of_other_scripts(run, tone_file, journal_dir):
    path = tone_file("Ordner mit Leerzeichen/мой этюд – 練習 ñ.wav", seconds=1.0)
    assert run("measure", path).code == 0
    ran = run("import", path, "--passage", "Этюд № 3: 練習", "--json")
    assert ran.code == 0
    file = Path(ran.json["filed"][0]["file"])
    assert file.exists()
    assert "練習" in file.name
    day = ran.json["filed"][0]["practice_day"]
    assert run("measure", f"Этюд № 3: 練習:{day}:1").code == 0


def run_apart(arguments, journal_dir, *, before=None):
    """Run the program in a process of its own, which may be limited first."""
    environment = os.environ | {"PASSAGEWORK_JOURNAL": str(journal_dir)}
    return subprocess.run(
        [sys.executable, "-m", "app", *map(str, arguments)],
        cwd=ROOT,
        env=environment,
        capture_output=True,
        text=True,
        check=False,
        preexec_fn=before,
    )


@contextmanager
def mounted(folder, *options):
    """Mount something on a folder for a while; skips where that is not allowed."""
    done = subprocess.run(["mount", *options, str(folder)], capture_output=True, check=False)
    if done.returncode != 0:
        pytest.skip("no permission to mount")
    try:
        yield
    finally:
        subprocess.run(["umount", str(folder)], check=True)


@contextmanager
def read_only(folder):
    """Make a folder read-only; for root, who may write anywhere, as a read-only disk."""
    if os.geteuid() != 0:
        folder.chmod(0o555)
        yield
        folder.chmod(0o755)
        return
    with mounted(folder, "-t", "tmpfs", "-o", "ro,size=64k", "tmpfs"):
        yield


@pytest.mark.skipif(sys.platform == "win32", reason="POSIX permissions")
def test_a_read_only_folder(run, tmp_path, tone_file, monkeypatch):
    folder = tmp_path / "read only"
    folder.mkdir()
    source = tone_file("source.wav")
    with read_only(folder):
        for journal in (folder, folder / "journal"):
            monkeypatch.setenv("PASSAGEWORK_JOURNAL", str(journal))
            for arguments in (["import", source], ["record", "--seconds", "1"]):
                one_sentence(run(*arguments), "cannot be written to")
        assert list(folder.iterdir()) == []


@pytest.mark.skipif(sys.platform == "win32", reason="POSIX file size limit")
@pytest.mark.parametrize("limit_kb", [1, 100, 1000])
def test_a_full_disk(run, journal_dir, tone_file, limit_kb):
    """A limit on file size stands for a full disk: writing fails the same way."""
    import resource

    assert run("import", tone_file("first.wav")).code == 0
    before = sorted(path for path in left_over(journal_dir))
    big = tone_file("big.wav", seconds=15.0)

    def limited():
        import signal

        signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
        resource.setrlimit(resource.RLIMIT_FSIZE, (limit_kb * 1024, limit_kb * 1024))

    done = run_apart(["import", big], journal_dir, before=limited)
    assert done.returncode == 2, done.stderr
    assert "Traceback" not in done.stderr
    assert done.stderr.strip().count("\n") == 0
    assert sorted(path for path in left_over(journal_dir)) == before
    # With room again everything goes on.
    assert run("import", big).code == 0


@pytest.mark.skipif(os.name == "nt" or os.geteuid() != 0, reason="mounts a small disk")
def test_a_really_full_disk(run, tmp_path, tone_file, monkeypatch):
    disk = tmp_path / "disk"
    disk.mkdir()
    with mounted(disk, "-t", "tmpfs", "-o", "size=1m", "tmpfs"):
        journal = disk / "journal"
        monkeypatch.setenv("PASSAGEWORK_JOURNAL", str(journal))
        assert run("import", tone_file("first.wav")).code == 0
        before = sorted(left_over(journal))
        done = run_apart(["import", tone_file("big.wav", seconds=20.0)], journal)
        assert done.returncode == 2, done.stderr
        assert "Traceback" not in done.stderr
        assert done.stderr.strip().count("\n") == 0
        assert sorted(left_over(journal)) == before
        assert run("count").code == 0


def test_a_second_copy_on_the_same_journal(run, journal_dir, tone_file):
    from app.wiring import open_workbench

    path = tone_file()
    with open_workbench(journal_dir):
        done = run_apart(["import", path], journal_dir)
        assert done.returncode == 2
        assert "already open" in done.stderr
        assert done.stderr.strip().count("\n") == 0
        # Looking is allowed all the same.
        assert run_apart(["count"], journal_dir).returncode == 0
    assert run("import", path).code == 0


def test_a_name_longer_than_any_file_may_have(run):
    for arguments in (("count", "--journal", "x" * 5000), ("import", "x" * 5000 + ".wav")):
        ran = run(*arguments)
        assert ran.code == 2, ran.err
        assert "Traceback" not in ran.err
        assert len(ran.err) < 400, "the name is not said in full"


def test_bytes_that_are_no_text(run):
    one_sentence(run("mark", "a take", "--text", "\udcff"), "no text", r"\udcff")


@pytest.mark.skipif(sys.platform != "linux", reason="other systems have no such names")
def test_a_clip_whose_name_is_no_text_does_not_keep_the_others_out(run, tmp_path, tone_file):
    folder = tmp_path / "clips"
    folder.mkdir()
    tone_file("a.wav").rename(folder / "a.wav")
    shutil.copy(folder / "a.wav", os.fsencode(folder) + b"/bad\xff.wav")
    ran = run("import", str(folder))
    assert ran.code == 2
    assert "bad\\udcff.wav holds bytes that are no text. Rename the file." in ran.err
    assert "take 1" in ran.out


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no such files")
def test_a_pipe_is_not_waited_for(run, tmp_path):
    os.mkfifo(tmp_path / "pipe.wav")
    ran = run("measure", str(tmp_path / "pipe.wav"))
    assert ran.code == 2
    assert "pipe.wav is a device or a pipe, not a sound file." in ran.err
