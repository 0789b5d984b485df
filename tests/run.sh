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
check lint .venv/bin/ruff check .
check format .venv/bin/ruff format --check .
check types .venv/bin/mypy
check imports .venv/bin/lint-imports
check tests .venv/bin/coverage run -m pytest "$@"
check coverage .venv/bin/coverage report --skip-covered --skip-empty
echo
if [ -n "$failed" ]; then
  echo "Failed:$failed" >&2
  exit 1
fi
echo "All checks passed."
