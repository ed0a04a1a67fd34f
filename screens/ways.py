"""Rows that lead to another page."""

from screens.acts import Go
from screens.blocks import Line
from screens.tongue import _


def leads_to(
    key: str, page: str, title: str, detail: str = "", /, *, icon: str = "", **given: object
) -> Line:
    """Return a row that opens a page; `given` are the parameters of that page."""
    return Line(key=key, title=title, detail=detail, icon=icon, act=Go(page, given))


def signs_line(title: str = "") -> Line:
    """Return the row that leads to the signs at which a pack is taken out of use."""
    return Line(
        key="signs",
        title=title or _("Pack hot or swollen?"),
        icon="fire",
        bad=True,
        act=Go("ride.pack_signs"),
    )
