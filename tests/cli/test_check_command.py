"""``passagework check`` on a short table, so that the command is tested and not the minute."""

import json
from importlib.resources import files

import pytest
from jsonschema import Draft202012Validator

import app.services.accuracy
from app.cli.check import bound_text, table_text, value_text
from app.services.accuracy import CheckReport, Row, loudness, running

ROWS = (
    Row("Pitch", "cents", "generated phrase", 0.077, at_most=0.12, count=100, digits=3),
    Row("Interval", "%", "generated phrase", 99.1, at_least=92.0, at_most=98.0, count=336),
    Row("Notes found", "", "generated phrase", 0.994, at_least=0.98, count=233, digits=3),
    Row("Share measured", "%", "generated phrase", 87.0, count=233, digits=1),
    Row("Meter", "LUFS", "EBU test signal", -22.99, -23.1, -22.9),
    Row("Silent", "LUFS", "EBU test signal", None, -23.1, -22.9, 0, 2, "No reading."),
)
REPORT = CheckReport("take-1", (("Measures", ROWS),), 12.3)


@pytest.fixture
def short_check(monkeypatch):
    chosen = running.Section(
        "Dynamics", (("3341 #9", 0),), loudness.measure_case, loudness.section().rows
    )

    def run(progress, should_stop):
        return running.run_check(progress, should_stop, chosen=(chosen,), workers=0)

    monkeypatch.setattr(app.services.accuracy, "run_check", run)


def test_the_table_says_measure_truth_bound_value_and_verdict():
    lines = {line.strip().split(" (")[0]: line for line in table_text(REPORT).splitlines()}
    assert "generated phrase" in lines["Pitch"]
    assert "≤ 0.12" in lines["Pitch"]
    assert "0.077 cents" in lines["Pitch"]
    assert lines["Pitch"].endswith("held")
    assert lines["Interval"].endswith("missed")
    assert lines["Share measured"].endswith("87.0 %")
    assert lines["Silent"].endswith("missed")
    assert table_text(REPORT).endswith("3 held, 2 missed, in 12 s.")


def test_bounds_and_values_in_words():
    assert [bound_text(row) for row in ROWS] == [
        "≤ 0.12", "92 to 98", "≥ 0.98", "", "−23.1 to −22.9", "−23.1 to −22.9",
    ]  # fmt: skip
    assert value_text(ROWS[4]) == "−22.99 LUFS"
    assert value_text(ROWS[2]) == "0.994"
    assert value_text(ROWS[5]) == "No reading."


def test_a_miss_is_a_result_and_no_failure(run, short_check):
    ran = run("check")
    assert ran.code == 0
    assert "Tech 3341 #9 S" in ran.out
    assert "missed" in ran.out  # the cases that the short table leaves out


def test_json_fits_the_schema(run, short_check):
    ran = run("check", "--json")
    assert ran.code == 0
    schema = files("app.schemas").joinpath("check.schema.json").read_text(encoding="utf-8")
    Draft202012Validator(json.loads(schema)).validate(ran.json)


def test_help_says_that_misses_are_results(run):
    ran = run("check", "--help")
    assert "exit code is 0" in " ".join(ran.out.split())
