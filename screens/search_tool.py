"""The way to the search, in the header of each of the four places."""

from screens.acts import Go
from screens.blocks import Button
from screens.tongue import _

SEARCH = "search"
"""Name of the page, and the key under which the words of the search are typed."""


def search_tools() -> tuple[Button, ...]:
    """Return the icon that opens it."""
    return (Button(_("Search"), Go(SEARCH), icon="search"),)
