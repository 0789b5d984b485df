"""What is to be heard while a take is recorded: click, count-in, drone."""

from dataclasses import dataclass

from app.journal.failures import PlainFailure

HEARING_CAUTION = (
    "Click and drone in headphones are easily too loud: start low, and rest your ears."
)
SLOWEST_BPM, FASTEST_BPM = 15.0, 400.0
_QUIETEST_DBFS, _LOUDEST_DBFS = -60.0, -6.0


@dataclass(frozen=True, slots=True)
class GuideSettings:
    """What is to be heard while a take is recorded.

    Attributes
    ----------
    click_bpm : float or None
        Tempo of the click, 15 to 400; ``None``: no click.
    beats_a_bar : int
        1 to 16.
    accents : tuple of float
        Strength of each beat of a bar, 0 (left out) to 1; empty: the first one strong.
    count_in_bars : int
        Bars that are counted before the take's first beat.
    goes_on : bool
        Whether the click goes on after the count-in.
    drone : str
        Notes that sound all the time, such as ``"A3"`` or ``"D3 A3"``; empty: none.
    temperament, tonic, reference_a_hz
        How the drone is tuned.
    volume : float
        0 to 1; half is 33 dB under full scale, quiet in most headphones.
    """

    click_bpm: float | None = None
    beats_a_bar: int = 4
    accents: tuple[float, ...] = ()
    count_in_bars: int = 0
    goes_on: bool = True
    drone: str = ""
    temperament: str = "equal"
    tonic: str | None = None
    reference_a_hz: float = 440.0
    volume: float = 0.5

    @property
    def is_silent(self) -> bool:
        """Whether nothing is to be heard."""
        return self.click_bpm is None and not self.drone.strip()

    @property
    def level_dbfs(self) -> float:
        """Highest peak, from the volume."""
        share = min(max(self.volume, 0.0), 1.0)
        return _QUIETEST_DBFS + share * (_LOUDEST_DBFS - _QUIETEST_DBFS)

    @property
    def count_in_s(self) -> float:
        """How long the count-in lasts."""
        if self.click_bpm is None:
            return 0.0
        return self.count_in_bars * self.beats_a_bar * 60.0 / self.click_bpm


def numbers_of(text: str) -> tuple[float, ...]:
    """Read the strengths of beats as they are typed, ``1 0.5 0.8``.

    Raises
    ------
    PlainFailure
        Where one is no number.
    """
    try:
        return tuple(float(word) for word in text.split())
    except ValueError as problem:
        raise PlainFailure(
            f"'{text}' are no strengths of beats.", "Write numbers from 0 to 1, e.g. '1 0.5 0.5'."
        ) from problem


def checked(settings: GuideSettings) -> GuideSettings:
    """Give the settings back once they make sense.

    Raises
    ------
    PlainFailure
        Where they do not; the sentence says which.
    """
    bpm, accents = settings.click_bpm, settings.accents
    if bpm is not None and not SLOWEST_BPM <= bpm <= FASTEST_BPM:
        raise PlainFailure(
            f"A click of {bpm:g} BPM cannot be played along with.",
            f"Choose {SLOWEST_BPM:g} to {FASTEST_BPM:g} BPM.",
        )
    if not 1 <= settings.beats_a_bar <= 16:
        raise PlainFailure("A bar has 1 to 16 beats here.", "Choose another number of beats.")
    if accents and (len(accents) != settings.beats_a_bar or not all(0 <= a <= 1 for a in accents)):
        raise PlainFailure(
            "The accents do not fit the bar.",
            f"Give {settings.beats_a_bar} numbers from 0 (left out) to 1 (strong).",
        )
    if not 0 <= settings.count_in_bars <= 8:
        raise PlainFailure("Up to 8 bars can be counted in.", "Choose fewer bars.")
    if settings.count_in_bars and bpm is None:
        raise PlainFailure("A count-in needs a tempo.", "Choose the tempo of the click.")
    return settings


def drone_hz(settings: GuideSettings) -> tuple[float, ...]:
    """Give the frequencies of the drone.

    Raises
    ------
    PlainFailure
        Where a note, the temperament or the A makes no sense.
    """
    # scipy and its kin; only where a drone is wanted.
    from analysis.tuning import HIGHEST_A_HZ, LOWEST_A_HZ, Temperament, target_hz  # noqa: PLC0415
    from analysis.units import parse_note_name  # noqa: PLC0415

    a_hz = settings.reference_a_hz
    if not LOWEST_A_HZ <= a_hz <= HIGHEST_A_HZ:
        raise PlainFailure(f"An A of {a_hz:g} Hz is too far off.", "Choose 380 to 480 Hz.")
    names = settings.drone.replace(",", " ").split()
    try:
        temperament = Temperament(settings.temperament)
        midis = [parse_note_name(name) for name in names]
        return tuple(target_hz(midi, a_hz, temperament, settings.tonic) for midi in midis)
    except ValueError as problem:
        raise PlainFailure(
            f"'{settings.drone}' cannot be the drone: {problem}.",
            "Name notes with their octave, such as 'A3' or 'D3 A3'.",
        ) from problem
