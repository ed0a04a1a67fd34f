"""The way to the search, in the header of each of the four places."""

from screens.acts import Both, Go
from screens.acts.entering import Write
from screens.blocks import Button
from screens.tongue import _

SEARCH = "search"
"""Name of the page, and the key under which the words of the search are typed."""


def search_tools() -> tuple[Button, ...]:
    """Return the icon that opens it, empty: who comes back to it finds what was typed."""
    return (Button(_("Search"), Both((Write(SEARCH, ""), Go(SEARCH))), icon="search"),)
