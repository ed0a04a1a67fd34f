"""What the app rests on: each source with what was held against it, what has no outside check, and the licences."""

from collections.abc import Iterator

from logic import checked
from logic.checked import Check
from logic.licences import Licence, licences
from logic.tables import sources
from screens.acts import Go
from screens.blocks import Block, Figure, Line, Section, Words
from screens.page import Page
from screens.showing import fold, sentences
from screens.tongue import _, texts
from screens.words import STANDING, begun
from screens.world import World

FIRST = 5
"""Sources that stand open; the others are in a fold."""


def sources_page(world: World) -> Page:
    """Return one source, named by `key`, or all of them."""
    key = world.args.get("key", "")
    return _one(world, key) if key in sources() else _all(world)


def source_line(key: str) -> Line:
    """Return the row that opens a source, with how many printed numbers ours were held against."""
    count = sum(check.numbers for check in checked.checks() if check.key == key)
    inside = _("{count} numbers, none an outside check").format(count=count)
    one, more = _("1 number held against it"), _("{count} numbers held against it")
    outside = one if count == 1 else more.format(count=count)
    held = any(check.outside for check in checked.checks() if check.key == key)
    detail = (outside if held else inside) if count else _("no number held against it")
    return Line(f"source {key}", sources()[key].title, detail, act=Go("settings.sources", {"key": key}))


def _all(world: World) -> Page:
    count = checked.totals()
    of = [key for key in checked.used() if key not in checked.NO_PAGE]
    return Page(
        title=_("Sources"),
        crown=Figure(
            "count",
            _("Printed numbers held against ours"),
            str(count.numbers),
            detail=_("from {sources} sources").format(sources=count.sources),
        ),
        blocks=(
            Words("words", _held(count)),
            *(source_line(key) for key in of[:FIRST]),
            *fold(
                world, "more", _("All other sources"), lambda: tuple(source_line(key) for key in of[FIRST:])
            ),
            Section("without", _("Without a printed page")),
            *(source_line(key) for key in checked.NO_PAGE),
            *fold(world, "unheld", _("Formulas with no outside check"), _unheld),
            *fold(world, "not found", _("Looked for and not found"), _not_found),
        ),
    )


def _held(count: checked.Totals) -> str:
    """Return how far formulas and results are held, in words."""
    kinds = ("all", "part", "none", "no formula")
    whole, part, none, bare = (count.results.get(kind, 0) for kind in kinds)
    put = {"held": count.formulas_held, "all": count.formulas, "whole": whole, "part": part, "none": none}
    return "\n".join(texts("sources")["held"].values()).format(**put, bare=bare)


def _unheld() -> Iterator[Block]:
    for number, one in enumerate(checked.formulas()):
        if not one.held:
            said = _("{name}: {standing}").format(name=begun(one.title), standing=STANDING[one.standing])
            yield Words(f"unheld {number}", said, role="small")


def _not_found() -> Iterator[Block]:
    for number, one in enumerate(checked.not_found()):
        yield Words(f"not found {number}", f"{one['what']}: {one['text']}.", role="small")


def _one(world: World, key: str) -> Page:
    source = sources()[key]
    of = [check for check in checked.checks() if check.key == key]
    printed = _("{publisher}, {year}. {note}").format(
        publisher=source.publisher, year=source.year, note=source.note
    )
    return Page(
        title=_("Source"),
        blocks=(
            Words("title", source.title, role="lead", bold=True),
            Words("printed", printed.strip(), tone="second"),
            *_checks(world, of),
            *fold(world, "formulas", _("Formulas that rest on it"), lambda: _formulas(key)),
            *fold(world, "rows", _("Tables that rest on it"), lambda: _rows(key)),
        ),
    )


def _checks(world: World, of: list[Check]) -> Iterator[Block]:
    if not of:
        yield Words("none", _("No number of ours was held against it."))
        return
    yield Section("held", _("What was checked"))
    yield from (_check(number, check) for number, check in enumerate(of[:FIRST]))
    if len(of) > FIRST:
        rest = tuple(_check(number, check) for number, check in enumerate(of[FIRST:], FIRST))
        yield from fold(world, "checks", _("All other checks"), lambda: rest)


def _check(number: int, check: Check) -> Words:
    """Return what one check compared: its first number, how many there were, the worst, and how they are known."""
    lines = [
        begun(check.what) + (f" ({check.where})" if check.where else ""),
        _("Printed {printed}, ours {ours} {unit}").format(
            printed=check.printed, ours=check.ours, unit=check.unit
        ),
    ]
    if check.numbers > 1:
        lines.append(_("First of {count} numbers").format(count=check.numbers))
    if check.worst not in ("", "0"):
        lines.append(_("Worst: {off} % off").format(off=check.worst))
    lines.append(texts("sources")["seen"][check.seen])
    return Words(f"check {number}", "\n".join(line.strip() for line in lines), role="small")


def _formulas(key: str) -> Iterator[Block]:
    for number, one in enumerate(checked.formulas()):
        if one.key == key:
            held = _("has an outside check") if one.held else _("no outside check")
            said = _("{name}, {place}: {held}").format(name=begun(one.title), place=one.where, held=held)
            yield Words(f"formula {number}", said, role="small")


def _rows(key: str) -> Iterator[Block]:
    for table, places in checked.row_places(key).items():
        said = _("{table}: {places}").format(table=begun(table.replace("_", " ")), places="; ".join(places))
        yield Words(f"table {table}", said.removesuffix(": "), role="small")


def licences_page(world: World) -> Page:
    """Return one heading for each thing; its text is read when it is opened."""
    about = _("Deckhand rests on the work of others. These are their licences.")
    rest = texts("sources")["said"]["not listed"]
    return Page(
        title=_("Licences"),
        blocks=(
            Words("about", about),
            *(block for one in enumerate(licences()) for block in _licence(world, *one)),
            Words("rest", rest, tone="second"),
        ),
        places=False,
    )


def _licence(world: World, number: int, of: Licence) -> tuple[Block, ...]:
    def text() -> Iterator[Block]:
        return sentences(str(number), of.paragraphs(), role="small")

    return fold(world, f"licence {number}", of.name, text, of.licence)
