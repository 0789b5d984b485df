"""The one kind of failure that is told to the player instead of being a bug."""


class PlainFailure(Exception):  # noqa: N818 - an expected failure, not an error in the program
    """Something outside the program went wrong.

    Parameters
    ----------
    sentence : str
        What happened, in one plain sentence.
    next_step : str
        What the player can do about it, in one plain sentence.
    """

    def __init__(self, sentence: str, next_step: str) -> None:
        super().__init__(sentence)
        self.sentence = sentence
        self.next_step = next_step
