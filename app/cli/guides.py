"""Options for what is to be heard while a take is recorded."""

from typing import TYPE_CHECKING, Annotated

import typer

if TYPE_CHECKING:
    from app.journal.records import PlayingSettings
    from app.services.guide_settings import GuideSettings

ClickOption = Annotated[
    float | None,
    typer.Option("--click", metavar="BPM", help="A click in the headphones, kept with the take."),
]
BeatsOption = Annotated[int, typer.Option("--beats", metavar="N", help="Beats in a bar.")]
AccentsOption = Annotated[
    str,
    typer.Option(
        "--accents",
        metavar="NUMBERS",
        help="Strength of each beat, 0 (left out) to 1, e.g. '1 0.5 0.8 0.5'.",
    ),
]
CountInOption = Annotated[
    int, typer.Option("--count-in", metavar="BARS", help="Bars counted before the first beat.")
]
CountOnlyOption = Annotated[
    bool, typer.Option("--count-in-only", help="The click falls silent after the count-in.")
]
DroneOption = Annotated[
    str, typer.Option("--drone", metavar="NOTES", help="Notes that sound on, e.g. A3 or 'D3 A3'.")
]
VolumeOption = Annotated[
    float, typer.Option("--volume", min=0.0, max=1.0, help="Of click and drone; start low.")
]


def guide_settings(  # noqa: PLR0917 - one parameter an option
    tuning: "PlayingSettings",
    click: float | None,
    beats: int,
    accents: str,
    count_in: int,
    count_only: bool,
    drone: str,
    volume: float,
) -> "GuideSettings":
    """Put the options together; the drone is tuned as the passage is.

    Raises
    ------
    PlainFailure
        Where they make no sense.
    """
    from app.services.guide_settings import GuideSettings, checked, numbers_of  # noqa: PLC0415

    return checked(
        GuideSettings(
            click_bpm=click,
            beats_a_bar=beats,
            accents=numbers_of(accents),
            count_in_bars=count_in,
            goes_on=not count_only,
            drone=drone,
            temperament=tuning.temperament,
            tonic=tuning.tonic,
            reference_a_hz=tuning.reference_a_hz or 440.0,
            volume=volume,
        )
    )
