"""The sheets of the side panel: settings, map of keys, trying an answer, the workshop's experience."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from datetime import date
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication
from PySide6.QtWidgets import QWidget

from triage.corners import Corner
from triage.errors import TriageError
from triage.texts import error_words
from ui.keeping import Keeping
from ui.presenters.keys import KeyLine, group_keys
from ui.state.window_state import ShowingPhase, WindowState
from ui.widgets.key_panel import KeyPanel
from ui.widgets.settings_panel import SettingsPanel
from ui.widgets.side_panel import SidePanel
from ui.widgets.what_if_panel import WhatIfPanel

if TYPE_CHECKING:
    from triage.evidence.hypotheses import Finding
    from ui.widgets.experience_panel import ExperiencePanel


class SideSheets:
    """Opens and closes the sheets; each is asked for by the command that also puts it away."""

    def __init__(
        self, state: WindowState, keeping: Keeping, key_lines: Callable[[], Iterable[KeyLine]]
    ) -> None:
        self._state = state
        self._key_lines = key_lines
        self.panel = SidePanel()
        place = "" if keeping.folder is None else str(keeping.folder.settings)
        self.settings = SettingsPanel(keeping.preferences, place=place)
        self.keys = KeyPanel()
        self.what_if = WhatIfPanel(state, on_try=self.try_out)
        self.experience: ExperiencePanel | None = None
        for sheet, title in (
            (self.settings, _tr("Settings")),
            (self.keys, _tr("Keys")),
            (self.what_if, _tr("What if")),
        ):
            self.panel.add_sheet(sheet, title)
        keeping.told.subscribe(self.settings.tell)
        self.settings.tell(keeping.note)
        state.phase_changed.subscribe(lambda _phase: self._leave_what_if())

    def turn_settings(self) -> None:
        """Open the settings, or close them."""
        if self._opens(self.settings):
            self.settings.focus_first()

    def turn_keys(self) -> None:
        """Open the map of keys, or close it."""
        self.keys.show_groups(group_keys(self._key_lines()))
        self._opens(self.keys)

    def turn_what_if(self) -> None:
        """Open the choice of an answer to try, or close it."""
        phase = self._state.phase
        if not isinstance(phase, ShowingPhase):
            return
        from ui.trying import trial_choices  # noqa: PLC0415 - with the walk and its planner

        rulebook = phase.opened.rulebook
        if rulebook is not None:
            checks = phase.opened.result.next_checks
            self.what_if.offer(trial_choices(rulebook), checks[0].check if checks else "")
        if self._opens(self.what_if):
            self.what_if.focus_first()

    def turn_experience(self) -> None:
        """Open what cars of this workshop really had, or close it."""
        if self.experience is None:
            self.experience = self._made_experience()
            self.panel.add_sheet(self.experience, _tr("Cars of this workshop"))
        self.experience.refresh()
        if self._opens(self.experience):
            self.experience.focus_first()

    def _made_experience(self) -> ExperiencePanel:
        # Made when it is asked for: the start page waits for no rule book.
        from triage.evidence.rulebook import load_rulebook  # noqa: PLC0415
        from triage.experience.command import experience_file  # noqa: PLC0415
        from ui.state.experience import ExperienceState  # noqa: PLC0415
        from ui.widgets.experience_panel import ExperiencePanel  # noqa: PLC0415

        today = date.today().isoformat()  # noqa: DTZ011 - the user's own day
        state = ExperienceState(experience_file(None), load_rulebook(), today=lambda: today)
        panel = ExperiencePanel(state, findings=self._findings)
        self._state.phase_changed.subscribe(lambda _phase: panel.refresh())
        self._state.verdict_changed.subscribe(lambda _opened: panel.refresh())
        return panel

    def _findings(self) -> tuple[Finding, ...] | None:
        opened = self._state.opened
        return None if opened is None else opened.result.findings

    def try_out(self, check: str, answer: str, corner: Corner | None) -> None:
        """Show what an answer would make of the verdict."""
        phase = self._state.phase
        if not isinstance(phase, ShowingPhase) or phase.opened.rulebook is None:
            return
        from ui.trying import try_answer  # noqa: PLC0415 - with the walk and its planner

        try:
            trial = try_answer(phase.opened, phase.opened.rulebook, check, answer, corner=corner)
        except TriageError as error:
            self.what_if.tell(error_words(error))
            return
        self.what_if.tell("")
        self._state.show_page("verdict")
        self._state.try_out(trial)

    def _opens(self, sheet: QWidget) -> bool:
        if self.panel.sheet is sheet:
            self.panel.close_sheet()
            return False
        self.panel.show_sheet(sheet)
        return True

    def _leave_what_if(self) -> None:
        if self.panel.sheet is self.what_if:
            self.panel.close_sheet()


def _tr(text: str) -> str:
    return QCoreApplication.translate("SideSheets", text)
