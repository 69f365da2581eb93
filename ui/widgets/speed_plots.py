"""Wheel speeds and divergences over time, with what the car did and where signal was lost."""

from __future__ import annotations

from pathlib import Path, PurePath
from typing import Final

from PySide6.QtCore import QEvent, Qt, QTimer
from PySide6.QtWidgets import QFrame, QVBoxLayout, QWidget

from triage.corners import Corner
from triage.errors import OutputError
from triage.signals.measurement import Span
from triage.texts import Text
from ui.presenters.comparison import Alignment, Comparison, compare, lay_over
from ui.presenters.plot_data import PlotData, build_plot_data, next_loss
from ui.presenters.plot_table import PlotTable, build_plot_table
from ui.presenters.time_view import SHORTEST_VIEW_S, kept_inside, moved, zoomed
from ui.presenters.traces import in_unit
from ui.presenters.wording import format_span
from ui.state.opening import Opened
from ui.state.time_cursor import TimeCursor
from ui.state.window_state import Highlight, Phase, ShowingPhase, WindowState
from ui.theme import Theme, theme_for
from ui.widgets.captioned_row import CaptionedRow
from ui.widgets.comparison_panel import ComparisonPanel
from ui.widgets.corner_key import CornerKey
from ui.widgets.cursor_lines import CursorLines
from ui.widgets.cursor_readout import CursorReadout
from ui.widgets.plot_canvas import PlotCanvas
from ui.widgets.plot_commands import Exported, PlotCommands
from ui.widgets.plot_items import BandStrip, LossMarks
from ui.widgets.speaking import say
from ui.widgets.wheel_plot import AXIS_GAP_PX, WheelPlot, colour_plot, fit_axes, set_up_plot

SETTLE_MS: Final = 120
"""The heights are fitted this long after the last move: fitting while panning would make the lines jump."""

STRIP_PX: Final = 24
LANES_PX: Final = 70
LINES_OF_PLOTS: Final = 20
"""Least height of speeds and divergences together, in lines of text: for titles and names of wheels."""
LINES_OF_TIME: Final = 3.2
"""Height of the numbers and the name of the time axis, in lines of text."""

LANE_NAMES: Final = ("FL", "FR", "RL", "RR", Text("all"))
AROUND_SPAN: Final = 0.75
"""Share of a span's length shown on either side after a jump, and at least two seconds."""


class SpeedPlots(QFrame):
    """Four plots on one time axis: manoeuvres, speeds, lost signal, divergence."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setProperty("role", "panel")
        self._state = state
        self._whole_s: Span = (0.0, 1.0)
        self._opened: Opened | None = None
        self._data: PlotData | None = None
        self._other: Opened | None = None
        self._compared: Comparison | None = None
        theme = theme_for(dark=state.dark)
        self.key = CornerKey(state)
        self.key_row = CaptionedRow(self.key)
        self.caption = self.key_row.caption
        self.canvas = PlotCanvas()
        self.strip = BandStrip(theme)
        self.losses = LossMarks(theme)
        self._build_plots(theme)
        self.time_cursor = TimeCursor()
        plots = (self.speed.plot, self._strip_plot, self._loss_plot, self.divergence.plot)
        self.cursor_lines = CursorLines(self.time_cursor, plots, theme)
        self.readout = CursorReadout(state, self.time_cursor)
        self.comparison = ComparisonPanel(
            on_align=self._align_comparison, on_end=lambda: self.set_comparison(None)
        )
        shown = Exported(picture=lambda: self.canvas, table=self._table, title=self._title)
        self.commands = PlotCommands(self.canvas, shown, self.key_row.tell)
        self._lay_out()
        self._settle = QTimer(self, singleShot=True, interval=SETTLE_MS)
        self._settle.timeout.connect(self.settle)
        self._connect(state)
        self._show_dark(state.dark)

    def _build_plots(self, theme: Theme) -> None:
        canvas = self.canvas
        canvas.ci.setSpacing(2)
        # The scene is as large as the view with its focus ring, which covers the right and lower edge.
        canvas.ci.setContentsMargins(2, 2, 14, 7)
        self._strip_plot = canvas.addPlot(row=0, col=0)
        self.speed = WheelPlot(
            canvas.addPlot(row=1, col=0),
            theme,
            axis_label=self._speed_label(),
            least_height=4.0,
            floor=0.0,
        )
        self._loss_plot = canvas.addPlot(row=2, col=0)
        self.divergence = WheelPlot(
            canvas.addPlot(row=3, col=0), theme, axis_label=self.tr("Divergence, %"), least_height=2.0
        )
        for plot in (self._strip_plot, self._loss_plot):
            set_up_plot(plot)
            plot.hideAxis("bottom")
        self._strip_plot.addItem(self.strip, ignoreBounds=True)
        self._loss_plot.addItem(self.losses, ignoreBounds=True)
        self._strip_plot.setYRange(0.0, 1.0, padding=0.0)
        self._loss_plot.setYRange(0.0, float(len(LANE_NAMES)), padding=0.0)
        self._name_rows()
        for plot in (self._strip_plot, self._loss_plot, self.divergence.plot):
            plot.setXLink(self.speed.plot)
        self.speed.plot.getAxis("bottom").setStyle(showValues=False)
        self.divergence.plot.setLabel("bottom", self.tr("Seconds of the recording"))

    def _speed_label(self) -> str:
        return self.tr("Speed, {}").format(self._state.speed_unit)

    def _name_rows(self) -> None:
        lanes = [(len(LANE_NAMES) - row - 0.5, say(name)) for row, name in enumerate(LANE_NAMES)]
        self._loss_plot.getAxis("left").setTicks([lanes])
        self._loss_plot.getAxis("left").setLabel(self.tr("Lost"))
        self._strip_plot.getAxis("left").setTicks([[(0.5, self.tr("Driving"))]])
        self._fit_rows()
        layout = self.canvas.ci.layout
        layout.setRowStretchFactor(1, 5)
        layout.setRowStretchFactor(3, 4)

    def _fit_rows(self) -> None:
        """Give the rows of fixed height the room that their names need."""
        line_px = self.canvas.fontMetrics().height()
        heights = (0, max(STRIP_PX, 1.3 * line_px)), (2, max(LANES_PX, 0.9 * line_px * len(LANE_NAMES)))
        for row, height_px in heights:
            self.canvas.ci.layout.setRowFixedHeight(row, height_px)
        self.canvas.setMinimumHeight(round(sum(px for _, px in heights) + LINES_OF_PLOTS * line_px))
        name_px = self.canvas.fontMetrics().horizontalAdvance(self.tr("Divergence, %"))
        self.canvas.ci.layout.setRowMinimumHeight(3, name_px + LINES_OF_TIME * line_px)
        # The name of the strip stands where the others have their numbers.
        strip_px = self.canvas.fontMetrics().horizontalAdvance(self.tr("Driving")) + AXIS_GAP_PX
        for plot in (self._strip_plot, self.speed.plot, self._loss_plot, self.divergence.plot):
            fit_axes(plot, self.canvas.font(), least_px=strip_px)
        for wheels in (self.speed, self.divergence):
            wheels.set_font(self.canvas.font())

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802 - Qt's name
        """Follow the size of the texts."""
        super().changeEvent(event)
        # The first events come before there is a canvas.
        if event.type() in (QEvent.Type.FontChange, QEvent.Type.StyleChange) and hasattr(self, "comparison"):
            self._fit_rows()

    def _lay_out(self) -> None:
        self.canvas.setAccessibleName(self.tr("Wheel speeds and divergences over time"))
        self.canvas.setAccessibleDescription(
            self.tr(
                "Arrows move along the time, plus and minus zoom, Home shows the whole recording. "
                "Comma and full stop move the cursor by a sample, with Shift by ten; M marks its place, "
                "Delete removes it. N and Shift N go to the drop-outs of the wheel looked at."
            )
        )
        self.canvas.setFocusPolicy(Qt.FocusPolicy.StrongFocus)
        self.canvas.setMinimumHeight(340)
        column = QVBoxLayout(self)
        column.setContentsMargins(8, 6, 8, 6)
        column.setSpacing(4)
        column.addWidget(self.key_row)
        column.addWidget(self.canvas, 1)
        column.addWidget(self.readout)
        column.addWidget(self.comparison)

    def _connect(self, state: WindowState) -> None:
        self.canvas.moved.connect(self.move_view)
        self.canvas.zoomed.connect(self.zoom_view)
        self.canvas.whole_wanted.connect(self.show_whole)
        self.canvas.stepped.connect(self._step_cursor)
        self.canvas.mark_wanted.connect(self.time_cursor.mark_here)
        self.canvas.clearing_wanted.connect(self.time_cursor.clear)
        self.canvas.loss_wanted.connect(self.show_next_loss)
        self.canvas.copy_wanted.connect(self.commands.copy_picture)
        self.canvas.menu_wanted.connect(self.commands.show_menu)
        self.speed.plot.getViewBox().sigXRangeChanged.connect(lambda *_: self._settle.start())
        self.speed.plot.getViewBox().sigResized.connect(lambda *_: self._settle.start())
        state.phase_changed.subscribe(self._show_phase)
        state.highlight_changed.subscribe(self._show_highlight)
        state.hidden_corners_changed.subscribe(self._show_hidden)
        state.dark_changed.subscribe(self._show_dark)
        state.speed_unit_changed.subscribe(self._show_unit)
        state.seconds_wanted.subscribe(self._show_wanted)
        state.moment_wanted.subscribe(self.time_cursor.place)

    @property
    def view_s(self) -> Span:
        """The seconds in view."""
        begin_s, end_s = self.speed.plot.getViewBox().viewRange()[0]
        return (begin_s, end_s)

    def show_seconds(self, begin_s: float, end_s: float) -> None:
        """Show these seconds, kept inside the recording."""
        self.speed.plot.setXRange(*kept_inside((begin_s, end_s), self._whole_s), padding=0.0)

    def show_whole(self) -> None:
        """Show the whole recording."""
        self.show_seconds(*self._whole_s)

    def move_view(self, share: float) -> None:
        """Move by a share of what is in view; positive is later."""
        self.show_seconds(*moved(self.view_s, share))

    def zoom_view(self, factor: float) -> None:
        """Show ``factor`` times as many seconds around the same middle."""
        self.show_seconds(*zoomed(self.view_s, factor))

    def show_next_loss(self, step: int) -> None:
        """Show the next drop-out of the wheel looked at (1), or the one before (-1), under the cursor."""
        if self._data is None:
            return
        time_s = self.view_s[0] if self.time_cursor.time_s is None else self.time_cursor.time_s
        span = next_loss(self._data, self._state.corner, time_s, step=step)
        if span is None:
            self.key_row.tell(self._no_loss_text(step))
            return
        self.time_cursor.place(span[0])
        self._show_wanted(span)

    def _no_loss_text(self, step: int) -> str:
        text = self.tr("{}: no drop-out after this") if step > 0 else self.tr("{}: no drop-out before this")
        return text.format(self._state.corner)

    def _step_cursor(self, samples: int) -> None:
        begin_s, end_s = self.view_s
        self.time_cursor.step(samples, otherwise_s=0.5 * (begin_s + end_s))
        time_s = self.time_cursor.time_s
        if time_s is not None and not begin_s <= time_s <= end_s:
            half_s = 0.5 * (end_s - begin_s)
            self.show_seconds(time_s - half_s, time_s + half_s)

    def set_comparison(
        self, other: Opened | None, by: Alignment = "distance", *, found: Comparison | None = None
    ) -> None:
        """Lay another recording over this one, by way driven or time since first moving; None ends it.

        ``found`` is what a worker has worked out already; else it is worked out here.
        """
        self._other = other
        if other is None or self._opened is None:
            self._show_comparison(None)
        elif found is not None:
            self._show_comparison(found)
        else:
            name = PurePath(other.result.log.file).name
            self._show_comparison(compare(self._opened.result, other.result, name, by=by))

    def _align_comparison(self, by: Alignment) -> None:
        found = self._compared
        if found is not None and self._other is not None and self._opened is not None:
            this, other = self._opened.result, self._other.result
            self._show_comparison(lay_over(this, other, found.name, by=by, wheels=found.wheels))

    def _show_comparison(self, found: Comparison | None) -> None:
        self._compared = found
        self.comparison.show_comparison(found)
        self._show_compared()
        self.settle()

    def _show_compared(self) -> None:
        found = self._compared
        self.speed.set_compared(in_unit(found.speed, self._state.speed_unit) if found else ())
        self.divergence.set_compared(found.divergence if found else ())

    def _table(self) -> PlotTable:
        if self._data is None:
            raise OutputError("there is nothing to save", hint="Open a recording first.")
        return build_plot_table(self._data, self.view_s, self._state.speed_unit)

    def _title(self) -> str:
        return "" if self._opened is None else PurePath(self._opened.result.log.file).name

    def copy_picture(self) -> None:
        """Put what is seen on the clipboard, as pixels and as lines."""
        self.commands.copy_picture()

    def save_picture(self, path: str | Path) -> None:
        """Write what is seen to a file, by its suffix as PNG or SVG; raises :class:`OutputError`."""
        self.commands.save_picture(path)

    def save_data(self, path: str | Path) -> None:
        """Write the samples in view to a file, as comma-separated values; raises :class:`OutputError`."""
        self.commands.save_data(path)

    def settle(self) -> None:
        """Fit the heights to what is in view and put the labels beside the lines."""
        self._settle.stop()
        for plot in (self.speed, self.divergence):
            plot.fit_height()
            plot.place_labels()

    def _show_phase(self, phase: Phase) -> None:
        if isinstance(phase, ShowingPhase):
            self._show_opened(phase.opened)

    def _show_opened(self, opened: Opened) -> None:
        same = self._opened is not None and opened.result.log is self._opened.result.log
        self._opened = opened
        if same:
            # Other answers to the same recording: who looks at a place of it wants to stay there.
            self._show_highlight(None)
            return
        self.set_comparison(None)
        self._show_data(opened.plot_data or build_plot_data(opened.result))

    def _show_data(self, data: PlotData) -> None:
        self._data = data
        self.speed.set_lines(in_unit(data.speed, self._state.speed_unit))
        self.divergence.set_lines(data.divergence)
        self.strip.set_bands(say(data.bands))
        self.losses.set_lanes(data.lanes)
        first, last = data.whole_s
        self._whole_s = (first, max(last, first + SHORTEST_VIEW_S))
        self.speed.plot.setLimits(xMin=first, xMax=self._whole_s[1], minXRange=SHORTEST_VIEW_S)
        self.time_cursor.start_over(data.conditioned.time_s)
        self.readout.set_data(data)
        self._show_highlight(None)
        self.show_whole()
        self.settle()

    def _show_highlight(self, highlight: Highlight | None) -> None:
        for plot in (self.speed, self.divergence):
            plot.veil.set_highlight(highlight)
        self.key_row.tell(self._caption(highlight))
        if highlight is not None:
            self._show_wanted(highlight.span)

    def _caption(self, highlight: Highlight | None) -> str:
        if highlight is None:
            return ""
        place = f"{highlight.corner}, {format_span(highlight.span)}"
        if len(highlight.spans) == 1:
            return place
        return self.tr("{} – place {} of {}").format(place, highlight.index + 1, len(highlight.spans))

    def _show_unit(self, unit: str) -> None:
        self.speed.set_axis_label(self._speed_label())
        if self._data is not None:
            self.speed.set_lines(in_unit(self._data.speed, unit))
        self._show_compared()
        self.settle()

    def _show_wanted(self, span: Span) -> None:
        begin_s, end_s = span
        around_s = max(AROUND_SPAN * (end_s - begin_s), 2.0)
        self.show_seconds(begin_s - around_s, end_s + around_s)
        self.settle()

    def _show_hidden(self, hidden: frozenset[Corner]) -> None:
        for plot in (self.speed, self.divergence):
            plot.set_hidden(hidden)
        self.settle()

    def _show_dark(self, dark: bool) -> None:
        theme = theme_for(dark=dark)
        self.canvas.setBackground(theme.panel)
        for plot in (self._strip_plot, self._loss_plot):
            colour_plot(plot, theme)
            plot.showGrid(x=False, y=False)
        for part in (self.speed, self.divergence, self.strip, self.losses, self.cursor_lines):
            part.set_theme(theme)
        self.divergence.plot.setLabel("bottom", self.tr("Seconds of the recording"), color=theme.text)
        self._loss_plot.getAxis("left").setLabel(self.tr("Lost"), color=theme.text)
