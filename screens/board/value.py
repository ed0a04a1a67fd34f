"""One value of the board or the rider: what to measure and where, the number, and how it is known.

In the guided entry the next value that is missing comes by itself.
"""

from collections.abc import Iterator, Mapping

from logic.answers.first_speed import first_speed
from logic.answers.reading import RIDER, Result
from logic.board import Value, board_fields
from logic.glossary import word_of
from screens.acts import Act, Back, Turn
from screens.acts.boards import NotKnown
from screens.acts.keeping import Set, Settle
from screens.asked_value import AskedValue
from screens.blocks import Block, Button, Line, Words
from screens.board.guide import Guide, guide, written
from screens.page import Foot, Page
from screens.pictures.asked import picture_of
from screens.showing import figure
from screens.tongue import _
from screens.trying import untried
from screens.ways import leads_to, picture_if, words_if
from screens.words import KNOWN
from screens.words.typed import value_words
from screens.world import World


def value_page(world: World) -> Page:
    """Return the page that asks for `key`; `guided` for the next one that is missing, of the `rest` when that is said."""
    if not world.args.get("guided"):
        return _asked(world, str(world.args["key"]), None)
    way = guide(world, rest=bool(world.args.get("rest")), skipped=tuple(world.args.get("skipped", ())))
    return _asked(world, way.open[0], way) if way.open else _end(world, way)


def _end(world: World, way: Guide) -> Page:
    """Return the end of a round: what it was, and the rest."""
    rest = len(guide(world, rest=True).open)
    first = not world.args.get("rest")
    said = (
        _("That is enough for first answers.") if first and not way.skipped else _("Nothing more is asked.")
    )
    if way.skipped:
        one, more = _("1 skipped. It stays open."), _("{count} skipped. They stay open.")
        said = one if len(way.skipped) == 1 else more.format(count=len(way.skipped))
    on = Button(_("Ask for the other {count}").format(count=rest), Turn({"rest": True, "skipped": None}))
    done = Button(_("Done"), Back())
    return Page(
        title=_("{number} of {all}").format(number=way.count - len(way.skipped), all=way.count),
        crown=next(iter(_so_far(world, row=False)), None),
        blocks=(Words("said", said, role="title"),),
        foot=Foot(main=done, beside=(on,)) if first and rest else Foot(main=done),
        places=False,
        card="end",
    )


def _first_sentence(text: str) -> tuple[str, str]:
    """Return the one line of help that is always in sight, and the rest."""
    first, stop, more = text.partition(". ")
    return first + stop.strip(), more


def _so_far(world: World, *, row: bool) -> tuple[Block, ...]:
    """Return the best top speed that the values so far allow, nothing before there is one."""
    first = world.kept(first_speed, written(world), world.person.rider)
    if not isinstance(first.item, Result):
        return ()
    holds = {"without load": _("without load, about"), "with weight": _("loaded, about")}
    holds_for = holds.get(first.level, _("loaded"))
    return (figure(world, first.item, _("Top speed so far"), detail=holds_for, row=row),)


def _asked(world: World, key: str, way: Guide | None) -> Page:
    """Return the page that asks for a value, the next one after it where it is asked in the guided entry."""
    rider = key == RIDER.key
    field = RIDER if rider else board_fields()[key]
    value = world.person.rider if rider else written(world).value(key)

    def keep(value: Value | None, others: Mapping[str, Value]) -> Act:
        return Settle({"rider": value}) if rider else Set({key: value, **others})

    then = () if way else (Back(),)
    asked = AskedValue(untried(world), field, value, f"board/{key}", keep, then=then)
    choosing, (first, more) = field.kind == "choice", _first_sentence(field.help)
    place = _("{number} of {all}").format(number=way.place, all=way.count) if way else ""
    skip = Button(_("Skip"), Turn({"skipped": (*world.args.get("skipped", ()), key)}))
    beside = (skip,) if way else ()
    return Page(
        title=place or field.label,
        blocks=(
            *((Words("label", field.label, role="title", bold=True),) if way else ()),
            Words("help", first),
            *_now(asked),
            asked.how_known(),
            *(asked.listed((one.key, one.label) for one in field.options) if choosing else ()),
            asked.out() if value is not None else _unknown(asked),
            *(_so_far(world, row=True) if way else ()),
            *picture_if("picture", picture_of(key), _("Where it is found.")),
            *words_if("more", more, tone="second"),
            *_meaning(key),
        ),
        foot=Foot(beside=beside) if choosing else asked.foot(*beside),
        places=False,
        card=key,
    )


def _now(asked: AskedValue) -> Iterator[Words]:
    """Yield what stands."""
    if asked.value is not None:
        shown = value_words(asked.field, asked.value, asked.world.style)
        text = _("Now: {value}, {known}.").format(value=shown, known=KNOWN[asked.value.known])
        yield Words("now", text, tone="second")
    elif asked.field.stand_in:
        yield Words("now", _("Not set: a usual value is assumed."), tone="second")


def _unknown(asked: AskedValue) -> Line:
    """Return what can be said in place of a value."""
    act = asked.gone_on(NotKnown(asked.field.key))
    return Line("unknown", _("Don't know"), _("It is not asked for again."), act=act)


def _meaning(key: str) -> Iterator[Line]:
    """Yield the way to the word of the trade that names a value."""
    word = word_of(key)
    if word is not None:
        title = _("What it means: {word}").format(word=word.name)
        yield leads_to("meaning", "glossary", title, icon="question", word=word.key)
