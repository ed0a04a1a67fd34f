"""Gives phones, and the clock by which their answers come back to the app."""

from collections.abc import Callable, Iterator
from pathlib import Path
from time import monotonic, sleep

import pytest
from kivy.clock import Clock

from screens.phone import dialogs, light, speech
from tests.phone.android import Phone
from tests.phone.classes import android


@pytest.fixture(autouse=True)
def clock(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let the app's clock go on from where a test before has driven it: it would sleep until the real time has caught up."""
    real, ahead = Clock.time, max(0.0, Clock.get_time() - Clock.time())
    monkeypatch.setattr(Clock, "time", lambda: real() + ahead)
    monkeypatch.setattr(Clock, "_max_fps", 0)


@pytest.fixture(autouse=True)
def no_dialog(monkeypatch: pytest.MonkeyPatch) -> None:
    """Let no test wait for a person at the dialog of a desktop."""
    monkeypatch.setattr(dialogs, "WAYS", {})


@pytest.fixture
def phone(tmp_path: Path) -> Iterator[Phone]:
    """Give an Android 14 phone that has everything and allows everything."""
    with android(tmp_path).here() as one:
        yield one
        speech.close()
        light.switch(on=False)


@pytest.fixture
def old_phone(tmp_path: Path) -> Iterator[Phone]:
    """Give an Android 7 phone."""
    with android(tmp_path, 24).here() as one:
        yield one


@pytest.fixture
def until() -> Callable[[Callable[[], object]], None]:
    """Give a function that lets the app's clock run until something is so."""

    def wait(so: Callable[[], object]) -> None:
        end = monotonic() + 5.0
        while not so():
            assert monotonic() < end, "it never came"
            Clock.tick()
            sleep(0.002)

    return wait
