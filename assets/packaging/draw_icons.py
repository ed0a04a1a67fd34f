"""Draws the icon and the splash: two pulleys and the belt round them. Run it with the path of this file."""

import tomllib
from math import acos, cos, degrees, hypot, pi, sin
from pathlib import Path

from PIL import Image, ImageDraw

HERE = Path(__file__).resolve().parent
FINE = 4
"""Drawn so many times larger, then made smaller: smooth edges."""
WHEEL, MOTOR = (0.60, 0.58, 0.235), (0.265, 0.30, 0.105)
"""Centre and radius of both pulleys, as shares of the side."""
TEETH, GROOVE = 22, 0.030


def belt(draw: ImageDraw.ImageDraw, side: float, colour: str, width: float) -> None:
    """Draw the belt: two straight runs and an arc round each pulley."""
    (x1, y1, r1), (x2, y2, r2) = WHEEL, MOTOR
    dx, dy = x2 - x1, y2 - y1
    reach = hypot(dx, dy)
    along = complex(dx, dy) / reach
    turn = acos((r1 - r2) / reach)
    pen = round(width * side)
    for way in (turn, -turn):
        arm = along * complex(cos(way), sin(way))
        points = [(x + arm.real * r, y + arm.imag * r) for x, y, r in (WHEEL, MOTOR)]
        draw.line([(x * side, y * side) for x, y in points], fill=colour, width=pen)
    middle = degrees(pi + _angle(along))
    for (x, y, r), half, towards in (
        (WHEEL, 180 - degrees(turn), middle),
        (MOTOR, degrees(turn), middle + 180),
    ):
        outer = r + width / 2
        box = [(x - outer) * side, (y - outer) * side, (x + outer) * side, (y + outer) * side]
        draw.arc(box, towards - half, towards + half, fill=colour, width=pen)


def _angle(number: complex) -> float:
    angle = acos(number.real)
    return angle if number.imag >= 0 else -angle


def pulley(
    draw: ImageDraw.ImageDraw, side: float, at: tuple[float, float, float], colour: str, hole: str
) -> None:
    """Draw a pulley: a toothed disc with its bore."""
    x, y, r = at
    count = round(TEETH * r / WHEEL[2])
    inner = r - GROOVE
    draw.ellipse(
        [(x - inner) * side, (y - inner) * side, (x + inner) * side, (y + inner) * side], fill=colour
    )
    for place in range(count):
        arm = 2 * pi * place / count
        ends = [(x + cos(arm) * s) * side for s in (inner - 0.01, r - 0.008)]
        tops = [(y + sin(arm) * s) * side for s in (inner - 0.01, r - 0.008)]
        draw.line([(ends[0], tops[0]), (ends[1], tops[1])], fill=colour, width=round(pi * r / count * side))
    bore = 0.34 * r
    draw.ellipse([(x - bore) * side, (y - bore) * side, (x + bore) * side, (y + bore) * side], fill=hole)


def picture(side: int, ground: str | None, colours: dict[str, str], share: float = 1.0) -> Image.Image:
    """Return the drawing in a square, on a ground or on none; `share` of the side is the drawing's."""
    large = side * FINE
    image = Image.new("RGBA", (large, large), ground or (0, 0, 0, 0))
    inner = round(large * share)
    layer = Image.new("RGBA", (inner, inner), (0, 0, 0, 0))
    draw = ImageDraw.Draw(layer)
    belt(draw, inner, colours["over_main"], 0.042)
    for at in (WHEEL, MOTOR):
        pulley(draw, inner, at, colours["over_main"], colours["main"])
    image.alpha_composite(layer, ((large - inner) // 2, (large - inner) // 2))
    return image.resize((side, side), Image.Resampling.LANCZOS)


def main() -> None:
    """Write every picture that the packager asks for."""
    with (HERE.parent / "colours.toml").open("rb") as file:
        colours = tomllib.load(file)["day"]
    main_colour = colours["main"]
    picture(512, main_colour, colours).convert("RGB").save(HERE / "icon.png", optimize=True)
    # Of an adaptive icon only the middle two thirds are sure to be seen (Android, adaptive icons: 72 of 108 dp).
    picture(432, None, colours, share=2 / 3).save(HERE / "icon_front.png", optimize=True)
    Image.new("RGB", (432, 432), main_colour).save(HERE / "icon_ground.png", optimize=True)
    picture(1024, main_colour, colours, share=0.5).convert("RGB").save(HERE / "splash.png", optimize=True)


if __name__ == "__main__":
    main()
