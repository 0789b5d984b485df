"""When two takes were recorded with another input, or the same one set differently."""

import pytest

from app.journal.input_levels import InputTrace, differences


@pytest.mark.parametrize(
    ("before", "now", "said"),
    [
        (InputTrace(), InputTrace(), []),
        (InputTrace("A", -60.0), InputTrace("A", -54.1), []),
        (InputTrace("A", -60.0), InputTrace("A", -53.9), ["6 dB higher"]),
        (InputTrace("A", -50.0), InputTrace("A", -62.4), ["12 dB lower"]),
        (InputTrace("A", None), InputTrace("B", None), ["A, then B"]),
        (InputTrace("A", -60.0), InputTrace("B", -40.0), ["A, then B", "20 dB higher"]),
        (InputTrace("", -60.0), InputTrace("B", -60.0), []),
        (InputTrace("A", None), InputTrace("A", -20.0), []),
    ],
)
def test_what_differs(before, now, said):
    found = differences(before, now)
    assert len(found) == len(said)
    for sentence, part in zip(found, said, strict=True):
        assert part in sentence
