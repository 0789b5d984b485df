"""Walk through a whole window and print every word that no translation reaches.

    QT_QPA_PLATFORM=offscreen python tests/ui/walk_words.py JOURNAL [--german]

The journal is copied first. Without --german the window speaks full width
(:class:`walking.Marked`), so that an ordinary letter is an escape; with it, a text is
printed that is a sentence of the program, still in English. :mod:`test_words_everywhere`
does the same with a small journal.
"""

import argparse
import re
import shutil
import sqlite3
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import closing, nullcontext
from pathlib import Path

sys.path.insert(0, str(Path(__file__).parents[2]))

from app.ui.application import Window, application_object
from app.ui.language import LANGUAGES
from app.ui.preferences import Preferences
from app.ui.spoken import said
from app.ui.widgets.guide_sheet import GuideBrowser
from app.wiring import open_workbench
from tests.ui.walking import marked_language, painted_words, shown_words, steps

Shown = dict[tuple[str, str], str]
"""Where it was first seen, by kind of widget and text."""

NOT_TRANSLATED = {
    # Units and names of formats, the same in every language here.
    "dB", "LUFS", "Hz", "kHz", "BPM", "ms", "min", "MB", "kB", "dBTP", "dBFS", "FLAC", "CSV", "WAV",
    "MP", "JAMS", "MIDI", "PDF", "HTML", "XML", "MusicXML", "ICS", "Passagework", "Ctrl", "mxl",
    # Note names with their flats.
    "Ab", "Bb", "Cb", "Db", "Eb", "Fb", "Gb",
    # What a file's tags are called, in the list of what stays out of a clip.
    "DATE", "TITLE", "track", "PART", "OF",
    # What the sound system calls its devices.
    "default", "pulse", "sysdefault", "hw",
    *(name for _, name in LANGUAGES),
}  # fmt: skip
_FILES = re.compile(r"(?:/[\w.-]+)+|[\w-]+\.(?:flac|wav|py|log|ini|m4a|mp4|sqlite\d?|db|txt)\b")
_WORD = re.compile(r"[A-Za-z]{2,}")
_LONGEST_OWN = 400


def words_of_the_player(journal: Path) -> list[str]:
    """Give every text the journal's database holds, the longest first."""
    found = {journal.name}
    with closing(sqlite3.connect(journal / "journal.db")) as database:
        tables = database.execute("SELECT name FROM sqlite_master WHERE type = 'table'").fetchall()
        for (table,) in tables:
            if table.startswith("measure"):
                continue
            for row in database.execute(f'SELECT * FROM "{table}"'):  # noqa: S608 - our own file
                found |= {v for v in row if isinstance(v, str) and 1 < len(v) < _LONGEST_OWN}
    # A goal may begin a sentence.
    found |= {words[0].upper() + words[1:] for words in found if words}
    return sorted(found, key=len, reverse=True)


def untranslated(text: str, own: list[str]) -> list[str]:
    """Give the ordinary words in a text of the window that speaks full width."""
    text = _FILES.sub(" ", text)
    for words in own:
        if words in text:
            text = text.replace(words, " ")
    return [word for word in _WORD.findall(text) if word not in NOT_TRANSLATED]


def still_english(text: str, own: list[str]) -> list[str]:
    """Give the text where it is a sentence of the program in English."""
    is_own = any(text == words for words in own)
    changed = said(text)
    is_known = re.sub(r"[\d.,]", "", changed) != re.sub(r"[\d.,]", "", text)
    return [text] if is_known and not is_own else []


def walk(
    window: Window,
    journal: Path,
    settle: Callable[[], None],
    check: Callable[[str, list[str]], list[str]],
) -> Iterator[tuple[str, str, str, list[str]]]:
    """Give what escapes: in which state, which kind of widget, its text, the words."""
    recording = next(journal.glob("2*/*/*.flac"))
    seen: set[tuple[str, str]] = set()
    with painted_words() as painted:
        for state in steps(window, recording, [Path(__file__)]):
            settle()
            own = words_of_the_player(journal)
            painted |= {recording.name}
            # The guide's pages are documents, and so is what they say.
            shown = shown_words((GuideBrowser,)) | {("painted", text) for text in painted}
            for kind, text in sorted(shown - seen):
                words = check(text, own)
                if words:
                    yield state, kind, text, words
            seen |= shown


def main() -> None:
    """Walk through a copy of a journal."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("journal", type=Path)
    parser.add_argument("--german", action="store_true")
    given = parser.parse_args()
    application = application_object()
    with tempfile.TemporaryDirectory() as scratch:
        journal = Path(shutil.copytree(given.journal, Path(scratch) / "Own_words"))
        file = journal / "window.ini"
        if given.german:
            Preferences(file).language = "de"
        language = nullcontext() if given.german else marked_language()
        check = still_english if given.german else untranslated
        with language, open_workbench(journal) as bench:
            window = Window(bench, preferences_file=file)
            window.main.resize(1280, 800)
            window.main.show()

            def settle() -> None:
                for _ in range(3):
                    window.jobs.wait_until_idle(120)
                    application.processEvents()

            settle()
            count = 0
            for state, kind, text, words in walk(window, journal, settle, check):
                count += 1
                print(f"[{state}] {kind}: {words[:6]} in {text!r}")
            print(f"{count} texts that no translation reaches")
            window.close()


if __name__ == "__main__":
    main()
