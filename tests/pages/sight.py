"""What of a page is in sight before anything is swiped, measured without a window."""

from screens.page import Page
from screens.paper.furniture import Header, Places
from screens.paper.measure import measure
from screens.paper.room import SHARE, foot_blocks, foot_look, look_of, whole_look


def in_sight(page: Page, width: float = 360.0, height: float = 640.0, scale: float = 1.0) -> set[str]:
    """Keys of the blocks that stand whole between crown and foot of a window as the page opens, in dp and pixels alike."""
    look = look_of(height, scale)
    top = measure(Header(key="header", title=page.title, tools=page.tools), width, look.framed()).height
    frame = top
    if page.crown is not None:
        top += measure(page.crown, width, look).height
    places = Places(key="places", here="bench")
    nav = page.places and page.foot.entry is None
    foot = measure(places, width, look.framed()).height if nav else 0.0
    blocks = foot_blocks(page.foot, low=look.low)
    chosen = foot_look(blocks, width, look, height * SHARE - frame - foot)
    foot += sum(measure(block, width, chosen).height for block in blocks)
    look = whole_look(page.blocks, page.whole, width, look, height - foot - top)
    seen = set()
    for block in page.blocks:
        top += measure(block, width, look).height
        if top > height - foot:
            break
        seen.add(block.key)
    return seen
