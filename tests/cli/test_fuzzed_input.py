"""Whatever a file or an argument holds: a plain sentence, never a traceback or a bug."""

import json
import random
import shutil
import sqlite3
import struct
import zipfile
from contextlib import closing
from datetime import UTC, date, datetime
from pathlib import Path

import numpy as np
import pytest
import soundfile

from app.wiring import open_workbench

EVENING = datetime(2026, 3, 14, 19, 30, tzinfo=UTC)
DAY = date(2026, 3, 14)
COMMANDS_ON_A_JOURNAL = (("count",), ("measure", "--json"), ("repair",), ("count",))
# They build or measure for minutes, whatever is asked; their own tests look at them.
SLOW = {"demo", "check"}


@pytest.fixture(scope="module")
def small_journal(tmp_path_factory) -> Path:
    """A journal with two takes, a marker, minutes and a bundle beside it."""
    folder = tmp_path_factory.mktemp("fuzzed")
    journal = folder / "journal"
    with open_workbench(journal, clock=lambda: EVENING) as bench:
        passage = bench.passages.add(
            "Study", "Opening", "1-8", bench.practising.settings().default_settings
        )
        for number in range(2):
            clip = folder / f"clip-{number}.wav"
            noise = np.random.default_rng(number).uniform(-0.3, 0.3, 4800)
            soundfile.write(clip, noise, 48_000, "PCM_24")
            (take,) = bench.importing.file(bench.importing.propose([clip], passage.id, DAY))
            bench.marking.add(take.id, 0.05, category="rhythm", text=f"late {number}")
        bench.practising.set_minutes(DAY, 35)
        bench.bundles.write(DAY, DAY, folder / "days.pwbundle", whole_record=True)
    return journal


def mutated(data: bytes, chance: random.Random) -> bytes:
    """Change a file as a bad disk or a bad copy does."""
    out = bytearray(data)
    kind = chance.randrange(5)
    if kind == 0:
        return bytes(out[: chance.randrange(len(out))])
    if kind == 1:
        at = chance.randrange(len(out))
        out[at : at + chance.choice((16, 512, 4096))] = bytes(chance.choice((16, 512, 4096)))
    elif kind == 2:
        at, to = chance.randrange(len(out)), chance.randrange(len(out))
        out[at : at + 256] = out[to : to + 256]
    else:
        for _ in range(1 if kind == 3 else 40):
            out[chance.randrange(len(out))] = chance.randrange(256)
    return bytes(out)


def never_a_bug(ran, what: object) -> None:
    assert ran.code in (0, 2), f"{what}: {ran.code} {ran.err}"
    assert "Traceback" not in ran.out + ran.err, what


@pytest.mark.parametrize("seed", range(40))
def test_a_damaged_database(run, journal_dir, small_journal, seed):
    shutil.copytree(small_journal, journal_dir)
    database = journal_dir / "journal.db"
    database.write_bytes(mutated(database.read_bytes(), random.Random(seed)))
    recordings = sorted(path.read_bytes() for path in journal_dir.rglob("2026/*/*.wav"))
    for command in COMMANDS_ON_A_JOURNAL:
        never_a_bug(run(*command), command)
    assert run("count").code == 0, "after a repair it opens again"
    assert sorted(path.read_bytes() for path in journal_dir.rglob("2026/*/*.wav")) == recordings


JUNK = ("null", "[]", "{}", '"x"', "-1", "1e308", "true", '{"a":[1]}', '"' + "x" * 5000 + '"', "{")


@pytest.mark.parametrize("junk", JUNK)
def test_settings_of_the_database_that_nobody_chose(run, journal_dir, small_journal, junk):
    shutil.copytree(small_journal, journal_dir)
    run("count")
    with closing(sqlite3.connect(journal_dir / "journal.db")) as connection, connection:
        names = [row[1] for row in connection.execute("PRAGMA table_info(setting)")]
        keys = {row[0] for row in connection.execute("SELECT key FROM setting")}
        keys |= {"day_turn_hour", "default_settings", "categories", "input_device", "instrument"}
        assert {"key", "value"} <= set(names)
        connection.executemany(
            "INSERT OR REPLACE INTO setting (key, value) VALUES (?, ?)", [(k, junk) for k in keys]
        )
    for command in COMMANDS_ON_A_JOURNAL:
        never_a_bug(run(*command), command)


REPORT = ("report", "--from", "2026-03-08", "--to", "2026-03-14")
ONE_OF_EACH_KIND = (
    *(("take", name) for name in ("practice_day", "recorded_at", "duration_s", "origin")),
    *(("take", name) for name in ("settings", "parts", "passage_id")),
    *(("marker", name) for name in ("take_id", "start_s", "state")),
    *(("passage", "score"), ("session", "minutes")),
)


@pytest.mark.parametrize(("table", "column"), ONE_OF_EACH_KIND)
def test_a_value_in_the_database_that_nobody_wrote(run, journal_dir, small_journal, table, column):
    """Bytes that go bad inside of a value leave the file a sound database for SQLite."""
    shutil.copytree(small_journal, journal_dir)
    junk = random.Random(f"{table}.{column}").choice(("2026-1q-30", "{", "x", "", "[1]", -1))
    with closing(sqlite3.connect(journal_dir / "journal.db")) as connection, connection:
        connection.execute("PRAGMA ignore_check_constraints = ON")
        connection.execute(f"UPDATE OR IGNORE {table} SET {column} = ?", (junk,))  # noqa: S608
    for command in (REPORT, *COMMANDS_ON_A_JOURNAL):
        never_a_bug(run(*command), command)
    assert run(*REPORT).code == 0, "after a repair it can be read"


def test_a_table_that_is_gone(run, journal_dir, small_journal):
    shutil.copytree(small_journal, journal_dir)
    with closing(sqlite3.connect(journal_dir / "journal.db")) as connection, connection:
        connection.execute("DROP TABLE marker")
    ran = run(*REPORT)
    assert ran.code == 2
    assert "Run 'passagework repair'" in ran.err
    assert run("repair").code == 0
    assert "late 0" in run(*REPORT).out


def test_a_folder_in_the_place_of_the_database(run, journal_dir, small_journal):
    shutil.copytree(small_journal, journal_dir)
    (journal_dir / "journal.db").unlink()
    (journal_dir / "journal.db").mkdir()
    for command in COMMANDS_ON_A_JOURNAL[2:]:
        ran = run(*command)
        assert ran.code == 2
        assert "Move that folder away, then run 'passagework repair'." in ran.err
    (journal_dir / "journal.db").rename(journal_dir / "moved away")
    assert run("repair").code == 0


@pytest.mark.parametrize("name", ["journal.json", "day.json"])
@pytest.mark.parametrize("seed", range(12))
def test_notes_beside_the_recordings_that_are_damaged(run, journal_dir, small_journal, name, seed):
    shutil.copytree(small_journal, journal_dir)
    chance = random.Random(seed)
    found = list(journal_dir.rglob(name))
    assert found
    for path in found:
        path.write_bytes(
            chance.choice(JUNK).encode() if seed % 3 == 0 else mutated(path.read_bytes(), chance)
        )
    (journal_dir / "journal.db").unlink()
    for command in COMMANDS_ON_A_JOURNAL:
        never_a_bug(run(*command), command)


@pytest.mark.parametrize("seed", range(40))
def test_a_damaged_bundle(run, small_journal, tmp_path, seed):
    bundle = tmp_path / "days.pwbundle"
    whole = (small_journal.parent / "days.pwbundle").read_bytes()
    bundle.write_bytes(mutated(whole, random.Random(seed)))
    never_a_bug(run("import", bundle), seed)
    never_a_bug(run("count"), seed)


@pytest.mark.parametrize("seed", range(20))
def test_a_bundle_whose_notes_say_something_else(run, small_journal, tmp_path, seed):
    chance = random.Random(seed)
    bundle = tmp_path / "days.pwbundle"
    with (
        zipfile.ZipFile(small_journal.parent / "days.pwbundle") as source,
        zipfile.ZipFile(bundle, "w") as target,
    ):
        notes = [name for name in source.namelist() if name.endswith(".json")]
        victim = chance.choice(notes)
        for name in source.namelist():
            data = source.read(name)
            if name == victim:
                data = chance.choice(JUNK).encode() if seed % 2 else mutated(data, chance)
            target.writestr(name, data)
    never_a_bug(run("import", bundle), victim)
    never_a_bug(run("count"), victim)


def test_a_bundle_that_says_it_is_larger_than_any_disk(run, small_journal, journal_dir, tmp_path):
    bundle = tmp_path / "days.pwbundle"
    data = bytearray((small_journal.parent / "days.pwbundle").read_bytes())
    at = 0
    # The central directory of APPNOTE.TXT 4.3.12: signature, and at 24 the size unpacked.
    while (at := data.find(b"PK\x01\x02", at)) >= 0:
        struct.pack_into("<I", data, at + 24, 0xFFFF_FFFE)
        at += 4
    bundle.write_bytes(data)
    ran = run("import", bundle)
    assert ran.code == 2, ran.out
    assert not list(journal_dir.rglob("*.wav"))


def test_a_bundle_of_many_zeros_is_no_bomb(run, small_journal, journal_dir, tmp_path):
    """A note that unpacks to 200 MB out of 200 kB is not read into memory."""
    bundle = tmp_path / "days.pwbundle"
    shutil.copy(small_journal.parent / "days.pwbundle", bundle)
    with (
        zipfile.ZipFile(bundle, "a", zipfile.ZIP_DEFLATED) as archive,
        archive.open("2026/2026-03-15/day.json", "w") as note,
    ):
        for _ in range(200):
            note.write(bytes(2**20))
    assert bundle.stat().st_size < 2**20
    never_a_bug(run("import", bundle), "zeros")
    assert all(path.stat().st_size < 2**20 for path in journal_dir.rglob("*.json"))


@pytest.mark.parametrize("seed", range(30))
def test_a_reply_that_is_not_one(run, tmp_path, seed):
    chance = random.Random(seed)
    whole = {"format": 1, "markers": [{}], "assignments": [None], "remarks": "x", "bundle": 3}
    reply = tmp_path / "a.pwreply"
    reply.write_bytes(
        chance.choice(JUNK).encode() if seed % 3 else mutated(json.dumps(whole).encode(), chance)
    )
    ran = run("import", reply)
    assert ran.code == 2
    never_a_bug(ran, reply.read_bytes()[:80])
