"""The one place that knows what the window shows; panels listen to it and never to each other."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Final, Literal

from triage.corners import CORNERS, Corner
from ui.state.topic import Topic

if TYPE_CHECKING:
    from triage.evidence.hypotheses import Finding
    from triage.signals.measurement import Span
    from ui.state.bench import Bench
    from ui.state.opening import Opened, OpenOrder


@dataclass(frozen=True, slots=True)
class StartPhase:
    """Nothing is open."""


@dataclass(frozen=True, slots=True)
class LoadingPhase:
    """A log is being read and judged."""

    order: OpenOrder


@dataclass(frozen=True, slots=True)
class RefusedPhase:
    """The log could not be used."""

    order: OpenOrder
    error: Exception


@dataclass(frozen=True, slots=True)
class ShowingPhase:
    """A verdict is on the screen."""

    order: OpenOrder
    opened: Opened


@dataclass(frozen=True, slots=True)
class AskingPhase:
    """The user wants to say how a recording is to be read.

    Attributes
    ----------
    candidates : tuple of str
        Signals that may be assigned to wheels.
    found : mapping of corner to str
        The signals that were taken.
    """

    order: OpenOrder
    candidates: tuple[str, ...]
    found: Mapping[Corner, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class BenchPhase:
    """Questions are asked at the car; ``before`` is what to go back to."""

    bench: Bench
    before: StartPhase | ShowingPhase


@dataclass(frozen=True, slots=True)
class ExercisePhase:
    """A trainee works on an exercise; ``before`` is what to go back to."""

    before: StartPhase | ShowingPhase


Phase = StartPhase | LoadingPhase | RefusedPhase | ShowingPhase | AskingPhase | BenchPhase | ExercisePhase


@dataclass(frozen=True, slots=True)
class ProgressPoint:
    """Share done, 0 to 1, and what is being done."""

    fraction: float
    stage: str


@dataclass(frozen=True, slots=True)
class Highlight:
    """The seconds of the log that a finding rests on, and the one looked at now."""

    finding_id: str
    corner: str
    spans: tuple[Span, ...]
    index: int = 0

    @property
    def span(self) -> Span:
        """The span looked at now."""
        return self.spans[self.index]


@dataclass(frozen=True, slots=True)
class Trial:
    """An answer that is tried and not recorded.

    Attributes
    ----------
    told : str
        Check and answer in words.
    opened : Opened
        The recording with the verdict as it would be.
    moved : str
        What becomes of the cause that stands first without it.
    """

    told: str
    opened: Opened
    moved: str


Page = Literal["road-test", "verdict"]
"""The two sides of a recording: what was driven, and what it means."""

SPEED_UNITS: Final = ("km/h", "mph", "m/s")
"""Units in which the user may read speeds; keys of :data:`triage.units.LINEAR_SPEED_MPS`."""


class WindowState:
    """Everything the panels share. All methods are for the GUI thread.

    Attributes
    ----------
    corner : str
        The wheel looked at: that of the chosen hypothesis until the user takes another.
    page : str
        Which side of the recording is shown.
    speed_unit : str
        One of :data:`SPEED_UNITS`.
    seconds_wanted : Topic
        Told the seconds to show when something points at a place of the recording.
    moment_wanted : Topic
        Told the second of the recording to point at, without moving what is in view.
    trial : Trial or None
        The answer that is tried; ``opened`` is what it makes of the recording.
    phase_coming : Topic
        Told the phase before it is entered: for what must be there when the others hear of it.
    phase_shown : Topic
        Told the phase when all who show it have heard of it.
    verdict_changed : Topic
        Told when another verdict on the same recording is to be shown: an answer is tried or taken back.
    """

    def __init__(self) -> None:
        self.phase: Phase = StartPhase()
        self.choice = 0
        self.highlight: Highlight | None = None
        self.hidden_corners: frozenset[Corner] = frozenset()
        self.dark = False
        self.corner: Corner = CORNERS[0]
        self.page: Page = "verdict"
        self.speed_unit: str = SPEED_UNITS[0]
        self.trial: Trial | None = None
        self.verdict_changed: Topic[Opened] = Topic()
        self.corner_changed: Topic[Corner] = Topic()
        self.page_changed: Topic[Page] = Topic()
        self.speed_unit_changed: Topic[str] = Topic()
        self.seconds_wanted: Topic[Span] = Topic()
        self.moment_wanted: Topic[float] = Topic()
        self.phase_coming: Topic[Phase] = Topic()
        self.phase_changed: Topic[Phase] = Topic()
        self.phase_shown: Topic[Phase] = Topic()
        self.progress_changed: Topic[ProgressPoint] = Topic()
        self.choice_changed: Topic[int] = Topic()
        self.highlight_changed: Topic[Highlight | None] = Topic()
        self.hidden_corners_changed: Topic[frozenset[Corner]] = Topic()
        self.dark_changed: Topic[bool] = Topic()

    @property
    def opened(self) -> Opened | None:
        """The log on the screen with the verdict shown, None when there is none."""
        if not isinstance(self.phase, ShowingPhase):
            return None
        return self.phase.opened if self.trial is None else self.trial.opened

    def enter(self, phase: Phase) -> None:
        """Go to another phase; choice and highlight start anew, and nothing is tried."""
        self.phase_coming.tell(phase)
        self.phase = phase
        self.trial = None
        self.choice = 0
        self.highlight = None
        self.corner = self._corner_of_choice() or CORNERS[0]
        self.phase_changed.tell(phase)
        if self.phase is phase:  # a listener may have gone on to another
            self.phase_shown.tell(phase)

    def report(self, point: ProgressPoint) -> None:
        """Pass progress on; ignored unless a log is being read."""
        if isinstance(self.phase, LoadingPhase):
            self.progress_changed.tell(point)

    def choose(self, rank: int) -> None:
        """Choose a line of the ranking; out of range is ignored."""
        opened = self.opened
        if opened is None or not 0 <= rank < len(opened.result.posterior.ranking) or rank == self.choice:
            return
        self.choice = rank
        self.choice_changed.tell(rank)
        self.choose_corner(self._corner_of_choice() or self.corner)

    def try_out(self, trial: Trial | None) -> None:
        """Show what an answer would make of the recording, or the verdict as it stands (None)."""
        if isinstance(self.phase, ShowingPhase) and trial is not self.trial:
            self.trial = trial
            self.choice = 0
            self.verdict_changed.tell(self.phase.opened if trial is None else trial.opened)
            if self.highlight is not None and self._finding(self.highlight.finding_id) is None:
                self.clear_highlight()

    def choose_corner(self, corner: Corner) -> None:
        """Look at another wheel."""
        if corner != self.corner:
            self.corner = corner
            self.corner_changed.tell(corner)

    def show_page(self, page: Page) -> None:
        """Turn to the road test or to the verdict."""
        if page != self.page:
            self.page = page
            self.page_changed.tell(page)

    def set_speed_unit(self, unit: str) -> None:
        """Read speeds in another unit."""
        if unit in SPEED_UNITS and unit != self.speed_unit:
            self.speed_unit = unit
            self.speed_unit_changed.tell(unit)

    def show_seconds(self, span: Span) -> None:
        """Bring these seconds of the recording into view."""
        self.seconds_wanted.tell(span)

    def point_at(self, time_s: float) -> None:
        """Put the cursor of the plots to a second of the recording."""
        self.moment_wanted.tell(time_s)

    def show_finding(self, finding_id: str) -> None:
        """Highlight the seconds of a finding; shown again, go on to its next place."""
        current = self.highlight
        if current is not None and current.finding_id == finding_id:
            self.step_highlight(+1)
            return
        finding = self._finding(finding_id)
        if finding is None or not finding.spans:
            self._set_highlight(None)
            return
        self._set_highlight(Highlight(finding.id, finding.corner, finding.spans))

    def step_highlight(self, step: int) -> None:
        """Go to another place of the same finding, round and round."""
        if self.highlight is not None:
            index = (self.highlight.index + step) % len(self.highlight.spans)
            self._set_highlight(replace(self.highlight, index=index))

    def clear_highlight(self) -> None:
        """Show the plots without any highlight."""
        if self.highlight is not None:
            self._set_highlight(None)

    def set_corner_hidden(self, corner: Corner, hidden: bool) -> None:
        """Hide or show the lines of one wheel."""
        corners = self.hidden_corners | {corner} if hidden else self.hidden_corners - {corner}
        if corners != self.hidden_corners:
            self.hidden_corners = corners
            self.hidden_corners_changed.tell(corners)

    def set_dark(self, dark: bool) -> None:
        """Change to the dark or the light colours."""
        if dark != self.dark:
            self.dark = dark
            self.dark_changed.tell(dark)

    def _set_highlight(self, highlight: Highlight | None) -> None:
        self.highlight = highlight
        self.highlight_changed.tell(highlight)

    def _corner_of_choice(self) -> Corner | None:
        if self.opened is None or not self.opened.result.posterior.ranking:
            return None
        corner = self.opened.result.posterior.ranking[self.choice].hypothesis.corner
        return corner if corner in CORNERS else None

    def _finding(self, finding_id: str) -> Finding | None:
        findings = () if self.opened is None else self.opened.result.findings
        return next((finding for finding in findings if finding.id == finding_id), None)
