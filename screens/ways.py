"""What pages share: rows to other pages and to what clears what is due, the voice, and what came of what was asked."""

from collections.abc import Mapping
from typing import Any

from logic.upkeep import Due
from screens.acts import Both, Go
from screens.acts.keeping import Settle
from screens.acts.outside import Say
from screens.blocks import Line, Picture, Words
from screens.pictures.strokes import Later
from screens.pictures.strokes import Picture as Strokes
from screens.tongue import _, asset, texts
from screens.world import World


def leads_to(
    key: str, page: str, title: str, detail: str = "", /, *, icon: str = "", **given: object
) -> Line:
    """Return a row that opens a page; `given` are the parameters of that page."""
    return Line(key, title, detail, icon=icon, act=Go(page, given))


def way_from(place: str, key: str, /, **given: object) -> Line:
    """Return a row of assets/ways.toml, which opens a page; `given` are more parameters of that page."""
    row = asset("ways")[place][key]
    title, detail, icon = row["title"], row.get("detail", ""), row.get("icon", "")
    return leads_to(key, row.get("page", key), title, detail, icon=icon, **row.get("given", {}), **given)


def ways_from(place: str) -> tuple[Line, ...]:
    """Return all rows of a place, in order."""
    return tuple(way_from(place, key) for key in asset("ways")[place])


def page_title(page: str) -> str:
    """Return what a page is called in a row that leads to it."""
    return texts("pages")["called"].get(page) or texts("pages")["titles"][page]


def words_of(texts: Mapping[str, str], **look: Any) -> tuple[Words, ...]:  # noqa: ANN401  (what Words takes)
    """Return texts one under the other, each under its name, all in one look."""
    return tuple(Words(name, text, **look) for name, text in texts.items())


def came_of_it(world: World) -> Words | None:
    """Return what came of what was last asked of the phone here. It is for the crown: what was touched may lie far down."""
    for name in ("told", "said"):
        if world.args.get(f"_{name}"):
            return Words(name, world.args[f"_{name}"], bold=True)
    return None


def words_if(key: str, text: str | None, **look: Any) -> tuple[Words, ...]:  # noqa: ANN401  (what Words takes)
    """Return a text, nothing for no words."""
    return (Words(key, text, **look),) if text else ()


def picture_if(key: str, drawn: Strokes | Later | None, text: str) -> tuple[Picture, ...]:
    """Return a drawing, nothing where there is none to draw."""
    return () if drawn is None else (Picture(key, drawn, text),)


def voice_line(world: World, key: str, title: str, text: str) -> Line:
    """Return the row that turns the voice on, which then says a text at once, or off."""
    on = world.person.say
    acts = (Settle({"say": not on}), *(() if on else (Say(text),)))
    return Line(key, title, _("On") if on else _("Off"), icon="say", act=Both(acts))


def signs_line(title: str = "") -> Line:
    """Return the row that leads to the signs at which a pack is taken out of use."""
    return Line("signs", title or _("Pack hot or swollen?"), icon="fire", bad=True, act=Go("ride.pack_signs"))


def due_act(due: Due) -> Go:
    """Return the act that opens what clears a rule: a checklist, or a page."""
    if due.opens.startswith("list:"):
        return Go("ride.run", {"list": due.opens.removeprefix("list:")})
    return Go(due.opens)


def later_act(due: Due) -> Go:
    """Return the act that opens the page where it is put off."""
    return Go("log.snooze", {"rule": due.key, "label": due.name, "stop": due.stop})
