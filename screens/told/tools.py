"""What every page that has an answer offers: handing it on, hearing it where one wants to, and its words explained."""

from collections.abc import Iterator
from dataclasses import replace

from screens.acts import Act, Explain
from screens.acts.outside import HandOn, HandOnFile, ReadOut, Share, Shine
from screens.blocks import Button, Line, Section
from screens.page import Page
from screens.told.lines import has_answer
from screens.tongue import _


def with_tools(page: Page, *, hears: bool, shines: bool = False) -> Page:
    """Return a page with Share in its header, and Say where the person `hears` pages.

    At its end stand the ways to files of it and to its words. A run, which may be gone through in the dark, has the light
    of a phone that `shines`.
    """
    if shines and page.awake:
        page = replace(page, tools=(*page.tools, Button(_("Light"), Shine(), icon="torch")))
    if page.chip or not has_answer(page):
        return page
    tools = list(page.tools)
    if not any(isinstance(act, Share) for act in _acts(page)):
        tools.append(Button(_("Share"), HandOn(), icon="send"))
    if hears and not page.say:
        tools.append(Button(_("Say this page"), ReadOut(), icon="say"))
    files = (
        Section("page handed on", _("This page")),
        Line(
            "page as a file",
            _("Share with its drawings"),
            _("One HTML file, to read or to print"),
            icon="file",
            act=HandOnFile("page"),
        ),
        Line("page as a picture", _("Share as a picture"), icon="picture", act=HandOnFile("picture")),
    )
    return replace(page, tools=tuple(tools), blocks=(*page.blocks, *files, words_line()))


def words_line() -> Line:
    """Return the row that opens the words of the trade that stand on a page."""
    return Line("words of the page", _("Words on this page"), icon="question", act=Explain())


def _acts(page: Page) -> Iterator[Act | None]:
    for block in page.matter:
        yield from block.acts().values()
    for button in (*page.tools, *page.foot.bars):
        yield button.act
