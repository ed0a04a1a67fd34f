"""Choose a belt: those in stock near the wanted centre distance, what the board's own can carry, and whether all of it fits."""

from dataclasses import replace

from logic.answers.asked import Asked
from logic.answers.belt_choice import BeltChoice, BeltRow, belt_choice
from logic.answers.belt_fit import BeltFit, belt_fit
from logic.answers.first_figure import lacking
from logic.answers.reading import Open, Result
from logic.board import Value
from screens.acts.entering import Put
from screens.asking import keeps, stepper
from screens.blocks import Block, Figure, Line, Picture, Section, Verdict, Words
from screens.figure_page import Figures, figure_page, figures_of
from screens.nearer import Near, lacks_values, not_yet
from screens.page import Page
from screens.pictures.drive import drive
from screens.showing import why, working
from screens.tongue import _, texts
from screens.ways import ways_from, words_of
from screens.words.belt import makers, stock_title
from screens.world import World

LACKS = texts("belt")["lacks"]
HEAD = "centre"
BELT = "drive.belt_teeth"
ROUND = ("drive.belt_teeth", "drive.motor_teeth", "drive.wheel_teeth", "drive.profile")
"""Values that give the centre distance; the print of a belt gives its profile, too, so that comes last."""
FIT = texts("belt")["fit"]


def belt_page(world: World) -> Page:
    """Return the belt's centre first, then teeth, what is in stock, the drawing, and what the belt carries."""
    rider, asked = world.person.rider, Asked(world.answers).value("ask.wanted_centre")
    wanted = None if asked is None else float(asked.si)
    answer, figures = figures_of(world, "numbers.belt", belt_choice, rider, wanted)
    own = next((row for row in answer.rows if _on_board(world, row)), None)
    details = {} if own is None else {HEAD: _said(makers(own.belt), LACKS[own.lacks])}
    figures = replace(figures, details=details)
    return figure_page(
        figures,
        crown=_crown(world, figures),
        controls=("drive.motor_teeth", "drive.wheel_teeth", stepper(world, BELT, _("Belt"))),
        picture=(*_notes(answer), *_stock(world, answer), *_drawing(world, answer)),
        advice=(
            Words("beyond", texts("belt")["said"]["beyond"], tone="second"),
            *ways_from("numbers.belt"),
        ),
        near=Near({ROUND: ""}),
    )


def _crown(world: World, figures: Figures) -> Figure:
    """Return the centre distance; before there is one, which values give it."""
    lacks = lacking(world.board, world.person.rider, ROUND)
    if lacks and lacks_values(figures.items[HEAD]):
        return not_yet(Open(HEAD, missing=lacks), figures.labels[HEAD], grey=False)
    return figures.crown()


def _on_board(world: World, row: BeltRow) -> bool:
    teeth = world.board.drive.belt_teeth
    return teeth is not None and teeth.si == row.belt.teeth


def _said(*parts: str) -> str:
    return " ".join(part for part in parts if part)


def _notes(answer: BeltChoice) -> tuple[Words, ...]:
    """Return what is worth a word about the belt and its pulleys."""
    found = {}
    if isinstance(answer.items[HEAD], Result) and answer.rows and not answer.in_stock:
        found["none"] = _("This length is in none of the lists near here.")
    if answer.few_teeth:
        found["few"] = _("Fewer than 6 teeth in mesh: the rating falls, and the belt climbs more easily.")
    if answer.small_pulley:
        found["small"] = texts("belt")["said"]["small pulley"]
    return tuple(Words(f"note {name}", text) for name, text in found.items())


def _stock(world: World, answer: BeltChoice) -> tuple[Block, ...]:
    """Return the belts in stock near the wanted centre; a touch tries one."""
    if answer.wanted is None or not answer.rows:
        text = _("In stock: the list needs profile, both pulleys and a belt or a wanted centre distance.")
        return (Words("stock", text, tone="second"),)
    near = _("In stock near {centre}").format(centre=world.style.number(answer.wanted, "length"))
    return (Section("stock", near), *(_stock_line(world, row) for row in answer.rows))


def _stock_line(world: World, row: BeltRow) -> Line:
    style, here = world.style, _on_board(world, row)
    title = stock_title(row.belt, style)
    off = _("{off} against wanted.").format(off=style.change(row.centre, row.centre - row.off, "length"))
    return Line(
        f"stock {row.belt.teeth}",
        _("{belt}, on the board").format(belt=title) if here else title,
        _said(off, LACKS[row.lacks], makers(row.belt)),
        value=style.number(row.centre, "length"),
        icon="tick" if here else "",
        chosen=here,
        act=Put(BELT, Value(float(row.belt.teeth), "label"), keeps(BELT)),
    )


def _drawing(world: World, answer: BeltChoice) -> tuple[Block, ...]:
    picture = drive(world.board, answer, world.style)
    if picture is None:
        return (Words("drawing", _("The drawing needs both pulleys and the belt."), tone="second"),)
    return (Picture("drawing", picture, _("The belt drive to scale.")),)


def fit_page(world: World) -> Page:
    """Return whether it fits by the narrowest gap, then every gap."""
    worn = Asked(world.answers)("ask.wheel_wear")
    answer, figures = figures_of(world, "numbers.fit", belt_fit, worn)
    return figure_page(
        figures,
        crown=_fits(world, answer),
        advice=words_of(texts("belt")["fit_advice"], tone="second"),
    )


def _fits(world: World, answer: BeltFit) -> Verdict:
    """Return whether it fits; a gap that is not known leaves it open."""
    unknown = [item for item in answer.items.values() if isinstance(item, Open)]
    narrowest = answer.items.get(answer.narrowest)
    if not isinstance(narrowest, Result):
        lacks = unknown[0]
        return Verdict(
            _("Not known yet"), why(lacks, world.style), act=working(lacks, FIT[lacks.name]), lines=2
        )
    label = FIT[answer.narrowest]
    gap = world.style.number(narrowest.value, narrowest.quantity)
    if answer.tight:
        word, form = _("Does not fit: {gap}"), "wrong"
        text = " ".join(texts("belt")["touches"][name] for name in answer.tight)
    elif unknown:
        word = _("Fits: {gap} at the narrowest; {count} gaps not known")
        word = _("Fits: {gap} at the narrowest; 1 gap not known") if len(unknown) == 1 else word
        text, form = label, "unsure"
    else:
        word, text, form = _("Fits: {gap} at the narrowest"), label, "right"
    return Verdict(
        word.format(gap=gap, count=len(unknown)), text, form=form, act=working(narrowest, label), lines=2
    )
