"""The walk in a terminal: plain lines in and out, so that it can be scripted."""

from __future__ import annotations

import textwrap
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from triage.corners import CORNERS, Corner
from triage.errors import SettingsError
from triage.evidence.answers import build_answers, find_outcome, plain_name
from triage.evidence.next_checks import hypothesis_name
from triage.evidence.readings import is_reading
from triage.evidence.rule_tables import Rulebook
from triage.evidence.trouble_codes import is_code
from triage.texts import Text, capital_first
from triage.walk.answer_file import earlier_answers, save_answers
from triage.walk.assessment import (
    Assessment,
    Question,
    Recording,
    assess,
    cured_claim,
    leading_lines,
    observations,
    progress_line,
    standing_cautions,
    typed_hint,
)
from triage.walk.walk_state import (
    CANNOT_SAY,
    NO_EVIDENCE,
    NOT_DONE,
    Given,
    WalkState,
    answer,
    back,
    forward,
    undo,
)

WIDTH: Final = 100
LINES_IN_FULL: Final = 12

COMMANDS: Final = {
    "s": "skip",
    "c": "cannot say",
    "b": "back",
    "u": "undo",
    "w": "why",
    "r": "ranking",
    "n": "new",
    "q": "quit",
    "?": "help",
}

HELP: Final = """A number chooses an answer; its name, or a value with its unit, may be typed instead.
  s skip (not done)   c cannot say       b back to the answer before   u undo the newest answer
  w why this next     r ranking in full  n new: a fresh walk           q quit (answers are kept)
"""

ReadLine = Callable[[], str | None]
"""Gives the next line typed, None at the end of the input."""

Write = Callable[[str], None]


@dataclass(frozen=True, slots=True)
class Walk:
    """What stays the same on one walk."""

    recording: Recording
    rulebook: Rulebook
    path: Path
    title: str

    def save(self, state: WalkState) -> None:
        """Keep the answers."""
        save_answers(self.path, state, self.title)


@dataclass(frozen=True, slots=True)
class _Desk:
    walk: Walk
    read_line: ReadLine
    write: Write


def walk_in_terminal(walk: Walk, state: WalkState, *, read_line: ReadLine, write: Write) -> WalkState:
    """Ask until the person quits, the input ends, or there is nothing left to ask.

    Parameters
    ----------
    walk : Walk
    state : WalkState
        Where an earlier sitting ended.
    read_line, write : callable
        The terminal.

    Returns
    -------
    WalkState
        As it was saved last.

    Raises
    ------
    OutputError
        When an answer could not be saved.
    """
    desk = _Desk(walk, read_line, write)
    write(_greeting(walk, state))
    before: Assessment | None = None
    while True:
        now = assess(state, walk.recording, walk.rulebook)
        write(_standing(desk, state, now, before))
        after = _ask(desk, state, now) if now.question else _close(desk, state, now)
        if after is None:
            write(_kept(walk, state))
            return state
        if after.given != state.given:
            walk.save(after)
        state, before = after, now


def _greeting(walk: Walk, state: WalkState) -> str:
    kept = f"{earlier_answers(state)}; for another car n starts afresh. " if state.given else ""
    # a path on its own line is never broken
    cautions = "".join(_wrap(text, "  ! ") + "\n" for text in standing_cautions(walk.rulebook))
    return f"{_wrap(walk.title)}\n{cautions}{kept}Answers are kept in\n{walk.path}\n{HELP}"


def _standing(desk: _Desk, state: WalkState, now: Assessment, before: Assessment | None) -> str:
    lines = leading_lines(now, desk.walk.rulebook, before)
    doubts = [_wrap(one.text, "  ? ") for one in now.judgement.contradictions]
    return "\n".join(["", *lines, f"  [{progress_line(state, now)}]", *doubts, ""])


def _kept(walk: Walk, state: WalkState) -> str:
    return f"Answers are kept in {walk.path}\n" if state.given else "Nothing was answered.\n"


def _close(desk: _Desk, state: WalkState, now: Assessment) -> WalkState | None:
    """Say how the walk ended, and let the person go back or begin with another car; None to leave."""
    desk.write(_closing(state, now, desk.walk.rulebook))
    while True:
        desk.write("b back, u undo, n another car, Enter to leave > ")
        line = desk.read_line()
        desk.write("\n" if line is None else "")
        word = COMMANDS.get(line or "", line)
        if word in (None, "", "quit"):
            return None
        if word in ("back", "undo") and state.given:
            return back(state) if word == "back" else undo(state)
        if word == "new":
            return _start_afresh(desk, state)


def _closing(state: WalkState, now: Assessment, rulebook: Rulebook) -> str:
    if not state.finished:
        name = hypothesis_name(now.judgement.posterior.first.hypothesis, rulebook)
        return _wrap(f"There is nothing left to ask. Most probable: {name}.") + "\n"
    was = cured_claim(state, now.judgement.posterior, rulebook)
    cause, corner = (was.cause, was.corner) if was else ("CAUSE", "CORNER")
    return (
        "The car is right. Keep what it really was as experience of the workshop, if you like:\n"
        f"  wheel-triage experience add --group GROUP --cause {cause} --corner {corner}\n"
    )


def _ask(desk: _Desk, state: WalkState, now: Assessment) -> WalkState | None:
    """Ask until something changes; None to quit."""
    question = now.question
    if question is None:
        return None
    effort = f" ({_effort(question)})" if _effort(question) else ""
    desk.write(_wrap(f"{question.title}{effort}") + "\n" + _wrap(f"Why: {question.why}", "  ") + "\n")
    confirmed = not (question.cautions and question.acknowledge)
    desk.write("".join(_wrap(text, "  ! ") + "\n" for text in question.cautions))
    if confirmed:
        desk.write(_in_full(question))
    while True:
        desk.write("> " if confirmed else "Enter when this is understood and kept to > ")
        line = desk.read_line()
        if line is None:
            desk.write("\n")  # the prompt is left by no Enter
        if line is None or COMMANDS.get(line, line) == "quit":
            return None
        if not confirmed and line in ("", "y", "yes"):
            confirmed = True
            desk.write(_in_full(question))
            continue
        try:
            after = _take(desk, state, now, line if confirmed else _only_commands(line))
        except SettingsError as error:
            desk.write(_wrap(capital_first(f"{error.message}. {error.hint}")) + "\n")
            continue
        if after is not None:
            return after


def _take(desk: _Desk, state: WalkState, now: Assessment, line: str) -> WalkState | None:
    """Do what was typed; None when the same question stays."""
    question, word = now.question, COMMANDS.get(line, line)
    if question is None:
        return None
    if word in ("back", "undo") and state.given:
        return back(state) if word == "back" else undo(state)
    if word == "new":
        return _start_afresh(desk, state)
    if not word and question.now:
        return forward(state)
    if word in ("", "back", "undo", "why", "ranking", "help"):
        desk.write(_told(desk.walk.rulebook, now, word).rstrip("\n") + "\n")
        return None
    return answer(state, read_answer(word, question, desk.walk.rulebook))


def _only_commands(line: str) -> str:
    if line in COMMANDS or line in COMMANDS.values():
        return line
    raise SettingsError("confirm the cautions first", hint="Press Enter, or s to skip the step")


def _told(rulebook: Rulebook, now: Assessment, word: str) -> str:
    if word == "why" and now.question is not None:
        return _wrap(now.question.why)
    if word == "ranking":
        return "\n".join(leading_lines(now, rulebook, number=LINES_IN_FULL))
    told = {"": "Type a number, or ? for help.", "help": HELP}
    return told.get(word, "There is no earlier answer.")


def _start_afresh(desk: _Desk, state: WalkState) -> WalkState:
    """Keep the old answers under another name, and begin anew."""
    kept = desk.walk.path.with_name(f"{desk.walk.path.stem}.previous.toml")
    save_answers(kept, state, desk.walk.title)
    desk.write(f"The answers so far are kept in {kept}\n")
    return WalkState()


def read_answer(text: str, question: Question, rulebook: Rulebook) -> Given:
    """Return the answer that was typed: a number, the name of an outcome, or a measured value.

    Raises
    ------
    SettingsError
        When it is none of them.
    """
    none = {"skip": NOT_DONE, "cannot say": CANNOT_SAY}.get(text, text.lower())
    if none in NO_EVIDENCE:
        return question.given(none if question.kind == "check" else NOT_DONE)
    text, corner = _named_corner(text, question)
    ids = [choice.id for choice in question.choices]
    numbered = {str(number): name for number, name in enumerate(ids, 1)}
    chosen = numbered.get(text, text if text in ids else None)
    if chosen is None and (question.kind == "repair" or (text.isdecimal() and question.value is None)):
        hint = Text("Type 1 to {most}, or s for not done", most=len(ids))
        raise SettingsError(Text("{answer} is no answer", answer=repr(text)), hint=hint)
    given = question.given(chosen or _typed(question.given(text, corner), rulebook), corner)
    if corner is None and _needs_a_wheel(given, rulebook):
        hint = Text(
            "Choose the wheel first, or type {number}@RL (FL, FR, RL, RR); if nothing tells it: cannot say",
            number=ids.index(given.answer) + 1,
        )
        raise SettingsError("it is not said which wheel is meant", hint=hint)
    return given


def _typed(given: Given, rulebook: Rulebook) -> str:
    """Return a measured value or a trouble code as it was typed, and the outcome of any other words."""
    build_answers(observations(WalkState((given,))), rulebook, first_corner="FL")
    if is_reading(given.answer) or is_code(plain_name(given.answer)):
        return given.answer
    return find_outcome(rulebook.checks[given.id], given.answer)


def _needs_a_wheel(given: Given, rulebook: Rulebook) -> bool:
    """Say whether the outcome is what a trouble code says of one wheel."""
    lists = rulebook.code_families.values()
    said = {outcome for one in lists for _, outcome in one.codes.values()}
    return given.kind == "check" and rulebook.checks[given.id].takes_codes and given.answer in said


def _named_corner(text: str, question: Question) -> tuple[str, Corner | None]:
    """Take the wheel off an answer such as ``2@RL``."""
    said, at, name = text.partition("@")
    corner = next((known for known in CORNERS if known == name.strip().upper()), None)
    if not at or not question.names_corner:
        return text, None
    if corner is None:
        raise SettingsError(
            Text("{name} is no wheel", name=repr(name)),
            hint=Text("The wheels are {wheels}", wheels=", ".join(CORNERS)),
        )
    return said.strip(), corner


def _effort(question: Question) -> str:
    tools = f"; {', '.join(question.tools)}" if question.tools else ""
    minutes = f"{question.minutes_min:.0f} min" if question.minutes_min else ""
    return ", ".join(part for part in (minutes, question.access) if part) + tools


def _in_full(question: Question) -> str:
    rows = [_wrap(question.text)]
    rows += [f"  {number}  {choice.text}" for number, choice in enumerate(question.choices, 1)]
    if typed_hint(question):
        rows.append(_wrap(typed_hint(question), "  "))
    if question.names_corner:
        rows.append("  Add the wheel when one is meant: 2@RL (FL, FR, RL or RR).")
    if question.write_down:
        rows.append(_wrap(f"Write down: {question.write_down}.", "  "))
    if question.now:
        rows.append(f"  Answered before: {question.now}. Enter keeps it.")
    return "\n".join(rows) + "\n"


def _wrap(text: str, indent: str = "") -> str:
    return textwrap.fill(
        " ".join(text.split()),
        WIDTH,
        initial_indent=indent,
        subsequent_indent=" " * len(indent),
        break_on_hyphens=False,
    )
