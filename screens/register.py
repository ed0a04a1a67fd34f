"""The one register of pages: the name of each, and where it is made.

A module is loaded at the first visit to its page.
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


@cache
def page_function(name: str) -> PageFunction:
    """Return the function of a page; its module is loaded at the first visit."""
    module, _, function = PAGES[name].rpartition(".")
    found: PageFunction = getattr(import_module(module), function)
    return found
