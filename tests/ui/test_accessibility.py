"""WCAG 2.2 over all pages: names (4.1.2), targets (2.5.8, 2.5.5), visible focus (2.4.7), contrast (1.4.3)."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QPalette
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QAbstractScrollArea,
    QAbstractSpinBox,
    QApplication,
    QCheckBox,
    QComboBox,
    QGroupBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QListWidget,
    QScrollBar,
    QSlider,
    QSpinBox,
    QTabBar,
    QTabWidget,
    QWidget,
)
from pytestqt.qtbot import QtBot

from triage.corners import CORNERS
from triage.errors import DamagedLog
from triage.exercises.exercise import Wish
from ui.appearance import scale_texts
from ui.exercising import from_wish
from ui.state.exercise import Debriefing
from ui.state.opening import OpenOrder
from ui.state.window_state import LoadingPhase, RefusedPhase
from ui.theme import DARK, LIGHT, Theme, contrast_ratio
from ui.widgets.experience_panel import ExperiencePanel
from ui.widgets.ring_dial import RingDial
from ui.widgets.styling import HAND_PX, LINE_STYLES, apply_theme, build_style_sheet
from ui.window import MainWindow

pytestmark = pytest.mark.qt_log_ignore("propagateSizeHints")
THEMES = pytest.mark.parametrize("theme", [LIGHT, DARK], ids=lambda theme: theme.name)
SMALLEST_PX = 24
CONTROLS = (QAbstractButton, QAbstractItemView, QAbstractSpinBox, QComboBox, QLineEdit, QSlider, QTabBar)
ORDER = OpenOrder(("/logs/van 3.csv",))


def controls_in(root: QWidget) -> Iterator[QWidget]:
    """Give what a user can reach: the parts that Qt builds a control of belong to that control."""
    for one in root.findChildren(QWidget):
        reached = isinstance(one, CONTROLS) or bool(one.focusPolicy() & Qt.FocusPolicy.TabFocus)
        if not (reached and one.isVisible() and one.isEnabled()):
            continue
        parent = one.parentWidget()
        part = isinstance(parent, QAbstractSpinBox | QComboBox | QTabBar | QAbstractItemView)
        viewport = isinstance(parent, QAbstractScrollArea) and parent.viewport() is one
        if not (part or viewport or isinstance(one, QHeaderView)):
            yield one


def name_of(control: QWidget) -> str:
    """Return what a screen reader says."""
    own = control.text() if isinstance(control, QAbstractButton) else ""
    labels = control.window().findChildren(QLabel)
    buddies = [label.text() for label in labels if label.buddy() is control]
    return control.accessibleName() or own or " ".join(buddies)


def faults_in(root: QWidget, smallest_px: int = SMALLEST_PX) -> list[str]:
    """Return what is wrong with the controls on the screen; there must be some."""
    found = list(controls_in(root))
    assert found
    faults = []
    for one in found:
        what = f"{type(one).__name__} {name_of(one)!r} in {type(one.parent()).__name__}"
        if not name_of(one).strip():
            faults.append(f"{what} has no name")
        least_px = smallest_px if isinstance(one, QAbstractButton | QLineEdit) else SMALLEST_PX
        if isinstance(one, QCheckBox):
            least_px = SMALLEST_PX
        if min(one.width(), one.height()) < least_px:
            faults.append(f"{what} is {one.width()} x {one.height()}")
    return faults


@pytest.fixture
def window(with_rules: MainWindow, qtbot: QtBot) -> MainWindow:
    apply_theme(QApplication.instance(), LIGHT)
    with_rules.resize(1280, 720)
    qtbot.wait(1)
    return with_rules


def test_verdict_and_road_test_with_all_tabs(window: MainWindow, qtbot: QtBot) -> None:
    for page in ("verdict", "road-test"):
        window.state.show_page(page)
        shown = [tabs for tabs in window.result_page.findChildren(QTabWidget) if tabs.isVisible()]
        assert shown
        for tabs in shown:
            for index in range(tabs.count()):
                tabs.setCurrentIndex(index)
                qtbot.wait(1)
                assert faults_in(window) == [], (page, tabs.tabText(index))


def test_side_sheets_and_a_tried_answer(window: MainWindow, qtbot: QtBot) -> None:
    for turn in (window.sheets.turn_settings, window.sheets.turn_keys, window.sheets.turn_what_if):
        turn()
        qtbot.wait(1)
        assert faults_in(window) == [], window.sheets.panel.sheet
    window.sheets.try_out("rock-wheel", "clear", "RR")
    qtbot.wait(1)
    assert faults_in(window) == []


def test_start_loading_refusal_and_question(window: MainWindow, qtbot: QtBot) -> None:
    window.ask_how_to_read()
    qtbot.wait(1)
    assert faults_in(window) == []
    window.state.enter(RefusedPhase(ORDER, DamagedLog("no wheel in it", hint="Choose another.")))
    qtbot.wait(1)
    assert faults_in(window) == []
    window.state.enter(LoadingPhase(ORDER))
    qtbot.wait(1)
    assert faults_in(window) == []
    window.close_log()
    qtbot.wait(1)
    assert faults_in(window) == []


def test_bench(window: MainWindow, qtbot: QtBot) -> None:
    window.bench.go_in()
    qtbot.wait(1)
    assert faults_in(window) == []
    assert faults_in(window.bench_page, HAND_PX) == []


def test_exercise(window: MainWindow, qtbot: QtBot) -> None:
    window.go_to("exercise")
    page = window.exercise.page
    assert page is not None
    qtbot.wait(1)
    assert faults_in(window) == []
    with qtbot.waitSignal(page.runner.finished, timeout=20_000):
        page.begin(from_wish(Wish(7, "encoder-debris", "RL", 0.6, 60.0)))
    qtbot.wait(1)
    assert faults_in(window) == []
    assert faults_in(page.work, HAND_PX) == []
    with qtbot.waitSignal(page.runner.finished, timeout=20_000):
        page.hand_in("RL", "encoder-damage", 0.7)
    qtbot.wait(1)
    assert isinstance(page.desk.stage, Debriefing)
    assert faults_in(window) == []


def test_cars_of_the_workshop(window: MainWindow, qtbot: QtBot) -> None:
    window.sheets.turn_experience()
    qtbot.wait(1)
    assert faults_in(window) == []
    panel = window.sheets.panel.findChild(ExperiencePanel)
    assert panel is not None
    panel.group.setCurrentText("vans")
    panel.cause.setCurrentIndex(panel.cause.findData("air-gap"))
    panel.keep()
    panel.cars.setCurrentRow(0)
    qtbot.wait(1)
    assert panel.cars.count() == 1
    assert faults_in(window) == []


def test_a_nameless_and_a_small_control_are_told(qtbot: QtBot) -> None:
    box = QGroupBox()
    qtbot.addWidget(box)
    QListWidget(box).setFixedSize(90, 20)
    box.show()
    assert [fault.rpartition(" in ")[2] for fault in faults_in(box)] == [
        "QGroupBox has no name",
        "QGroupBox is 90 x 20",
    ]


@pytest.mark.parametrize(
    "kind",
    [
        *("QPushButton", "QToolButton", "QCheckBox", "QSlider", "QLineEdit", "QAbstractSpinBox", "QComboBox"),
        *("QTabBar", "QAbstractItemView", "QTextBrowser", "QScrollArea", "PlotCanvas"),
    ],
)
def test_focus_is_drawn_for_each_kind(kind: str) -> None:
    assert re.search(rf"{kind}[^,{{\s]*:focus", build_style_sheet(LIGHT)), kind


@THEMES
def test_texts_of_the_style_sheet_on_their_own_grounds(theme: Theme) -> None:
    rules = re.findall(r"([^{}]+)\{([^}]*)\}", build_style_sheet(theme))
    pairs = 0
    for selector, body in rules:
        colours = dict(re.findall(r"(?:^|;|\s)(color|background):\s*(#[0-9a-f]{6})", body))
        if len(colours) == 2 and ":disabled" not in selector:
            pairs += 1
            assert contrast_ratio(colours["color"], colours["background"]) >= 4.5, selector.strip()
    assert pairs > 10


@THEMES
def test_texts_under_the_mouse_and_edges_of_controls(theme: Theme) -> None:
    assert contrast_ratio(theme.muted, theme.track) >= 4.5
    for ground in (theme.window, theme.panel):
        for edge in (theme.border, theme.accent, theme.focus):
            assert contrast_ratio(edge, ground) >= 3.0
    # The tick is drawn in this colour.
    assert contrast_ratio(theme.on_accent, theme.accent) >= 4.5


@THEMES
def test_empty_check_box_has_an_edge(theme: Theme, qtbot: QtBot) -> None:
    apply_theme(QApplication.instance(), theme)
    box = QCheckBox()
    qtbot.addWidget(box)
    box.show()
    picture = box.grab().toImage()
    middle = picture.height() // 2
    seen = {picture.pixelColor(x, middle).name() for x in range(picture.width())}
    assert max(contrast_ratio(colour, theme.window) for colour in seen) >= 3.0
    box.setChecked(True)
    assert theme.on_accent in {
        box.grab().toImage().pixelColor(x, y).name()
        for x in range(picture.width())
        for y in range(picture.height())
    }, "the tick is missing"


@THEMES
@pytest.mark.parametrize("kind", [QComboBox, QSpinBox, QLineEdit])
def test_fields_have_edges_and_choices_an_arrow(theme: Theme, kind: type[QWidget], qtbot: QtBot) -> None:
    apply_theme(QApplication.instance(), theme)
    field = kind()
    qtbot.addWidget(field)
    field.resize(120, 40)
    field.show()
    field.clearFocus()
    picture = field.grab().toImage()
    middle = picture.height() // 2
    edges = [
        {picture.pixelColor(x, middle).name() for x in range(first, first + 3)}
        for first in (0, picture.width() - 3)
    ]
    for seen in edges:
        for ground in (theme.window, theme.panel):
            assert max(contrast_ratio(colour, ground) for colour in seen) >= 3.0
    if kind is not QLineEdit:
        right = {
            picture.pixelColor(x, y).name()
            for x in range(picture.width() - 20, picture.width() - 3)
            for y in range(4, picture.height() - 4)
        }
        assert max(contrast_ratio(colour, theme.panel) for colour in right) >= 4.5, "the arrow is missing"


@THEMES
def test_the_handle_of_a_scroll_bar_can_be_seen(theme: Theme, qtbot: QtBot) -> None:
    """Of its own accord Qt draws it dark on dark."""
    apply_theme(QApplication.instance(), theme)
    bar = QScrollBar(Qt.Orientation.Vertical)
    qtbot.addWidget(bar)
    bar.setRange(0, 100)
    bar.setPageStep(50)
    bar.resize(bar.sizeHint().width(), 200)
    bar.show()
    picture = bar.grab().toImage()
    column = [picture.pixelColor(picture.width() // 2, y).name() for y in range(picture.height())]
    handle, empty = column[len(column) // 5], column[-5]
    assert contrast_ratio(handle, empty) >= 3.0


@THEMES
def test_what_stands_in_empty_fields_can_be_read(theme: Theme, qtbot: QtBot) -> None:
    apply_theme(QApplication.instance(), theme)
    line, choice = QLineEdit(), QComboBox()
    choice.setEditable(True)
    for widget, field in ((line, line), (choice, choice.lineEdit())):
        qtbot.addWidget(widget)
        field.setPlaceholderText("name")
        widget.show()
        # Of its own accord Qt takes the colour of the text, half transparent.
        shown = field.palette().color(QPalette.ColorRole.PlaceholderText)
        assert shown.alpha() == 255
        assert contrast_ratio(shown.name(), theme.panel) >= 4.5


def test_wheels_differ_without_colour() -> None:
    assert len({LINE_STYLES[corner] for corner in CORNERS}) == len(CORNERS)


def test_rows_and_ring_grow_with_the_texts(window: MainWindow, qtbot: QtBot) -> None:
    window.state.show_page("road-test")
    plots, dial = window.result_page.plots, window.findChild(RingDial)
    application = QApplication.instance()

    def sizes() -> tuple[float, float, int]:
        rows = plots.canvas.ci.layout
        return rows.rowMinimumHeight(0), rows.rowMinimumHeight(2), dial.minimumSizeHint().width()

    usual = sizes()
    scale_texts(application, 2.0)
    try:
        qtbot.wait(1)
        line_px = plots.canvas.fontMetrics().height()
        strip_px, lanes_px, _ = large = sizes()
        assert strip_px >= line_px
        assert lanes_px >= 5 * 0.8 * line_px
        assert all(one > other for one, other in zip(large, usual, strict=True))
    finally:
        scale_texts(application, 0.5)
    qtbot.wait(1)
    assert sizes() == usual
