"""Names of recordings on three operating systems."""

import unicodedata
from datetime import UTC, date, datetime, time, timedelta, timezone
from pathlib import PurePosixPath, PureWindowsPath

import pytest
from hypothesis import example, given
from hypothesis import strategies as st

from app.journal.naming import (
    MAX_BYTES,
    MAX_CHARACTERS,
    TakeFileName,
    next_number,
    read_take_file,
    slug,
    take_file,
)

# Microsoft, "Naming Files, Paths, and Namespaces": characters and device names that a
# Windows file name cannot have (read there; the superscript digits are listed too).
FORBIDDEN_CHARACTERS = set('<>:"/\\|?*') | {chr(code) for code in range(32)}
DEVICE_NAMES = (
    {"CON", "PRN", "AUX", "NUL"}
    | {f"COM{n}" for n in "123456789¹²³"}
    | {f"LPT{n}" for n in "123456789¹²³"}
)

DAY = date(2026, 3, 1)
AT = datetime(2026, 3, 1, 19, 5, 9, tzinfo=timezone(timedelta(hours=1)))


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("Etude: first line", "etude-first-line"),
        ("  Bars 17–24 (2nd time)  ", "bars-17-24-2nd-time"),
        ("Übung Nr. 3, Größe", "übung-nr-3-größe"),
        ("Концерт си минор", "концерт-си-минор"),
        ("練習曲 第3番", "練習曲-第3番"),
        ("연습곡", "연습곡"),
        ("दूसरा अभ्यास", "दूसरा-अभ्यास"),
        ("تمرين ٣", "تمرين-٣"),
        ("ＦＵＬＬ ｗｉｄｔｈ", "full-width"),
        ("a/b\\c:d*e?f", "a-b-c-d-e-f"),
        ("..", "passage"),
        ("", "passage"),
        ("🎻", "passage"),
        ("Con", "passage-con"),
        ("COM¹", "passage-com1"),
        ("con fuoco", "con-fuoco"),
        ("trailing. ", "trailing"),
    ],
)
def test_slugs(name: str, expected: str) -> None:
    assert slug(name) == expected


def test_accents_are_one_name_however_they_are_typed() -> None:
    assert slug("E\u0301tude") == slug("\u00c9tude") == "\u00e9tude"


@given(st.text(max_size=300))
@example("ǅ" * 60)
@example("İ" * 60)
@example("ﷺ" * 20)
@example("a" + "\u0301\u0316" * 200)
@example("\U0001d54f" * 100)
@example("nul")
@example("ΑΣ ΑΣ")
def test_a_slug_is_safe_everywhere(name: str) -> None:
    made = slug(name)
    assert made
    assert not FORBIDDEN_CHARACTERS & set(made)
    assert made.upper().partition(".")[0] not in DEVICE_NAMES
    assert not made.startswith((".", "-", " "))
    assert not made.endswith((".", "-", " "))
    assert len(made) <= MAX_CHARACTERS
    assert len(made.encode()) <= MAX_BYTES
    assert made == unicodedata.normalize("NFC", made)
    assert PureWindowsPath(made).name == PurePosixPath(made).name == made


@given(st.text(max_size=300))
@example("İ" * 60)
@example("con" + "\u0301" * 3)
@example("ｃｏｎ")
def test_a_slug_stays_itself(name: str) -> None:
    assert slug(slug(name)) == slug(name)


@given(st.text(st.characters(categories=("Lu", "Ll", "Lo", "Nd")), min_size=1, max_size=20))
def test_letters_of_every_script_stay_readable(word: str) -> None:
    made = slug(word)
    folded = unicodedata.normalize("NFKC", unicodedata.normalize("NFKC", word).lower())
    letters = [c for c in folded if c.isalnum()]
    assert not letters or letters[0] in made


def test_name_of_a_take() -> None:
    name = take_file(
        practice_day=DAY,
        recorded_at=AT,
        passage_slug="etude",
        number=2,
        suffix=".FLAC",
        is_taken=lambda _stem: False,
    )
    assert name == "2026/2026-03-01/190509-etude-take-2.flac"


def test_name_of_a_take_without_passage() -> None:
    name = take_file(
        practice_day=DAY,
        recorded_at=AT,
        passage_slug=None,
        number=1,
        suffix=".flac",
        is_taken=lambda _stem: False,
    )
    assert name == "2026/2026-03-01/190509-take-1.flac"


def test_practice_after_midnight_lies_in_the_folder_of_the_day_before() -> None:
    name = take_file(
        practice_day=DAY,
        recorded_at=AT.replace(day=2, hour=1),
        passage_slug="etude",
        number=1,
        suffix=".flac",
        is_taken=lambda _stem: False,
    )
    assert name == "2026/2026-03-01/010509-etude-take-1.flac"


@given(
    st.lists(
        st.tuples(
            st.text(max_size=12) | st.none(),
            st.integers(1, 3),
            st.integers(0, 2),
            st.sampled_from([".flac", ".m4a", ".MOV"]),
        ),
        max_size=30,
    )
)
def test_two_takes_in_one_second_never_share_a_name(
    wanted: list[tuple[str | None, int, int, str]],
) -> None:
    stems: set[str] = set()
    for name, number, second, suffix in wanted:
        made = take_file(
            practice_day=DAY,
            recorded_at=AT + timedelta(seconds=second),
            passage_slug=None if name is None else slug(name),
            number=number,
            suffix=suffix,
            is_taken=lambda stem: stem in stems,
        )
        stem = made.rpartition(".")[0]
        assert stem not in stems  # whatever the suffix: the sidecar shares the name
        stems.add(stem)
        assert len(PurePosixPath(made).name.encode()) <= 255


@given(st.text(max_size=30), st.integers(1, 9999), st.times(), st.dates(), st.integers(0, 2))
def test_a_name_can_be_read_again(name: str, number: int, at: time, day: date, others: int) -> None:
    made = slug(name)
    refusals = iter([True] * others + [False])
    file = take_file(
        practice_day=day,
        recorded_at=datetime.combine(day, at, tzinfo=UTC),
        passage_slug=made,
        number=number,
        suffix=".flac",
        is_taken=lambda _stem: next(refusals),
    )
    read = read_take_file(file)
    assert read is not None
    assert (read.practice_day, read.wall_time) == (day, at.replace(microsecond=0))


def test_what_a_name_tells() -> None:
    expected = TakeFileName(DAY, time(19, 5, 9), "etude-first-line", 3)
    assert read_take_file("2026/2026-03-01/190509-etude-first-line-take-3.flac") == expected
    assert read_take_file("2026/2026-03-01/190509-etude-first-line-take-3-2.m4a") == expected


@pytest.mark.parametrize(
    "name",
    [
        "2026/2026-03-01/notes.txt",
        "2026/2026-13-01/190509-take-1.flac",
        "2026/2026-03-01/256199-take-1.flac",
        "190509-take-1.flac",
        "2026/2026-03-01/190509-take-0.flac",
    ],
)
def test_names_that_follow_another_rule(name: str) -> None:
    assert read_take_file(name) is None


@given(st.lists(st.integers(1, 50)))
def test_next_number_is_new_and_the_highest(numbers: list[int]) -> None:
    assert next_number(numbers) > max(numbers, default=0)
    assert next_number([]) == 1


def test_takes_are_counted_from_one() -> None:
    with pytest.raises(ValueError, match="counted from 1"):
        take_file(
            practice_day=DAY,
            recorded_at=AT,
            passage_slug=None,
            number=0,
            suffix=".flac",
            is_taken=lambda _stem: False,
        )
