"""How many small faults in the rules of the count and of change do the tests find?

    nice python -m tests.benchmarks.mutants [--sample 300] [--seed 1] [--only sides] [--kept FILE]

Makes mutants of the modules below, one fault each, draws a sample of them and runs the
module's tests on each, in a copy of the program. What is printed last: the share that was
found, and every fault that was not, as a difference of one line.

``--only`` runs those of the sample whose module has the word in its name. ``--kept`` writes
each answer to a file and runs what is answered there no more, so that a sample can be run in
parts and stated as a whole; what was not found is always tried again, and an answer about a
module that has changed since counts for nothing.

Needs ``cosmic-ray`` (``pip install cosmic-ray``), which the tests themselves do not; of its
operators those stay out that put a random value or variable in, and the changes of ``|``,
which stands in annotations here. Where one place can be changed in several ways by one
kind of operator ('+' into any other), one of them is drawn. Tests that take twice the
processor time that they take without a fault count as a fault found. Forks: Linux and macOS.
"""

import argparse
import difflib
import hashlib
import importlib
import json
import math
import os
import random
import resource
import shutil
import signal
import sys
import tempfile
from collections import Counter
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
# What takes longest comes last: the first test that fails ends the run on a fault.
COUNT_TESTS = tuple(
    f"tests/journal/test_{name}.py"
    for name in (
        *("promises", "promise_rules", "practice_days"),
        *("counting", "session_minutes", "promise_oracle"),
    )
)
RECORDS = ("tests/house/test_frozen_records.py",)
CHANGE_TESTS = tuple(
    f"tests/analysis/test_{name}.py"
    for name in (
        *("robust_line", "change", "week_medians", "trend_and_sides"),
        *("verdicts", "trend_statistics", "change_statistics"),
    )
)
MODULES = {
    **dict.fromkeys(
        (
            *("app/journal/promises.py", "app/journal/promise_standing.py"),
            *("app/journal/practice_days.py", "app/journal/counting.py"),
            "app/journal/session_minutes.py",
        ),
        RECORDS + COUNT_TESTS,
    ),
    **dict.fromkeys(
        (
            *("analysis/change.py", "analysis/sides.py", "analysis/verdicts.py"),
            *("analysis/trend.py", "analysis/robust_line.py", "analysis/week_medians.py"),
        ),
        RECORDS + CHANGE_TESTS,
    ),
}
LEFT_OUT = ("Variable", "_BitOr_", "ExceptionReplacer")
ONE_IS_ENOUGH = "one is enough"
# hypothesis is loaded before pytest can rewrite its assertions, which it warns of
HOW = (
    *("-x", "-q", "-p", "no:cacheprovider", "-W", "ignore::pytest.PytestAssertRewriteWarning"),
    f"--hypothesis-profile={ONE_IS_ENOUGH}",
)
LOADED_ONCE = (
    *("numpy", "scipy.special", "scipy.stats", "scipy.signal", "scipy.ndimage", "numba"),
    *("pytest", "hypothesis.strategies", "PySide6.QtWidgets", "PySide6.QtTest"),
)
"""What every mutant's tests load, and no mutant changes."""


@dataclass(frozen=True, slots=True)
class Mutant:
    """One fault: an operator, applied where it can be for the n-th time."""

    module: str
    operator: str
    occurrence: int


def mutants_of(module: str) -> list[list[Mutant]]:
    """List the places of a module that can be changed, with the ways of each."""
    from cosmic_ray.ast import ast_nodes, get_ast
    from cosmic_ray.plugins import get_operator, operator_names

    nodes = list(ast_nodes(get_ast((ROOT / module).read_text(encoding="utf-8"))))
    places: dict[tuple[object, str], list[Mutant]] = {}
    for name in operator_names():
        if any(part in name for part in LEFT_OUT):
            continue
        operator, occurrence = get_operator(name)(), 0
        for node in nodes:
            for position in operator.mutation_positions(node):
                where = (position, name.partition("_")[0])
                places.setdefault(where, []).append(Mutant(module, name, occurrence))
                occurrence += 1
    return list(places.values())


def mutated(mutant: Mutant, text: str) -> str:
    """Give the module's text with the fault in it."""
    from cosmic_ray.mutating import mutate_code
    from cosmic_ray.plugins import get_operator

    return mutate_code(text, get_operator(mutant.operator)(), mutant.occurrence)


def run_tests(copy: Path, tests: tuple[str, ...], patience_s: float | None) -> tuple[str, float]:
    """Run tests in a process that has the libraries already.

    Gives 'passed', 'failed' or 'out of time', and the processor time in seconds.
    """
    child = os.fork()
    if not child:
        if patience_s is not None:
            resource.setrlimit(resource.RLIMIT_CPU, (math.ceil(patience_s),) * 2)
        silence = os.open(os.devnull, os.O_WRONLY)
        os.dup2(silence, 1)
        os.dup2(silence, 2)
        os.chdir(copy)
        sys.path[:] = [str(copy), *(path for path in sys.path if path not in ("", str(ROOT)))]
        import pytest

        os._exit(int(pytest.main([*HOW, *tests])))
    _, status, used = os.wait4(child, 0)
    if os.WIFSIGNALED(status) and os.WTERMSIG(status) in (signal.SIGXCPU, signal.SIGKILL):
        how = "out of time"
    else:
        how = "failed" if status else "passed"
    return how, used.ru_utime + used.ru_stime


def difference(before: str, after: str) -> str:
    """Show the fault."""
    changed = difflib.unified_diff(before.splitlines(), after.splitlines(), n=0, lineterm="")
    return "\n".join(line for line in changed if not line.startswith(("---", "+++")))


class Answers:
    """What became of each fault, kept in a file where one is given."""

    def __init__(self, kept: Path | None, texts: dict[str, str]) -> None:
        self._kept = kept
        self._digests = {
            module: hashlib.sha256(text.encode()).hexdigest()[:16] for module, text in texts.items()
        }
        self._all: dict[str, str] = {}
        if kept is not None and kept.exists():
            self._all = json.loads(kept.read_text(encoding="utf-8"))

    def _name(self, mutant: Mutant) -> str:
        digest = self._digests[mutant.module]
        return f"{mutant.module} {digest} {mutant.operator} {mutant.occurrence}"

    def of(self, mutant: Mutant) -> str | None:
        """Give 'passed', 'failed' or 'out of time'; None where nothing is known."""
        return self._all.get(self._name(mutant))

    def keep(self, mutant: Mutant, how: str) -> None:
        """Note an answer."""
        self._all[self._name(mutant)] = how
        if self._kept is not None:
            self._kept.write_text(json.dumps(self._all, indent=1), encoding="utf-8")


def drawn_from_all(sample: int, seed: int) -> list[Mutant]:
    """Draw places of all modules, and one way to change each."""
    rng = random.Random(seed)
    places = [way for module in MODULES for way in mutants_of(module)]
    drawn = [rng.choice(ways) for ways in rng.sample(places, min(sample, len(places)))]
    return sorted(drawn, key=lambda mutant: mutant.module)


def run(chosen: list[Mutant], texts: dict[str, str], answers: Answers, copy: Path) -> None:
    """Run the tests on each fault that is not known to be found."""
    for name in ("app", "audio", "analysis", "sample_audio", "tests"):
        shutil.copytree(ROOT / name, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
    shutil.copy(ROOT / "pyproject.toml", copy)
    patience_s = {}
    for tests in sorted({MODULES[mutant.module] for mutant in chosen}):
        how, used_s = run_tests(copy, tests, None)
        if how != "passed":
            sys.exit("the tests fail without any fault")
        patience_s[tests] = 2.0 * used_s
        print(f"{used_s:.1f} s without a fault: {', '.join(tests)}", flush=True)
    for number, mutant in enumerate(chosen, 1):
        tests, text = MODULES[mutant.module], mutated(mutant, texts[mutant.module])
        (copy / mutant.module).write_text(text, encoding="utf-8")
        how, _ = run_tests(copy, tests, patience_s[tests])
        (copy / mutant.module).write_text(texts[mutant.module], encoding="utf-8")
        answers.keep(mutant, how)
        if how == "passed":
            print(f"not found: {mutant.module} {mutant.operator} {mutant.occurrence}")
            print(difference(texts[mutant.module], text), flush=True)
        if number % 25 == 0:
            print(f"{number} of {len(chosen)}", flush=True)


def _look_for_no_shorter_example() -> None:
    import hypothesis

    sought = (hypothesis.Phase.explicit, hypothesis.Phase.reuse, hypothesis.Phase.generate)
    hypothesis.settings.register_profile(ONE_IS_ENOUGH, deadline=None, phases=sought)


def main() -> None:
    """Draw, run, print."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    asked.add_argument("--sample", type=int, default=300)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--only", default="", help="of the sample, modules with this in their name")
    asked.add_argument("--kept", type=Path, help="file of the answers, to go on from")
    options = asked.parse_args()
    drawn = drawn_from_all(options.sample, options.seed)
    texts = {module: (ROOT / module).read_text(encoding="utf-8") for module in MODULES}
    answers = Answers(options.kept, texts)
    chosen = [
        mutant
        for mutant in drawn
        if options.only in mutant.module and answers.of(mutant) in (None, "passed")
    ]
    for name in LOADED_ONCE if chosen else ():
        importlib.import_module(name)
    _look_for_no_shorter_example()
    os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    sys.dont_write_bytecode = True
    with tempfile.TemporaryDirectory() as folder:
        run(chosen, texts, answers, Path(folder))
    ways = Counter((mutant.module, answers.of(mutant)) for mutant in drawn)
    for module in MODULES:
        counts = {how: ways[module, how] for how in ("failed", "out of time", "passed", None)}
        found = counts["failed"] + counts["out of time"]
        print(
            f"  {module}: {found} of {sum(counts.values())} found"
            f" ({counts['out of time']} by their time), {counts[None]} not run"
        )
    known = [mutant for mutant in drawn if answers.of(mutant) is not None]
    found = sum(answers.of(mutant) != "passed" for mutant in known)
    share = 100 * found / max(len(known), 1)
    print(f"{found} of {len(known)} found, {share:.1f} %; the sample has {len(drawn)}")


if __name__ == "__main__":
    main()
