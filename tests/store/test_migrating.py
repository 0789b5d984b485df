"""Migrations: from every earlier form, with a backup, all or nothing."""

import re
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import create_engine
from sqlalchemy.pool import NullPool

from app.journal.failures import PlainFailure
from app.store import migrating
from app.store.backups import back_up
from app.store.every_table import METADATA
from app.store.folders import Folders
from app.store.migrating import HEAD, REVISIONS, migrate, revision_of
from tests.store.making import (
    NOW,
    everything,
    make_marker,
    make_measurement,
    make_passage,
    make_session,
    make_take,
    opened,
)

# Rows of a journal as the first version wrote them, word for word.
FIRST_ROWS = """
INSERT INTO passage VALUES ('{p}', 'Study in D', 'first line', '1-8', '{{"instrument":"viola"}}',
  '2026-03-01T18:05:09.000000Z/+01:00');
INSERT INTO session VALUES ('{s}', '2026-03-01', '2026-03-01T17:00:00.000000Z/+01:00', 25.0,
  'typed', '');
INSERT INTO rest_day VALUES ('2026-03-02', 1);
INSERT INTO take VALUES ('{t}', '{s}', '{p}', '2026-03-01', 1,
  '2026-03-01T18:05:09.000000Z/+01:00', '2026-03-01T18:06:09.000000Z/+01:00', 'recorded',
  '2026/2026-03-01/190509-first-line-take-1.flac', '{h}', 30.0, 48000, 1,
  '{{"instrument":"viola","reference_a_hz":442.0}}', '', '', 'softer', NULL, 0, 0, '', NULL);
INSERT INTO marker VALUES ('{m}', '{t}', 1.5, NULL, 'shift', 3, 'late', 'self', 'to_work_on',
  '2026-03-01T18:10:00.000000Z/+01:00', '2026-03-01T18:10:00.000000Z/+01:00');
INSERT INTO setting VALUES ('day_turn_hour', '3');
""".format(p="a" * 32, s="b" * 32, t="c" * 32, m="d" * 32, h="ab" * 32)


def make_old(folder: Path, revision: str) -> Path:
    folder.mkdir(parents=True)
    database = folder / "journal.db"
    migrate(database, "0001")
    with closing(sqlite3.connect(database)) as connection:
        connection.executescript(FIRST_ROWS)
    migrate(database, revision)
    return database


@pytest.mark.parametrize("read_only", [False, True])
@pytest.mark.parametrize("revision", REVISIONS)
def test_every_earlier_journal_opens(journal: Path, revision: str, read_only: bool) -> None:
    database = make_old(journal, revision)
    before = database.read_bytes()
    with opened(journal, read_only=read_only) as store:
        (take,) = store.takes.list()
        assert (take.aim, take.settings.reference_a_hz, take.number) == ("softer", 442.0, 1)
        (marker,) = store.markers.for_take(take.id)
        assert (marker.category, marker.weight) == ("shift", 3)
        assert store.passages.list()[0].settings.instrument == "viola"
        assert store.sessions.minutes_by_day(take.practice_day, take.practice_day)
        assert store.rest_days.list()[0].planned
        assert store.settings.get().day_turn_hour == 3
        assert store.measurements.waiting("take-1") == (take.id,)
        if not read_only:
            store.measurements.put(make_measurement(take))
            store.markers.add(make_marker(take))
            assert store.folders.sidecar(take.file).exists()
    backups = list((journal / "backups").glob("*.db")) if not read_only else []
    if read_only:
        assert database.read_bytes() == before
        assert not (journal / "backups").exists()
    else:
        assert revision_of(database) == HEAD
        assert len(backups) == (revision != HEAD)
    for backup in backups:
        assert revision_of(backup) == revision
        assert f"before-{HEAD}" in backup.name
        with closing(sqlite3.connect(backup)) as connection:
            assert connection.execute("SELECT aim FROM take").fetchall() == [("softer",)]


def schema_of(database: Path) -> dict[str, str]:
    with closing(sqlite3.connect(database)) as connection:
        rows = connection.execute(
            "SELECT name, sql FROM sqlite_master WHERE sql IS NOT NULL"
        ).fetchall()
    return {name: _in_one_form(sql) for name, sql in rows if name != "alembic_version"}


def _in_one_form(sql: str) -> str:
    """Leave out what means nothing: white space, quotes, the order of the constraints."""
    text = re.sub(r'[\s"]+', " ", sql).replace(" ,", ",").removesuffix(" )")
    columns, *constraints = re.split(r", (?=CONSTRAINT )", text)
    return ", ".join([columns, *sorted(constraints)])


def test_migrations_lead_to_the_models(tmp_path: Path) -> None:
    migrated, modelled = tmp_path / "migrated.db", tmp_path / "modelled.db"
    migrate(migrated)
    engine = create_engine(f"sqlite:///{modelled}", poolclass=NullPool)
    METADATA.create_all(engine)
    assert schema_of(migrated) == schema_of(modelled)
    engine = create_engine(f"sqlite:///{migrated}", poolclass=NullPool)
    with engine.connect() as connection:
        context = MigrationContext.configure(connection, opts={"compare_type": True})
        assert compare_metadata(context, METADATA) == []


def test_the_list_of_revisions_is_that_of_the_scripts() -> None:
    config = Config()
    config.set_main_option("script_location", str(migrating._SCRIPTS))
    config.set_main_option("path_separator", "os")
    scripts = ScriptDirectory.from_config(config)
    assert tuple(script.revision for script in scripts.walk_revisions())[::-1] == REVISIONS
    assert scripts.get_heads() == [HEAD]


def test_a_migration_that_fails_changes_nothing(
    journal: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    database = make_old(journal, "0001")
    before = schema_of(database)
    with closing(sqlite3.connect(database)) as connection:
        # The change after next will want to create a table of this name.
        connection.execute("CREATE TABLE sidecar_due (unexpected INTEGER)")
    with pytest.raises(Exception, match="already exists"):
        opened(journal)
    assert revision_of(database) == "0001"
    assert schema_of(database).keys() - {"sidecar_due"} == before.keys()
    assert len(list((journal / "backups").glob("*.db"))) == 1
    with closing(sqlite3.connect(database)) as connection:
        connection.execute("DROP TABLE sidecar_due")
    with opened(journal) as store:  # the lock was let go of, and nothing is half-made
        assert len(store.takes.list()) == 1


def test_no_migration_without_a_backup(journal: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    database = make_old(journal, "0001")

    def refuse(*_args: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("app.store.backups.copy_database", refuse)
    with pytest.raises(PlainFailure, match="is full"):
        opened(journal)
    assert revision_of(database) == "0001"
    assert list((journal / "backups").iterdir()) == []


def test_a_path_of_any_characters(tmp_path: Path) -> None:
    folder = tmp_path / "100% d'été #1 ?x=1&y [音楽]"
    with opened(folder) as store:
        store.passages.add(make_passage())
        before = everything(store)
        store.back_up()
    with opened(folder, read_only=True) as store:
        assert everything(store) == before


def test_a_backup_holds_all_but_the_curves(journal: Path) -> None:
    with opened(journal) as store:
        session = make_session()
        take = make_take(session)
        with store.transaction():
            store.sessions.add(session)
            store.takes.add(take)
            store.markers.add(make_marker(take))
            store.measurements.put(make_measurement(take))
        backup = store.back_up()
        again = back_up(Folders(journal), NOW)
        third = back_up(Folders(journal), NOW)
    assert len({backup, again, third}) == 3  # nothing is overwritten within a second
    assert schema_of(backup) == schema_of(journal / "journal.db")
    with closing(sqlite3.connect(backup)) as connection:

        def count(table: str) -> int:
            return int(connection.execute(f"SELECT count(*) FROM {table}").fetchone()[0])  # noqa: S608

        assert connection.execute("PRAGMA integrity_check").fetchone() == ("ok",)
        assert (count("take"), count("marker"), count("measurement")) == (1, 1, 1)
        assert count("measurement_curves") == 0
    assert not list((journal / "backups").glob("*.part"))


def test_an_old_journal_whose_rows_refer_to_nothing_is_damaged(journal: Path) -> None:
    database = make_old(journal, "0001")
    with closing(sqlite3.connect(database)) as connection, connection:
        connection.execute("DELETE FROM session")
    with pytest.raises(PlainFailure, match="damaged"):
        opened(journal)
    assert revision_of(database) == "0001"
