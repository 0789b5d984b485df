"""Where notes end: frames made by hand, and a repeated note that vibrates."""

from dataclasses import replace

import numpy as np
import pytest

from analysis.note_spans import Span, join_wobbling
from analysis.releases import frames_until_release, without_forerunner
from analysis.results import PitchTrack

HOP_S = 0.005


@pytest.mark.parametrize("rest_s", [0.15, 0.5, 2.0])
def test_a_note_ends_before_the_rest_though_the_next_is_heard_at_its_end(rest_s: float) -> None:
    note = np.arange(200)
    forerunner = 200 + round(rest_s / HOP_S) + np.arange(4)
    assert without_forerunner(np.concatenate((note, forerunner)), HOP_S) == 200


def test_a_note_that_is_unclear_for_a_moment_goes_on() -> None:
    unclear_s = np.concatenate((np.arange(200), np.arange(210, 215)))  # 50 ms without a pitch
    assert without_forerunner(unclear_s, HOP_S) == 215
    goes_on = np.concatenate((np.arange(200), np.arange(300, 400)))  # and half a second more
    assert without_forerunner(goes_on, HOP_S) == 400


def test_what_falls_for_good_has_ended_and_what_dips_has_not() -> None:
    level_dbfs = np.full(300, -20.0)
    assert frames_until_release(level_dbfs, HOP_S) == 300
    level_dbfs[100:110] = -40.0
    assert frames_until_release(level_dbfs, HOP_S) == 300
    level_dbfs[200:] = -40.0
    assert frames_until_release(level_dbfs, HOP_S) == 200


@pytest.mark.parametrize(("strength", "notes"), [(0.4, 1), (0.7, 5)])
def test_clear_attacks_part_notes_also_where_they_keep_step_with_a_vibrato(
    strength: float, notes: int
) -> None:
    time_s = np.arange(400) * HOP_S
    cents = 20.0 * np.sin(2.0 * np.pi * 5.0 * time_s)
    track = PitchTrack(
        time_s, 440.0 * np.exp2(cents / 1200.0), np.ones(400), np.full(400, -20.0), HOP_S
    )
    piece = Span(0, 80, 0.0, 0.4, strength)  # two turns each
    spans = [
        replace(piece, first=k * 80, last=(k + 1) * 80, start_s=0.4 * k, end_s=0.4 * (k + 1))
        for k in range(5)
    ]
    assert len(join_wobbling(track, spans)) == notes
