from datetime import date, datetime, timedelta, timezone

import pytest
from hypothesis import given
from hypothesis import strategies as st

from audio.clip_dates import date_in_name, parse_timestamp

AT = datetime(2026, 3, 14, 18, 15, 2)
NOON = datetime(2026, 3, 14, 12)


@pytest.mark.parametrize(
    ("name", "when"),
    [
        ("20260314_181502.mp4", AT),
        ("2026-03-14 18.15.02.wav", AT),
        ("2026-03-14 18-15-02.mkv", AT),
        ("2026-03-14T18:15:02.flac", AT),
        ("20260314T181502.wav", AT),
        ("VID_20260314_181502.mp4", AT),
        ("PXL_20260314_181502123.mp4", AT),
        ("REC-2026.03.14-18.15.02.m4a", AT),
        ("Recording 2026-03-14 at 18.15.02.m4a", AT),
        ("étude 2026_03_14 18_15_02 (2).m4a", AT),
        ("20260314-1815.wav", AT.replace(second=0)),
        ("2026-03-14.wav", NOON),
        ("20260314.wav", NOON),
        ("20260314-VID0007.mp4", NOON),
        ("take 2026-03-14 bar 12.wav", NOON),
    ],
)
def test_dates_in_names(name: str, when: datetime) -> None:
    found = date_in_name(name)
    assert found is not None
    assert found.when == when
    assert found.has_time == (when != NOON)
    assert found.source == "file_name"
    assert not found.utc_offset_known


@pytest.mark.parametrize(
    "name",
    [
        "take.wav", "IMG_0042.mov", "20261314_181502.mp4", "20260230.wav", "12345678.wav",
        "1202603140.wav", "sonata op 2026.wav", "2026-03.wav", "19041231.mov",
        "20260314181502999999.x",
    ],
)  # fmt: skip
def test_names_without_a_date(name: str) -> None:
    assert date_in_name(name) is None


def test_a_wrong_number_in_front_does_not_hide_the_date() -> None:
    found = date_in_name("20269999 then 20260314_181502.wav")
    assert found is not None
    assert found.when == AT


moments = st.datetimes(datetime(1990, 1, 1), datetime(2099, 12, 31)).map(
    lambda moment: moment.replace(microsecond=0)
)


@given(
    moments,
    st.sampled_from(
        [
            "%Y%m%d_%H%M%S",
            "%Y-%m-%d %H.%M.%S",
            "%Y-%m-%d_%H-%M-%S",
            "%Y%m%dT%H%M%S",
            "%Y.%m.%d-%H%M%S",
        ]
    ),
    st.sampled_from(["", "VID_", "REC ", "練習-", "take 12 "]),
    st.sampled_from([".m4a", " (1).mp4", "-HD.mov", "_練習.wav"]),
)
def test_any_moment_written_in_a_name_is_read_back(
    moment: datetime, pattern: str, before: str, after: str
) -> None:
    found = date_in_name(before + moment.strftime(pattern) + after)
    assert found is not None
    assert found.when == moment


@given(st.text(max_size=60))
def test_any_name_is_survived(name: str) -> None:
    found = date_in_name(name)
    assert found is None or found.when.year >= 1990


@given(
    moments,
    st.integers(-14 * 4, 14 * 4).map(lambda quarters: timedelta(minutes=15 * quarters)),
    st.booleans(),
)
def test_a_timestamp_keeps_its_offset(moment: datetime, offset: timedelta, colon: bool) -> None:
    aware = moment.replace(tzinfo=timezone(offset))
    text = aware.isoformat() if colon else aware.strftime("%Y-%m-%dT%H:%M:%S%z")
    found = parse_timestamp(text, "container")
    assert found is not None
    assert found.when == aware
    assert found.when.utcoffset() == offset
    assert found.utc_offset_known


@given(st.dates(date(1990, 1, 1), date(2099, 12, 31)))
def test_a_day_alone_has_no_time(day: date) -> None:
    found = parse_timestamp(day.isoformat(), "tag")
    assert found is not None
    assert found.when.date() == day
    assert not found.has_time


@pytest.mark.parametrize("text", ["", "2026", "2026-03", "yesterday", "2026-13-01", "18:15:02"])
def test_what_is_no_full_date_is_none(text: str) -> None:
    assert parse_timestamp(text, "tag") is None
