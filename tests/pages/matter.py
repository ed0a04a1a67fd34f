"""How much of a window a page leaves for its matter, reckoned without one."""

from kivy.metrics import dp

from screens.page import Page
from screens.paper.furniture import Header, Places
from screens.paper.measure import measure
from screens.paper.room import RAIL, SHARE, TIGHT, beside_width, foot_blocks, foot_look, foot_room, look_of
from screens.paper.scale import LINE, Look


def matter(page: Page, width: float, height: float, scale: float) -> float:
    """Return the share of a window that is left for the crown and the blocks of a page."""
    look = look_of(height, scale)
    if look.low and width > height:
        return _lying(page, width, height, look)
    taken = measure(Header(key="header", title=page.title, tools=page.tools), width, look.framed()).height
    if page.places and page.foot.entry is None:
        taken += measure(Places(key="places", here="ride"), width, look.framed()).height
    blocks = foot_blocks(page.foot, low=look.low)
    wide = min(width, dp(LINE))
    chosen = foot_look(blocks, wide, look, height * SHARE - taken)
    taken += sum(measure(block, wide, chosen).height for block in blocks)
    return 1.0 - taken / height


def _lying(page: Page, width: float, height: float, look: Look) -> float:
    """Return the share where an entry stands beside the page, and the places in a rail: of the area, for both take width."""
    nav = page.places and page.foot.entry is None
    left = width - dp(RAIL) if nav else width
    if page.foot.entry is not None and height < dp(TIGHT):
        left -= beside_width(page.foot.entry, width)
    taken = measure(Header(key="header", title=page.title, tools=page.tools), left, look.framed()).height
    blocks = foot_blocks(page.foot, low=True)
    if page.foot.entry is not None:
        left = width - beside_width(page.foot.entry, width)
    else:
        wide = min(left, dp(LINE))
        chosen = foot_look(blocks, wide, look, foot_room(width, height, left) - taken)
        taken += sum(measure(block, wide, chosen).height for block in blocks)
    return (1.0 - taken / height) * left / width
