"""What a page is made of refuses what no page may be: a slip of the pen ends where it is made, not on the paper."""

import pytest

from screens.blocks import PLAIN, RIGHT, UNSURE, WRONG, Button, Verdict, Words
from screens.page import Foot, Page


@pytest.mark.parametrize("form", [RIGHT, WRONG, UNSURE, PLAIN])
def test_a_verdict_has_one_of_four_forms(form: str) -> None:
    assert Verdict("GOOD", form=form).form == form


@pytest.mark.parametrize("form", ["good", "", "RIGHT"])
def test_a_verdict_of_another_form_is_refused(form: str) -> None:
    with pytest.raises(ValueError, match=f"a verdict is no '{form}'"):
        Verdict("GOOD", form=form)


def test_a_foot_has_two_bars_beside_the_main_one_at_most() -> None:
    bar = Button("Back")
    assert Foot(main=bar, beside=(bar, bar)).beside == (bar, bar)
    with pytest.raises(ValueError, match="not 3"):
        Foot(beside=(bar, bar, bar))


@pytest.mark.parametrize("keys", [("same", "same"), ("", "other")])
def test_the_blocks_of_a_page_have_keys_that_differ(keys: tuple[str, ...]) -> None:
    with pytest.raises(ValueError, match="keys must be there and differ"):
        Page(title="A page", blocks=tuple(Words(key, "text") for key in keys))
