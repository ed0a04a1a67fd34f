"""A pack that swells, hisses, smokes or is hot: what to do, and out of use until a person says what came of it."""

from collections.abc import Iterator
from datetime import datetime

from logic.answers.care import advice
from screens.acts.keeping import PutBack, TakeOut
from screens.asked import out_of_use
from screens.asking import page_choice
from screens.blocks import Block, Button, Notice, Section, Words
from screens.page import Foot, Page
from screens.tongue import _, texts
from screens.words.tension import ago
from screens.world import World

WORDS = texts("pack_signs")


def pack_signs(world: World) -> Page:
    """Return the danger first, always.

    Taking out needs a sign and a bar; putting back needs a reason and the same bar's place. No single tap and no repeated tap
    on one spot does either, and Back leaves everything as it is.
    """
    stop, *others = advice("stop")
    out = out_of_use(world)
    chosen = str(world.args.get("sign", ""))
    return Page(
        title=_("Pack: stop signs"),
        crown=Notice("danger", "danger", stop.text),
        blocks=(
            *(Words(f"fire {row.key}", row.text, bold=True) for row in advice("fire")),
            *_state(world, out, chosen),
            Section("others", _("Other signs")),
            *(Words(f"stop {row.key}", row.text) for row in others),
        ),
        foot=_foot(chosen, out=out is not None),
        aside=frozenset(("others", *(f"stop {row.key}" for row in others))),
        places=False,
    )


def _state(world: World, out: dict[str, str] | None, chosen: str) -> Iterator[Block]:
    if out is not None:
        when = ago(datetime.fromisoformat(out["at"]), world.now)
        text = _("Out of use: {sign}, {when}.").format(sign=out["sign"], when=when)
        yield Words("since", text, tone="bad", bold=True)
    question = _("What do you see?") if out is None else _("What came of it?")
    yield page_choice("sign", question, (WORDS["signs"] if out is None else WORDS["ends"]).items(), chosen)


def _foot(chosen: str, *, out: bool) -> Foot:
    if out:
        back = Button(
            _("Put into use again"), PutBack(chosen) if chosen else None, _("First say what came of it.")
        )
        return Foot(beside=(back,))
    take = TakeOut(chosen) if chosen else None
    return Foot(main=Button(_("Take this pack out of use"), take, _("First tap what you see.")))
