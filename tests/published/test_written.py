"""Nothing is written of a test that is gone."""

from collections import Counter

import pytest

from tests.printed import ours
from tests.validation import again, data


@ours
def test_no_more_is_written_than_there_are_tests(request: pytest.FixtureRequest) -> None:
    """Held for the files that this run collected whole."""
    if again() or request.config.option.keyword or any("::" in arg for arg in request.config.args):
        pytest.skip("not all cases are collected")
    here = Counter(
        item.nodeid.removeprefix("tests/published/").partition("[")[0]
        for item in request.session.items
        if item.nodeid.startswith("tests/published/")
    )
    files = {name.partition("::")[0] for name in here}
    written: Counter[str] = Counter()
    for row in data()["tests"]:
        if row["test"].partition("::")[0] in files:
            written[row["test"]] += row["cases"]
    assert written == here
