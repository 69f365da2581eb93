"""Brings the texts of window, engine and rule book into the German list, and makes of it what Qt loads.

``python -m ui.translations.build`` keeps every translation whose text still stands in the code, adds new ones
as unfinished, drops the others, and runs ``pyside6-lrelease``.
"""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import fields, is_dataclass
from pathlib import Path
from typing import Final
from xml.etree import ElementTree as ET

from triage.evidence.rule_tables import MeasurementRule
from triage.evidence.rulebook import load_rulebook
from triage.texts import CONTEXT, PLACE, Text
from ui.presenters.samples import COMPLAINTS, default_samples_folder, find_samples

HERE: Final = Path(__file__).resolve().parent
GERMAN: Final = HERE / "wheel-triage_de.ts"
CODE: Final = (HERE.parent, HERE.parents[1] / "triage")
SIGNALS: Final = CODE[1] / "signals"
"""Here texts for the user are not marked: what a measurement lacks is told in whole sentences."""

REFUSALS: Final = {
    *("DamagedLog", "DatabaseError", "ExerciseFileError", "LogReadError", "Notice", "OutputError"),
    *("SettingsError", "SignalMappingError", "UnknownLogFormat"),
}
"""What refusals and warnings are made with; a whole sentence needs no mark there."""

TERMINAL: Final = ("calibration", "simulator", "command", "likelihoods")
"""In files with such a word in their path texts are of the command line, which stays English."""

Key = tuple[str, str]
"""Context and English text, the two by which Qt looks a translation up."""


def texts_of(*folders: Path) -> list[Key]:
    """Return what code and rule book mark for translation, each once, in a steady order.

    Parameters
    ----------
    *folders : Path
        With code; those of the program when none is given.
    """
    trees = [
        (file, ast.parse(file.read_text(encoding="utf-8")))
        for folder in folders or CODE
        for file in folder.rglob("*.py")
    ]
    found: set[Key] = {(COMPLAINTS, one.complaint) for one in find_samples(default_samples_folder())}
    found.update(_in_rulebook(load_rulebook()))
    for file, tree in trees:
        found.update(_marked(tree))
        if not any(word in "/".join(file.parts[-3:]) for word in TERMINAL):
            found.update((CONTEXT, text) for text in _refusals(tree))
        if SIGNALS in file.parents:
            found.update((CONTEXT, text) for text in _sentences(tree))
    said = ((context, text) for context, text in found if text)
    return sorted((context, text) for context, text in said if context != CONTEXT or _has_words(text))


def _has_words(text: str) -> bool:
    """Tell whether there is anything to translate between the places of a text."""
    return any(sign.isalpha() for sign in PLACE.sub("", text))


def _in_rulebook(thing: object) -> Iterator[Key]:
    """Yield every text for the user in the tables of the rule book, and the names of the bands."""
    if isinstance(thing, Text):
        yield thing.context, thing.template
    elif isinstance(thing, tuple):
        for one in thing:
            yield from _in_rulebook(one)
    elif isinstance(thing, Mapping):
        yield from _in_rulebook(tuple(thing.values()))
    elif is_dataclass(thing):
        yield from _in_rulebook(tuple(getattr(thing, field.name) for field in fields(thing)))
    if isinstance(thing, MeasurementRule):
        yield from ((f"measurement.{thing.id}", band) for band in thing.bands)


def _sentences(tree: ast.Module) -> Iterator[str]:
    """Yield the strings of several words that are no comment: reasons, advice and stages of the work."""
    comments = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    parts = {id(part) for node in ast.walk(tree) if isinstance(node, ast.JoinedStr) for part in node.values}
    aside = comments | parts
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and id(node) not in aside:
            text = node.value if isinstance(node.value, str) else ""
            if " " in text.strip():
                yield text


def read_translations(file: Path = GERMAN) -> dict[Key, str]:
    """Return the finished translations of a list."""
    finished: dict[Key, str] = {}
    for context in ET.parse(file).getroot().iter("context"):  # noqa: S314  # our own file
        name = context.findtext("name") or ""
        for message in context.iter("message"):
            translation = message.findtext("translation")
            if translation:
                finished[name, message.findtext("source") or ""] = translation
    return finished


def write_translations(texts: list[Key], known: dict[Key, str], file: Path = GERMAN) -> None:
    """Write the list, with an unfinished entry where a text has no translation yet."""
    root = ET.Element("TS", version="2.1", language="de_DE", sourcelanguage="en")
    for name in dict.fromkeys(context for context, _ in texts):
        context = ET.SubElement(root, "context")
        ET.SubElement(context, "name").text = name
        for text in (text for text in texts if text[0] == name):
            message = ET.SubElement(context, "message")
            ET.SubElement(message, "source").text = text[1]
            translation = ET.SubElement(message, "translation")
            translation.text = known.get(text)
            if text not in known:
                translation.set("type", "unfinished")
    ET.indent(root, " ")
    head = '<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n'
    file.write_text(head + ET.tostring(root, encoding="unicode") + "\n", encoding="utf-8")


def release(file: Path = GERMAN) -> None:
    """Make the ``.qm`` beside a list."""
    beside = Path(sys.executable).with_name("pyside6-lrelease")
    program = str(beside) if beside.exists() else shutil.which("pyside6-lrelease")
    if program is None:
        raise SystemExit("pyside6-lrelease was not found: install PySide6-Essentials")
    command = [program, "-silent", str(file), "-qm", str(file.with_suffix(".qm"))]
    subprocess.run(command, check=True)  # noqa: S603  # our own file


def _marked(tree: ast.Module) -> Iterator[Key]:
    own = _context_of_own(tree)
    for node in tree.body:
        name = node.name if isinstance(node, ast.ClassDef) else ""
        for call in (one for one in ast.walk(node) if isinstance(one, ast.Call)):
            texts = [one.value for one in call.args if isinstance(one, ast.Constant)]
            strings = [one for one in texts if isinstance(one, str)]
            called = _name_of(call.func)
            if called == "self.tr" and strings:
                yield name, strings[0]
            elif called == "_tr" and strings:
                yield own, strings[0]
            elif called in {"Text", "progress", "request.progress"} and strings:
                yield CONTEXT, strings[0]
            elif called in {"QCoreApplication.translate", "QT_TRANSLATE_NOOP"} and len(strings) == 2:
                yield strings[0], strings[1]


def _refusals(tree: ast.Module) -> Iterator[str]:
    """Yield the whole sentences of refusals and warnings, and what to do about them."""
    for call in (one for one in ast.walk(tree) if isinstance(one, ast.Call)):
        if _name_of(call.func) in REFUSALS:
            yield from _plain((*call.args, *(one.value for one in call.keywords if one.arg == "hint")))


def _plain(given: Iterable[ast.expr]) -> Iterator[str]:
    """Yield what is a sentence among the arguments of a call."""
    for one in given:
        if isinstance(one, ast.IfExp):
            yield from _plain((one.body, one.orelse))
        elif isinstance(one, ast.Constant) and isinstance(one.value, str) and " " in one.value:
            yield one.value


def _name_of(called: ast.expr) -> str:
    """Return ``name`` or ``owner.name`` of what is called; empty for anything longer."""
    if isinstance(called, ast.Attribute) and isinstance(called.value, ast.Name):
        return f"{called.value.id}.{called.attr}"
    return called.id if isinstance(called, ast.Name) else ""


def _context_of_own(tree: ast.Module) -> str:
    """Return the context that the module's own ``_tr`` looks up."""
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and node.name == "_tr":
            names = [one.value for one in ast.walk(node) if isinstance(one, ast.Constant)]
            return next((one for one in names if isinstance(one, str)), "")
    return ""


if __name__ == "__main__":
    write_translations(texts_of(), read_translations() if GERMAN.exists() else {})
    release()
