"""Brings a theme onto Qt widgets."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QColor, QPalette, QPen
from PySide6.QtWidgets import QApplication, QWidget

from triage.corners import Corner
from ui.collecting import no_collection
from ui.theme import Theme

TARGET_PX: Final = 28
"""Smallest height of anything to click; WCAG 2.2, 2.5.8 asks for 24."""

BAR_PX: Final = 14
HAND_PX: Final = 44
"""Smallest height of what is pressed with dirty hands; WCAG 2.2, 2.5.5."""

TEXT_FACTORS: Final = (0.95, 1.1, 1.15, 1.2, 1.25, 1.3, 1.4, 1.45, 1.5, 1.6)
"""How much larger than the others texts may be; see :func:`enlarge`."""

ENLARGED: Final = ("QLabel", "QPushButton", "QLineEdit")

IMAGES: Final = Path(__file__).resolve().parents[1] / "images"

LINE_STYLES: Final[dict[Corner, Qt.PenStyle]] = {
    "FL": Qt.PenStyle.SolidLine,
    "FR": Qt.PenStyle.DashLine,
    "RL": Qt.PenStyle.DashDotLine,
    "RR": Qt.PenStyle.DotLine,
}


def corner_pen(theme: Theme, corner: Corner, *, width: float = 1.0) -> QPen:
    """Return the pen of a wheel: colour and line style, cosmetic."""
    pen = QPen(QColor(theme.corners[corner]), width, LINE_STYLES[corner])
    pen.setCosmetic(True)
    return pen


def qt_application() -> QApplication:
    """Return the running application, a new one when there is none yet."""
    running = QApplication.instance()
    return running if isinstance(running, QApplication) else QApplication(sys.argv[:1])


def enlarge(widget: QWidget, factor: float) -> None:
    """Show the texts of a label, button or field larger than the others, one of :data:`TEXT_FACTORS`."""
    # By the style sheet: when it is set anew, for other colours or sizes, fonts set by hand are taken back.
    if factor not in TEXT_FACTORS:
        raise ValueError(f"{factor:g} is not among the sizes of the style sheet")
    widget.setProperty("larger", f"{factor:g}")


def apply_theme(application: QApplication, theme: Theme) -> None:
    """Colour the whole program."""
    sizes = build_text_sizes(application.font().pointSizeF())
    with no_collection():
        application.setStyle("Fusion")
        application.setPalette(build_palette(theme))
        application.setStyleSheet(f"{build_style_sheet(theme)}{sizes}")


def build_text_sizes(plain_pt: float) -> str:
    """Return the rules for texts that differ from the plain size in points."""
    rules = (
        (", ".join(f'{kind}[larger="{factor:g}"]' for kind in ENLARGED), plain_pt * factor)
        for factor in TEXT_FACTORS
    )
    return "".join(f"{which} {{ font-size: {size_pt:.4f}pt; }}\n" for which, size_pt in rules)


def build_palette(theme: Theme) -> QPalette:
    """Return the palette of a theme."""
    palette = QPalette()
    roles = {
        QPalette.ColorRole.Window: theme.window,
        QPalette.ColorRole.WindowText: theme.text,
        QPalette.ColorRole.Base: theme.panel,
        QPalette.ColorRole.AlternateBase: theme.window,
        QPalette.ColorRole.Text: theme.text,
        QPalette.ColorRole.PlaceholderText: theme.muted,
        QPalette.ColorRole.Button: theme.panel,
        QPalette.ColorRole.ButtonText: theme.text,
        QPalette.ColorRole.ToolTipBase: theme.panel,
        QPalette.ColorRole.ToolTipText: theme.text,
        QPalette.ColorRole.Highlight: theme.accent,
        QPalette.ColorRole.HighlightedText: theme.on_accent,
        QPalette.ColorRole.Link: theme.accent,
        QPalette.ColorRole.Accent: theme.accent,
    }
    for role, colour in roles.items():
        palette.setColor(role, QColor(colour))
    for role in (QPalette.ColorRole.Text, QPalette.ColorRole.ButtonText, QPalette.ColorRole.WindowText):
        palette.setColor(QPalette.ColorGroup.Disabled, role, QColor(theme.border))
    return palette


def _image(name: str, theme: Theme) -> str:
    # A style sheet takes a picture only from a file, and no colour for it: one file for each theme.
    return (IMAGES / f"{name}_{theme.name}.png").as_posix()


def build_style_sheet(theme: Theme) -> str:
    """Return the rules that a palette cannot express: focus rings, edges, sizes of targets."""
    parts = (_buttons_and_fields, _boxes, _menus_and_tabs, _lists_and_bars, _labels_and_frames)
    return "".join(rules(theme) for rules in parts)


def _buttons_and_fields(theme: Theme) -> str:
    return f"""
        QToolTip {{ color: {theme.text}; background: {theme.panel};
            border: 1px solid {theme.border}; padding: 3px; }}
        QPushButton, CornerKey QToolButton {{ min-height: {TARGET_PX - 4}px; padding: 2px 12px;
            border: 1px solid {theme.border}; border-radius: 4px;
            background: {theme.panel}; color: {theme.text}; outline: 0; }}
        QPushButton[hand="true"] {{ min-height: {HAND_PX}px; }}
        QLineEdit {{ min-height: {TARGET_PX - 4}px; padding: 1px 6px; border: 1px solid {theme.border};
            border-radius: 4px; background: {theme.panel}; color: {theme.text};
            placeholder-text-color: {theme.muted}; }}
        QLineEdit:focus {{ border: 2px solid {theme.focus}; padding: 0 5px; }}
        QAbstractSpinBox QLineEdit, QComboBox QLineEdit, QAbstractSpinBox QLineEdit:focus,
        QComboBox QLineEdit:focus {{ min-height: 0; padding: 0; border: 0; background: transparent; }}
        QLineEdit[hand="true"] {{ min-height: {HAND_PX}px; padding: 2px 10px; }}
        QLineEdit[hand="true"]:focus {{ border: 2px solid {theme.focus}; padding: 1px 9px; }}
        QPushButton[hand="true"][answer="true"] {{ text-align: left; }}
        InstrumentsPanel QPushButton:checked, CheckShelf QPushButton:checked {{ font-weight: bold;
            background: {theme.accent}; color: {theme.on_accent}; }}
        QPushButton:hover, CornerKey QToolButton:hover {{ background: {theme.track}; }}
        QPushButton:focus, CornerKey QToolButton:focus {{ border: 2px solid {theme.focus};
            padding: 1px 11px; }}
        QPushButton[primary="true"] {{ background: {theme.accent}; color: {theme.on_accent};
            font-weight: bold; min-width: 160px; }}
        QPushButton[primary="true"]:enabled, InstrumentsPanel QPushButton:checked,
        CheckShelf QPushButton:checked {{ border-color: {theme.accent}; }}
        QPushButton[primary="true"]:enabled:focus, InstrumentsPanel QPushButton:checked:focus,
        CheckShelf QPushButton:checked:focus {{ border: 3px solid {theme.text}; padding: 0 10px;
            background-clip: padding; }}
        QPushButton:disabled, QPushButton[primary="true"]:disabled {{ color: {theme.border};
            background: {theme.panel}; font-weight: normal; }}
    """


def _boxes(theme: Theme) -> str:
    return f"""
        QCheckBox {{ min-height: {TARGET_PX - 4}px; padding: 0 4px; spacing: 8px;
            border: 2px solid transparent; border-radius: 4px; }}
        QCheckBox:focus {{ border-color: {theme.focus}; }}
        QCheckBox::indicator {{ width: 15px; height: 15px; border: 2px solid {theme.border};
            border-radius: 3px; background: {theme.panel}; }}
        QCheckBox::indicator:checked {{ border-color: {theme.accent}; background: {theme.accent};
            image: url("{_image("tick", theme)}"); }}
        QSlider {{ min-height: {TARGET_PX - 4}px; border: 2px solid transparent; border-radius: 4px; }}
        QSlider::groove:horizontal {{ height: 4px; border-radius: 2px; background: {theme.border}; }}
        QSlider::sub-page:horizontal {{ border-radius: 2px; background: {theme.accent}; }}
        QSlider::handle:horizontal {{ width: 16px; margin: -6px 0; border-radius: 8px;
            background: {theme.accent}; }}
        QSlider:focus {{ border-color: {theme.focus}; }}
        QComboBox, QAbstractSpinBox {{ min-height: {TARGET_PX - 4}px; padding: 1px 6px;
            border: 1px solid {theme.border}; border-radius: 4px; background: {theme.panel};
            color: {theme.text}; placeholder-text-color: {theme.muted}; }}
        QComboBox:focus, QAbstractSpinBox:focus {{ border: 2px solid {theme.focus}; padding: 0 5px; }}
        QComboBox:focus:!editable {{ background: {theme.track}; color: {theme.text}; }}
        QComboBox:disabled, QAbstractSpinBox:disabled {{ color: {theme.border}; }}
        QComboBox::drop-down {{ border: 0; width: {TARGET_PX - 4}px; }}
        QAbstractSpinBox::up-button, QAbstractSpinBox::down-button {{ border: 0; width: {TARGET_PX - 4}px;
            subcontrol-origin: border; }}
        QAbstractSpinBox::up-button {{ subcontrol-position: top right; }}
        QAbstractSpinBox::down-button {{ subcontrol-position: bottom right; }}
        QComboBox::down-arrow, QAbstractSpinBox::down-arrow {{ width: 10px; height: 6px;
            image: url("{_image("down", theme)}"); }}
        QAbstractSpinBox::up-arrow {{ width: 10px; height: 6px; image: url("{_image("up", theme)}"); }}
    """


def _menus_and_tabs(theme: Theme) -> str:
    return f"""
        QMenuBar {{ background: {theme.window}; }}
        QMenuBar::item {{ padding: 5px 10px; }}
        QMenuBar::item:selected, QMenu::item:selected {{ background: {theme.accent};
            color: {theme.on_accent}; }}
        QMenu {{ background: {theme.panel}; border: 1px solid {theme.border}; }}
        QMenu::item {{ padding: 5px 28px 5px 26px; min-height: 18px; }}
        QMenu::item:disabled {{ color: {theme.border}; }}
        QMenu::separator {{ height: 1px; background: {theme.border}; margin: 4px 8px; }}
        QTabBar::tab {{ min-height: {TARGET_PX - 6}px; padding: 2px 8px; color: {theme.muted};
            border: 0; border-bottom: 3px solid transparent; }}
        QTabBar::tab:selected {{ color: {theme.text}; border-bottom-color: {theme.accent};
            font-weight: bold; }}
        QTabBar::tab:hover {{ background: {theme.track}; }}
        QTabBar::tab:selected:focus {{ border: 2px solid {theme.focus}; }}
        QTabWidget::pane {{ border: 0; }}
    """


def _lists_and_bars(theme: Theme) -> str:
    return f"""
        QAbstractItemView, QTextBrowser {{ background: {theme.panel}; color: {theme.text}; outline: 0;
            border: 1px solid {theme.track}; border-radius: 4px; padding: 1px; }}
        QTableView {{ padding-left: 5px; }}
        QAbstractItemView:focus, QTextBrowser:focus {{ border: 2px solid {theme.focus}; padding: 0; }}
        QTableView:focus {{ padding-left: 4px; }}
        QHeaderView {{ padding: 0; }}
        PlotCanvas {{ border: 2px solid {theme.panel}; }}
        PlotCanvas:focus {{ border-color: {theme.focus}; }}
        QHeaderView::section {{ background: {theme.window}; color: {theme.muted};
            border: 0; padding: 4px 3px; }}
        LossesInstrument QHeaderView::section {{ padding: 4px 16px 4px 2px; }}
        QProgressBar {{ border: 1px solid {theme.border}; border-radius: 4px; background: {theme.track};
            min-height: 20px; text-align: center; color: {theme.text}; }}
        BenchPage QProgressBar {{ min-height: 12px; max-height: 12px; }}
        QProgressBar::chunk {{ background: {theme.accent}; border-radius: 3px; }}
        QSplitter::handle {{ background: {theme.window}; }}
        QSplitter::handle:hover, QSplitter::handle:focus {{ background: {theme.border}; }}
        QScrollBar:vertical {{ width: {BAR_PX}px; background: transparent; }}
        QScrollBar:horizontal {{ height: {BAR_PX}px; background: transparent; }}
        QScrollBar::handle {{ background: {theme.border}; border-radius: 4px; margin: 3px; }}
        QScrollBar::handle:vertical {{ min-height: {TARGET_PX}px; }}
        QScrollBar::handle:horizontal {{ min-width: {TARGET_PX}px; }}
        QScrollBar::handle:hover, QScrollBar::handle:pressed {{ background: {theme.accent}; }}
        QScrollBar::add-line, QScrollBar::sub-line {{ width: 0; height: 0; }}
        QScrollBar::add-page, QScrollBar::sub-page {{ background: transparent; }}
        QAbstractScrollArea::corner {{ background: transparent; border: 0; }}
    """


def _labels_and_frames(theme: Theme) -> str:
    return f"""
        QScrollArea {{ border: 0; background: {theme.window}; }}
        QLabel[role="headline"] {{ font-weight: bold; }}
        QLabel[role="caution"] {{ color: {theme.caution}; font-weight: bold; }}
        QLabel[role="muted"] {{ color: {theme.muted}; }}
        QLabel[role="section"] {{ font-weight: bold; color: {theme.text}; }}
        QFrame[role="panel"] {{ background: {theme.panel}; border: 1px solid {theme.track};
            border-radius: 6px; }}
        QFrame[role="spine"] {{ background: {theme.panel}; border: 0;
            border-bottom: 1px solid {theme.border}; }}
        QFrame[role="trial"] {{ background: {theme.panel}; border: 2px dashed {theme.caution};
            border-radius: 6px; }}
        QLabel[role="key"] {{ font-weight: bold; }}
        QScrollArea[role="sheet"] {{ background: transparent; }}
        QScrollArea[role="sheet"]:focus {{ border: 1px solid {theme.focus}; }}
        QLabel[role="drop"] {{ color: {theme.muted}; border: 2px dashed {theme.border};
            border-radius: 6px; padding: 10px; }}
    """
