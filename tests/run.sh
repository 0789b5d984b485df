#!/bin/sh
# Sets up what is missing on a fresh Debian machine, then runs every check.
# Arguments go to pytest: sh tests/run.sh tests/journal
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/app/setup_environment.sh"

check_python
# shellcheck disable=SC2086 # one word for each package
install_system_packages $run_packages $test_packages
make_environment "$root" tests.lock

cd "$root"
failed=
# check NAME COMMAND...: runs one check and remembers whether it failed.
check() {
  name=$1
  shift
  echo
  echo "== $name"
  "$@" || failed="$failed $name"
}
# types_told: waits for what was started below, beside the quicker checks.
types_told() {
  told=0
  wait "$types" || told=$?
  cat "$types_log"
  rm -f "$types_log"
  return "$told"
}
# compile_first: fills numba's cache once. Otherwise the shares compile the same at the same
# time, and twice as slowly under coverage.
compile_first() {
  takes=sample_audio/takes
  .venv/bin/python -m app compare "$takes/viola-study-first-day.flac" \
    "$takes/viola-study-last-day.flac" >/dev/null
}
# run_tests [ARGUMENT...]: all tests in three shares at once, or what the arguments choose.
# Two shares calculate, one on each of two cores. The third waits for sound in real time and
# needs a core seldom, but then at once: the others give way to it.
run_tests() {
  rm -f .coverage .coverage.*
  if [ $# -gt 0 ]; then
    .venv/bin/coverage run -m pytest "$@"
    return
  fi
  sounding=tests/audio
  calculating="tests/analysis tests/sample_audio tests/services tests/journal"
  others=
  for folder in $sounding $calculating; do
    others="$others --ignore=$folder"
  done
  logs=$(mktemp -d)
  .venv/bin/coverage run --parallel-mode -m pytest -p no:cacheprovider $sounding \
    >"$logs/sounding" 2>&1 &
  first=$!
  # shellcheck disable=SC2086 # one word for each folder
  nice -n 10 .venv/bin/coverage run --parallel-mode -m pytest -p no:cacheprovider $calculating \
    >"$logs/calculating" 2>&1 &
  second=$!
  trap 'kill "$first" "$second" 2>/dev/null; exit 130' INT TERM
  all=0
  # shellcheck disable=SC2086 # as above
  nice -n 10 .venv/bin/coverage run --parallel-mode -m pytest $others || all=$?
  wait "$first" || all=$?
  wait "$second" || all=$?
  trap - INT TERM
  cat "$logs/sounding" "$logs/calculating"
  rm -rf "$logs"
  .venv/bin/coverage combine --quiet || all=$?
  return "$all"
}

types_log=$(mktemp)
.venv/bin/mypy >"$types_log" 2>&1 &
types=$!
trap 'kill "$types" 2>/dev/null; exit 130' INT TERM
check lint .venv/bin/ruff check .
check format .venv/bin/ruff format --check .
check imports .venv/bin/lint-imports
[ $# -gt 0 ] || check compiling compile_first
check types types_told
trap - INT TERM
check tests run_tests "$@"
check coverage .venv/bin/coverage report --skip-covered --skip-empty
echo
if [ -n "$failed" ]; then
  echo "Failed:$failed" >&2
  exit 1
fi
echo "All checks passed."
