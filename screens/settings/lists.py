"""One's own lists: copy one of ours, change it, take it out. Ours stay as they are."""

from collections.abc import Iterator

from logic.checks.lists import Checklist
from screens.acts.runs import CopyList
from screens.blocks import Block, Line, Section, Words
from screens.page import Page
from screens.tongue import _
from screens.ways import leads_to
from screens.words.checks import items_text
from screens.world import World


def lists_page(world: World) -> Page:
    """Return the own lists, and under them what can be copied."""
    return Page(title=_("My lists"), blocks=(*_own(world), *_to_copy(world)), places=False)


def _own(world: World) -> Iterator[Block]:
    own = world.own_lists()
    if not own:
        text = _("No list of your own yet. Copy one and change it; ours stays as it is.")
        yield Words(key="none", text=text)
    for key, of in own.items():
        yield leads_to(
            key,
            "settings.list",
            of.title,
            _("{items}, version {version}").format(items=items_text(len(of.items)), version=of.version),
            icon="edit",
            key=key,
        )


def _to_copy(world: World) -> Iterator[Block]:
    """Yield ours; the stages of building follow each other by their letter, wherever they are kept."""
    own = world.own_lists()
    yield Section(key="ours", title=_("Copy one of these"))
    for key, of in sorted(world.lists().items(), key=lambda entry: _order(entry[1])):
        if key not in own:
            yield Line(
                key=key, title=of.title, detail=items_text(len(of.items)), icon="plus", act=CopyList(key)
            )


def _order(of: Checklist) -> tuple[bool, str]:
    return of.title[1:2] == ":", of.title
