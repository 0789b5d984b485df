"""The picture on the Listen page: there for filmed takes, hidden or enlarged by a key."""

from PySide6.QtCore import QObject

from app.services.views import PlaybackState, TakeView
from app.ui.desk import Desk
from app.ui.language import tr
from app.ui.models.film_desk import FilmDesk
from app.ui.widgets.picture_pane import PicturePane, PictureSplit
from app.ui.widgets.transport import Transport


class PictureControl(QObject):
    """Keeps the picture in step with what is heard, while the page is looked at."""

    def __init__(
        self, desk: Desk, transport: Transport, pane: PicturePane, split: PictureSplit
    ) -> None:
        super().__init__(pane)
        self._desk = desk
        self._transport = transport
        self._pane = pane
        self._split = split
        self._size = (0, 0)
        self._take_id = ""
        self.film = FilmDesk(desk, self)
        self.film.sized.connect(self._sized)
        self.film.shown.connect(pane.show_picture)
        pane.roomChanged.connect(self.film.set_size)
        transport.moved.connect(self._moved)

    def show_take(self, view: TakeView | None) -> None:
        """Begin with a take, or with none."""
        take_id = view.row.id if view else ""
        if take_id == self._take_id:
            self._open_when_loaded()
            return
        self._take_id, self._size = take_id, (0, 0)
        self._pane.clear()
        self.film.look_at(take_id)

    def leave(self) -> None:
        """Decode nothing for a page that is not seen."""
        self.film.close()

    @property
    def is_shown(self) -> bool:
        """True while a picture is to be seen."""
        return self.film.is_open

    def toggle(self) -> None:
        """Show the picture, or hide it."""
        if self._size == (0, 0):
            self._desk.tell(tr("This take has no picture."))
            return
        self._desk.preferences.picture = not self._desk.preferences.picture
        self._show()

    def toggle_larger(self) -> None:
        """Give the picture more room, or its usual room again."""
        if self.film.is_open:
            self._split.toggle_large()

    def _sized(self, width: int, height: int) -> None:
        self._size = (width, height)
        self._show()

    def _show(self) -> None:
        width, height = self._size
        if width and self._desk.preferences.picture:
            self._split.show_room(has_picture=True, width=width, height=height)
            self._open_when_loaded()
            return
        self.film.close()
        self._pane.clear()
        self._split.show_room(has_picture=False)

    def _open_when_loaded(self) -> None:
        # The player says where it is in the sound it holds: it must be this take's.
        is_wanted = self._size != (0, 0) and self._desk.preferences.picture
        if is_wanted and self._desk.loaded_take_id == self._take_id:
            self.film.open()

    def _moved(self, _state: PlaybackState) -> None:
        self._open_when_loaded()
        self.film.look_again()
