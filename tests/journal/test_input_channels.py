"""One channel is remembered for each input."""

from app.journal.input_channels import InputChannel, remembered, with_choice


def test_each_input_has_its_own_channel():
    chosen = with_choice(with_choice((), "A", 3), "B", 2)
    assert (remembered(chosen, "A"), remembered(chosen, "B"), remembered(chosen, "C")) == (
        3,
        2,
        None,
    )
    chosen = with_choice(with_choice(chosen, "A", 1), "B", None)
    assert chosen == (InputChannel("A", 1),)


def test_a_channel_that_cannot_be_is_passed_over():
    assert remembered((InputChannel("A", 0), InputChannel("A", -1)), "A") is None
