"""A page as data: what a page function returns and the paper paints.

    def ratio(world: World) -> Page:
        item = world.kept(gearing, world.board, world.person.rider, 0.0).items["ratio"]
        return Page(title=_("Gear ratio"), crown=figure(world, item, _("Ratio"), row=False))

See DEVELOPERS.md, "How to write a page".
"""

from collections.abc import Callable
from typing import TYPE_CHECKING

from logic.frozen import frozen
from screens.acts import Act
from screens.blocks import Block, Button, Entry

if TYPE_CHECKING:
    from screens.world import World


@frozen
class Foot:
    """What stays at the thumb: one main act, at most two beside it, and what is being entered.

    `tall` gives the two of a choice the height of a gloved thumb, `great` the main one alone; `note` is said over them.
    """

    main: Button | None = None
    beside: tuple[Button, ...] = ()
    entry: Entry | None = None
    tall: bool = False
    great: bool = False
    note: str = ""

    def __post_init__(self) -> None:
        """Hold to two beside the main one. Raises ValueError for more."""
        if len(self.beside) > 2:  # noqa: PLR2004  (said above)
            raise ValueError(f"at most two acts beside the main one, not {len(self.beside)}")

    @property
    def bars(self) -> tuple[Button, ...]:
        """Return the bars in reading order, the main one last."""
        return self.beside if self.main is None else (*self.beside, self.main)


@frozen
class Page:
    """Title, what stays in sight (`crown`), the blocks from top to bottom, and the foot.

    - `tools` are icons in the header; `chip` shows the board's name there, on the four homes only.
    - `aside` names the blocks that stand in a second pane where there is room for one.
    - `places` shows the four places at the foot; they give way while something is entered.
    - `whole` is the key of the last block of what must be in sight at once: all text of the page shrinks a little for it.
    - `card` is what of the page is in front: when it changes, the page begins at its top, and the foot hears nothing for a
      moment.
    - `back` is what Back does here before it leaves the page.
    - `then` is done once the page stands and nothing is touched: the page it leads to may have one again, until all is known.
    - `say` is what is said aloud, on its own where the person wants that; `awake` keeps the screen on.
    - `lost` says that it stands in for one that failed.
    """

    title: str
    blocks: tuple[Block, ...] = ()
    crown: Block | None = None
    foot: Foot = Foot()
    aside: frozenset[str] = frozenset()
    tools: tuple[Button, ...] = ()
    places: bool = True
    chip: bool = False
    whole: str = ""
    card: str = ""
    back: Act | None = None
    then: Act | None = None
    awake: bool = False
    say: str = ""
    lost: bool = False

    def __post_init__(self) -> None:
        """Hold to one block a key. Raises ValueError for a key that comes twice or is missing."""
        keys = [block.key for block in self.blocks]
        twice = sorted({key for key in keys if keys.count(key) > 1})
        if twice or "" in keys:
            raise ValueError(f"page {self.title!r}: keys must be there and differ: {twice or 'an empty one'}")

    @property
    def matter(self) -> tuple[Block, ...]:
        """Return what it says from top to bottom: the crown and the blocks."""
        return self.blocks if self.crown is None else (self.crown, *self.blocks)


PageFunction = Callable[["World"], Page]
"""What a module of screens/<place>/ gives: a page of a world."""
