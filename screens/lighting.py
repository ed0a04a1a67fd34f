"""The Sun theme, one tap away in the header of every task: on in bright light, off again to the theme before."""

from dataclasses import replace

from logic.person import Person
from screens.acts.keeping import Settle
from screens.blocks import Button
from screens.page import Page
from screens.tongue import _

MOST_TOOLS = 1
"""Tools of its own beside which a page has room for this one; the pages behind the others have it."""


def lit(page: Page, person: Person) -> Page:
    """Return a page with the way to the Sun theme, or back from it. The homes show the board there."""
    if page.chip or len(page.tools) > MOST_TOOLS:
        return page
    in_sun = person.sun or person.theme == "sun"
    usual = "day" if person.theme == "sun" else person.theme
    tool = Button(
        _("Usual theme") if in_sun else _("Sun theme"),
        Settle({"sun": not in_sun, "theme": usual}),
        icon="day",
    )
    return replace(page, tools=(*page.tools, tool))
