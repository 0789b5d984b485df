"""What is copied out of a fault names neither the player nor the player's folders."""

from pathlib import PurePosixPath, PureWindowsPath

import pytest
from hypothesis import given
from hypothesis import strategies as st

from app.journal.private_paths import login_name, without_private_paths

LINUX = {"home": PurePosixPath("/home/mira"), "user": "mira"}
WINDOWS = {"home": PureWindowsPath(r"C:\Users\Mira Lind"), "user": "Mira Lind"}


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ('File "/home/mira/code/app/x.py", line 3', 'File "<home>/code/app/x.py", line 3'),
        ("'/home/mira/Music/My Journal/2026/a.flac'", "'<journal>/2026/a.flac'"),
        ("file:///home/mira/Music/My Journal/journal.db", "file://<journal>/journal.db"),
        ("file:///home/mira/Music/My%20Journal/journal.db", "file://<journal>/journal.db"),
        ("/home/mira", "<home>"),
        ("/home/miranda/x", "<home>/x"),
        ("/home/other/x", "<home>/x"),
        ("/Users/other/x", "<home>/x"),
        ("/run/user/mira/pulse", "/run/user/<user>/pulse"),
        ("owner mira_backup: mira", "owner <user>_backup: <user>"),
        ("an admirable miracle", "an admirable miracle"),
        ("/usr/lib/python3.11/threading.py", "/usr/lib/python3.11/threading.py"),
    ],
)
def test_paths_of_linux_and_macos(text, expected):
    journal = PurePosixPath("/home/mira/Music/My Journal")
    assert without_private_paths(text, journal=journal, **LINUX) == expected


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (r'File "C:\Users\Mira Lind\app\x.py"', r'File "<home>\app\x.py"'),
        (r"'C:\\Users\\Mira Lind\\a.wav'", r"'<home>\\a.wav'"),
        ("file:///C:/Users/Mira Lind/a.wav", "file:///<home>/a.wav"),
        (r"c:\users\mira lind\a.wav", r"<home>\a.wav"),
        (r"D:\Journal\2026\a.flac", r"<journal>\2026\a.flac"),
        (r"'d:\\journal\\2026'", r"'<journal>\\2026'"),
        (r"D:\Journals\x", r"D:\Journals\x"),
        (r"C:\Users\Other\x", r"<home>\x"),
        (r"C:\Program Files\Passagework\x.pyd", r"C:\Program Files\Passagework\x.pyd"),
    ],
)
def test_paths_of_windows(text, expected):
    journal = PureWindowsPath(r"D:\Journal")
    assert without_private_paths(text, journal=journal, **WINDOWS) == expected


@given(
    st.lists(st.from_regex(r"[a-z][a-z0-9 ._-]{0,9}[a-z]", fullmatch=True), max_size=4),
    st.sampled_from(["/", "\\", "\\\\"]),
    st.sampled_from(["zoltana", "b.varga", "varga-b", "übung"]),
)
def test_no_way_of_writing_a_path_lets_the_name_through(parts, slash, user):
    root = "C:" if slash != "/" else ""
    home = slash.replace("\\\\", "\\").join((root, "Users", user))
    text = f"could not open '{slash.join((root, 'Users', user, *parts))}': {user} may not"
    cleaned = without_private_paths(text, home=home, journal=None, user=user)
    assert user not in cleaned
    assert all(part in cleaned for part in parts)


def test_a_url_that_hides_its_slashes_does_not_hide_the_name():
    # RFC 3986, 2.1: %2F is a slash, %5C a backslash, in either case.
    text = "open?path=%2Fhome%2Fmira%2Fa.flac and C%3a%5cUsers%5cmira%5ca"
    cleaned = without_private_paths(text, home="/home/mira", journal=None, user="mira")
    assert cleaned == "open?path=%2Fhome%2F<user>%2Fa.flac and C%3a%5cUsers%5c<user>%5ca"


def test_the_whole_disk_is_no_home_and_an_unknown_name_takes_nothing():
    text = "/usr/lib/x.py and C:\\Windows\\x.dll"
    assert without_private_paths(text, home="/", journal="C:\\", user="") == text
    assert without_private_paths("/a/al/b also", home="/x/y", journal=None, user="al") == (
        "/a/<user>/b also"
    )


def test_the_login_name_is_the_one_the_system_gives():
    assert login_name({"USERNAME": "mira", "USER": "root"}) == "mira"
    assert login_name({"USER": " "}) == ""
