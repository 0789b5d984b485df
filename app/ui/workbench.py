"""What the window needs of an open journal: the services, by name.

The wiring's workbench fits this shape; so does a stand-in in a test.
"""

from pathlib import Path
from typing import Protocol

from app.services.comparing import ComparingService
from app.services.filing import FilingService
from app.services.importing import ImportingService
from app.services.listening import ListeningService
from app.services.marking import MarkingService
from app.services.measuring import MeasuringService
from app.services.passages import PassageService
from app.services.playing import PlayingService
from app.services.practising import PractisingService
from app.services.recording import RecordingService
from app.services.reporting import ReportingService


class Workbench(Protocol):
    """An open journal and everything that can be done with it."""

    @property
    def journal_dir(self) -> Path:
        """The journal's folder."""

    @property
    def read_only(self) -> bool:
        """True where nothing may be changed."""

    @property
    def passages(self) -> PassageService:
        """Passages."""

    @property
    def practising(self) -> PractisingService:
        """Days, minutes, rest."""

    @property
    def recording(self) -> RecordingService:
        """Inputs and recording."""

    @property
    def importing(self) -> ImportingService:
        """Files from elsewhere."""

    @property
    def filing(self) -> FilingService:
        """Where a take belongs."""

    @property
    def measuring(self) -> MeasuringService:
        """What was measured."""

    @property
    def listening(self) -> ListeningService:
        """What the Listen page draws."""

    @property
    def playing(self) -> PlayingService:
        """Playback."""

    @property
    def marking(self) -> MarkingService:
        """Markers, with undo."""

    @property
    def comparing(self) -> ComparingService:
        """Take against take, and trends."""

    @property
    def reporting(self) -> ReportingService:
        """The week in words."""
