"""How many small faults in the rules of the count and of change do the tests find?

    nice python -m tests.benchmarks.mutants [--sample 300] [--seed 1] [--only sides]

Makes mutants of the modules below, one fault each, draws a sample of them and runs the
module's tests on each, in a copy of the program. What is printed last: the share that was
found, and every fault that was not, as a difference of one line.

Needs ``cosmic-ray`` (``pip install cosmic-ray``), which the tests themselves do not; of its
operators those stay out that put a random value or variable in, and the changes of ``|``,
which stands in annotations here. Where one place can be changed in several ways by one
kind of operator ('+' into any other), one of them is drawn. A test that runs five times as
long as all of them did counts as a fault found. Forks: Linux and macOS.
"""

import argparse
import difflib
import importlib
import os
import random
import shutil
import signal
import sys
import tempfile
import time
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).parents[2]
COUNT_TESTS = tuple(
    f"tests/journal/test_{name}.py"
    for name in ("promises", "practice_days", "counting", "session_minutes", "promise_oracle")
)
RECORDS = ("tests/house/test_frozen_records.py",)
CHANGE_TESTS = tuple(
    f"tests/analysis/test_{name}.py"
    for name in (
        "robust_line",
        "trend_statistics",
        "change",
        "week_medians",
        "change_statistics",
        "trend_and_sides",
        "verdicts",
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
# hypothesis is loaded before pytest can rewrite its assertions, which it warns of
HOW = ("-x", "-q", "-p", "no:cacheprovider", "-W", "ignore::pytest.PytestAssertRewriteWarning")
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


def mutated(mutant: Mutant) -> str:
    """Give the module's text with the fault in it."""
    from cosmic_ray.mutating import mutate_code
    from cosmic_ray.plugins import get_operator

    text = (ROOT / mutant.module).read_text(encoding="utf-8")
    return mutate_code(text, get_operator(mutant.operator)(), mutant.occurrence)


def tests_pass(copy: Path, tests: tuple[str, ...], patience_s: float) -> bool:
    """Run tests in a process that has the libraries already; False where one fails."""
    child = os.fork()
    if not child:
        silence = os.open(os.devnull, os.O_WRONLY)
        os.dup2(silence, 1)
        os.dup2(silence, 2)
        os.chdir(copy)
        sys.path[:] = [str(copy), *(path for path in sys.path if path not in ("", str(ROOT)))]
        import pytest

        os._exit(int(pytest.main([*HOW, *tests])))
    ended_by = time.monotonic() + patience_s
    while time.monotonic() < ended_by:
        ended, status = os.waitpid(child, os.WNOHANG)
        if ended:
            return status == 0
        time.sleep(0.05)
    os.kill(child, signal.SIGKILL)
    os.waitpid(child, 0)
    return False


def difference(mutant: Mutant, text: str) -> str:
    """Show the fault."""
    lines = (ROOT / mutant.module).read_text(encoding="utf-8").splitlines()
    changed = difflib.unified_diff(lines, text.splitlines(), n=0, lineterm="")
    return "\n".join(line for line in changed if not line.startswith(("---", "+++")))


def main() -> None:
    """Draw, run, print."""
    asked = argparse.ArgumentParser(description=__doc__.split("\n", 1)[0])
    asked.add_argument("--sample", type=int, default=300)
    asked.add_argument("--seed", type=int, default=1)
    asked.add_argument("--only", default="", help="modules with this in their name")
    chosen = asked.parse_args()
    rng = random.Random(chosen.seed)
    places = [way for module in MODULES if chosen.only in module for way in mutants_of(module)]
    drawn = [rng.choice(ways) for ways in rng.sample(places, min(chosen.sample, len(places)))]
    drawn.sort(key=lambda mutant: mutant.module)
    for name in LOADED_ONCE:
        importlib.import_module(name)
    os.environ["PYTHONDONTWRITEBYTECODE"] = "1"
    sys.dont_write_bytecode = True
    with tempfile.TemporaryDirectory() as folder:
        copy = Path(folder)
        for name in ("app", "audio", "analysis", "sample_audio", "tests"):
            shutil.copytree(ROOT / name, copy / name, ignore=shutil.ignore_patterns("__pycache__"))
        shutil.copy(ROOT / "pyproject.toml", copy)
        patience_s = {}
        for tests in {tests for module, tests in MODULES.items() if chosen.only in module}:
            begun = time.monotonic()
            if not tests_pass(copy, tests, 3600.0):
                sys.exit("the tests fail without any fault")
            patience_s[tests] = 5.0 * (time.monotonic() - begun)
        survivors = []
        for number, mutant in enumerate(drawn, 1):
            tests, text = MODULES[mutant.module], mutated(mutant)
            (copy / mutant.module).write_text(text, encoding="utf-8")
            if tests_pass(copy, tests, patience_s[tests]):
                survivors.append(mutant)
                print(f"not found: {mutant.module} {mutant.operator} {mutant.occurrence}")
                print(difference(mutant, text), flush=True)
            shutil.copy(ROOT / mutant.module, copy / mutant.module)
            if number % 25 == 0:
                print(f"{number} of {len(drawn)}, {len(survivors)} not found", flush=True)
    found = len(drawn) - len(survivors)
    print(f"{found} of {len(drawn)} found, {100 * found / len(drawn):.1f} %")
    for module in MODULES:
        of_it = [mutant for mutant in drawn if mutant.module == module]
        if of_it:
            left = sum(mutant in survivors for mutant in of_it)
            print(f"  {module}: {len(of_it) - left} of {len(of_it)}")


if __name__ == "__main__":
    main()
