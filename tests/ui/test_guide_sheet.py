"""The guide opens beside the window, page by page, with its pictures and links."""

import pytest
from PySide6.QtCore import Qt, QUrl
from PySide6.QtGui import QTextDocument

from app.ui.language import use_language
from app.ui.widgets.guide_sheet import FOLDER, GuideSheet, folder_of, pages, title_of


@pytest.mark.qt_log_ignore("propagateSizeHints", "raise")
def test_the_key_opens_the_guide_and_playing_goes_on(window):
    window.main.desk.keys.action("guide").trigger()
    sheet = window.main.sheets.guide
    assert sheet.isVisible()
    assert not sheet.isModal()
    assert sheet.list.count() == len(list(FOLDER.glob("*.md")))
    window.main.sheets.hide()
    assert not sheet.isVisible()


def test_every_page_has_a_title_and_can_be_shown(window):
    sheet = GuideSheet(window.main)
    for page in pages():
        assert title_of(page.read_text(encoding="utf-8"))
        assert sheet.show_page(page.name)
        assert sheet.page_name == page.name
        assert sheet.browser.toPlainText().strip()


def test_a_link_between_pages_leads_there(window):
    sheet = GuideSheet(window.main)
    sheet.browser.anchorClicked.emit(QUrl("troubleshooting.md"))
    assert sheet.page_name == "troubleshooting.md"


def test_pictures_of_a_page_are_found_and_fit(window):
    sheet = GuideSheet(window.main)
    for picture in FOLDER.glob("pictures/*.png"):
        name = QUrl(f"pictures/{picture.name}")
        kind = QTextDocument.ResourceType.ImageResource
        shown = sheet.browser.loadResource(kind.value, name)
        assert not shown.isNull()
        assert shown.width() / shown.devicePixelRatio() < 700


def test_enter_goes_from_hit_to_hit_over_all_pages(window, qtbot, tmp_path):
    (tmp_path / "a.md").write_text("# First\n\nA string.\n", encoding="utf-8")
    (tmp_path / "b.md").write_text("# Second\n\nA bow.\n\nThe string again.\n", encoding="utf-8")
    sheet = GuideSheet(window.main, tmp_path)
    sheet.search.setText("string")
    where = []
    for _ in range(3):
        qtbot.keyClick(sheet.search, Qt.Key.Key_Return)
        where.append(sheet.page_name)
        assert sheet.browser.textCursor().selectedText().casefold() == "string"
    assert where == ["a.md", "b.md", "a.md"]


def test_the_guide_speaks_the_language_of_the_window(window, qapp):
    del qapp
    english = [sheet_title(GuideSheet(window.main), at) for at in range(11)]
    use_language("de")
    try:
        sheet = GuideSheet(window.main)
    finally:
        use_language("en")
    assert sheet_title(sheet, 0) == "Der erste Tag"
    assert len({sheet_title(sheet, at) for at in range(11)} - set(english)) == 11
    sheet.show_page("numbers.md")
    sheet.browser.anchorClicked.emit(QUrl("counting.md"))
    assert sheet.browser.toPlainText().startswith("Wie Tage gezählt werden")
    assert folder_of("de") != FOLDER
    assert folder_of("xx") == folder_of("en") == folder_of("") == FOLDER


def test_pictures_of_a_page_in_another_language_are_found(window):
    sheet = GuideSheet(window.main, folder_of("de"))
    kind = QTextDocument.ResourceType.ImageResource
    english = {picture.name for picture in FOLDER.glob("pictures/*.png")}
    assert english
    for name in english:
        shown = sheet.browser.loadResource(kind.value, QUrl(f"pictures/{name}"))
        assert not shown.isNull(), f"{name} has no German picture"


def sheet_title(sheet, at: int) -> str:
    return sheet.list.item(at).text()


def test_words_that_are_nowhere_change_nothing(window, qtbot, tmp_path):
    (tmp_path / "a.md").write_text("# First\n\nA string.\n", encoding="utf-8")
    sheet = GuideSheet(window.main, tmp_path)
    sheet.search.setText("oboe")
    qtbot.keyClick(sheet.search, Qt.Key.Key_Return)
    assert sheet.page_name == "a.md"
    assert not sheet.browser.textCursor().hasSelection()
