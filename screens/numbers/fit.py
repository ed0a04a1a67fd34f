"""Does it fit: gaps to the ground, the deck, the hanger and the other motor."""

from logic.answers.asked import Asked
from logic.answers.belt_fit import BeltFit, belt_fit
from logic.answers.reading import Open, Result
from screens.blocks import RIGHT, UNSURE, WRONG, Verdict
from screens.figure_page import figure_page, figures_of
from screens.page import Page
from screens.showing import why, working
from screens.tongue import _, texts
from screens.ways import words_of
from screens.world import World

FIT = texts("belt")["fit"]


def fit_page(world: World) -> Page:
    """Return whether it fits by the narrowest gap, then every gap."""
    worn = Asked(world.answers)("ask.wheel_wear")
    answer, figures = figures_of(world, "numbers.fit", belt_fit, worn)
    return figure_page(
        figures,
        crown=_verdict(world, answer),
        advice=words_of(texts("belt")["fit_advice"], tone="second"),
    )


def _verdict(world: World, answer: BeltFit) -> Verdict:
    """Return whether it fits; a gap that is not known leaves it open."""
    unknown = [item for item in answer.items.values() if isinstance(item, Open)]
    narrowest = answer.items.get(answer.narrowest)
    if not isinstance(narrowest, Result):
        lacks = unknown[0]
        return Verdict(
            word=_("Not known yet"),
            text=why(lacks, world.style),
            act=working(lacks, FIT[lacks.name]),
            lines=2,
        )
    label = FIT[answer.narrowest]
    gap = world.style.number(narrowest.value, narrowest.quantity)
    if answer.tight:
        word, form = _("Does not fit: {gap}"), WRONG
        text = " ".join(texts("belt")["touches"][name] for name in answer.tight)
    elif unknown:
        word = _("Fits: {gap} at the narrowest; {count} gaps not known")
        word = _("Fits: {gap} at the narrowest; 1 gap not known") if len(unknown) == 1 else word
        text, form = label, UNSURE
    else:
        word, text, form = _("Fits: {gap} at the narrowest"), label, RIGHT
    return Verdict(
        word=word.format(gap=gap, count=len(unknown)),
        text=text,
        form=form,
        act=working(narrowest, label),
        lines=2,
    )
