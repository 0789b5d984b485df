"""The next practice from a real journal: reasons that cite its records, edits that stay."""

from dataclasses import replace
from datetime import date, timedelta

import pytest

from app.journal.assignments import OccasionKind
from app.journal.failures import PlainFailure
from app.journal.plans import ReasonKind
from app.journal.records import StoredMeasurement
from app.wiring import open_workbench

TODAY = date(2026, 3, 14)


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


@pytest.fixture
def takes(add_take, tone_file):
    """File short takes of passages on days ago."""
    counter = iter(range(10_000))

    def file(passage, *days):
        return [
            add_take(tone_file(f"{n}.wav", frequency_hz=200.0 + n), passage, ago(day))
            for day in days
            for n in [next(counter)]
        ]

    return file


def test_reasons_cite_records_of_the_journal(bench, takes):
    opening = takes("opening", 1)[0]
    coda = takes("coda", 20)[0]
    takes("daily", 1)
    marker = bench.marking.add(opening.id, 0.2, category="shift", weight=3, text="lands low")
    daily = bench.passages.find("daily")
    bench.passages.change(replace(daily, no_retake=True, no_retake_since=ago(5)))
    goal = bench.assignments.add(TODAY + timedelta(days=3), "even bow", passage_id=daily.id)
    bench.assignments.add_occasion(
        TODAY + timedelta(days=12), OccasionKind.AUDITION, "open seat", [coda.passage_id]
    )
    plan = bench.planning.make(60).plan
    assert [line.title for line in plan.lines] == ["daily", "coda", "opening"]
    cited = {(reason.kind, reason.record_id) for line in plan.lines for reason in line.reasons}
    assert {
        (ReasonKind.NO_RETAKE, daily.id),
        (ReasonKind.ASSIGNMENT, goal.assignment.id),
        (ReasonKind.MARKER, marker.id),
    } <= cited
    assert plan.minutes_planned <= 60


def test_a_deleted_take_and_a_settled_marker_ask_for_nothing(bench, takes):
    row = takes("opening", 1)[0]
    bench.marking.add(row.id, 0.2, category="shift")
    assert len(bench.planning.propose(30).plan.lines) == 1
    bench.filing.delete(row.id)
    view = bench.planning.propose(30)
    assert view.plan.lines == ()
    assert view.sentence.startswith("Nothing asks for attention today")


def test_a_passage_that_gets_worse_is_proposed_with_its_last_take(bench, takes, clock):
    rows = takes("slipping", *range(40, 0, -3))
    for n, row in enumerate(rows):
        summary = {"intonation": {"status": "measured", "mean_absolute_cents": 6.0 + n}}
        bench.planning._store.measurements.put(
            StoredMeasurement(row.id, "take-1", clock.now, summary)
        )
    (line,) = bench.planning.propose(30).plan.lines
    assert (line.reasons[0].kind, line.reasons[0].record_id) == (ReasonKind.WORSE, rows[-1].id)
    assert "cents a week" in line.reasons[0].sentence


def test_another_instrument_is_no_worsening(bench, takes, clock):
    """The trend leaves such takes out; so does the plan, which speaks of the same passage."""
    rows = takes("moved", *range(40, 0, -3))
    for n, row in enumerate(rows):
        if n > 6:
            settings = replace(bench.filing.take(row.id).settings, instrument="viola")
            bench.filing.change_settings(row.id, settings)
        cents = 6.0 + n % 2 + (14.0 if n > 6 else 0.0)
        summary = {"intonation": {"status": "measured", "mean_absolute_cents": cents}}
        bench.planning._store.measurements.put(
            StoredMeasurement(row.id, "take-1", clock.now, summary)
        )
    assert bench.planning.propose(30).plan.lines == ()


def test_edits_stay(bench, takes, journal_dir, clock):
    for name in ("a", "b", "c"):
        row = takes(name, 1)[0]
        bench.marking.add(row.id, 0.2, category="shift")
    view = bench.planning.make(45)
    assert view.cautions[0].startswith("Warm up first")
    a, b, c = (line.id for line in view.plan.lines)
    bench.planning.reorder([c, a, b])
    bench.planning.change_line(a, minutes=5)
    bench.planning.remove_line(b)
    bench.planning.tick(c)
    bench.planning.add_line("c once more", 5, passage_id=c)
    own = bench.planning.add_line("Sight-reading", 10)
    assert own.minutes_done == 10
    with pytest.raises(PlainFailure, match="there are 45"):
        bench.planning.change_line(a, minutes=40)
    with pytest.raises(PlainFailure, match="not in today's plan"):
        bench.planning.tick("nothing")
    bench.close()
    with open_workbench(journal_dir, clock=clock) as again:
        plan = again.planning.today().plan
        assert [(line.title, line.minutes) for line in plan.lines] == [
            ("c", 10), ("a", 5), ("c once more", 5), ("Sight-reading", 10),
        ]  # fmt: skip
        assert plan.lines[0].done_at == clock.now
        again.planning.drop()
        assert again.planning.today() is None
        with pytest.raises(PlainFailure, match="no plan"):
            again.planning.tick(a)


def test_a_new_day_has_no_plan_yet(bench, clock):
    bench.planning.make(30)
    clock.now += timedelta(days=1)
    assert bench.planning.today() is None
