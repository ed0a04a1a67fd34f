"""All items of a run under way: what was said of each. A tap opens the item, never answers it."""

from logic.checks.run import ASIDE, RIGHT
from screens.acts import Back, Both
from screens.acts.runs import PutInFront
from screens.blocks import Line, Words
from screens.page import Page
from screens.tongue import _
from screens.world import World

ICONS = {"right": "ticked", "noted": "cross", "failed": "cross", "aside": "clock"}


def run_list(world: World) -> Page:
    """Return each item with its answer; none while no run of the list is under way."""
    of = world.checklist(world.args["list"])
    run = world.session(of.key).run
    if run is None:
        return Page(title=of.title, blocks=(Words(key="none", text=_("No run of this list is under way.")),))
    done = sum(answer.state == RIGHT for answer in run.answers.values())
    summary = _("{done} of {all} right. Pause: {pause}.").format(
        done=done, all=len(run.order), pause=of.pause
    )
    lines = []
    for key in run.order:
        item, answer = of.item(key), run.answers.get(key)
        said = (
            item.state
            if answer is None
            else _("Skipped")
            if answer.state == ASIDE
            else answer.note or item.state
        )
        must = _("Must pass. ") if item.stop else ""
        icon = "unticked" if answer is None else ICONS[answer.state]
        act = Both((Back(), PutInFront(key)))
        lines.append(Line(key=key, title=item.action, detail=must + said, icon=icon, act=act))
    back = _("A tap opens the item and takes back what was said of it.")
    return Page(
        title=of.title,
        blocks=(
            Words(key="summary", text=summary, bold=True),
            Words(key="back", text=back, tone="second"),
            *lines,
        ),
        places=False,
    )
