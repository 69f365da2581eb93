"""The answers of a walk in a file that a person can read: TOML, written whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from triage.errors import OutputError, SettingsError
from triage.evidence.answers import Observation, build_answers
from triage.evidence.rule_tables import Rulebook, places_of
from triage.output_file import whole_file
from triage.planning.plan import LAST_RESORT
from triage.texts import Text
from triage.user_files import data_folder, make_folder, quoted, read_toml
from triage.walk.assessment import observations, place_of
from triage.walk.walk_state import KINDS, REPAIR_ANSWERS, Given, Kind, WalkState, new_sitting

SCHEMA: Final = "wheel-triage/answers/1"
_FIELDS: Final = ("kind", "id", "place", "answer")


def earlier_answers(state: WalkState) -> str:
    """Say how many answers were read: ``1 earlier answer was read``; empty without any."""
    count = len(state.given)
    if not count:
        return ""
    return Text("1 earlier answer was read") if count == 1 else Text("{n} earlier answers were read", n=count)


def default_answer_file(
    log: Sequence[str], environment: Mapping[str, str], *, beside_log: bool = True
) -> Path:
    """Return where answers are kept when the user names no file: beside the log, else in the data folder.

    Parameters
    ----------
    log : sequence of str
        Parts of the recording; empty for a walk without one.
    environment : mapping of str to str
        Where the system says the user's data belong.
    beside_log : bool
        False keeps them in the data folder in any case.
    """
    if log:
        first = Path(log[0])
        if beside_log and os.access(first.parent, os.W_OK):
            return first.with_name(f"{first.name}.answers.toml")
        return data_folder(environment) / f"{first.name}.answers.toml"
    return data_folder(environment) / "walk.answers.toml"


def prepare_answer_file(
    named: str | None, log: Sequence[str], environment: Mapping[str, str], *, beside_log: bool = True
) -> Path:
    """Return the file for the answers; the data folder is made when it is needed.

    Raises
    ------
    OutputError
        When the data folder cannot be made, or the folder of the named file does not exist.
    """
    if named is not None:
        return _in_a_folder(Path(named))
    path = default_answer_file(log, environment, beside_log=beside_log)
    make_folder(path.parent)
    return path


def _in_a_folder(path: Path) -> Path:
    """Refuse a file that could not be written before the first answer is given."""
    if not path.parent.is_dir():
        raise OutputError(
            "its folder does not exist", file=str(path), hint="Make the folder, or choose another."
        )
    if path.is_dir():
        raise OutputError("is a folder", file=str(path), hint="Name a file for the answers.")
    return path


def save_answers(path: Path, state: WalkState, title: str) -> None:
    """Write all answers; an existing file is replaced at the very end.

    Raises
    ------
    OutputError
        When it could not be written; what was there before stays.
    """
    with whole_file(path) as unfinished:
        unfinished.write_text(format_answers(state, title), encoding="utf-8", newline="\n")


def format_answers(state: WalkState, title: str) -> str:
    """Write answers as TOML.

    Examples
    --------
    >>> print(format_answers(WalkState((Given("check", "rock-wheel", "FL", "none"),)), "van 3.csv"))
    # Answers given on the walk; the newest stands last. Delete one to be asked again.
    schema = "wheel-triage/answers/1"
    about = "van 3.csv"
    <BLANKLINE>
    [[answer]]
    kind = "check"
    id = "rock-wheel"
    place = "FL"
    answer = "none"
    <BLANKLINE>
    """
    head = (
        "# Answers given on the walk; the newest stands last. Delete one to be asked again.\n"
        f"schema = {quoted(SCHEMA)}\nabout = {quoted(title)}\n"
    )
    blocks = [
        "\n[[answer]]\n" + "".join(f"{name} = {quoted(getattr(one, name))}\n" for name in _FIELDS)
        for one in state.given
    ]
    return head + "".join(blocks)


def load_answers(path: Path, rulebook: Rulebook) -> WalkState:
    """Read answers; none when there is no such file.

    Raises
    ------
    SettingsError
        When the file cannot be read, is no such file, or holds an answer the rule book does not know.
    """
    table = read_toml(path)
    if table is None:
        return WalkState()
    if table.get("schema") != SCHEMA:
        raise SettingsError(
            Text("this is no file of answers (schema {schema})", schema=SCHEMA),
            file=str(path),
            hint="Name another file with --answers.",
        )
    rows = table.get("answer", [])
    if not isinstance(rows, list):
        raise SettingsError("answer must be a list of tables", file=str(path), hint="Write [[answer]].")
    given = tuple(_given(row, _numbered(number), path, rulebook) for number, row in enumerate(rows, 1))
    _refuse_doubles(given, path)
    return new_sitting(WalkState(given))


@dataclass(frozen=True, slots=True)
class KeptAnswers:
    """What the answers of a walk tell a verdict.

    Attributes
    ----------
    observations : tuple of Observation
    left_out : int
        Answers that are no evidence, and repairs: those count on the walk alone.
    """

    path: Path
    observations: tuple[Observation, ...]
    left_out: int

    @property
    def words(self) -> str:
        """One sentence for the reader of the verdict."""
        count = "1 answer" if len(self.observations) == 1 else f"{len(self.observations)} answers"
        rest = f"; {self.left_out} more, repairs or no evidence, are not" if self.left_out else ""
        return f"In this verdict: {count} of {self.path}{rest}."


def read_kept_answers(path: Path, rulebook: Rulebook) -> KeptAnswers:
    """Read the answers of a walk for a verdict.

    Raises
    ------
    SettingsError
        As :func:`load_answers`, and when there is no such file.
    """
    if not path.exists():
        raise SettingsError(
            "there is no such file of answers", file=str(path), hint="Name one that wheel-triage walk wrote."
        )
    state = load_answers(path, rulebook)
    seen = observations(state)
    return KeptAnswers(path, seen, len(state.given) - len(seen))


def _numbered(number: int) -> Text:
    return Text("answer {number}", number=number)


def _given(row: object, where: str, path: Path, rulebook: Rulebook) -> Given:
    if not isinstance(row, dict) or set(row) != set(_FIELDS) or not all(map(_is_text, row.values())):
        hint = Text("Give it the texts {fields}, and nothing else.", fields=", ".join(_FIELDS))
        raise SettingsError("this answer cannot be understood", file=str(path), place=where, hint=hint)
    kind = next((known for known in KINDS if known == row["kind"]), None)
    place = place_of(row["place"])
    if kind is None or place is None:
        hint = Text("The kinds are check and repair; the places FL, FR, RL, RR and vehicle.")
        raise SettingsError("unknown kind or place", file=str(path), place=where, hint=hint)
    given = Given(kind, row["id"], place, row["answer"])
    try:
        _refuse_unknown(given, kind, rulebook)
    except SettingsError as error:
        raise SettingsError(error.message, file=str(path), place=where, hint=error.hint) from None
    return given


def _is_text(value: object) -> bool:
    return isinstance(value, str)


def _refuse_unknown(given: Given, kind: Kind, rulebook: Rulebook) -> None:
    known = rulebook.checks if kind == "check" else {**rulebook.repairs, LAST_RESORT: None}
    if given.id not in known:
        unknown = Text("there is no check {id}") if kind == "check" else Text("there is no repair {id}")
        raise SettingsError(Text(unknown, id=repr(given.id)), hint="Delete this answer.")
    thing = known[given.id]
    named = kind == "check" and rulebook.checks[given.id].names_corner
    if thing is not None and not named and given.place not in places_of(thing.where):
        told = Text("{check} is not done at {place}", check=given.id, place=given.place)
        raise SettingsError(told, hint="Mend its place or delete it.")
    if kind == "repair" and given.answer not in REPAIR_ANSWERS:
        raise SettingsError(
            Text("{answer} is no answer", answer=repr(given.answer)),
            hint=Text("One of {answers}.", answers=", ".join(REPAIR_ANSWERS)),
        )
    build_answers(observations(WalkState((given,))), rulebook, first_corner="FL")


def _refuse_doubles(given: Sequence[Given], path: Path) -> None:
    seen: dict[object, int] = {}
    for number, one in enumerate(given, 1):
        if one.step in seen:
            raise SettingsError(
                Text(
                    "answers {first} and {second} are to the same question",
                    first=seen[one.step],
                    second=number,
                ),
                file=str(path),
                place=_numbered(number),
                hint="Delete one of them.",
            )
        seen[one.step] = number
