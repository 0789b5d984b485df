"""The one kind of failure a device or file may cause without it being a bug."""

from pathlib import Path


class AudioFailure(Exception):  # noqa: N818 - an expected failure, not an error in the program
    """Something outside the program went wrong.

    Parameters
    ----------
    sentence : str
        What happened, in one plain sentence for the player.
    next_step : str
        What the player can do about it, in one plain sentence.
    """

    def __init__(self, sentence: str, next_step: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.next_step = next_step


def name_taken(path: Path) -> AudioFailure:
    """Say that there is a file of this name already; it stays as it is.

    Parameters
    ----------
    path : Path
        The name.

    Returns
    -------
    AudioFailure
        To be raised.
    """
    return AudioFailure(
        f"{path.name} exists already and is not overwritten.", "Choose another name."
    )
