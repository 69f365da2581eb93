"""Pages shown while there is no verdict: start, reading, refusal."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import PurePath

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QProgressBar,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from ui.presenters.samples import Sample
from ui.state.window_state import LoadingPhase, Phase, ProgressPoint, WindowState
from ui.widgets.labels import make_button, make_label
from ui.widgets.styling import TARGET_PX

CARD_PX = 680
SAMPLE_PX = 190


def centred_card(page: QWidget) -> QVBoxLayout:
    """Give a page a card in the middle that scrolls when the window is small; returns the card's layout."""
    card = QFrame()
    card.setProperty("role", "panel")
    card.setMaximumWidth(CARD_PX)
    inside = QVBoxLayout(card)
    inside.setContentsMargins(24, 20, 24, 20)
    inside.setSpacing(10)
    holder = QWidget()
    row = QHBoxLayout(holder)
    row.addStretch(1)
    row.addWidget(card, 8, Qt.AlignmentFlag.AlignVCenter)
    row.addStretch(1)
    scroll = QScrollArea()
    scroll.setWidgetResizable(True)
    scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
    scroll.setWidget(holder)
    outside = QVBoxLayout(page)
    outside.setContentsMargins(0, 0, 0, 0)
    outside.addWidget(scroll)
    return inside


class StartPage(QWidget):
    """Nothing is open yet: open a log, drop one, or try a sample."""

    def __init__(
        self,
        samples: tuple[Sample, ...],
        *,
        on_open: Callable[[], object],
        on_sample: Callable[[str], object],
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        card = centred_card(self)
        card.addWidget(make_label("headline", self.tr("Which wheel end is at fault?"), larger_by=1.5))
        card.addWidget(
            make_label(
                "",
                self.tr(
                    "Open the recording of a road test with the four wheel speeds. The program says which "
                    "corner it suspects, why, and what to check next, before anything comes off the car."
                ),
            )
        )
        self.open_button = make_button(self.tr("Open a recording…"), on_open, primary=True)
        card.addWidget(self.open_button, 0, Qt.AlignmentFlag.AlignLeft)
        self.bench_button = QPushButton(self.tr("Begin at the car, without a recording"))
        self.bench_button.setAutoDefault(True)
        self.bench_button.setMinimumHeight(TARGET_PX)
        card.addWidget(self.bench_button, 0, Qt.AlignmentFlag.AlignLeft)
        card.addWidget(self._drop_area())
        self.note = make_label("")
        self.note.hide()
        card.addWidget(self.note)
        if samples:
            card.addWidget(make_label("section", self.tr("Or try a recording that comes with the program")))
        self.sample_buttons = [self._sample_button(sample, on_sample) for sample in samples]
        list_of_samples = QVBoxLayout()
        list_of_samples.setSpacing(4)
        card.addLayout(list_of_samples)
        for sample, button in zip(samples, self.sample_buttons, strict=True):
            row = QHBoxLayout()
            row.addWidget(button)
            row.addWidget(make_label("muted", sample.complaint), 1)
            list_of_samples.addLayout(row)

    def tell_databases(self, files: tuple[str, ...]) -> None:
        """Say that signal databases were taken, and for what."""
        names = ", ".join(PurePath(file).name for file in files)
        self.note.setText(self.tr("{} will be used for the recording that you open next.").format(names))
        self.note.show()

    def _drop_area(self) -> QLabel:
        area = make_label(
            "muted",
            self.tr(
                "or drop it anywhere on this window.\nTables (CSV and relatives) and CAN recordings; drop a "
                "signal database (DBC) together with it when it needs one. Several parts of one recording "
                "may be dropped at once."
            ),
        )
        area.setAlignment(Qt.AlignmentFlag.AlignCenter)
        area.setProperty("role", "drop")
        area.setMinimumHeight(86)
        return area

    def _sample_button(self, sample: Sample, on_sample: Callable[[str], object]) -> QWidget:
        button = make_button(sample.title, lambda: on_sample(sample.path))
        button.setAccessibleDescription(sample.complaint)
        button.setMinimumWidth(SAMPLE_PX)
        return button


class LoadingPage(QWidget):
    """A recording is being read and judged."""

    def __init__(
        self, state: WindowState, *, on_cancel: Callable[[], object], parent: QWidget | None = None
    ) -> None:
        super().__init__(parent)
        card = centred_card(self)
        self.title = make_label("headline", larger_by=1.3)
        self.stage = make_label("muted")
        self.bar = QProgressBar()
        self.bar.setRange(0, 1000)
        self.bar.setAccessibleName(self.tr("Progress"))
        self.cancel_button = make_button(self.tr("Stop (Esc)"), on_cancel)
        # The number stands below: on the bar it would lie half on one colour and half on the other.
        self.bar.setTextVisible(False)
        for widget in (self.title, self.bar, self.stage):
            card.addWidget(widget)
        card.addWidget(self.cancel_button, 0, Qt.AlignmentFlag.AlignLeft)
        state.phase_changed.subscribe(self._show_phase)
        state.progress_changed.subscribe(self._show_progress)

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, LoadingPhase):
            self.title.setText(self.tr("Reading {}").format(phase.order.title))
            self._show_progress(ProgressPoint(0.0, self.tr("Starting")))

    def _show_progress(self, point: ProgressPoint) -> None:
        self.bar.setValue(round(1000 * point.fraction))
        stage = point.stage[:1].upper() + point.stage[1:]
        self.stage.setText(f"{100 * point.fraction:.0f} % · {stage}")
