"""Cases of damaged, blocked or strange storage: a start ends in an open app or in a sentence. The long form is a benchmark."""

from pathlib import Path

import pytest

from logic.store import file
from tests.storage import Case, cases, start

EACH = {
    "places": 1,
    "older": 1,
    "beside": 6,
    "blocks": 47,
    "fields": 240,
    "rows": 15,
    "bodies": 80,
    "others": 16,
}
"""Of which group each so-manieth case is tried here."""


def some() -> list[Case]:
    """Return the cases that are tried here."""
    seen: dict[str, int] = {}
    found = []
    for case in cases():
        number = seen[case.group] = seen.get(case.group, -1) + 1
        if number % EACH[case.group] == 0:
            found.append(case)
    return found


@pytest.mark.parametrize("case", some(), ids=lambda case: f"{case.group}: {case.name}".replace("\0", "0"))
def test_a_start_ends_in_an_open_app_or_a_sentence_and_loses_nothing_in_silence(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, case: Case
) -> None:
    monkeypatch.setattr(file, "PATIENCE", 50)
    folder = tmp_path / "data"
    folder.mkdir()
    case.spoil(folder)
    assert start(folder).lost == ()
