"""Write tests/VALIDATION.md and the data of the app's page of sources: `uv run python -m tests.write_validation`."""

import sys

import pytest

from tests import validation
from tests.validation_page import page


def main() -> int:
    """Run the published tests and write what they found; nothing is written when one of them fails."""
    validation.begin()
    failed = pytest.main(["tests/published", "-n", "0", "-p", "no:cacheprovider"])
    if failed:
        return int(failed)
    found = validation.gather(validation.FOUND)
    validation.DATA.write_text(validation.as_json(found), encoding="utf-8")
    validation.PAGE.write_text(page(found, validation.FOUND), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
