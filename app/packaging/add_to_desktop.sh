#!/bin/sh
# Puts Passagework into the desktop's menu and lets it open bundles, for this user alone.
#
#     sh add_to_desktop.sh            # the program beside this script, or the one on the PATH
#     sh add_to_desktop.sh PROGRAM
#     sh add_to_desktop.sh --remove
#
# It writes below ~/.local/share (or XDG_DATA_HOME) and nowhere else, and needs no root.
set -eu
here=$(CDPATH='' cd -- "$(dirname -- "$0")" && pwd)
data=${XDG_DATA_HOME:-$HOME/.local/share}
entry=$data/applications/passagework.desktop
kinds=$data/mime/packages/passagework-mime.xml
icons=$data/icons/hicolor

# refresh: the desktop's own lists, where its tools are there.
refresh() {
  ! command -v update-mime-database >/dev/null 2>&1 || update-mime-database "$data/mime"
  ! command -v update-desktop-database >/dev/null 2>&1 ||
    update-desktop-database -q "$data/applications"
  ! command -v gtk-update-icon-cache >/dev/null 2>&1 ||
    gtk-update-icon-cache -q -t "$icons" 2>/dev/null || true
}

if [ "${1:-}" = --remove ]; then
  rm -f "$entry" "$kinds"
  find "$icons" \( -name 'passagework.*' -o -name 'application-x-passagework-*' \) \
    -exec rm -f {} + 2>/dev/null || true
  [ ! -d "$data/mime" ] || refresh
  echo "Passagework is no longer in the menu; your journal was not touched."
  exit 0
fi

program=${1:-}
if [ -z "$program" ] && [ -x "$here/../passagework" ]; then
  program=$here/../passagework
fi
[ -n "$program" ] || program=$(command -v passagework) || program=
if [ ! -x "$program" ] || [ -d "$program" ]; then
  echo "There is no program ${program:-called passagework here}:" \
    "say where it is, 'sh add_to_desktop.sh PROGRAM'." >&2
  exit 2
fi
program=$(CDPATH='' cd -- "$(dirname -- "$program")" && pwd)/$(basename -- "$program")
drawing=$here/passagework.svg
[ -f "$drawing" ] || drawing=$here/../ui/passagework.svg

mkdir -p "$data/applications" "$data/mime/packages"
# Within an Exec line's quotes, these four signs and percent need marking (Desktop Entry
# Specification, "The Exec key"); the backslash once more, for the line is a string.
quoted=$(printf '%s' "$program" | sed -e 's/[\\"`$]/\\\\&/g' -e 's/%/%%/g')
plain=$(printf '%s' "$program" | sed -e 's/\\/\\\\/g')
while IFS= read -r line; do
  case $line in
    Exec=*) printf 'Exec="%s" open %%f\n' "$quoted" ;;
    TryExec=*) printf 'TryExec=%s\n' "$plain" ;;
    *) printf '%s\n' "$line" ;;
  esac
done <"$here/passagework.desktop" >"$entry"
cp "$here/passagework-mime.xml" "$kinds"

# picture FILE FOLDER ENDING: the icon of the program, and of the files it makes.
picture() {
  mkdir -p "$icons/$2/apps" "$icons/$2/mimetypes"
  cp "$1" "$icons/$2/apps/passagework.$3"
  cp "$1" "$icons/$2/mimetypes/application-x-passagework-bundle.$3"
  cp "$1" "$icons/$2/mimetypes/application-x-passagework-reply.$3"
}
picture "$drawing" scalable svg
for size in 16 22 24 32 48 64 128 256 512; do
  [ ! -f "$here/passagework-$size.png" ] ||
    picture "$here/passagework-$size.png" "${size}x$size" png
done
refresh
echo "Passagework is in the menu, and bundles (.pwbundle) open with it."
