"""Where things lie, and that nothing is overwritten."""

from datetime import timedelta
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.store.folders import Folders, move_without_overwriting, open_new, write_atomically
from tests.store.making import DAY, NOW


def new_file(folders: Folders, suffix: str = ".flac", number: int = 1) -> str:
    return folders.new_take_file(
        practice_day=DAY, recorded_at=NOW, passage_slug="study", number=number, suffix=suffix
    )


def test_places(tmp_path: Path) -> None:
    folders = Folders(tmp_path)
    file = new_file(folders)
    assert file == "2026/2026-03-01/190509-study-take-1.flac"
    assert folders.day(DAY).is_dir()
    assert folders.sidecar(file).name == "190509-study-take-1.json"
    assert folders.relative(folders.absolute(file)) == file
    assert folders.day_card(DAY) == tmp_path / "2026" / "2026-03-01" / "day.json"


def test_a_second_take_in_the_same_second(tmp_path: Path) -> None:
    folders = Folders(tmp_path)
    first = folders.absolute(new_file(folders))
    first.touch()
    assert new_file(folders) == "2026/2026-03-01/190509-study-take-1-2.flac"
    assert new_file(folders, ".m4a") == "2026/2026-03-01/190509-study-take-1-2.m4a"
    folders.absolute("2026/2026-03-01/190509-STUDY-take-1-2.MOV").touch()
    assert new_file(folders) == "2026/2026-03-01/190509-study-take-1-3.flac"
    first.unlink()
    folders.sidecar("2026/2026-03-01/190509-study-take-1.flac").touch()
    assert new_file(folders) == "2026/2026-03-01/190509-study-take-1-3.flac"


@pytest.mark.parametrize(
    "name", ["/etc/passwd", "../other/x.flac", "2026/../../x", "C:/x.flac", "a\\b.flac"]
)
def test_no_name_leads_out_of_the_journal(tmp_path: Path, name: str) -> None:
    with pytest.raises(ValueError, match="not a place in the journal"):
        Folders(tmp_path).absolute(name)


@given(st.text(max_size=20))
def test_whatever_a_sidecar_names_stays_inside(name: str) -> None:
    folders = Folders(Path("/journal"))
    try:
        place = folders.absolute(name)
    except ValueError:
        return
    assert place.is_relative_to(folders.journal)
    assert ".." not in place.parts


def test_the_trash_keeps_everything(tmp_path: Path) -> None:
    folders = Folders(tmp_path)
    file = folders.absolute(new_file(folders))
    places = []
    for content in (b"one", b"two", b"three"):
        file.write_bytes(content)
        places.append(folders.to_trash(file, DAY))
        assert not file.exists()
    assert [place.read_bytes() for place in places] == [b"one", b"two", b"three"]
    assert places[0] == tmp_path / "trash" / "2026-03-01" / "2026" / "2026-03-01" / file.name
    assert folders.from_trash(places[1]).read_bytes() == b"two"
    file.write_bytes(b"four")
    back = folders.from_trash(places[0])
    assert back != file
    assert (back.read_bytes(), file.read_bytes()) == (b"one", b"four")
    assert places[2].exists()
    assert folders.to_trash(back, DAY + timedelta(days=1)).read_bytes() == b"one"


def test_moving_never_overwrites(tmp_path: Path) -> None:
    target = tmp_path / "target.wav"
    target.write_bytes(b"old")
    source = tmp_path / "source.wav"
    source.write_bytes(b"new")
    moved = move_without_overwriting(source, target)
    assert (moved.name, moved.read_bytes(), target.read_bytes()) == ("target-2.wav", b"new", b"old")


def test_moving_what_is_gone_leaves_nothing_behind(tmp_path: Path) -> None:
    with pytest.raises(FileNotFoundError):
        move_without_overwriting(tmp_path / "gone.wav", tmp_path / "target.wav")
    assert list(tmp_path.iterdir()) == []


def test_a_new_file_must_be_new(tmp_path: Path) -> None:
    with open_new(tmp_path / "take.flac") as file:
        file.write(b"sound")
    with pytest.raises(FileExistsError):
        open_new(tmp_path / "take.flac")
    assert (tmp_path / "take.flac").read_bytes() == b"sound"


def test_a_failed_write_leaves_the_old_text(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "day.json"
    write_atomically(path, "old")

    def refuse(_self: Path, _target: Path) -> Path:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(Path, "replace", refuse)
    with pytest.raises(OSError, match="No space"):
        write_atomically(path, "new")
    assert path.read_text(encoding="utf-8") == "old"
    assert [p.name for p in tmp_path.iterdir()] == ["day.json"]


def test_files_of_the_days_in_order(tmp_path: Path) -> None:
    for name in ("2026/2026-03-02/b.flac", "2026/2026-03-01/z.flac", "2025/2025-12-31/a.flac"):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.touch()
    for name in ("trash/2026-03-01/x.flac", "2026/notes.txt", "2026/plans/x.flac", ".cache/y"):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.touch()
    folders = Folders(tmp_path)
    assert [folders.relative(path) for path in folders.day_files()] == [
        "2025/2025-12-31/a.flac",
        "2026/2026-03-01/z.flac",
        "2026/2026-03-02/b.flac",
    ]
