from __future__ import annotations

import pytest

from ui.state.settings import Preferences, Settings, checked_settings, settings_table


def test_settings_survive_a_table_and_back() -> None:
    settings = Settings("mph", 150, "dark", "de")
    assert checked_settings(settings_table(settings)) == (settings, ())


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("speed_unit", "furlong"),
        ("text_percent", 79),
        ("text_percent", 201),
        ("text_percent", 100.0),
        ("text_percent", True),
        ("text_percent", "100"),
        ("colours", "pink"),
        ("language", ["de"]),
        ("volume", 3),
    ],
)
def test_what_cannot_be_used_is_told_and_the_rest_stays(name: str, value: object) -> None:
    good = {"text_percent": 100} if name == "colours" else {"colours": "system"}
    settings, told = checked_settings({name: value, **good})
    assert settings == Settings()
    assert len(told) == 1
    assert name in told[0]


def test_preferences_tell_once_and_only_when_something_changed() -> None:
    preferences = Preferences()
    told: list[Settings] = []
    preferences.changed.subscribe(told.append)
    preferences.change(speed_unit="mph", text_percent=125)
    preferences.change(speed_unit="mph")
    assert told == [Settings(speed_unit="mph", text_percent=125)]
    with pytest.raises(ValueError, match="text_percent"):
        preferences.change(text_percent=1000)
    assert preferences.settings.text_percent == 125
