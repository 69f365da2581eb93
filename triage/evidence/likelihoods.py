"""How probable each band of a measurement is under each cause: the table, and writing it to a file.

A cause can show itself in several *variants*, of which one is at work in a car without anyone knowing which:
a passive sensor with a wide gap is silent below some speed, an active one loses pulses at any speed. Within a
variant the measurements are taken as independent, which they are not within the cause. Each variant has a
share in its cause and a row ``<cause>_<number>``, counted from 1, in the tables it makes a difference to; the
user hears of the cause alone.
"""

from __future__ import annotations

import json
import os
import tempfile
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from triage.errors import OutputError

Basis = Literal["simulated", "published", "judgement"]
BASES: Final[tuple[Basis, ...]] = ("simulated", "published", "judgement")

SOUND: Final = "sound"
"""Name of the row for a corner (or a car) at which this cause is not."""

VARIANT_MARK: Final = "_"
"""Parts the id of a cause from the number of a variant."""

DECIMALS: Final = 6
SMALLEST: Final = 1e-5
"""Probabilities are written no smaller than this: no entry may be 0 or 1."""

LEAST_WEIGHT: Final = 0.1
MOST_WEIGHT: Final = 3.0
"""Limits of a table's weight: nothing measured is passed over, and nothing alone decides."""

_HEADER: Final = """\
# P(band | cause at the blamed corner), one row per cause, one entry per band of rules/measurements.toml.
# `sound` is the row of a corner without the cause; a cause without a row uses it.
# A cause that shows itself in different ways has its share of each under `variants`, and a row
# <cause>_<number> for each: a passive sensor with a wide gap is silent below some speed, an active one loses
# pulses at any speed.
# basis: simulated (evidence = the command that makes the numbers), published (evidence = the source), or
# judgement (evidence = the reasoning). date = the day on which the numbers were made.
# weight multiplies the log-likelihood of the finding (1 when missing): what mostly says again what others say
# counts less.
"""


@dataclass(frozen=True, slots=True)
class LikelihoodTable:
    """Probability of each band (or outcome) under each cause.

    Attributes
    ----------
    basis : {"simulated", "published", "judgement"}
        Where the numbers come from.
    evidence : str
        The command that reproduces them, the source, or the reasoning.
    rows : mapping of cause id to tuple of float
        One probability per band, summing to 1; must hold ``sound`` and ``other``.
    date : str
        Day on which the numbers were made, as 2026-01-31; empty when it is not told.
    weight : float
        How much a finding of it counts beside the others; between ``LEAST_WEIGHT`` and ``MOST_WEIGHT``.
    """

    basis: Basis
    evidence: str
    rows: Mapping[str, tuple[float, ...]]
    date: str = ""
    weight: float = 1.0

    def row(self, name: str) -> tuple[float, ...]:
        """Return the row of a cause or variant.

        A variant without one uses that of its cause, a cause without one the row ``sound``.
        """
        cause = name.split(VARIANT_MARK, maxsplit=1)[0]
        return self.rows.get(name, self.rows.get(cause, self.rows[SOUND]))


def variant_name(cause: str, number: int) -> str:
    """Name of the row of one way in which a cause shows itself, counted from 1."""
    return f"{cause}{VARIANT_MARK}{number}"


def normalised_row(weights: tuple[float, ...]) -> tuple[float, ...]:
    """Turn counts or weights into a row that a rule book accepts.

    Parameters
    ----------
    weights : tuple of float
        At least two numbers, none negative, not all 0.

    Returns
    -------
    tuple of float
        Each at least ``SMALLEST``, rounded to ``DECIMALS`` places; the largest takes up the rounding so that
        the sum is 1.

    Raises
    ------
    ValueError
        When a weight is negative or not finite, or there is nothing to share.
    """
    total = sum(weights)
    if len(weights) < 2 or min(weights) < 0.0 or not 0.0 < total < float("inf"):
        raise ValueError("a row needs at least two finite weights, none negative and not all zero")
    row = [round(max(weight / total, SMALLEST), DECIMALS) for weight in weights]
    largest = row.index(max(row))
    row[largest] = round(1.0 - sum(row[:largest]) - sum(row[largest + 1 :]), DECIMALS)
    return tuple(row)


def format_likelihoods(
    tables: Mapping[str, LikelihoodTable], variants: Mapping[str, tuple[float, ...]] | None = None
) -> str:
    """Return the text of ``likelihoods.toml``; the parameters are those of :func:`write_likelihoods`."""
    blocks = [_HEADER]
    if variants:
        lines = [f"{cause} = [{_numbers(shares)}]" for cause, shares in variants.items()]
        blocks.append("\n".join(("[variants]", *lines)) + "\n")
    for name, table in tables.items():
        lines = [f"[likelihood.{name}]", f'basis = "{table.basis}"', f"evidence = {_quoted(table.evidence)}"]
        lines += [f"date = {_quoted(table.date)}"] if table.date else []
        lines += [] if table.weight == 1.0 else [f"weight = {table.weight:.2f}"]
        lines.append(f"[likelihood.{name}.rows]")
        lines += [f"{cause} = [{_numbers(row)}]" for cause, row in table.rows.items()]
        blocks.append("\n".join(lines) + "\n")
    return "\n".join(blocks)


def write_likelihoods(
    path: str | Path,
    tables: Mapping[str, LikelihoodTable],
    variants: Mapping[str, tuple[float, ...]] | None = None,
) -> None:
    """Write ``likelihoods.toml``; the file is replaced whole or left as it was.

    Parameters
    ----------
    path : str or Path
        The file to write.
    tables : mapping of measurement id to LikelihoodTable
        Rows are normalised on the way (see :func:`normalised_row`).
    variants : mapping of cause to tuple of float, optional
        Share of each way in which the cause shows itself, at least two.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    target = Path(path)
    text = format_likelihoods(tables, variants)
    half_written = ""
    try:
        with tempfile.NamedTemporaryFile(
            "w", encoding="utf-8", newline="\n", dir=target.parent, delete=False
        ) as stream:
            half_written = stream.name
            stream.write(text)
        os.chmod(half_written, 0o644)  # noqa: PTH101 - a temporary file starts private, a rule file is not
        Path(half_written).replace(target)
    except OSError as error:
        if half_written:
            Path(half_written).unlink(missing_ok=True)
        raise OutputError(
            f"the likelihoods could not be written: {error.strerror or error}",
            file=str(target),
            hint="Check that the folder exists and may be written to.",
        ) from None


def _numbers(row: tuple[float, ...]) -> str:
    return ", ".join(f"{value:.{DECIMALS}f}".rstrip("0") for value in normalised_row(row))


def _quoted(text: str) -> str:
    # A JSON string is a TOML string, but for the one control character that JSON leaves as it is.
    return json.dumps(text, ensure_ascii=False).replace("\x7f", "\\u007f")
