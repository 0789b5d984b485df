#!/bin/sh
# Sets up what is missing on a fresh Debian machine, then runs the demo.
# Arguments are passed through: sh app/run.sh --help
set -eu
root=$(CDPATH='' cd -- "$(dirname -- "$0")/.." && pwd)
. "$root/app/setup_environment.sh"

check_python
# shellcheck disable=SC2086 # one word for each package
install_system_packages $run_packages
make_environment "$root" requirements.lock
exec "$root/.venv/bin/passagework" demo "$@"
