"""Texts that are English inside and can be said in another language."""

from __future__ import annotations

import copy
import json
import pickle
from dataclasses import dataclass

import numpy as np
import pytest

from triage.errors import SettingsError
from triage.texts import (
    Text,
    all_said,
    as_text,
    capital_first,
    error_line,
    error_lines,
    error_words,
    failure_words,
    first_names,
    in_english,
    instead_of,
    joined,
    prose,
    said,
    shaped,
)

GERMAN = {
    "{count} gaps at the {wheel} wheel": "am Rad {wheel}: {count} Lücken",
    "front left": "vorne links",
    "Dirt on the encoder": "Schmutz auf dem Encoderring",
    "slight": "leicht",
    " or ": " oder ",
    "{names} and {count} more": "{names} und {count} weitere",
}


def german(context: str, text: str) -> str:
    assert context
    return GERMAN.get(text, text)


@dataclass(frozen=True, slots=True)
class Told:
    title: str
    lines: tuple[str, ...]
    by_name: dict[str, str]
    value: np.ndarray | None = None


def gaps() -> Text:
    return Text("{count} gaps at the {wheel} wheel", count=3, wheel=Text("front left"))


def test_a_text_is_english_and_can_be_said_with_its_parts() -> None:
    assert gaps() == "3 gaps at the front left wheel"
    assert said(gaps(), german) == "am Rad vorne links: 3 Lücken"


def test_a_text_is_an_ordinary_string_to_everything_that_stores_it() -> None:
    assert json.dumps({"text": gaps()}) == '{"text": "3 gaps at the front left wheel"}'
    assert gaps() in {"3 gaps at the front left wheel"}
    assert type(f"{gaps()}") is str


@pytest.mark.parametrize("copied", [copy.deepcopy(gaps()), pickle.loads(pickle.dumps(gaps()))])  # noqa: S301
def test_copies_can_be_said_too(copied: Text) -> None:
    assert said(copied, german) == "am Rad vorne links: 3 Lücken"


def test_what_a_part_says_is_never_taken_for_a_place() -> None:
    told = Text("{file}: {count}", file="{count}.csv", count=2)
    assert told == "{count}.csv: 2"
    assert Text("{one} {other.__class__} {2}", one=1) == "1 {other.__class__} {2}"


def test_a_plain_string_and_an_unknown_sentence_stay() -> None:
    assert said("front left", german) == "front left"
    assert said(Text("nobody translated this"), german) == "nobody translated this"


def test_a_shape_is_given_to_every_language_and_an_english_one_to_none_else() -> None:
    assert said(shaped(gaps(), capital_first), german) == "Am Rad vorne links: 3 Lücken"
    small = in_english(Text("Dirt on the encoder"), str.lower)
    assert (small, said(small, german)) == ("dirt on the encoder", "Schmutz auf dem Encoderring")
    name = instead_of("slight-play", Text("slight"))
    assert (name, said(name, german)) == ("slight-play", "leicht")


def test_joined_texts_are_said_one_by_one_with_what_stands_between() -> None:
    both = joined(Text(" or "), (Text("slight"), "?", Text("front left")))
    assert (both, said(both, german)) == ("slight or ? or front left", "leicht oder ? oder vorne links")
    assert joined(", ", ()) == ""


def test_a_template_of_the_rule_book_keeps_its_context_when_it_is_filled() -> None:
    asked: list[str] = []
    statement = Text(prose("at {wheel}", "measurement.some"), wheel=Text("front left"))

    def note(context: str, text: str) -> str:
        asked.append(context)
        return text

    said(statement, note)
    assert asked == ["texts", "measurement.some"]


def test_everything_a_presenter_worded_is_said_at_once() -> None:
    value = np.zeros(3)
    told = Told(gaps(), (Text("slight"), "x"), {"slight": Text("slight")}, value)
    spoken = all_said(told, german)
    assert spoken.title == "am Rad vorne links: 3 Lücken"
    assert (spoken.lines, spoken.by_name) == (("leicht", "x"), {"slight": "leicht"})
    assert spoken.value is value


def test_a_refusal_is_worded_as_one_text() -> None:
    error = SettingsError(gaps(), file="a.toml", place="line 3", hint="Mend it.")
    assert error_lines(error) == str(error)
    assert said(error_lines(error), german).startswith("a.toml, line 3: am Rad vorne links")
    assert error_line(error) == "a.toml, line 3: 3 gaps at the front left wheel. Mend it."
    assert said(error_line(error), german) == "a.toml, line 3: am Rad vorne links: 3 Lücken. Mend it."
    assert error_line(SettingsError("wrong.", file="a\x1b[2J")) == "a·[2J: wrong."
    assert error_words(error, Text("Not kept")) == "Not kept: 3 gaps at the front left wheel. Mend it."
    assert as_text(gaps()).parts["count"] == 3


def test_a_long_list_names_the_first_and_counts_the_rest() -> None:
    assert first_names(("a", "b"), 2) == "a, b"
    assert said(first_names(("a", "b", "c", "d"), 2), german) == "a, b und 2 weitere"


def test_what_failed_is_told_as_a_refusal_or_as_a_defect() -> None:
    assert failure_words(SettingsError(gaps(), hint="Mend it.")).endswith("wheel\nMend it.")
    assert failure_words(KeyError("FL")) == "the program failed: KeyError: 'FL'"
    assert failure_words(AssertionError()) == "the program failed: AssertionError"
