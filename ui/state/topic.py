"""Plain listeners: the one way in which the window's parts hear of a change."""

from __future__ import annotations

from collections.abc import Callable
from typing import Generic, TypeVar

Value = TypeVar("Value")


class Topic(Generic[Value]):
    """Something that can change and tells those who asked, in the order they asked."""

    def __init__(self) -> None:
        self._listeners: list[Callable[[Value], object]] = []

    def subscribe(self, listener: Callable[[Value], object]) -> Callable[[], None]:
        """Call ``listener`` at every change.

        Returns
        -------
        callable
            Ends the subscription; a second call does nothing.
        """
        self._listeners.append(listener)

        def unsubscribe() -> None:
            if listener in self._listeners:
                self._listeners.remove(listener)

        return unsubscribe

    def tell(self, value: Value) -> None:
        """Tell every listener; one that leaves meanwhile is still told."""
        for listener in tuple(self._listeners):
            listener(value)
