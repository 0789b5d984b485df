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
# run_tests [ARGUMENT...]: all tests in two halves at once, or what the arguments choose.
# The first half calculates, the second mostly waits: for sound in real time, and for windows.
run_tests() {
  rm -f .coverage .coverage.*
  if [ $# -gt 0 ]; then
    .venv/bin/coverage run -m pytest "$@"
    return
  fi
  calculating="tests/analysis tests/sample_audio tests/services tests/store tests/journal"
  others=
  for folder in $calculating; do
    others="$others --ignore=$folder"
  done
  log=$(mktemp)
  # shellcheck disable=SC2086 # one word for each folder
  .venv/bin/coverage run --parallel-mode -m pytest -p no:cacheprovider $calculating \
    >"$log" 2>&1 &
  first=$!
  trap 'kill "$first" 2>/dev/null; exit 130' INT TERM
  both=0
  # shellcheck disable=SC2086 # as above
  .venv/bin/coverage run --parallel-mode -m pytest $others || both=$?
  wait "$first" || both=$?
  trap - INT TERM
  cat "$log"
  rm -f "$log"
  .venv/bin/coverage combine --quiet
  return "$both"
}

check lint .venv/bin/ruff check .
check format .venv/bin/ruff format --check .
check types .venv/bin/mypy
check imports .venv/bin/lint-imports
check tests run_tests "$@"
check coverage .venv/bin/coverage report --skip-covered --skip-empty
echo
if [ -n "$failed" ]; then
  echo "Failed:$failed" >&2
  exit 1
fi
echo "All checks passed."
