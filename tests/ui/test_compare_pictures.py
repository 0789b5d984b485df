"""The pictures of a passage in the window: which one, what it says, saving it."""

import csv
import xml.etree.ElementTree as ET

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QImage

from app.services.picture_saving import PictureKind


@pytest.fixture
def compare(window, settle):
    window.main.show_page(2)
    settle(window)
    return window.main.compare


def test_one_key_goes_through_the_three_pictures(compare, qtbot, settle, window, bench):
    pictures = compare.pictures
    assert pictures.kind is PictureKind.WEEKS
    assert bench.note_maps.asked == 0, "a map takes a while and is not made unasked"
    qtbot.keyClick(compare, "P")
    settle(window)
    assert pictures.kind is PictureKind.NOTE_MAP
    assert bench.note_maps.asked == 1
    assert pictures.note_map.isVisible()
    assert "Up: sharp. Down: flat." in pictures.words
    qtbot.keyClick(compare, "P")
    settle(window)
    assert pictures.kind is PictureKind.BEFORE_AFTER
    assert "Ring" in pictures.words
    qtbot.keyClick(compare, "P")
    assert pictures.kind is PictureKind.WEEKS


def test_arrows_read_the_note_map_and_enter_hears_the_place(compare, qtbot, settle, window, bench):
    qtbot.keyClick(compare, "P")
    settle(window)
    plot = compare.pictures.note_map
    plot.setFocus()
    qtbot.keyClick(plot, Qt.Key.Key_Right)
    assert "Bb4" in plot.words
    qtbot.keyClick(plot, Qt.Key.Key_Up)
    assert "not measured" in plot.words or "cents" in plot.words
    assert compare.pictures.words == plot.words
    qtbot.keyClick(plot, Qt.Key.Key_Return)
    settle(window)
    assert compare.view.a.row.id == "take11", "the take whose notes are the axis"
    assert compare.playback.place_s == pytest.approx(5.0)


def test_a_large_picture_takes_the_place_of_the_lanes(compare, qtbot):
    shift = Qt.KeyboardModifier.ShiftModifier
    before = compare.pictures.height()
    qtbot.keyClick(compare, "P", modifier=shift)
    assert not compare.lanes.isVisible()
    qtbot.waitUntil(lambda: compare.pictures.height() > 1.5 * before, timeout=2000)
    qtbot.keyClick(compare, "P", modifier=shift)
    assert compare.lanes.isVisible()


@pytest.mark.parametrize("steps", [0, 1, 2])
@pytest.mark.parametrize("suffix", ["png", "svg", "csv"])
def test_each_picture_is_saved_as_each_kind_of_file(  # noqa: PLR0917 - fixtures
    compare, settle, window, tmp_path, steps, suffix
):
    for _ in range(steps):
        compare.pictures.next_picture()
        settle(window)
    path = tmp_path / f"Übung.{suffix}"
    compare.pictures.save(path)
    settle(window)
    assert str(path) in window.main.messages.text
    if suffix == "png":
        image = QImage(str(path))
        assert image.width() > 600
    elif suffix == "svg":
        root = ET.parse(path).getroot()  # noqa: S314 - the file is the program's own
        assert root.tag == "{http://www.w3.org/2000/svg}svg"
    else:
        with path.open(encoding="utf-8", newline="") as stream:
            rows = list(csv.reader(stream))
        assert len(rows) > 10
        assert len({len(row) for row in rows}) == 1


def test_a_wrong_ending_is_told(compare, settle, window, tmp_path):
    compare.pictures.save(tmp_path / "picture.docx")
    settle(window)
    assert "png, svg or csv" in window.main.messages.text
    assert not list(tmp_path.glob("picture*"))
