"""What the operating system reports, in one plain sentence."""

import errno

import pytest

from app.journal.failures import PlainFailure
from app.services.plain import plain_failures
from audio.errors import AudioFailure


@pytest.mark.parametrize(
    ("code", "words", "step"),
    [
        (errno.ENOSPC, "The disk is full: the take was not filed.", "Make room"),
        (errno.EFBIG, "The disk is full", "Make room"),
        (errno.EROFS, "Writing is not allowed in /a/b", "permissions"),
        (errno.EACCES, "Writing is not allowed in /a/b", "permissions"),
        (errno.ENOENT, "Something is not there in /a/b", "Check the folder"),
        (errno.EIO, "The disk reported", "Check the disk"),
    ],
)
def test_errors_of_the_disk(code, words, step):
    with pytest.raises(PlainFailure) as failure, plain_failures("the take was not filed"):
        raise OSError(code, "as the system says", "/a/b/c.flac")
    assert words in failure.value.sentence
    assert step in failure.value.next_step
    assert failure.value.sentence.endswith(".")


def test_failures_of_audio_keep_their_words():
    with pytest.raises(PlainFailure) as failure, plain_failures():
        raise AudioFailure("No microphone was found.", "Plug one in.")
    assert (failure.value.sentence, failure.value.next_step) == (
        "No microphone was found.",
        "Plug one in.",
    )


def test_errors_that_nobody_expects_stay_bugs():
    with pytest.raises(OSError, match="odd"), plain_failures():
        raise OSError(errno.EIO, "odd")
    with pytest.raises(ConnectionError), plain_failures("the take was not filed"):
        raise ConnectionError
    with pytest.raises(ValueError, match="odd"), plain_failures("the take was not filed"):
        raise ValueError("odd")
