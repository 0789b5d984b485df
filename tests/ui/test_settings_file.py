"""The window's own settings file may hold anything: the window opens all the same."""

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from PySide6.QtCore import QSettings

from app.ui.application import Window
from app.ui.keys import KeyMap
from app.ui.preferences import Preferences

KEYS = (
    "theme", "language", "geometry", "volume", "reaction_s", "lanes", "picture", "item_order",
    "own_keys",
)  # fmt: skip
JUNK = (
    "", "nan", "-1", "1e999", "{", "[]", "\n\n=\n", "practice.record=", "=R", "no.such=R",
    "practice.record=Ctrl+Alt+Nothing", "0:0,1:1", "9:9:9", "x" * 4000, "\u202e", "@Invalid()",
    "@ByteArray(junk)", "@Variant(\\0\\0)",
)  # fmt: skip


def look_through(preferences: Preferences) -> None:
    """Read everything that the window reads when it opens."""
    found = [getattr(preferences, name) for name in KEYS if name != "theme"]
    assert len(found) == len(KEYS) - 1
    assert preferences.scheme
    assert 0.0 <= preferences.volume <= 2.0
    assert 0.0 <= preferences.reaction_s <= 2.0
    KeyMap(preferences.own_keys)


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.dictionaries(st.sampled_from(KEYS), st.sampled_from(JUNK) | st.text(max_size=20)))
def test_values_that_nobody_chose(tmp_path, qapp, values):
    file = tmp_path / "window.ini"
    written = QSettings(str(file), QSettings.Format.IniFormat)
    written.clear()
    for key, value in values.items():
        written.setValue(key, value)
    written.sync()
    look_through(Preferences(file))


@settings(max_examples=60, deadline=None, suppress_health_check=list(HealthCheck))
@given(st.binary(max_size=300))
def test_bytes_that_are_no_settings(tmp_path, qapp, data):
    file = tmp_path / f"{abs(hash(data))}.ini"
    file.write_bytes(b"[General]\n" * (len(data) % 2) + data)
    look_through(Preferences(file))


@pytest.mark.parametrize("junk", ["x" * 4000, "\n=\nno.such=R\npractice.record=Nothing", "-1"])
def test_the_window_opens(bench, tmp_path, qapp, settle, junk):
    file = tmp_path / "window.ini"
    written = QSettings(str(file), QSettings.Format.IniFormat)
    for key in KEYS:
        written.setValue(key, junk)
    written.sync()
    window = Window(bench, preferences_file=file)
    try:
        window.main.show()
        settle(window)
        window.main.show_page(1)
        settle(window)
        assert window.bug_dialogs == []
        assert window.main.listen.isVisible()
    finally:
        window.close()
        window.main.deleteLater()
        window.deleteLater()
        qapp.processEvents()
