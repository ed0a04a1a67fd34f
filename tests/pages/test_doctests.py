"""The examples in the docstrings of `screens`: those of `logic` and `tests` are collected by pytest itself.

Only modules that have one are imported: the others may want a window.
"""

import doctest
from importlib import import_module
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
WITH_EXAMPLES = [
    ".".join(path.relative_to(ROOT).with_suffix("").parts)
    for path in sorted((ROOT / "screens").rglob("*.py"))
    if ">>> " in path.read_text(encoding="utf-8")
]


@pytest.mark.parametrize("name", WITH_EXAMPLES)
def test_the_examples_of_a_module_are_true(name: str) -> None:
    done = doctest.testmod(import_module(name.removesuffix(".__init__")))
    assert (done.failed, done.attempted > 0) == (0, True)
