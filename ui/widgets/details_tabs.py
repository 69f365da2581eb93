"""Tabs below the ranking: evidence, next checks, what is missing, how the recording was read."""

from __future__ import annotations

from PySide6.QtWidgets import QTabWidget, QWidget

from triage.planning.plan_text import no_checks_line
from ui.presenters.entries import (
    Entry,
    build_check_entries,
    build_missing_entries,
    build_notice_entries,
    build_undecided_entries,
    build_vehicle_entry,
    build_wheel_rows,
)
from ui.presenters.verdict import build_evidence, cause_text
from ui.state.opening import Opened
from ui.state.window_state import Phase, ShowingPhase, WindowState
from ui.theme import theme_for
from ui.widgets.article import Article, join_parts
from ui.widgets.evidence_panel import EvidencePanel
from ui.widgets.speaking import say

EVIDENCE_TAB, CHECKS_TAB, MISSING_TAB, RECORDING_TAB = range(4)


class DetailsTabs(QTabWidget):
    """Everything that is said in words about the verdict."""

    def __init__(self, state: WindowState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._state = state
        self.evidence = EvidencePanel(state)
        self.checks = Article(self.tr("Next checks"))
        self.missing = Article(self.tr("What this recording cannot show"))
        self.recording = Article(self.tr("How the recording was read"))
        self.addTab(self.evidence, self.tr("Evidence"))
        self.addTab(self.checks, self.tr("Next checks"))
        self.addTab(self.missing, self.tr("Not shown"))
        self.addTab(self.recording, self.tr("Recording"))
        self.setAccessibleName(self.tr("Details of the verdict"))
        self.tabBar().setAccessibleName(self.accessibleName())
        self.setMinimumHeight(180)
        self.tabBar().setDrawBase(False)
        self.tabBar().setUsesScrollButtons(True)
        state.phase_changed.subscribe(self._show_phase)
        state.choice_changed.subscribe(lambda _rank: self._refresh_checks())
        state.verdict_changed.subscribe(lambda _opened: self._refresh_checks())
        state.dark_changed.subscribe(self._show_dark)
        self._show_dark(state.dark)

    def show_tab(self, tab: int) -> None:
        """Bring a tab to the front and give it the keyboard."""
        self.setCurrentIndex(tab)
        target = self.evidence.list if tab == EVIDENCE_TAB else self.widget(tab)
        if target is not None:
            target.setFocus()

    def _show_phase(self, phase: Phase) -> None:
        if not isinstance(phase, ShowingPhase):
            return
        opened = phase.opened
        missing = say(build_missing_entries(opened))
        notices = say(build_notice_entries(opened.result.log))
        self.setTabText(MISSING_TAB, self.tr("Not shown ({})").format(len(missing)))
        self.setTabText(
            RECORDING_TAB, self.tr("Recording ({})").format(len(notices)) if notices else self.tr("Recording")
        )
        self.setTabToolTip(
            MISSING_TAB, self.tr("What this recording cannot show, and which driving would help")
        )
        self._fill_missing(missing)
        self._fill_recording(opened, notices, say(build_vehicle_entry(phase.order.vehicle)))
        self._refresh_checks()
        # With nothing to say for or against, what matters is which driving is missing.
        self.setCurrentIndex(EVIDENCE_TAB if build_evidence(opened.result, 0) else MISSING_TAB)

    def _fill_missing(self, missing: tuple[Entry, ...]) -> None:
        none = self.tr("Everything the program knows to measure could be measured on this recording.")
        some = self.tr("These could not be measured on this recording. Driving as said below would help.")
        self.missing.set_parts(some if missing else none, *missing)

    def _fill_recording(self, opened: Opened, notices: tuple[Entry, ...], car: Entry) -> None:
        log = opened.result.log
        calm = self.tr("Nothing unusual was noticed while reading.")
        self.recording.set_parts(
            Entry(self.tr("Taken for the wheels")),
            say(opened.wheel_rows or build_wheel_rows(log)),
            Entry(self.tr("Noticed while reading"), text="" if notices else calm),
            *notices,
            car,
            Entry(
                self.tr("Judged with"),
                text=self.tr("program {}, rule book {}").format(
                    opened.result.program_version, opened.result.rulebook_digest[:12]
                ),
            ),
        )

    def _refresh_checks(self) -> None:
        opened = self._state.opened
        if opened is None:
            return
        result = opened.result
        cause = result.posterior.ranking[self._state.choice].hypothesis.cause
        text = say(cause_text(opened.causes, cause))
        chosen = (Entry(text.title, text=text.claim, facts=((self.tr("If so"), text.what_to_do),)),)
        heading = self.tr("Ordered by what they tell for the minutes they take.")
        cautions = (Entry("", cautions=say(result.cautions)),) if result.cautions else ()
        checks = say(build_check_entries(result))
        undecided = say(build_undecided_entries(opened))
        open_heading = self.tr("Not decided yet, and what would tell them apart.")
        self.checks.set_parts(
            *join_parts((open_heading,) if undecided else (), undecided),
            heading if checks else say(no_checks_line(result.plan)),
            *checks,
            *(chosen if text.what_to_do else ()),
            *cautions,
        )

    def _show_dark(self, dark: bool) -> None:
        for article in (self.checks, self.missing, self.recording):
            article.set_theme(theme_for(dark=dark))
