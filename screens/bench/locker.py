"""Threadlocker: which grade for a size and a need, where not, surfaces, cure, on and off again. All from the tables."""

from collections.abc import Iterator

from logic.answers import joint_guide as guide
from screens.asking import page_choice
from screens.blocks import Notice, Section, Verdict, Words
from screens.page import Page
from screens.showing import fold, sentences
from screens.tongue import _, texts
from screens.words import begun
from screens.words.joints import GRADES
from screens.world import World

SIZES = ("M3", "M4", "M5", "M6", "M8", "M10")
HARM = texts("joints")["said"]["locker harms"]
COLD = _("Below 5 °C it may never cure: warm the parts first.")
DAYS = (278.15, 283.15, 288.15, 295.15)
"""Temperatures of the cure that are listed, in K."""


def locker_page(world: World) -> Page:
    """Return the grade for a `size` and a `need`, how it goes on, and the rest folded."""
    size, need = world.args.get("size", "M4"), world.args.get("need", guide.locker_needs()[1])
    locker = guide.choose_locker(size, need=need)
    grade = next(one for one in guide.locker_grades() if one.name == locker.grade)
    return Page(
        title=_("Threadlocker"),
        crown=Verdict(
            _("{grade} strength").format(grade=begun(GRADES[locker.grade])),
            _("The label reads: {label}.").format(label=locker.label),
        ),
        blocks=(
            page_choice("size", _("Thread"), {one: one for one in SIZES}.items(), size),
            page_choice(
                "need", _("The joint"), {one: one.capitalize() for one in guide.locker_needs()}.items(), need
            ),
            Notice("harm", "caution", HARM),
            *(Words(f"caution {key}", texts("joints")["cautions"][key]) for key in locker.cautions),
            Words("off", _("Off again: {how}").format(how=grade.removal)),
            Section("on", _("Put on")),
            *sentences("on", guide.locker_steps("put on")),
            Section("places", _("Where it must not go")),
            *sentences(
                "place", (f"{name[0].upper()}{name[1:]}: {why}" for name, why in guide.locker_places())
            ),
            *fold(world, "surfaces", _("Surfaces"), lambda: sentences("surface", _surfaces())),
            *fold(world, "cure", _("Cure by temperature"), lambda: sentences("day", _cure(world))),
            *fold(
                world, "take off", _("Take off"), lambda: sentences("step", guide.locker_steps("take off"))
            ),
            *fold(
                world, "strength", _("Strength on M10 steel"), lambda: sentences("grade", _strength(world))
            ),
        ),
        places=False,
    )


def _surfaces() -> Iterator[str]:
    yes, no, never = (", ".join(guide.locker_surfaces(active)) for active in ("yes", "no", "never"))
    yield _("Start the cure: {surfaces}.").format(surfaces=yes)
    yield _("Slow, activator helps: {surfaces}.").format(surfaces=no)
    yield _("Never: {surfaces}.").format(surfaces=never)
    yield _("Activator on the threads, let it dry, join. It is quicker and slightly weaker.")


def _cure(world: World) -> Iterator[str]:
    yield _("Rough times of a full cure on steel.")
    for day in DAYS:
        time, shown = guide.cure_hours(day), world.style.number(day, "temperature")
        told = _("too cold") if time is None else world.style.number(time, "long_time", 2)
        yield f"{shown}: {told}"
    yield COLD


def _strength(world: World) -> Iterator[str]:
    yield _("From memory. Grades differ by half from maker to maker.")
    for one in guide.locker_grades():
        low, high = (world.style.number(end, "torque") for end in (one.low, one.high))
        yield _("{grade}: breaks loose at {low} to {high}.").format(
            grade=begun(GRADES[one.name]), low=low, high=high
        )
