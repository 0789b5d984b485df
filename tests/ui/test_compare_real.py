"""The Compare page on real services and two takes of one study at different tempi."""

import numpy as np
import pytest


@pytest.fixture
def compare(open_window, real_bench, settle):
    window = open_window(real_bench)
    window.main.show_page(2)
    assert window.jobs.wait_until_idle(60)
    settle(window)
    return window.main.compare


def test_the_switch_lands_on_the_same_note(compare, qtbot, real_bench):
    """Where each note begins in A, one key leads to where it begins in B, and back."""
    apart = []
    for pair in compare.view.notes[::3]:
        compare.playback.seek(pair.a_start_s)
        qtbot.keyClick(compare, "X")
        assert real_bench.playing.ready_take_id == compare.view.a.row.id
        apart.append(real_bench.playing.state().position_s - pair.b_start_s)
        qtbot.keyClick(compare, "X")
        back = real_bench.playing.state().position_s
        assert back == pytest.approx(pair.a_start_s, abs=0.03)
    apart_ms = 1000 * np.abs(apart)
    print(f"from note to note: median {np.median(apart_ms):.0f} ms, most {apart_ms.max():.0f} ms")
    assert np.median(apart_ms) < 20
    assert apart_ms.max() < 50


def test_sections_and_pictures_read_the_journal(compare, qtbot, settle):
    window = compare.window()
    for number in range(1, 6):
        compare.sections.show_pane(number - 1)
    for _ in range(3):
        compare.pictures.next_picture()
        qtbot.waitUntil(lambda: compare.desk.jobs.is_idle, timeout=60_000)
    assert compare.pictures.picture is not None
    assert compare.sections.days.report is not None
    assert all(row.word == "too few takes" for row in compare.sections.days.report.rows)
    assert compare.sections.tempo.words.strip()
    assert window is not None
