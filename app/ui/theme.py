"""Colours, text sizes and spacing: one palette for light, one for dark.

Flat and sharp use blue and vermilion of the colour set by Okabe and Ito (2002),
'Color universal design', which stay apart for all common kinds of colour blindness;
position and hatch tell them apart first.
"""

from dataclasses import dataclass
from enum import StrEnum

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QColor, QFont, QGuiApplication, QPalette
from PySide6.QtWidgets import QApplication, QStyleFactory

_STYLE = "fusion"
_STYLED = "passageworkStyled"
GRID_PX = 8
CELL_PADDING_PX = 5
SMALL_PT = 9.0
BODY_PT = 10.5
LARGE_PT = 19.0


class Scheme(StrEnum):
    """Which palette the player chose."""

    SYSTEM = "system"
    LIGHT = "light"
    DARK = "dark"


@dataclass(frozen=True, slots=True)
class Colours:
    """Every colour the window uses, as ``#rrggbb``."""

    is_dark: bool
    window: str
    card: str
    field: str
    line: str
    ink: str
    ink_soft: str
    accent: str
    accent_ink: str
    accent_wash: str
    flat: str
    sharp: str
    wave: str
    grid: str
    attention: str


LIGHT = Colours(
    is_dark=False,
    window="#f1ede4",
    card="#fbf9f4",
    field="#ffffff",
    line="#d3ccbe",
    ink="#23212b",
    ink_soft="#5a5563",
    accent="#6b2f6f",
    accent_ink="#ffffff",
    accent_wash="#eadfec",
    flat="#0072b2",
    sharp="#d55e00",
    wave="#6f6a7a",
    grid="#e2dccf",
    attention="#8f1d2c",
)

DARK = Colours(
    is_dark=True,
    window="#1b1920",
    card="#242129",
    field="#332e3a",
    line="#433e4b",
    ink="#ece8e1",
    ink_soft="#b0a9b8",
    accent="#d3a4dc",
    accent_ink="#241528",
    accent_wash="#3c2f44",
    flat="#56b4e9",
    sharp="#f0863a",
    wave="#9a94a6",
    grid="#35303c",
    attention="#ff9c9c",
)


def font(points: float = BODY_PT, *, bold: bool = False) -> QFont:
    """Return the window's font at one of the three sizes, with tabular figures."""
    made = QFont(QApplication.font())
    made.setPointSizeF(points)
    made.setBold(bold)
    made.setFeature(QFont.Tag("tnum"), 1)
    return made


def _palette(colours: Colours) -> QPalette:
    palette = QPalette()
    role = QPalette.ColorRole
    for target, value in (
        (role.Window, colours.window),
        (role.WindowText, colours.ink),
        (role.Base, colours.field),
        (role.AlternateBase, colours.card),
        (role.Text, colours.ink),
        (role.Button, colours.card),
        (role.ButtonText, colours.ink),
        (role.BrightText, colours.attention),
        (role.PlaceholderText, colours.ink_soft),
        (role.ToolTipBase, colours.card),
        (role.ToolTipText, colours.ink),
        (role.Highlight, colours.accent),
        (role.HighlightedText, colours.accent_ink),
        (role.Accent, colours.accent),
        (role.Link, colours.accent),
        (role.Mid, colours.line),
        (role.Midlight, colours.line),
        (role.Dark, colours.line),
    ):
        palette.setColor(target, QColor(value))
    off = QPalette.ColorGroup.Disabled
    for target in (role.WindowText, role.Text, role.ButtonText):
        faded = QColor(colours.ink_soft)
        faded.setAlpha(130)
        palette.setColor(off, target, faded)
    palette.setColor(off, role.Highlight, QColor(colours.line))
    return palette


def _style_sheet(c: Colours) -> str:
    return f"""
    QFrame[card="true"] {{ background: {c.card}; border: 1px solid {c.line}; border-radius: 8px; }}
    QLabel[tone="soft"] {{ color: {c.ink_soft}; }}
    QLabel[tone="attention"] {{ color: {c.attention}; }}
    QToolTip {{ background: {c.card}; color: {c.ink}; border: 1px solid {c.line}; padding: 4px; }}
    QPushButton {{ background: {c.card}; border: 1px solid {c.line}; border-radius: 6px;
        padding: 5px 12px; min-height: 20px; }}
    QPushButton::menu-indicator {{ image: none; width: 0; }}
    QPushButton[tall="true"] {{ min-height: 36px; }}
    QPushButton[tab="true"] {{ padding: 5px 4px; }}
    QPushButton:hover {{ border-color: {c.ink_soft}; }}
    QPushButton:focus, QToolButton:focus {{ border: 2px solid {c.accent}; padding: 4px 11px; }}
    QPushButton[tab="true"]:focus {{ padding: 4px 3px; }}
    QPushButton:checked {{ background: {c.accent_wash}; border-color: {c.accent}; }}
    QPushButton:disabled {{ color: {c.ink_soft}; border-style: dashed; }}
    QPushButton[primary="true"] {{ background: {c.accent}; color: {c.accent_ink};
        border-color: {c.accent}; font-weight: bold; }}
    QPushButton[primary="true"]:focus {{ border: 2px solid {c.ink}; }}
    QPushButton[primary="true"]:disabled {{ background: {c.line}; color: {c.ink_soft};
        border-color: {c.line}; }}
    QPushButton[plain="true"] {{ background: transparent; border-color: transparent; }}
    QPushButton[plain="true"]:hover {{ border-color: {c.line}; }}
    QPushButton[plain="true"]:checked {{ background: {c.accent_wash}; }}
    QPushButton[plain="true"]:focus {{ border: 2px solid {c.accent}; }}
    QFrame#rail {{ background: {c.card}; border: none; border-right: 1px solid {c.line}; }}
    QFrame#messages {{ background: {c.accent_wash}; border: none; border-top: 1px solid {c.line}; }}
    QHeaderView::section {{ background: transparent; color: {c.ink_soft}; border: none;
        border-bottom: 1px solid {c.line}; padding: 3px 5px; font-size: {SMALL_PT}pt; }}
    QTableView {{ border: 1px solid transparent; border-radius: 6px; background: transparent; }}
    QPlainTextEdit, QTextBrowser {{ border: 1px solid {c.line}; border-radius: 6px;
        background: {c.field}; }}
    QTableView:focus, QPlainTextEdit:focus {{ border: 1px solid {c.accent}; }}
    QHeaderView {{ background: transparent; }}
    QScrollBar:vertical {{ background: transparent; width: 12px; margin: 0; }}
    QScrollBar:horizontal {{ background: transparent; height: 12px; margin: 0; }}
    QScrollBar::handle {{ background: {c.line}; border-radius: 4px; margin: 2px; }}
    QScrollBar::handle:vertical {{ min-height: 28px; }}
    QScrollBar::handle:horizontal {{ min-width: 28px; }}
    QScrollBar::handle:hover {{ background: {c.ink_soft}; }}
    QScrollBar::add-line, QScrollBar::sub-line, QScrollBar::add-page, QScrollBar::sub-page {{
        background: transparent; width: 0; height: 0; }}
    QTableView::item {{ padding: 2px {CELL_PADDING_PX}px; border: none; }}
    QTableView::item:selected, QListView::item:selected {{ background: {c.accent_wash};
        color: {c.ink}; }}
    QComboBox, QLineEdit, QAbstractSpinBox {{ min-height: 26px; }}
    QAbstractSpinBox[tall="true"] {{ min-height: 34px; }}
    QCheckBox::indicator, QListWidget::indicator {{
        width: 14px; height: 14px; border: 1px solid {c.ink_soft};
        border-radius: 3px; background: {c.field}; }}
    QCheckBox::indicator:checked, QListWidget::indicator:checked {{
        width: 10px; height: 10px; padding: 2px;
        background-color: {c.accent}; background-clip: content; }}
    QCheckBox:focus {{ color: {c.accent}; }}
    QScrollArea {{ border: none; background: transparent; }}
    QScrollArea > QWidget > QWidget {{ background: transparent; }}
    """


class Theme(QObject):
    """The palette in use; follows the system unless the player chose one."""

    changed = Signal(object)

    def __init__(
        self,
        application: QApplication,
        scheme: Scheme = Scheme.SYSTEM,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._application = application
        self._scheme = scheme
        self._is_dressed = False
        self.colours = LIGHT
        if application.property(_STYLED) is None:
            application.setProperty(_STYLED, "yes")
            application.setStyle(QStyleFactory.create(_STYLE))
            application.setFont(font())
        application.styleHints().colorSchemeChanged.connect(self._follow_system)
        self._apply()

    def dress(self) -> None:
        """Style the widgets there are, and from now on each new one.

        A window asks for it once it is made: with the style sheet in force, every widget
        is styled again at each step into its place, which takes longer than all the rest.
        """
        self._is_dressed = True
        sheet = _style_sheet(self.colours)
        if sheet != self._application.styleSheet():
            self._application.setStyleSheet(sheet)

    @property
    def scheme(self) -> Scheme:
        """What the player chose."""
        return self._scheme

    def choose(self, scheme: Scheme) -> None:
        """Use `scheme` from now on."""
        self._scheme = scheme
        self._apply()

    def toggle(self) -> None:
        """Change from light to dark or back, whatever was followed before."""
        self.choose(Scheme.LIGHT if self.colours.is_dark else Scheme.DARK)

    def _follow_system(self) -> None:
        if self._scheme is Scheme.SYSTEM:
            self._apply()

    def _apply(self) -> None:
        if self._scheme is Scheme.SYSTEM:
            hint = QGuiApplication.styleHints().colorScheme()
            dark = hint == Qt.ColorScheme.Dark
        else:
            dark = self._scheme is Scheme.DARK
        self.colours = DARK if dark else LIGHT
        if _style_sheet(self.colours) != self._application.styleSheet():
            self._application.setPalette(_palette(self.colours))
        if self._is_dressed:
            self.dress()
        self.changed.emit(self.colours)
