"""The sheets that open beside the window, each made when it is first asked for."""

from collections.abc import Sequence
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

from app.ui.desk import Desk

if TYPE_CHECKING:
    from app.services.views import TakeRow
    from app.ui.widgets.backups_sheet import BackupsSheet
    from app.ui.widgets.categories_sheet import CategoriesSheet
    from app.ui.widgets.export_sheet import ExportSheet
    from app.ui.widgets.guide_sheet import GuideSheet
    from app.ui.widgets.help_sheet import HelpSheet
    from app.ui.widgets.keys_sheet import KeysSheet
    from app.ui.widgets.settings_sheet import SettingsSheet
    from app.ui.widgets.share_sheet import ShareSheet


class Sheets:
    """Help, guide, settings, keys of one's own, backups, categories; none of them is modal."""

    def __init__(self, desk: Desk, window: QWidget) -> None:
        self._desk = desk
        self._window = window
        self.help: HelpSheet | None = None
        self.guide: GuideSheet | None = None
        self.settings: SettingsSheet | None = None
        self.own_keys: KeysSheet | None = None
        self.backups: BackupsSheet | None = None
        self.categories: CategoriesSheet | None = None
        self.share: ShareSheet | None = None
        self.export: ExportSheet | None = None
        desk.shareWanted.connect(self.show_share)
        desk.exportWanted.connect(self.show_export)

    def show_help(self) -> None:
        """Show the help sheet."""
        if self.help is None:
            from app.ui.widgets.help_sheet import HelpSheet  # noqa: PLC0415 - when first wanted

            self.help = HelpSheet(self._desk.keys, self._window)
        self.help.show()
        self.help.raise_()

    def show_guide(self, page: str = "") -> None:
        """Show the player's guide, at a page of it if one is named."""
        if self.guide is None:
            from app.ui.widgets.guide_sheet import GuideSheet  # noqa: PLC0415 - when first wanted

            self.guide = GuideSheet(self._window)
        if page:
            self.guide.show_page(page)
        self.guide.show()
        self.guide.raise_()

    def show_settings(self) -> None:
        """Show the journal's settings and the window's own."""
        if self.settings is None:
            from app.ui.widgets.settings_sheet import SettingsSheet  # noqa: PLC0415 - when first wanted

            self.settings = SettingsSheet(self._desk, self._window)
        self.settings.open_sheet()

    def show_keys(self) -> None:
        """Show the keys of the player's own."""
        if self.own_keys is None:
            from app.ui.widgets.keys_sheet import KeysSheet  # noqa: PLC0415 - when first wanted

            self.own_keys = KeysSheet(self._desk, self._window)
        self.own_keys.open_sheet()

    def show_backups(self) -> None:
        """Show the journal's backups."""
        if self.backups is None:
            from app.ui.widgets.backups_sheet import BackupsSheet  # noqa: PLC0415 - when first wanted

            self.backups = BackupsSheet(self._desk, self._window)
            self.backups.restoreWanted.connect(self._desk.close_to_restore)
        self.backups.open_sheet()

    def show_categories(self) -> None:
        """Show the marker categories."""
        if self.categories is None:
            from app.ui.widgets.categories_sheet import CategoriesSheet  # noqa: PLC0415 - when first wanted

            self.categories = CategoriesSheet(self._desk, self._window)
        self.categories.open_sheet()

    def show_share(self, takes: Sequence["TakeRow"], start_s: float, end_s: float) -> None:
        """Offer clips of takes."""
        if self.share is None:
            from app.ui.widgets.share_sheet import ShareSheet  # noqa: PLC0415 - when first wanted

            self.share = ShareSheet(self._desk, self._window)
            self.share.hearWanted.connect(self._desk.stretchWanted)
            self.share.shared.connect(self._desk.takesChanged)
        self.share.open_sheet(takes, start_s, end_s)

    def show_export(self, take_id: str, first: date | None, last: date | None) -> None:
        """Offer the open formats."""
        if self.export is None:
            from app.ui.widgets.export_sheet import ExportSheet  # noqa: PLC0415 - when first wanted

            self.export = ExportSheet(self._desk, self._window)
        self.export.open_sheet(take_id, first, last)

    def help_text(self) -> str:
        """Return what the help sheet says, empty while it was never opened."""
        return self.help.text if self.help is not None else ""

    def hide(self) -> None:
        """Put all of them away."""
        for sheet in (
            self.help,
            self.guide,
            self.settings,
            self.own_keys,
            self.backups,
            self.categories,
            self.share,
            self.export,
        ):
            if sheet is not None:
                sheet.hide()
