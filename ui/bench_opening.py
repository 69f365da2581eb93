"""Beginning or resuming a walk at the car. Knows no Qt."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from triage.errors import TriageError
from triage.texts import Text, as_text, error_lines
from triage.walk.assessment import Assessment
from triage.walk.walk_state import WalkState
from ui.state.bench import Bench, BenchSetup, BenchView

if TYPE_CHECKING:
    from triage.run import TriageResult


def begin_bench(
    files: Sequence[str],
    result: TriageResult | None,
    environment: Mapping[str, str],
    *,
    beside_log: bool,
    answers: WalkState | None = None,
) -> Bench:
    """Return a walk with the answers given earlier for these files.

    Parameters
    ----------
    files : sequence of str
        Parts of the recording; empty for a walk without one.
    result : TriageResult or None
        What the recording showed.
    environment : mapping of str to str
        Where the system says the user's data belong.
    beside_log : bool
        Keep the answers beside the recording; else in the user's data.
    answers : WalkState or None
        What the result rests on already; taken where no file holds answers for these files.

    Raises
    ------
    TriageError
        When the rule book cannot be used or the user's data folder cannot be made.
    """
    # Imported here: the start page need not wait for them.
    from triage.evidence.rulebook import load_rulebook  # noqa: PLC0415
    from triage.walk.answer_file import (  # noqa: PLC0415
        earlier_answers,
        load_answers,
        prepare_answer_file,
        save_answers,
    )
    from triage.walk.assessment import Recording  # noqa: PLC0415

    rulebook = load_rulebook()
    path = prepare_answer_file(None, files, environment, beside_log=beside_log)
    title: str = Path(files[0]).name if files else Text("Without a recording")
    state, note = WalkState(), as_text("")
    try:
        state = load_answers(path, rulebook)
        if state.given:
            note = Text("{answers} from {file}.", answers=earlier_answers(state), file=path.name)
    except TriageError as error:
        # what cannot be read is not overwritten
        path = path.with_suffix(".new.toml")
        note = Text("{error} New answers are kept in {file}.", error=error_lines(error), file=path.name)
    if answers is not None and not state.given:
        state = answers
    recording = Recording(result.measurements, result.not_measurable) if result else Recording()
    return Bench(
        BenchSetup(title, recording, rulebook, lambda new: save_answers(path, new, title), state, note)
    )


def with_answers(result: TriageResult, view: BenchView) -> TriageResult:
    """Return the result with the verdict that recording and answers together make."""
    return with_assessment(result, view.now)


def with_assessment(result: TriageResult, now: Assessment) -> TriageResult:
    """Return the result with another verdict on the same recording."""
    judgement = now.judgement
    return replace(
        result,
        findings=judgement.findings,
        posterior=judgement.posterior,
        next_checks=judgement.next_checks,
        undecided=judgement.undecided,
        cautions=judgement.cautions,
        contradictions=judgement.contradictions,
        plan=now.plan,
    )
