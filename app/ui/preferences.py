"""What the window remembers about itself; the journal knows nothing of it."""

from pathlib import Path

from PySide6.QtCore import QByteArray, QSettings

from app.ui.theme import Scheme

_REACTION_S = 0.3
_MOST_ITEMS = 500
_LARGEST_NUMBER = 2.0


class Preferences:
    """Theme, window place, order of items, the player's keys, in one small settings file.

    Parameters
    ----------
    file : Path or None
        Where to keep them; ``None``: the platform's usual place.
    """

    def __init__(self, file: Path | None = None) -> None:
        if file is None:
            self._settings = QSettings("Passagework", "Passagework")
        else:
            self._settings = QSettings(str(file), QSettings.Format.IniFormat)

    @property
    def scheme(self) -> Scheme:
        """Light, dark, or as the system says."""
        stored = str(self._settings.value("theme", Scheme.SYSTEM.value))
        return Scheme(stored) if stored in set(Scheme) else Scheme.SYSTEM

    @scheme.setter
    def scheme(self, scheme: Scheme) -> None:
        self._settings.setValue("theme", scheme.value)

    @property
    def language(self) -> str:
        """The code of the window's language; empty: as the system."""
        return str(self._settings.value("language", "") or "")

    @language.setter
    def language(self, code: str) -> None:
        self._settings.setValue("language", code)

    @property
    def geometry(self) -> QByteArray | None:
        """The window's last place."""
        stored = self._settings.value("geometry")
        return stored if isinstance(stored, QByteArray) else None

    @geometry.setter
    def geometry(self, geometry: QByteArray) -> None:
        self._settings.setValue("geometry", geometry)

    @property
    def volume(self) -> float:
        """Playback volume, 0 to 1."""
        return self._number("volume", 0.6)

    @volume.setter
    def volume(self, volume: float) -> None:
        self._settings.setValue("volume", volume)

    @property
    def reaction_s(self) -> float:
        """How long the player takes from hearing to pressing a key."""
        return self._number("reaction_s", _REACTION_S)

    @reaction_s.setter
    def reaction_s(self, reaction_s: float) -> None:
        self._settings.setValue("reaction_s", reaction_s)

    @property
    def lanes(self) -> str:
        """How high each lane of the Listen page is and which are hidden, in one line."""
        return str(self._settings.value("lanes", "") or "")

    @lanes.setter
    def lanes(self, text: str) -> None:
        self._settings.setValue("lanes", text)

    @property
    def picture(self) -> bool:
        """Whether the picture of a filmed take is shown."""
        return str(self._settings.value("picture", "yes")) != "no"

    @picture.setter
    def picture(self, shown: bool) -> None:
        self._settings.setValue("picture", "yes" if shown else "no")

    @property
    def item_order(self) -> tuple[str, ...]:
        """In which order the player keeps the items; keys follow it."""
        return self._list("item_order")

    @item_order.setter
    def item_order(self, refs: tuple[str, ...]) -> None:
        # Items of other journals keep their places, so that each finds its own again.
        others = [ref for ref in self.item_order if ref not in set(refs)]
        kept = [*refs, *others][:_MOST_ITEMS]
        self._settings.setValue("item_order", "\n".join(kept))

    @property
    def own_keys(self) -> dict[str, str]:
        """Keys of the player's own by action, such as a pedal types."""
        pairs = (line.partition("=") for line in self._list("own_keys"))
        return {action_id: key for action_id, _, key in pairs if key}

    @own_keys.setter
    def own_keys(self, keys: dict[str, str]) -> None:
        lines = [f"{action_id}={key}" for action_id, key in keys.items() if key]
        self._settings.setValue("own_keys", "\n".join(lines))

    def _list(self, key: str) -> tuple[str, ...]:
        return tuple(str(self._settings.value(key, "") or "").splitlines())

    def _number(self, key: str, default: float) -> float:
        try:
            number = float(str(self._settings.value(key, default)))
        except ValueError:
            return default
        # Shares, or seconds of a reaction; the file may say anything, "nan" as well.
        return number if 0.0 <= number <= _LARGEST_NUMBER else default
