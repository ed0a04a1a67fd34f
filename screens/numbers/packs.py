"""Packs: energy, volts, sag and heat, what limits first, what of a descent they take back; charging, storage and care."""

from dataclasses import replace

from logic.answers.braking import FROM_SPEED
from logic.answers.care import advice
from logic.answers.charging import Charging, charging
from logic.answers.descents import descent
from logic.answers.energy import PackFigures, pack_figures
from logic.answers.first_descent import first_descent
from logic.answers.reading import Open, Result
from logic.errors import NotCharged
from screens.asking import value_of
from screens.blocks import Section, Verdict, Words
from screens.figure_page import figure_page, figures_of
from screens.numbers.first_figures import DESCENT, near
from screens.page import Page
from screens.showing import sentences, why, working
from screens.tongue import _, texts
from screens.ways import signs_line, ways_from, words_of
from screens.words.packs import about_hours
from screens.world import World

WAYS = {"limit_drive": "drive", "limit_brake": "brake", "limit_burst": "burst"}
CHARGING = texts("packs")["charging"]
AMPS = texts("packs")["amps"]
OVER = ("over any limit", "over cell limit")


def packs_page(world: World) -> Page:
    """Return watt-hours first, then what the parts allow; braking amps never without what they do to the board."""
    style = world.style
    value = value_of(world, "ask.current") or world.board.controller.battery_current
    answer, figures = figures_of(
        world,
        "numbers.packs",
        pack_figures,
        world.person.rider,
        world.answers,
        current=_("the battery limit") if value is None else style.number(float(value.si), "current"),
        speed=style.number(FROM_SPEED, "speed"),
    )
    return figure_page(
        replace(figures, details={**figures.details, **_held_by(answer)}),
        advice=(*ways_from("numbers.packs"),),
    )


def _held_by(answer: PackFigures) -> dict[str, str]:
    """Say which part limits first."""
    parts = texts("packs")["parts"]
    return {
        name: _("Whole board. Held by {part}.").format(part=parts[answer.weakest[way]])
        for name, way in WAYS.items()
        if way in answer.weakest
    }


def descents_page(world: World) -> Page:
    """Return the drop this charge takes back, under the warning when the brake may cut out at once."""
    speed = world.style.number(FROM_SPEED, "speed")
    _answer, figures = figures_of(
        world, "numbers.descents", descent, world.person.rider, world.answers, speed=speed
    )
    first, _first = near(figures, DESCENT, first_descent, texts("first")["descent"])
    return figure_page(figures, near=first, advice=words_of(texts("packs")["descent_advice"]))


def charging_page(world: World) -> Page:
    """Return how many amps and how long, then temperature and charge. A wrong charger stops it all."""
    answer, figures = figures_of(world, "numbers.charging", charging, world.answers)
    return figure_page(
        replace(figures, details=_details(world, answer)),
        crown=_verdict(world, answer),
        advice=(
            Section("advice", _("While it charges")),
            *sentences("advice", (row.text for row in advice("charge"))),
            Words(
                "kinder",
                _("Below 100 % is kinder to the cells; a full charge now and then balances them."),
                tone="second",
            ),
            signs_line(),
        ),
    )


def _verdict(world: World, answer: Charging) -> Verdict:
    """Return the most amps and the time in one sentence."""
    style, time, most = world.style, answer.items["time"], answer.items["most"]
    amps = world.board.pack.charger_current
    limit = style.number(most.value, "current") if isinstance(most, Result) else ""
    upto = _("Up to {amps}").format(amps=limit) if limit else ""
    act = working(time, CHARGING["time"])
    if isinstance(time, Open) and isinstance(time.problem, NotCharged):
        word, text, form = _("Do not charge now"), why(time, style), "wrong"
    elif answer.amps in OVER:
        word, text, form = _("Too many amps: up to {amps}").format(amps=limit), AMPS[answer.amps], "wrong"
    elif isinstance(time, Open):
        word, text, form = upto or _("Tap to fill in"), why(time, style), "plain"
    else:
        given = "" if amps is None else style.number(float(amps.si), "current")
        word = _("{time} with {amps}").format(amps=given, time=about_hours(time.value))
        word = f"{upto}; {word}" if upto else word
        text = _("About: the last fifth is slow.")
        form = "right" if answer.amps == "within limit" and not answer.hazards else "unsure"
    return Verdict(word, text, form=form, act=act, lines=2)


def _details(world: World, answer: Charging) -> dict[str, str]:
    """Return how the amps lie against the cells' limit, and which volts are right."""
    found = texts("packs")["charging_details"] | {"cell_amps": AMPS.get(answer.amps, "")}
    if world.board.pack.cell_charge_current is None:
        found["most"] = _("Half the amp-hours, as is usual: no limit of the cells is entered.")
    if answer.check is not None and not answer.check.danger:
        low, high = (world.style.number(end, "voltage") for end in (answer.check.low, answer.check.high))
        found["full"] = _("{low} to {high} is right. This charger matches.").format(low=low, high=high)
    return found


def care_page(_world: World) -> Page:
    """Return at what charge a pack is stored, then how, and what to mind while it charges."""
    first, *rest = advice("storage")
    return Page(
        title=_("Storage and care"),
        crown=Words("head", first.text, role="lead", bold=True),
        blocks=(
            *(Words(f"storage {row.key}", row.text) for row in rest),
            Section("charging", _("Charging")),
            *(Words(f"charge {row.key}", row.text) for row in advice("charge")),
            signs_line(),
        ),
    )
