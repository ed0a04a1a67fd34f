"""When the data cannot be opened: a page with a true sentence, and an exit status of its own."""

import inspect

import pytest

from logic.store import NewerFile, NotAStore, errors
from screens.trouble import TroubleApp
from screens.words.storage import SENTENCES, sentence, status

CAUSES = [
    kind
    for _, kind in inspect.getmembers(errors, inspect.isclass)
    if issubclass(kind, errors.CannotStore | NewerFile | NotAStore) and kind is not errors.CannotStore
]


def test_every_cause_has_its_sentence_and_its_status() -> None:
    assert set(CAUSES) == set(SENTENCES)
    assert len({sentence(kind()) for kind in CAUSES}) == len(CAUSES)
    assert len({status(kind()) for kind in CAUSES}) == len(CAUSES)
    assert not {status(kind()) for kind in CAUSES} & {0, 1, 2, 3}


@pytest.mark.parametrize("cause", CAUSES)
def test_the_page_says_why(cause: type[Exception]) -> None:
    paper = TroubleApp(cause("a word from below")).build()
    said = " ".join(block.said() for block in paper.page.blocks)
    assert sentence(cause()) in said
    assert "from below" not in said
