"""Every refusal of logic, walked from its source: each has a sentence, and no name of the code reaches a reader."""

import ast
import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from logic import errors
from logic.checks.faults import faults
from logic.errors import InputError
from screens import tongue
from screens.words import Style, label_of, offer, refusal
from screens.words.checks import REFUSALS
from screens.words.figures import OUTCOMES

LOGIC = Path(__file__).parents[2] / "logic"
SCREENS = LOGIC.parent / "screens"
MOST_WORDS = 20
CODE = re.compile(r"[a-z]_[a-z]|[a-z]\\.[a-z]|[{}]")
"""What a name of the code looks like: an underscore or a point between letters."""


def raised() -> Iterator[tuple[str, ast.Call]]:
    """Give each call in logic that refuses a value or says that one is missing."""
    for path in sorted(LOGIC.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Call) and isinstance(node.func, ast.Name):
                yield node.func.id, node


def texts(node: ast.AST) -> list[str]:
    return [
        one.value for one in ast.walk(node) if isinstance(one, ast.Constant) and isinstance(one.value, str)
    ]


ERRORS = {
    name for name, kind in vars(errors).items() if isinstance(kind, type) and issubclass(kind, InputError)
}


def reasons(*kinds: str) -> set[str]:
    return {
        text
        for name, call in raised()
        if name in kinds and len(call.args) > 2
        for text in texts(call.args[2])
    }


REASONS = sorted(
    reasons(*ERRORS)
    | {text for name, call in raised() if name == "refuse" for text in texts(call.args[0])} - {"reason"}
    | {"charged above 4.20 V"}
)
FIELDS = sorted(
    {
        text
        for name, call in raised()
        if name in ERRORS | {"Missing"} and call.args and isinstance(call.args[0], ast.Constant)
        for text in texts(call.args[0])
    }
    | {word.arg for name, call in raised() if name == "positive" for word in call.keywords if word.arg}
)


def test_the_walk_finds_the_refusals():
    assert len(REASONS) > 80
    assert {"battery_current_limit", "speed", "span"} <= set(FIELDS)


@pytest.mark.parametrize("reason", [reason for reason in REASONS if reason != "reason"])
def test_every_reason_has_a_short_sentence(reason):
    own = REFUSALS.get(reason) or tongue.texts("refusals")["sentences"].get(reason)
    if reason == "unknown unit":
        own = refusal(InputError("force", "5 q", reason, quantity="force"), Style())
    assert own is not None, reason
    said = REFUSALS.get(reason) or refusal(InputError("ride.distance", 1.0, reason, 1.0, 2.0), Style())
    assert not CODE.search(said.replace("\u00a0", " ")), said
    assert said.endswith(".")
    assert said[0].isupper() or said[0].isdigit()
    if reason != "unknown unit":
        assert len(own.split()) <= MOST_WORDS, own


def test_every_answer_in_place_of_a_number_has_its_sentence():
    # Three are handed on by name where an answer has no number to tell.
    outcomes = reasons("NoFigure") | {"by feel", "runs past", "too cold"}
    assert outcomes == set(OUTCOMES)
    for key in outcomes:
        assert OUTCOMES[key].endswith(".")
        assert "0" not in OUTCOMES[key].split()


def test_no_code_tells_refusals_apart_by_their_words():
    for path in (*LOGIC.rglob("*.py"), *SCREENS.rglob("*.py")):
        for node in ast.walk(ast.parse(path.read_text())):
            if isinstance(node, ast.Compare) and "words" not in path.parts:
                sides = (node.left, *node.comparators)
                assert not any(isinstance(one, ast.Attribute) and one.attr == "reason" for one in sides), path


@pytest.mark.parametrize("field", FIELDS)
def test_no_field_reaches_a_reader_as_a_name_of_the_code(field):
    for said in (
        label_of(field),
        offer((field,)),
        refusal(InputError(field, 1.0, "range", 0.0, 2.0), Style()),
        refusal(InputError(field, 1.0, "a reason of tomorrow"), Style()),
    ):
        assert not CODE.search(said), said
        assert field not in said or "_" not in field


def test_what_is_missing_is_counted_as_one_would():
    assert offer(("drive.motors",)) == "Motors are missing. Add them."
    assert offer(("pack.series",)) == "Cells in series are missing. Add them."
    assert offer(("drive.wheel_diameter",)) == "Wheel diameter is missing. Add it."
    assert offer(("ride.distance",)) == "Distance is missing. Add it."


def test_every_page_a_cause_opens_has_a_name():
    opened = {cause.opens for fault in faults() for cause in fault.causes if ":" not in cause.opens} - {""}
    assert opened <= {*tongue.texts("pages")["titles"], *tongue.texts("pages")["called"]}
