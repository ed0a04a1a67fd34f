"""The build sheet as a PDF with its pictures, for a desktop: on a phone the system prints the page of HTML."""

from collections.abc import Iterator
from importlib.util import find_spec
from io import BytesIO
from pathlib import Path
from typing import Any
from xml.sax.saxutils import escape

from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.units import mm
from reportlab.pdfbase.pdfmetrics import registerFont, stringWidth
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import CondPageBreak, Flowable, Paragraph, SimpleDocTemplate, Table

from screens.pictures.laid import Placed, fixed_pen, height_of, lay
from screens.pictures.strokes import Drawing
from screens.pictures.svg import day
from screens.sheet.content import CLOSING, Sheet

PLAIN, BOLD = "Sheet", "SheetBold"
EDGE = 18 * mm
SHARES = 0.42, 0.33, 0.25
"""Of the width, for a label, its value, and how it is known."""
ROOM = 35 * mm
"""What a part needs of a page to begin on it."""
PICTURE = 0.7
"""Points of a dp: a picture is as large as in a browser that prints the page."""


def as_pdf(sheet: Sheet) -> bytes:
    """Return the sheet as a whole PDF."""
    fonts = Path((find_spec("kivy").submodule_search_locations or [""])[0]) / "data" / "fonts"  # type: ignore[union-attr]
    for name, file in ((PLAIN, "Roboto-Regular.ttf"), (BOLD, "Roboto-Bold.ttf")):
        registerFont(TTFont(name, str(fonts / file)))
    out = BytesIO()
    document = SimpleDocTemplate(
        out,
        pagesize=A4,
        title=sheet.name,
        leftMargin=EDGE,
        rightMargin=EDGE,
        topMargin=EDGE,
        bottomMargin=EDGE,
        invariant=1,
    )
    document.build(list(_parts(sheet)), onFirstPage=_number, onLaterPages=_number)
    return out.getvalue()


def _parts(sheet: Sheet) -> Iterator[Flowable]:
    yield _text(sheet.name, 20, bold=True)
    yield _text(sheet.made)
    for part in sheet.parts:
        # A heading stands with its first lines, or with the whole of its drawing.
        if part.lines:
            yield CondPageBreak(ROOM)
        yield _heading(part.title, together=part.drawn is not None)
        if part.drawn is not None:
            yield _Drawn(part.drawn)
        rows = [[_text(label), _text(value, bold=True), _text(known)] for label, value, known in part.lines]
        if rows:
            line = ("LINEBELOW", (0, 0), (-1, -1), 0.5, day()["outline"])
            widths = [share * (A4[0] - 2 * EDGE) for share in SHARES]
            yield Table(rows, widths, style=[line, ("VALIGN", (0, 0), (-1, -1), "TOP")])
    yield _text(CLOSING)


def _heading(text: str, *, together: bool) -> Paragraph:
    shape = ParagraphStyle(
        "heading", fontName=BOLD, fontSize=14, leading=18, spaceBefore=12, spaceAfter=4, keepWithNext=together
    )
    return Paragraph(escape(_plain(text)), shape)


def _text(text: str, size: float = 10, *, bold: bool = False) -> Paragraph:
    shape = ParagraphStyle(
        "text", fontName=BOLD if bold else PLAIN, fontSize=size, leading=size * 1.3, spaceAfter=4
    )
    return Paragraph(escape(_plain(text)), shape)


def _plain(text: str) -> str:
    """Return a text with the one space that the font lacks written as its like."""
    return text.replace("\u202f", "\u00a0")


def _number(canvas: Any, document: Any) -> None:  # noqa: ANN401  (reportlab's)
    canvas.setFont(PLAIN, 9)
    canvas.drawRightString(A4[0] - EDGE, EDGE / 2, str(document.page))


def _wide(text: str, size: float, bold: bool) -> float:  # noqa: FBT001  (as a Pen is asked)
    return float(stringWidth(_plain(text), BOLD if bold else PLAIN, size))


PEN = fixed_pen(PICTURE, _wide)


class _Drawn(Flowable):  # type: ignore[misc]
    """A drawing as it is on the pages, over the whole width."""

    def __init__(self, picture: Drawing) -> None:
        super().__init__()
        self.picture = picture
        self.size = 0.0, 0.0

    def wrap(self, width: float, _height: float) -> tuple[float, float]:
        """Take the width there is."""
        self.size = width, height_of(self.picture, width, PEN)
        return self.size

    def draw(self) -> None:
        """Draw its strokes."""
        for stroke in lay(self.picture, *self.size, PEN):
            _stroke(self.canv, stroke)


def _stroke(canvas: Any, stroke: Placed) -> None:  # noqa: ANN401  (reportlab's)
    canvas.saveState()
    colour = day()["outline" if stroke.tone == "hair" else stroke.tone]
    canvas.setFillColor(colour)
    canvas.setStrokeColor(colour)
    if stroke.tone == "hair":
        canvas.setStrokeAlpha(0.3)
        canvas.setFillAlpha(0.3)
    x, y = stroke.points[0]
    if stroke.kind == "text":
        canvas.setFont(BOLD if stroke.bold else PLAIN, stroke.width)
        # A text is given by the foot of its line; letters stand a little above it.
        canvas.drawString(x, y + stroke.height * 0.24, _plain(stroke.text))
    elif stroke.kind == "disc":
        canvas.circle(x, y, stroke.width, stroke=0, fill=1)
    else:
        path = canvas.beginPath()
        path.moveTo(x, y)
        for point in stroke.points[1:]:
            path.lineTo(*point)
        canvas.setLineWidth(stroke.width * PICTURE)
        if stroke.dashes:
            canvas.setDash([dash * PICTURE for dash in stroke.dashes])
        fill = stroke.kind == "fill"
        canvas.drawPath(path, stroke=int(not fill), fill=int(fill))
    canvas.restoreState()
