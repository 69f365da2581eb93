"""Moving along a recording: which seconds come into view."""

from __future__ import annotations

from typing import Final

from triage.signals.measurement import Span

SHORTEST_VIEW_S: Final = 0.1


def kept_inside(view_s: Span, whole_s: Span) -> Span:
    """Return a view of the same length, but within the recording and not too short to see anything."""
    first, last = whole_s
    length = min(max(view_s[1] - view_s[0], SHORTEST_VIEW_S), last - first)
    begin_s = min(max(view_s[0], first), last - length)
    return begin_s, begin_s + length


def moved(view_s: Span, share: float) -> Span:
    """Move a view by a share of its length; positive is later."""
    step_s = share * (view_s[1] - view_s[0])
    return view_s[0] + step_s, view_s[1] + step_s


def zoomed(view_s: Span, factor: float) -> Span:
    """Return a view ``factor`` times as long around the same middle."""
    middle_s, half_s = 0.5 * (view_s[0] + view_s[1]), 0.5 * factor * (view_s[1] - view_s[0])
    return middle_s - half_s, middle_s + half_s
