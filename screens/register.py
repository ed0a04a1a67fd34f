"""The one register of pages: the name of each, and where it is made.

The last part of the path tells which kind it is: `a_function` returns a Page of a World, a `Class` is an old page of widgets.
"""

from functools import cache
from importlib import import_module

from screens import bench, board, log, numbers, ride, settings
from screens.page import PageFunction

PAGES = {
    **ride.PAGES,
    **bench.PAGES,
    **numbers.PAGES,
    **log.PAGES,
    **board.PAGES,
    **settings.PAGES,
    "working": "screens.working.working_page",
    "search": "screens.search.search_page",
    "glossary": "screens.glossary.glossary_page",
}


def is_data(name: str) -> bool:
    """Tell whether a page is a function of a World."""
    return PAGES[name].rpartition(".")[2][0].islower()


@cache
def page_function(name: str) -> PageFunction:
    """Return the function of a page; its module is loaded at the first visit."""
    module, _, function = PAGES[name].rpartition(".")
    found: PageFunction = getattr(import_module(module), function)
    return found
