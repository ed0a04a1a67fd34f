"""Settings: each choice acts at once and stays; Sun is one tap from every task."""

import pytest

from logic.person import Person
from screens.lighting import lit
from screens.phone import configuration
from screens.register import page_function
from tests.pages.reader import Reader


@pytest.fixture
def settings(pages: Reader) -> Reader:
    """Give the settings, open."""
    return pages.open("settings")


@pytest.mark.parametrize(("text", "name", "value"), [
    ("Night", "theme", "night"), ("As phone", "theme", "phone"), ("160\u202f%", "text", 1.6), ("Comma: 1,5", "mark", ","),
    ("Inch and pound", "system", "inch"),
])  # fmt: skip
def test_a_choice_acts_at_once_and_stays(settings: Reader, text: str, name: str, value: object) -> None:
    settings.tap(text)
    assert getattr(settings.world.person, name) == value
    assert text in [option.text for option in settings[name].options if option.chosen]
    settings.restart(hours=1)
    assert getattr(settings.world.person, name) == value


def test_tools_and_what_the_phone_may_do_are_in_folds(settings: Reader) -> None:
    settings.tap("Tools")
    settings.tap("Feeler gauge")
    assert settings.world.person.depth_tool == "feeler gauge"
    settings.tap("Voice, notes and feel")
    for name in ("say", "bench", "vibrate", "fade", "remind"):
        before = getattr(settings.world.person, name)
        settings.act(next(option.act for option in settings[name].options if not option.chosen))
        assert getattr(settings.world.person, name) is not before


def test_the_rider_is_a_setting_and_a_refused_one_is_said(settings: Reader) -> None:
    settings.tap("Rider with helmet and bag")
    settings.type("9500")
    settings.back()
    assert (settings["rider"].value, settings["rider"].detail) == ("80\u00a0kg", "9500 not used")
    settings.tap("Rider with helmet and bag")
    settings.rub(2)
    settings.tap("Save")
    assert (settings["rider"].value, settings.world.person.rider.si) == ("95\u00a0kg", 95.0)


def test_inch_shows_miles_and_leaves_what_was_typed(settings: Reader) -> None:
    settings.tap("Inch and pound")
    settings.open("numbers.gearing")
    assert settings.page.crown.unit == "mph"
    assert settings["drive.wheel_diameter"].value == "100\u00a0mm"


def test_the_comma_is_in_every_number(settings: Reader) -> None:
    settings.tap("Comma: 1,5")
    settings.open("numbers.gearing")
    settings.tap("Motor pulley, one more")
    said = " ".join(text for text in settings.texts() if "km/h" in text)
    assert "," in said
    assert not any(digit + "." in said for digit in "0123456789")


def test_a_theme_that_follows_the_phone(monkeypatch: pytest.MonkeyPatch) -> None:
    person = Person(theme="phone")
    assert configuration.theme_of(person) == "day"
    monkeypatch.setattr(configuration, "is_dark", lambda: True)
    assert configuration.theme_of(person) == "night"
    assert configuration.theme_of(Person(theme="day")) == "day"
    assert configuration.theme_of(Person(theme="phone", sun=True)) == "sun"


@pytest.mark.parametrize("theme", ["day", "night", "phone"])
def test_sun_is_one_tap_in_the_header_and_the_same_tap_ends_it(pages: Reader, theme: str) -> None:
    pages.open("settings")
    pages.tap({"day": "Day", "night": "Night", "phone": "As phone"}[theme])
    pages.open("ride.tension")

    def tool() -> object:
        page = lit(page_function(pages.name)(pages.world), pages.world.person)
        return next(one.act for one in page.tools if one.icon == "day")

    pages.act(tool())  # type: ignore[arg-type]
    assert configuration.theme_of(pages.world.person) == "sun"
    pages.act(tool())  # type: ignore[arg-type]
    assert (pages.world.person.theme, pages.world.person.sun) == (theme, False)


def test_sun_chosen_in_the_settings_ends_with_another_theme(settings: Reader) -> None:
    settings.tap("Sun")
    assert configuration.theme_of(settings.world.person) == "sun"
    settings.tap("Night")
    assert configuration.theme_of(settings.world.person) == "night"


def test_a_finer_tool_narrows_the_band(settings: Reader) -> None:
    def error() -> float:
        settings.open("ride.tension")
        settings.rub(len(settings.typed))
        settings.type("0.92")
        said = next(text for text in settings.texts() if "±\u00a0" in text)
        return float(said.rpartition("±\u00a0")[2].split("\u00a0")[0])

    before = error()
    settings.open("settings")
    settings.tap("Tools")
    settings.tap("Fish or kitchen scale, 10 g steps")
    settings.tap("Feeler gauge")
    assert error() < before
