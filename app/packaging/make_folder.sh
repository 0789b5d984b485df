#!/bin/sh
# Makes a folder with Passagework that starts on a Linux machine without Python:
#
#     sh app/packaging/make_folder.sh WHERE        # WHERE/passagework, and WHERE/passagework.tar.xz
#
# It starts on systems whose C library is at least as new as the one here. The machine
# it is made on needs what app/run.sh needs (PortAudio and Qt's libraries come from there).
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
root=$(CDPATH='' cd -- "$here/../.." && pwd)
[ $# -eq 1 ] || { echo "Say where to: sh app/packaging/make_folder.sh WHERE" >&2; exit 2; }
mkdir -p -- "$1"
where=$(CDPATH='' cd -- "$1" && pwd)

# An environment of its own: what the tests need has no place in the folder.
environment=$where/environment
[ -x "$environment/bin/python" ] || python3 -m venv "$environment"
PIP_DISABLE_PIP_VERSION_CHECK=1 "$environment/bin/python" -m pip install --quiet --require-hashes \
  -r "$root/requirements.lock" -r "$here/folder.lock"

QT_QPA_PLATFORM=offscreen "$environment/bin/python" "$here/draw_icons.py" "$where/icons" >"$where/icons.txt"
(
  cd "$root"
  PASSAGEWORK_ICONS=$where/icons "$environment/bin/python" -m PyInstaller --noconfirm \
    --log-level WARN --distpath "$where" --workpath "$where/work" "$here/passagework.spec"
)
# What puts it into a desktop's menu travels with it.
mkdir -p "$where/passagework/desktop"
cp "$here/add_to_desktop.sh" "$here/passagework.desktop" "$here/passagework-mime.xml" \
  "$root/app/ui/passagework.svg" "$where"/icons/passagework-*.png "$where/passagework/desktop/"
"$where/passagework/passagework" --help >"$where/help.txt"
tar -C "$where" -cJf "$where/passagework.tar.xz" passagework
du -sh "$where/passagework" "$where/passagework.tar.xz"
