"""First power, as strokes: where the meter goes, and the resistor before the plug."""

from screens.pictures.strokes import Disc, Fill, Label, Path, Picture, Stroke, box, frame
from screens.tongue import _

PLUS, LESS = "+", "\N{MINUS SIGN}"


def polarity(volts: str) -> Picture:
    """Return a meter on the plug of the pack: red on plus. `volts` are what it shows, "" where that is not known."""
    strokes: list[Stroke] = [
        frame(box(0.0, 0.8, 2.8, 4.4), "text", 2.0),
        frame(box(0.4, 2.9, 2.4, 3.9), "text", 1.5),
        Path(((1.9, 1.6), (4.0, 1.6), (5.7, 3.3)), "bad", 3.0),
        Path(((0.9, 1.6), (0.9, 0.2), (4.4, 0.2), (5.7, 1.5)), "text", 3.0),
        Disc((1.9, 1.6), 5.0, "bad"),
        Disc((0.9, 1.6), 5.0, "text"),
        *_plug(5.7, 7.1),
        Path(((7.1, 3.3), (8.3, 3.3)), "text", 3.0),
        Path(((7.1, 1.5), (8.3, 1.5)), "text", 3.0),
        frame(box(8.3, 0.8, 10.3, 4.0), "text", 2.0),
        Label(PLUS, (6.5, 3.3), ("c",), bold=True, must=True),
        Label(LESS, (6.5, 1.5), ("c",), bold=True, must=True),
        Label(_("pack"), (9.3, 2.4), ("c",), bold=True, must=True),
        Label(_("red"), (4.9, 2.5), ("lt", "t"), tone="bad", bold=True),
        Label(_("black"), (3.0, 0.2), ("b",)),
        Label(volts or _("volts"), (1.4, 4.4), ("t", "rt"), bold=True, must=True),
        Label(_("plug"), (6.4, 3.9), ("t",)),
    ]
    return Picture(tuple(strokes), (0.0, 0.0, 10.3, 4.5), height=120.0, margins=(16.0, 24.0, 8.0, 24.0))


def precharge(hold: str) -> Picture:
    """Return pack and controller with the plug still open, the resistor across its gap. `hold` is how long."""
    first = _("1: resistor, {time}").format(time=hold) if hold else _("1: resistor")
    zigzag = [(4.4 + 0.15 * step, 4.5 + (0.0, 0.3, 0.0, -0.3)[step % 4]) for step in range(9)]
    strokes: list[Stroke] = [
        frame(box(0.0, 0.6, 1.9, 4.0), "text", 2.0),
        frame(box(8.1, 0.6, 10.6, 4.0), "text", 2.0),
        Path(((1.9, 1.2), (8.1, 1.2)), "text", 3.0),
        Path(((1.9, 3.0), (3.6, 3.0)), "text", 3.0),
        Path(((6.4, 3.0), (8.1, 3.0)), "text", 3.0),
        Fill(box(3.6, 2.6, 4.3, 3.4), "text"),
        Fill(box(5.7, 2.6, 6.4, 3.4), "text"),
        Path(((4.3, 3.0), (5.7, 3.0)), "second", 1.5, (3.0, 3.0)),
        Path(((3.9, 3.4), (3.9, 4.5), *zigzag, (6.1, 4.5), (6.1, 3.4)), "main", 3.0),
        # The capacitors inside the controller.
        Path(((8.9, 3.4), (9.8, 3.4)), "second", 3.0),
        Path(((8.9, 3.05), (9.8, 3.05)), "second", 3.0),
        Label(_("pack"), (0.95, 2.2), ("c",), bold=True, must=True),
        Label(_("controller"), (9.35, 0.6), ("b",), bold=True, must=True),
        Label(PLUS, (2.7, 3.0), ("t",), bold=True),
        Label(LESS, (2.7, 1.2), ("t",), bold=True),
        Label(first, (5.0, 4.8), ("t",), tone="main", bold=True, must=True),
        Label(_("2: the plug"), (5.0, 2.6), ("b",), bold=True),
    ]
    return Picture(tuple(strokes), (0.0, 0.4, 10.6, 4.9), height=120.0, margins=(8.0, 22.0, 8.0, 24.0))


def _plug(left: float, right: float) -> tuple[Stroke, ...]:
    contacts = (Disc((left, high), 5.0, "text") for high in (3.3, 1.5))
    return (frame(box(left, 0.9, right, 3.9), "text", 2.0), *contacts)
