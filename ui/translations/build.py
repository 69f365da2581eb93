"""Brings the texts of the window into the German list, and makes of it what Qt loads.

``python -m ui.translations.build`` keeps every translation whose text still stands in the code, adds new ones
as unfinished, drops the others, and runs ``pyside6-lrelease``.
"""

from __future__ import annotations

import ast
import shutil
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path
from typing import Final
from xml.etree import ElementTree as ET

HERE: Final = Path(__file__).resolve().parent
GERMAN: Final = HERE / "wheel-triage_de.ts"
Text = tuple[str, str]
"""Context and English text, the two by which Qt looks a translation up."""


def texts_of(folder: Path = HERE.parent) -> list[Text]:
    """Return what the code under ``folder`` marks for translation, each once, in a steady order."""
    found: dict[Text, None] = {}
    for file in sorted(folder.rglob("*.py")):
        found.update(dict.fromkeys(_marked(ast.parse(file.read_text(encoding="utf-8")))))
    return sorted(found)


def read_translations(file: Path = GERMAN) -> dict[Text, str]:
    """Return the finished translations of a list."""
    finished: dict[Text, str] = {}
    for context in ET.parse(file).getroot().iter("context"):  # noqa: S314  # our own file
        name = context.findtext("name") or ""
        for message in context.iter("message"):
            translation = message.findtext("translation")
            if translation:
                finished[name, message.findtext("source") or ""] = translation
    return finished


def write_translations(texts: list[Text], known: dict[Text, str], file: Path = GERMAN) -> None:
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


def _marked(tree: ast.Module) -> Iterator[Text]:
    own = _context_of_own(tree)
    for node in tree.body:
        name = node.name if isinstance(node, ast.ClassDef) else ""
        for call in (one for one in ast.walk(node) if isinstance(one, ast.Call)):
            texts = [one.value for one in call.args if isinstance(one, ast.Constant)]
            strings = [one for one in texts if isinstance(one, str)]
            called = ast.unparse(call.func)
            if called == "self.tr" and strings:
                yield name, strings[0]
            elif called == "_tr" and strings:
                yield own, strings[0]
            elif called in {"QCoreApplication.translate", "QT_TRANSLATE_NOOP"} and len(strings) == 2:
                yield strings[0], strings[1]


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
