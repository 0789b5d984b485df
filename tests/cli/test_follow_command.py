"""Following a passage from the terminal."""

import json
from importlib.resources import files

import pytest
from jsonschema import Draft202012Validator


def check(name, found):
    text = files("app.schemas").joinpath("follow.schema.json").read_text(encoding="utf-8")
    schema = json.loads(text)
    Draft202012Validator({"$ref": f"#/$defs/{name}", "$defs": schema["$defs"]}).validate(found)


@pytest.fixture
def two(run, wav_a, wav_b):
    """A journal with two takes of one passage, ten weeks apart."""
    for wav, day in ((wav_a, "2026-03-14"), (wav_b, "2026-05-02")):
        ran = run("import", wav, "--passage", "Opening", "--date", day)
        assert ran.code == 0, ran.err
    return "Opening:2026-03-14:1", "Opening:2026-05-02:1"


def test_two_takes_are_aligned_and_their_shape_compared(run, two):
    aligned = run("follow", "align", *two, "--json")
    assert aligned.code == 0, aligned.err
    check("alignment", aligned.json)
    assert aligned.json["aligned"] is True
    assert "Aligned" in run("follow", "align", *two).out
    shape = run("follow", "shape", *two, "--json")
    check("shape", shape.json)
    assert run("follow", "shape", *two).code == 0


def test_a_marker_is_carried_asked_about_and_has_a_life(run, two):
    marked = run("mark", two[0], "--at", "1.5", "--category", "sound", "--text", "thin?")
    assert marked.code == 0, marked.err
    carried = run("follow", "carried", two[1], "--json")
    check("carried", carried.json)
    (marker,) = carried.json["markers"]
    assert marker["text"] == "thin?"
    assert marker["answer"] is None
    assert run("follow", "still-there", marker["marker"][:8], two[1], "no").code == 0
    assert run("follow", "carried", two[1], "--json").json["markers"][0]["answer"] is False
    assert "not heard" in run("follow", "carried", two[1]).out
    lives = run("follow", "lives", "Opening", "--json")
    check("lives", lives.json)
    assert lives.json["problems"][0]["first_heard"] == "2026-03-14"
    assert "sound: thin? First heard Sat 14 Mar 2026" in run("follow", "lives", "Opening").out
    odd = run("follow", "still-there", marker["marker"], two[1], "perhaps")
    assert odd.code == 2
    assert "no answer" in odd.err


def test_bounds_ladder_and_changes_are_told(run, two):
    assert run("measure", two[0]).code == 0
    kept = run("follow", "bounds", "Opening", "--cents", "12", "--target", "104", "--json")
    check("bounds", kept.json)
    assert kept.json["target_bpm"] == 104.0
    ladder = run("follow", "ladder", "Opening", "--json")
    check("ladder", ladder.json)
    assert ladder.json["bounds"]["mean_absolute_cents"] == 12.0
    change = run("follow", "change", "Opening", "--json")
    check("change", change.json)
    assert "Too few takes" in change.json["sentence"]
    assert run("follow", "bounds", "Opening", "--cents", "0").code == 2


def test_a_file_is_proposed_and_runs_are_counted(run, two, wav_a):
    proposal = run("follow", "propose", wav_a, "--json")
    check("proposal", proposal.json)
    assert proposal.json["ranked"][0]["title"] == "Opening"
    runs = run("follow", "repetitions", two[0], "--json")
    assert runs.code == 0, runs.err
    check("repetitions", runs.json)
    assert runs.json["complete"] == 1


def test_a_blind_question_is_asked_answered_once_and_counted(run, two):
    asked = run("follow", "blind", "Opening", "--seed", "7", "--json")
    check("trial", asked.json)
    answer = ("follow", "blind", "--trial", asked.json["trial"], "--answer", "first")
    assert run(*answer).code == 0
    assert run(*answer).code == 2
    results = run("follow", "blind", "--json")
    check("ear", results.json)
    assert results.json["questions"][0]["answered"] == 1
    assert run("follow", "blind", "--answer", "first").code == 2


def test_a_passage_is_shown_and_changed_and_its_new_takes_are_measured_so(run, wav_a, wav_b):
    assert run("import", wav_a, "--passage", "Opening", "--date", "2026-03-14").code == 0
    shown = run("follow", "passage", "Opening")
    assert "violin; equal; A = 440 Hz; no stated tempo" in shown.out
    changed = run(
        "follow", "passage", "opening", "--piece", "Study", "--bars", "1-8",
        "--instrument", "viola", "--temperament", "just", "--tonic", "D", "--tempo", "96", "--json",
    )  # fmt: skip
    assert changed.code == 0, changed.err
    check("passage", changed.json)
    assert (changed.json["instrument"], changed.json["tonic"]) == ("viola", "D")
    assert (
        "Study: Opening, 1-8; viola; just D; A = 440 Hz; 96 BPM"
        in run("follow", "passage", "Study: Opening").out
    )
    ran = run("import", wav_b, "--passage", "Opening", "--date", "2026-05-02", "--json")
    assert ran.code == 0, ran.err
    take = ran.json["filed"][0]["id"]
    assert run("measure", take).code == 0
    assert run("measure", take, "--json").json["parameters"]["instrument"] == "viola"
    assert "no stated tempo" in run("follow", "passage", "Opening", "--tempo", "0").out


@pytest.mark.parametrize(
    ("options", "said"),
    [
        (("--instrument", "kazoo"), "kazoo"),
        (("--temperament", "just"), "tonic"),
        (("--tempo", "-4"), "BPM"),
    ],
)
def test_settings_that_make_no_sense_are_not_kept(run, two, options, said):
    before = run("follow", "passage", "Opening").out
    odd = run("follow", "passage", "Opening", *options)
    assert odd.code == 2
    assert said in odd.err
    assert run("follow", "passage", "Opening").out == before


def test_two_takes_are_too_few_for_a_word_and_many_days_are_not(run, two):
    few = run("compare", *two)
    assert few.code == 0, few.err
    assert "too few takes" in few.out
    words = {one["word"] for one in run("compare", *two, "--json").json["changes"].values()}
    assert words <= {"too few takes", None}
