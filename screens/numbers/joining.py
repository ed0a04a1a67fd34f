"""Joining two packs: same kind or not at all, and how far apart they may be."""

from dataclasses import replace

from logic.answers.joining import SECOND, Joining, joining, like
from logic.answers.reading import Open, Result
from screens.acts.entering import Ask
from screens.asking import field_of, value_line
from screens.blocks import Block, Line, Section, Verdict, Words
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.showing import why, working
from screens.tongue import _, texts
from screens.ways import signs_line
from screens.words.typed import value_words
from screens.world import World

JOINING = texts("packs")["joining"]
LIMIT = "controller.voltage_limit"
OVER = "series over the controller"


def joining_page(world: World) -> Page:
    """Return whether they may be joined, then the readings. Packs that differ stop the page."""
    answer, figures = figures_of(world, "numbers.joining", joining, world.answers)
    return figure_page(
        replace(figures, details=_details(world, answer)),
        crown=_verdict(world, answer),
        advice=tuple(_rules(answer)),
        line=_line,
    )


def _verdict(world: World, answer: Joining) -> Verdict:
    """Return whether they may be joined; before both are measured, what they may differ by or come to."""
    style, head, apart = world.style, answer.items[answer.head], answer.items["apart"]
    act = working(head, JOINING[answer.head])
    if isinstance(head, Open):
        return Verdict(_("Tap to fill in"), why(head, style), act=act, lines=2)
    shown = style.number(head.value, head.quantity)
    parallel, over = answer.way == "parallel", any(one.key == OVER for one in answer.hazards)
    if over:
        word, text, form = _("Join: no, {volts} full"), _against_the_controller(world, head.value), "wrong"
    elif isinstance(apart, Open):
        word = _("Join below {volts} apart") if parallel else _("{volts} full, in series")
        text, form, act = why(apart, style), "plain", working(apart, "") or act
    elif parallel:
        number = style.shown(apart.value, apart.quantity).number
        word = _("Join: yes, {apart} of {volts}").format(apart=number, volts=shown)
        text, form = _("Readings count for half an hour."), "right"
    else:
        text = _against_the_controller(world, head.value)
        known = world.board.controller.voltage_limit is not None
        word, form = (
            (_("Join: yes, {volts} full"), "right") if known else (_("{volts} full, in series"), "unsure")
        )
        act = act if known else Ask(LIMIT)
    return Verdict(word.format(volts=shown), text, form=form, act=act, lines=2)


def _against_the_controller(world: World, full: float) -> str:
    limit = world.board.controller.voltage_limit
    if limit is None:
        return _("The limit of the controller is not entered: look at its sheet.")
    stands = world.style.typed(float(limit.si), "voltage")
    said = (
        _("The controller stands {volts}: too much.")
        if full > float(limit.si)
        else _("The controller stands {volts}: not above it.")
    )
    return said.format(volts=stands)


def _details(world: World, answer: Joining) -> dict[str, str]:
    """Return what each holds for: that readings grow old, and what the controller stands."""
    apart, full = answer.items["apart"], answer.items.get("full_in_series")
    found = dict(texts("packs")["joining_details"])
    if isinstance(apart, Result) or not apart.missing:
        found["apart"] = _("Readings count for half an hour.")
    if isinstance(apart, Result) and answer.outcome is not None:
        # A difference that is too large stops the page before it comes to this.
        found["allowed"] = _("{volts} apart as measured: they may be joined.").format(
            volts=world.style.number(apart.value, "voltage")
        )
    if isinstance(full, Result):
        found["full_in_series"] = _against_the_controller(world, full.value)
    return found


def _rules(answer: Joining) -> list[Block]:
    """Return the rules of the way, in order; their hazard words stand in the notice, once."""
    blocks: list[Block] = [Section("rules", _("Before the plugs meet"))]
    blocks += [
        Words(f"rule {number}", f"{number}. {rule.text('text')}")
        for number, rule in enumerate(answer.rules, start=1)
    ]
    if answer.way == "parallel":
        text = _("Too far apart: charge both full with their own charger. Rest an hour, measure again.")
        blocks.append(Words("too far", text, bold=True))
    return [*blocks, signs_line()]


def _line(world: World, key: str) -> Line:
    """Return a value; one of the second pack is like the first until it is said to differ."""
    line = value_line(world, key)
    same = like(world.board, key) if key in SECOND and key not in world.answers else None
    return (
        line
        if same is None
        else replace(line, value=value_words(field_of(key), same, world.style), detail=_("like the first"))
    )
