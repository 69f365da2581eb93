"""Writing a file whole or not at all."""

from __future__ import annotations

import os
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from triage.errors import OutputError
from triage.reasons import reason_of
from triage.texts import Text


@contextmanager
def whole_file(path: str | Path) -> Iterator[Path]:
    """Give a name to write to; it takes the wanted name only when all went well.

    Parameters
    ----------
    path : str or Path
        The wanted file; an existing one is replaced at the very end.

    Yields
    ------
    Path
        An unfinished file beside it, with the same suffix.

    Raises
    ------
    OutputError
        When the folder is missing, or the file could not be put in place. Nothing half-written is left.
    """
    target = Path(path)
    _refuse_what_cannot_be_written(target, str(path))
    unfinished = target.with_name(f".{target.stem[:40]}.unfinished-{os.getpid()}{target.suffix}")
    try:
        yield unfinished
        unfinished.replace(target)
    except OSError as error:
        raise OutputError(
            Text("could not be written: {reason}", reason=reason_of(error)),
            file=str(path),
            hint="Choose another place.",
        ) from None
    except OutputError as error:
        raise OutputError(error.message, file=str(path), hint=error.hint) from None
    finally:
        with suppress(OSError):  # a name that cannot be written cannot be removed either
            unfinished.unlink(missing_ok=True)


def _refuse_what_cannot_be_written(target: Path, name: str) -> None:
    if not target.name:
        raise OutputError("this is no file name", file=name, hint="Choose a file name.")
    try:
        taken, housed = target.exists() and not target.is_file(), target.parent.is_dir()
    except OSError as error:  # such as a name that is too long
        raise OutputError(
            Text("could not be written: {reason}", reason=reason_of(error)),
            file=name,
            hint="Choose another name.",
        ) from None
    if taken:
        raise OutputError("this is a folder or a device, not a file", file=name, hint="Choose a file name.")
    if not housed:
        raise OutputError("its folder does not exist", file=name, hint="Make the folder or choose another.")
