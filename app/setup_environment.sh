# Sourced by app/run.sh and tests/run.sh: system packages and the virtual environment.
#
# POSIX sh, made for Debian and its relatives. Everything Python needs comes from
# the lock files, with hashes. A second call finds the stamp of the same locks and
# does nothing, so it needs no network.
#
# PASSAGEWORK_SKIP_SYSTEM_PACKAGES=1   the libraries are there under other names

# What a window (Qt's xcb, wayland and offscreen plug-ins) and sound (PortAudio) need.
run_packages="libportaudio2 libasound2-plugins
  libegl1 libgl1 libopengl0 libdbus-1-3 libfontconfig1 libglib2.0-0 fonts-dejavu-core
  libxkbcommon0 libxkbcommon-x11-0 libx11-xcb1 libxcb-cursor0 libxcb-icccm4 libxcb-image0
  libxcb-keysyms1 libxcb-randr0 libxcb-render-util0 libxcb-shape0 libxcb-sync1 libxcb-xfixes0
  libxcb-xinerama0 libxcb-xkb1 libwayland-client0 libwayland-cursor0 libwayland-egl1"

# The virtual sound device, the virtual screen, and a voice that talks between the playing.
test_packages="pulseaudio pulseaudio-utils xvfb xauth xdotool espeak-ng"

# stop SENTENCE...: an expected failure, said plainly.
stop() {
  echo "$*" >&2
  exit 2
}

# as_root COMMAND...
as_root() {
  if [ "$(id -u)" -eq 0 ]; then
    "$@"
  elif command -v sudo >/dev/null 2>&1; then
    sudo "$@"
  else
    stop "Installing these needs root: run 'apt-get install$missing' as root, then start again."
  fi
}

# install_system_packages NAME...: says which are missing, and installs those.
install_system_packages() {
  [ -z "${PASSAGEWORK_SKIP_SYSTEM_PACKAGES:-}" ] || return 0
  if ! command -v apt-get >/dev/null 2>&1 || ! command -v dpkg-query >/dev/null 2>&1; then
    stop "This script sets up Debian and its relatives, and there is no apt-get here:" \
      "use 'pip install .' and 'passagework' instead, as the README says."
  fi
  missing=
  for package in "$@"; do
    case $(dpkg-query -W -f '${Status}' "$package" 2>/dev/null) in
      *" installed") ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0
  echo "System packages to be installed with apt-get:$missing"
  as_root true ||
    stop "You may not use sudo here: have someone run 'apt-get install$missing' as root," \
      "then start again."
  as_root apt-get update -q </dev/null ||
    stop "apt-get could not reach its package lists: check the network, then start again."
  # shellcheck disable=SC2086 # one word for each package
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends \
    $missing </dev/null ||
    stop "apt-get could not install them: see its message above, then start again."
}

# check_python: python3 is new enough and can make virtual environments.
check_python() {
  command -v python3 >/dev/null 2>&1 ||
    stop "There is no python3 here: install python3 (3.11 or newer) and python3-venv first."
  python3 -c 'import sys; sys.exit(sys.version_info < (3, 11))' ||
    stop "Passagework needs Python 3.11 or newer, and this is $(python3 -V 2>&1)."
  python3 -c 'import ensurepip, venv' 2>/dev/null ||
    stop "Python cannot make virtual environments here: install python3-venv first."
}

# make_environment ROOT LOCK: ROOT/.venv holds what LOCK names, and Passagework itself.
make_environment() {
  python=$1/.venv/bin/python
  stamp=$1/.venv/made-from-$2
  wanted=$(cat "$1/$2" "$1/build.lock" "$1/pyproject.toml" | sha256sum)
  if [ -x "$python" ] && [ -f "$stamp" ] && [ "$(cat "$stamp")" = "$wanted" ]; then
    return 0
  fi
  check_python
  if ! "$python" -m pip --version >/dev/null 2>&1; then
    echo "Making a virtual environment in $1/.venv"
    python3 -m venv --clear "$1/.venv" ||
      stop "The virtual environment could not be made: see Python's message above."
  fi
  echo "Installing what $2 names: up to several hundred megabytes to fetch, some quiet minutes"
  PIP_DISABLE_PIP_VERSION_CHECK=1 "$python" -m pip install --quiet --require-hashes \
    -r "$1/$2" -r "$1/build.lock" ||
    stop "pip could not install them: check the network and the free space, then start again."
  PIP_DISABLE_PIP_VERSION_CHECK=1 "$python" -m pip install --quiet --no-deps \
    --no-build-isolation --editable "$1" ||
    stop "Passagework itself could not be installed: see pip's message above."
  echo "$wanted" >"$stamp"
}
