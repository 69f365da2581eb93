"""What refusals and warnings say can be found by translators; read out of the code itself.

A message made by an f-string, by ``%``, ``+`` or ``format``, or by ``str(error)`` of a library would stand in
English in a German window, and no list of translations would miss it.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Final

from triage.texts import PLACE
from ui.translations.build import CONTEXT, texts_of

ROOT: Final = Path(__file__).resolve().parents[1]

READ: Final = frozenset(("message", "text", "hint", "place", "reason", "what"))
"""Names of arguments that a person reads."""

SHAPING: Final = frozenset(
    (
        *("Text", "as_text", "error_lines", "error_words", "failure_words", "first_names", "in_english"),
        *("instead_of", "joined", "library_words", "prose", "reason_of", "sentence", "shaped"),
    )
)
"""They give texts that can be said in another language."""

ENGLISH_ONLY: Final = {
    "triage/command_line.py": "the command line stays English",
    "triage/mapping_commands.py": "the verb mappings of the command line",
    "triage/calibration/": "a tool for contributors, started by name alone",
    "triage/evidence/likelihoods.py": "what the calibration writes",
    "triage/simulator/": "exercises refuse it before, and samples without an index are not offered",
}
"""Where a message may be English alone, and why no window shows it."""

WORD: Final = re.compile(r"\b(and|at|from|in|is|of|on|or|than|the|to)\b|[a-z]{5,}")
"""What an f-string in a place of a text says in English; units, ids and signs are no words."""

Scope = ast.FunctionDef | ast.Module
Maker = tuple[str, str]
"""Function that hands words on to a refusal: its file (empty for one that all may call) and its name."""


@dataclass(frozen=True, slots=True)
class File:
    """One file of the code."""

    name: str
    tree: ast.Module

    @property
    def scopes(self) -> list[Scope]:
        """The file and all its functions."""
        return [self.tree, *(node for node in ast.walk(self.tree) if isinstance(node, ast.FunctionDef))]


def read_code(*folders: str) -> tuple[File, ...]:
    paths = [path for folder in folders for path in sorted((ROOT / folder).rglob("*.py"))]
    return tuple(
        File(path.relative_to(ROOT).as_posix(), ast.parse(path.read_text(encoding="utf-8"))) for path in paths
    )


def called(function: ast.expr) -> str:
    """Return the last name of what is called."""
    return function.attr if isinstance(function, ast.Attribute) else getattr(function, "id", "")


def refusing_classes(files: Iterable[File]) -> set[str]:
    bases = {
        node.name: {called(base) for base in node.bases}
        for file in files
        for node in ast.walk(file.tree)
        if isinstance(node, ast.ClassDef)
    }
    found = {"TriageError"}
    while more := {name for name, of in bases.items() if of & found} - found:
        found |= more
    return found


def own_nodes(scope: Scope) -> Iterator[ast.AST]:
    """Yield what stands in a scope, functions within it left out."""
    todo: list[ast.AST] = list(scope.body)
    while todo:
        node = todo.pop()
        yield node
        if not isinstance(node, ast.FunctionDef):
            todo += ast.iter_child_nodes(node)


def parameters(scope: Scope) -> list[str]:
    if isinstance(scope, ast.Module):
        return []
    arguments = (*scope.args.posonlyargs, *scope.args.args, *scope.args.kwonlyargs)
    return [one.arg for one in arguments if one.arg != "self"]


def assigned(name: str, scope: Scope) -> list[ast.expr]:
    """Return everything a name of a scope is given; what is added to it stands as a sum."""
    values: list[ast.expr] = []
    for node in own_nodes(scope):
        if isinstance(node, ast.AugAssign) and getattr(node.target, "id", "") == name:
            values.append(ast.copy_location(ast.BinOp(node.target, node.op, node.value), node))
        elif isinstance(node, ast.AnnAssign) and getattr(node.target, "id", "") == name and node.value:
            values.append(node.value)
        elif isinstance(node, ast.Assign):
            values += [
                given for target in node.targets for one, given in pairs(target, node.value) if one == name
            ]
    return values


def pairs(target: ast.expr, value: ast.expr) -> list[tuple[str, ast.expr]]:
    if isinstance(target, ast.Tuple) and isinstance(value, ast.Tuple):
        return [(getattr(one, "id", ""), given) for one, given in zip(target.elts, value.elts, strict=True)]
    return [(getattr(target, "id", ""), value)]


@cache
def caught(scope: Scope) -> frozenset[str]:
    """Return the names of errors that are caught."""
    handlers = [node for node in own_nodes(scope) if isinstance(node, ast.ExceptHandler)]
    return frozenset(one.name for one in handlers if one.name)


def choices(given: ast.expr) -> list[ast.expr]:
    """Return what may be meant: all ways of a condition, or the one expression."""
    if isinstance(given, ast.IfExp):
        return [*choices(given.body), *choices(given.orelse)]
    if isinstance(given, ast.BoolOp):
        return [one for value in given.values for one in choices(value)]
    return [given]


class Search:
    """Follows what is said from where a refusal is made back to where its words stand."""

    def __init__(self, files: tuple[File, ...], listed: set[str]) -> None:
        self.files, self.listed = files, listed
        self.makers: dict[Maker, set[str]] = {
            ("", name): set(READ) for name in (*refusing_classes(files), "HistoryStep", "Notice")
        }
        self.functions = {
            (file.name if scope.name.startswith("_") else "", scope.name): scope
            for file in files
            for scope in file.scopes
            if isinstance(scope, ast.FunctionDef)
        }
        self.found: set[str] = set()

    def run(self) -> list[str]:
        """Return every place where words cannot be translated; functions that hand words on are followed."""
        known = -1
        while known != (known := sum(map(len, self.makers.values()))):
            self.found.clear()
            for file in self.files:
                for scope in file.scopes:
                    self.search(file, scope)
        return sorted(self.found)

    def search(self, file: File, scope: Scope) -> None:
        for node in own_nodes(scope):
            if isinstance(node, ast.Call):
                if called(node.func) == "Text":
                    for part in node.keywords:
                        self.judge_part(part.value, file, scope)
                for given in self.read_arguments(node, file):
                    self.judge(given, file, scope)

    def read_arguments(self, call: ast.Call, file: File) -> list[ast.expr]:
        """Return what a person reads among the arguments of a call."""
        name = called(call.func)
        maker = next((one for one in ((file.name, name), ("", name)) if one in self.makers), None)
        if maker is None:
            return []
        read = self.makers[maker]
        by_name = [one.value for one in call.keywords if one.arg in read]
        if maker in self.functions:
            in_order = zip(parameters(self.functions[maker]), call.args, strict=False)
            return [given for one, given in in_order if one in read] + by_name
        return [*(call.args[1:2] if name == "Notice" else call.args[:2]), *by_name]

    def judge(self, given: ast.expr, file: File, scope: Scope) -> None:
        """Judge what a refusal says."""
        for one in choices(given):
            if isinstance(one, ast.Constant):
                self.judge_words(one, file)
            elif isinstance(one, ast.Name):
                self.judge_name(one, file, scope)
            elif isinstance(one, ast.Call):
                self.judge_call(one, file)
            elif not isinstance(one, ast.Attribute | ast.Starred | ast.Subscript) or "f'" in ast.unparse(one):
                self.tell(one, file)

    def judge_words(self, given: ast.Constant, file: File) -> None:
        text = str(given.value)
        if any(sign.isalpha() for sign in PLACE.sub("", text)) and text not in self.listed:
            self.tell(given, file)

    def judge_name(self, given: ast.Name, file: File, scope: Scope) -> None:
        values = assigned(given.id, scope)
        if not values and isinstance(scope, ast.FunctionDef):
            if given.id in parameters(scope):
                private = scope.name.startswith("_")
                self.makers.setdefault((file.name if private else "", scope.name), set()).add(given.id)
                return
            values = assigned(given.id, file.tree)
        for value in values:
            self.judge(value, file, scope)

    def judge_call(self, given: ast.Call, file: File) -> None:
        name = called(given.func)
        if name in SHAPING:
            return
        function = self.functions.get((file.name, name)) or self.functions.get(("", name))
        if function is None:
            self.tell(given, file)
            return
        for node in own_nodes(function):
            if isinstance(node, ast.Return) and node.value is not None:
                self.judge(node.value, file, function)

    def judge_part(self, given: ast.expr, file: File, scope: Scope) -> None:
        """Judge what stands in a place of a text: numbers and names may, words and a library's may not."""
        for one in choices(given):
            if isinstance(one, ast.Name) and one.id not in caught(scope):
                for value in assigned(one.id, scope):
                    if not isinstance(value, ast.Name):
                        self.judge_part(value, file, scope)
            elif isinstance(one, ast.Constant):
                if isinstance(one.value, str) and " " in one.value.strip():
                    self.judge_words(one, file)
            elif self.is_said_in_english(one, scope):
                self.tell(one, file)

    def is_said_in_english(self, given: ast.expr, scope: Scope) -> bool:
        if isinstance(given, ast.JoinedStr):
            words = [one.value for one in given.values if isinstance(one, ast.Constant)]
            inside = [one.value for one in given.values if isinstance(one, ast.FormattedValue)]
            return any(WORD.search(str(word)) for word in words) or any(
                self.is_said_in_english(one, scope) for one in inside
            )
        if isinstance(given, ast.Call) and called(given.func) in {"str", "repr"}:
            return any(self.is_said_in_english(one, scope) for one in given.args)
        return isinstance(given, ast.Name) and given.id in caught(scope)

    def tell(self, given: ast.expr, file: File) -> None:
        self.found.add(f"{file.name}:{given.lineno}: {ast.unparse(given)}")


def found_in(*files: File) -> list[str]:
    return Search(files, {"this is listed", "{count} cells"}).run()


def file_of(text: str) -> File:
    return File(
        "some.py", ast.parse(f"class TriageError(Exception): ...\nclass Bad(TriageError): ...\n{text}")
    )


def test_every_refusal_and_warning_can_be_said_in_another_language() -> None:
    listed = {text for context, text in texts_of() if context == CONTEXT}
    found = Search(read_code("triage", "ui"), listed).run()
    assert [one for one in found if not one.startswith(tuple(ENGLISH_ONLY))] == []


def test_what_can_be_said_passes() -> None:
    fine = "raise Bad('this is listed', place=Text('{count} cells', count=f'{n:g}'), hint='' if n else HINT)"
    assert found_in(file_of(f"HINT = Text('x y')\ndef f(n):\n    {fine}")) == []


def test_what_cannot_be_said_is_found_however_it_is_made() -> None:
    for made in ("f'{n} cells'", "'%d cells' % n", "'{} cells'.format(n)", "n + ' cells'", "'not listed'"):
        assert found_in(file_of(f"def f(n):\n    raise Bad({made})")), made
        assert found_in(
            file_of(f"def f(n):\n    told = {made}\n    raise Bad('this is listed', hint=told)")
        ), made


def test_words_are_followed_through_functions_and_into_the_places_of_a_text() -> None:
    handed = "def refuse(told):\n    return Bad(told)\ndef f(n):\n    raise refuse(f'{n} cells')"
    assert found_in(file_of(handed)) == ["some.py:6: f'{n} cells'"]
    given = "def told(n):\n    return f'{n} cells'\ndef f(n):\n    raise Bad(told(n))"
    assert found_in(file_of(given)) == ["some.py:4: f'{n} cells'"]
    tried = "def f(n):\n    try: ...\n    except ValueError as error:\n"
    part = tried + "        raise Bad(Text('{reason}', reason={}))"
    for made in ("f'{error}'", "str(error)", "error", "f'of {n} cells'"):
        assert found_in(file_of(part.replace("{}", made))), made
