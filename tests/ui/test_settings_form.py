"""The playing settings as a form: a tonic helps every temperament, and some need one."""

from app.journal.records import PlayingSettings
from app.ui.widgets.settings_form import SettingsForm


def test_what_is_shown_is_what_is_read(qtbot):
    form = SettingsForm()
    qtbot.addWidget(form)
    for settings in (
        PlayingSettings(),
        PlayingSettings(tonic="Bb"),
        PlayingSettings(harmonics=("A5", "E6")),
        PlayingSettings(harmonics=("all",)),
        PlayingSettings(temperament="just", tonic="Eb", with_mute=True, automatic_gain="unknown"),
    ):
        form.show_settings(settings)
        assert form.settings == settings


def test_a_temperament_that_needs_a_tonic_gets_one(qtbot):
    form = SettingsForm()
    qtbot.addWidget(form)
    form.show_settings(PlayingSettings(temperament="just"))
    assert form.settings.tonic == "C"
