"""What of a page is in sight before anything is swiped, measured without a window."""

from screens.page import Page
from screens.paper.furniture import Header, Places
from screens.paper.measure import measure
from screens.paper.room import foot_blocks, look_of


def in_sight(page: Page, width: float = 360.0, height: float = 640.0, scale: float = 1.0) -> set[str]:
    """Keys of the blocks that stand whole between crown and foot of a window as the page opens, in dp and pixels alike."""
    look = look_of(height, scale)
    top = measure(Header(key="header", title=page.title, tools=page.tools), width, look.framed()).height
    if page.crown is not None:
        top += measure(page.crown, width, look).height
    foot = sum(measure(block, width, look).height for block in foot_blocks(page.foot, low=look.low))
    if page.places and page.foot.entry is None:
        foot += measure(Places(key="places", here="bench"), width, look.framed()).height
    seen = set()
    for block in page.blocks:
        top += measure(block, width, look).height
        if top > height - foot:
            break
        seen.add(block.key)
    return seen
