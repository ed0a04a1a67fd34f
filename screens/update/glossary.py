"""From a page to the words of the trade that stand on it."""

from logic.glossary import words_in
from screens.acts import Explain, Go
from screens.register import page_function
from screens.update import does, update
from screens.world import World


@does(Explain)
def explain(world: World, _act: Explain) -> World:
    """Open the words of the page in front; all of them where it has none."""
    page = page_function(world.trail[-1].page)(world)
    blocks = (*page.blocks, *((page.crown,) if page.crown is not None else ()))
    keys = [word.key for word in words_in(". ".join((page.title, *(block.said() for block in blocks))))]
    return update(world, Go("glossary", {"keys": keys} if keys else {}))
