"""What the user likes: units, size of texts, colours, language; and the one place that holds it."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from typing import Any, Final, Literal

from triage.errors import printable
from triage.texts import Text
from ui.state.topic import Topic
from ui.state.window_state import SPEED_UNITS

Colours = Literal["system", "light", "dark"]
COLOURS: Final[tuple[Colours, ...]] = ("system", "light", "dark")

Language = Literal["en", "de"]
LANGUAGES: Final[tuple[Language, ...]] = ("en", "de")

TEXT_PERCENTS: Final = (80, 90, 100, 110, 125, 150, 175, 200)
"""Sizes of texts to choose from; up to 200 % as WCAG 2.2, 1.4.4 asks for."""


@dataclass(frozen=True, slots=True)
class Settings:
    """What the user chose.

    Attributes
    ----------
    speed_unit : str
        One of :data:`ui.state.window_state.SPEED_UNITS`.
    text_percent : int
        Size of all texts against that of the system, 80 to 200.
    colours : {"system", "light", "dark"}
    language : {"en", "de"}
        Of everything the window says; taken up when the program starts. Files and the terminal stay English.
    """

    speed_unit: str = SPEED_UNITS[0]
    text_percent: int = 100
    colours: Colours = "system"
    language: Language = "en"


ALLOWED: Final[dict[str, tuple[object, ...]]] = {
    "speed_unit": SPEED_UNITS,
    "text_percent": tuple(range(TEXT_PERCENTS[0], TEXT_PERCENTS[-1] + 1)),
    "colours": COLOURS,
    "language": LANGUAGES,
}
"""Values of every setting."""


def checked_settings(table: dict[str, object]) -> tuple[Settings, tuple[str, ...]]:
    """Take what can be used of a table, and tell what cannot.

    Parameters
    ----------
    table : dict
        Name and value of settings, as read from a file; what is missing stays as it comes with the program.

    Returns
    -------
    Settings
    tuple of str
        One sentence for each entry that was left aside.
    """
    good: dict[str, Any] = {}
    told: list[str] = []
    for name, value in table.items():
        if name not in ALLOWED:
            told.append(Text("There is no setting “{name}”.", name=printable(name[:40])))
        elif isinstance(value, bool) or not any(
            value == one and type(value) is type(one) for one in ALLOWED[name]
        ):
            given = repr(str(value)[:40])
            told.append(
                Text(
                    "“{name}” cannot be {value}; it is {allowed}.",
                    name=name,
                    value=given,
                    allowed=_wording(name),
                )
            )
        else:
            good[name] = value
    return Settings(**good), tuple(told)


def _wording(name: str) -> str:
    values = ALLOWED[name]
    if name == "text_percent":
        return Text("a whole number from {low} to {high}", low=values[0], high=values[-1])
    return Text("one of {values}", values=", ".join(str(value) for value in values))


def settings_table(settings: Settings) -> dict[str, object]:
    """Return the settings as a table to be written."""
    return asdict(settings)


class Preferences:
    """Holds the settings and tells of every change."""

    def __init__(self, settings: Settings | None = None) -> None:
        self.settings = settings or Settings()
        self.changed: Topic[Settings] = Topic()

    def change(self, **values: Any) -> None:
        """Set some of the settings; told once when anything is different.

        Raises
        ------
        ValueError
            For a value that a setting cannot have.
        """
        fresh, told = checked_settings(asdict(replace(self.settings, **values)))
        if told:
            raise ValueError(" ".join(told))
        if fresh != self.settings:
            self.settings = fresh
            self.changed.tell(fresh)
