"""What begins once the window stands."""

from PySide6.QtWidgets import QWidget

from app.ui.models.first_paint import FirstPaint


class Painted(QWidget):
    def __init__(self, happened):
        super().__init__()
        self._happened = happened

    def paintEvent(self, _event):  # noqa: N802 - Qt's name
        self._happened.append("painted")


def test_it_begins_once_after_the_window_was_painted(qtbot):
    happened = []
    window = Painted(happened)
    qtbot.addWidget(window)
    FirstPaint(window, lambda: happened.append("begun"))
    window.show()
    qtbot.waitUntil(lambda: "begun" in happened)
    window.update()
    qtbot.waitUntil(lambda: happened.count("painted") > happened.index("begun"))
    assert happened[0] == "painted"
    assert happened.count("begun") == 1


def test_a_window_that_nobody_shows_is_not_waited_for(qtbot):
    happened = []
    window = Painted(happened)
    qtbot.addWidget(window)
    FirstPaint(window, lambda: happened.append("begun"))
    qtbot.waitUntil(lambda: happened == ["begun"], timeout=500)
