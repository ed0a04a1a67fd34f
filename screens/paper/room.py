"""How much of the height is left for the matter: what stands in the foot, and how large. Needs no window."""

from collections.abc import Sequence
from dataclasses import replace

from kivy.metrics import dp

from screens.blocks import Block, Entry
from screens.page import Foot
from screens.paper.bars import Bars
from screens.paper.keypad import entry_blocks
from screens.paper.measure import measure
from screens.paper.scale import EDGE, FRAME, NUMBERS, TOUCH, Look

SHARE = 0.55
"""Most of the height that header, foot and places may take."""
LOW = 700
"""Height of a window in dp below which it is low."""
SHORT = (440, 560)
"""Heights in dp between which keys stand in three rows: of a small phone beside the system's bars, not of one on its side."""

RAIL = 80
"""Width of the places in dp where they stand at the side."""
FOOT_BESIDE, MOST_BESIDE = 0.46, 480
"""Share of a wide window that an entry takes beside the page, and its most in dp."""
KEYS_BESIDE = 1100
"""Width in dp from which an entry stands beside the page in a high window, too."""
TIGHT = 350
"""Height of a window in dp below which what is entered beside the page stands beside its header, too."""
LIST, LARGE_LIST = 280, 380
"""Width in dp of a place's list beside its page, and from which text scale on the larger one."""
BESIDE_LIST = 480
"""Least width of a page in dp beside a list."""

SHRINKS = 0.25
"""Share by which text may shrink so that what belongs together is in sight at once."""

HIGH, GROWS, FILLED = 900, (1.5, 1.3), 0.7
"""Height in dp of a window whose two panes a task may leave empty, how much larger its text is, and how far down it goes."""
LARGEST = 2.0
"""The largest text scale of all."""

LARGE = 600
"""Height from which the number in the crown is large."""


def look_of(height: float, scale: float) -> Look:
    """Return how large things are drawn in a window of a height, at a text scale."""
    number = NUMBERS[0] if height >= dp(LOW) else NUMBERS[1] if height >= dp(LARGE) else NUMBERS[2]
    return Look(scale, number, height < dp(LOW), dp(SHORT[0]) <= height < dp(SHORT[1]))


def foot_blocks(foot: Foot, *, low: bool, sentence: str = "", choosing: bool = False) -> tuple[Block, ...]:
    """Return what stands in a foot: the bars alone, or what is typed with its keys, the bars below or beside it."""
    entry = foot.entry
    foot, reason = _said_once(foot)
    bars = Bars(
        key="bars",
        reason=reason,
        main=foot.main,
        beside=foot.beside,
        tall=foot.tall and entry is None,
        great=foot.great and entry is None,
        note=foot.note,
    )
    if entry is None:
        return (bars,) if bars.bars else ()
    beside = bars.bars if low and len(bars.bars) < 3 else ()  # noqa: PLR2004  (there is no room for three)
    if beside and entry.text and not (sentence or entry.sentence or entry.read_back):
        # So small a bar does not say why it is dashed.
        sentence = next((bar.why for bar in beside if bar.act is None), "")
    blocks = entry_blocks(entry, low=low, sentence=sentence, beside=beside, choosing=choosing)
    return blocks if beside or not bars.bars else (*blocks, bars)


def _said_once(foot: Foot) -> tuple[Foot, str]:
    """Return a foot whose dashed bars leave it to the words over them to say why, and these words; "" where they differ."""
    dashed = [bar.why for bar in foot.bars if bar.act is None]
    if len(dashed) < 2 or len(set(dashed)) > 1:  # noqa: PLR2004  (one says so itself)
        return foot, ""
    main = foot.main and replace(foot.main, why="")
    return replace(foot, main=main, beside=tuple(replace(bar, why="") for bar in foot.beside)), dashed[0]


def foot_look(blocks: tuple[Block, ...], width: float, look: Look, most: float) -> Look:
    """Return the look in which a foot takes no more than so much of the height: its text shrinks to normal at the least."""
    scale = look.scale
    while scale > 1.0:
        chosen = replace(look, scale=scale)
        if sum(measure(block, width, chosen).height for block in blocks) <= most:
            return chosen
        scale = max(1.0, scale - 0.1)
    return replace(look, scale=1.0)


def list_width(width: float, height: float, scale: float) -> float:
    """Return how wide a place's list stands beside its page in a window; 0 where there is no room for both."""
    wide = dp(LIST if scale <= FRAME else LARGE_LIST)
    return wide if height >= dp(LOW) and width - wide >= dp(BESIDE_LIST) else 0.0


def foot_room(width: float, height: float, wide: float) -> float:
    """Return the height that header and foot may take in a window, where a rail leaves them so much of its width."""
    return height * (1.0 - (1.0 - SHARE) * width / wide)


def beside_width(entry: Entry, width: float) -> float:
    """Return how wide an entry stands beside the page: more where the signs beside the digits need it to be touched."""
    signs = entry.field.signs.split() or entry.field.signs
    return max(min(width * FOOT_BESIDE, dp(MOST_BESIDE)), dp(TOUCH) * (2 + len(signs)) + dp(EDGE))


def whole_look(blocks: Sequence[Block], whole: str, width: float, look: Look, room: float) -> Look:
    """Return the look in which the blocks up to the one named stand in the room; their text shrinks by a quarter at most."""
    keys = [block.key for block in blocks]
    if whole not in keys:
        return look
    first = blocks[: keys.index(whole) + 1]
    scale, least = look.scale, max(1.0, look.scale * (1.0 - SHRINKS))
    while scale > least and sum(measure(one, width, look).height for one in first) > room:
        scale = max(least, scale - 0.05)
        look = replace(look, scale=scale)
    return look


def roomy_look(blocks: Sequence[Block], width: float, look: Look, room: float) -> Look:
    """Return the largest look in which the blocks of a task leave some of the room."""
    for factor in GROWS:
        larger = replace(look, scale=look.scale * factor)
        if (
            larger.scale <= LARGEST
            and sum(measure(one, width, larger).height for one in blocks) <= room * FILLED
        ):
            return larger
    return look
