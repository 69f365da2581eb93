"""What each instrument shows as a table, for other programs."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from triage.corners import CORNERS
from triage.signals.measurement import Span
from ui.presenters.companions import CompanionLine
from ui.presenters.drop_outs import COLUMNS, DropOuts, format_cell, is_of_all_wheels
from ui.presenters.load_split import LoadGroup
from ui.presenters.plot_table import PlotTable, TextTable
from ui.presenters.quality import QualityRow
from ui.presenters.ring import RingPicture
from ui.presenters.spectrum import SpectrumPicture


def build_ring_table(picture: RingPicture) -> PlotTable:
    """Return both tracks of a ring with their confidence bands, and the drops where they are known."""
    columns = {
        "angle (deg)": picture.angle_deg,
        "speed off its mean (%)": picture.ripple.value,
        "speed, low (%)": picture.ripple.low,
        "speed, high (%)": picture.ripple.high,
        "samples lost or off (%)": picture.lost.value,
        "lost, low (%)": picture.lost.low,
        "lost, high (%)": picture.lost.high,
    }
    if picture.drops_per_turn is not None:
        columns["drops that begin here (1/turn)"] = picture.drops_per_turn
    return PlotTable(tuple(columns), tuple(columns.values()))


def build_spectrum_table(picture: SpectrumPicture) -> PlotTable:
    """Return a spectrum point by point."""
    across = "times in a turn" if picture.per_turn else "times in a metre"
    head = (across, "amplitude (%)", "usual level (%)", "reached by chance in 1 of 100 (%)")
    columns = (
        picture.place,
        picture.amplitude_percent,
        picture.usual_percent,
        picture.chance_percent,
    )
    return PlotTable(head, columns)


def build_load_table(groups: Sequence[LoadGroup]) -> TextTable:
    """Return every bar with its standard uncertainty; what the drive does not carry stays empty."""
    rows = [
        (
            group.title,
            group.unit,
            bar.label,
            *(("", "") if bar.value is None else (f"{bar.value:.6g}", f"{bar.std_uncertainty:.6g}")),
        )
        for group in groups
        for bar in group.bars
    ]
    return TextTable(("quantity", "unit", "load", "value", "standard uncertainty"), tuple(rows))


def build_loss_table(
    losses: DropOuts, rows: Sequence[int], titles: Sequence[str], *, speed_unit: str
) -> TextTable:
    """Return losses with the wheel before each."""
    cells = [
        (
            "all" if is_of_all_wheels(losses, row) else losses.corner,
            *(format_cell(losses, row, column, speed_unit=speed_unit) for column in range(len(COLUMNS))),
        )
        for row in rows
    ]
    return TextTable(("wheel", *titles), tuple(cells))


def build_quality_table(rows: Sequence[QualityRow]) -> TextTable:
    """Return the quality of the four wheels."""
    return TextTable(("", *CORNERS), tuple((row.title, *row.cells) for row in rows))


def build_companion_table(lines: Sequence[CompanionLine], view_s: Span) -> PlotTable:
    """Return channels in view on all their own instants; empty where one has none."""
    begin_s, end_s = view_s
    kept = [(line.time_s >= begin_s) & (line.time_s <= end_s) for line in lines]
    own_s = [line.time_s[flag] for line, flag in zip(lines, kept, strict=True)]
    instants_s = np.unique(np.concatenate(own_s)) if own_s else np.empty(0)
    columns = [instants_s]
    for line, flag, time_s in zip(lines, kept, own_s, strict=True):
        column = np.full(instants_s.size, np.nan)
        column[np.searchsorted(instants_s, time_s)] = line.value[flag]
        columns.append(column)
    return PlotTable(("time (s)", *(f"{line.title} ({line.unit})" for line in lines)), tuple(columns))
