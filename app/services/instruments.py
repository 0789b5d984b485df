"""The instruments that can be measured, by name."""


def instrument_names() -> tuple[str, ...]:
    """Give the names of all instruments, in the order in which to offer them."""
    from analysis.instruments import INSTRUMENTS  # noqa: PLC0415 - numpy, when first asked

    return tuple(INSTRUMENTS)
