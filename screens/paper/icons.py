"""Pictures from the icon font, by our own short names."""

from importlib.util import find_spec
from pathlib import Path

from kivy.core.text import LabelBase

ICON_FONT = "Icons"

POINTS = {
    "tick": 0xF012C,
    "cross": 0xF0156,
    "too little": 0xF013C,
    "too much": 0xF013F,
    "next": 0xF0142,
    "open": 0xF0140,
    "shut": 0xF0143,
    "back": 0xF004D,
    "delete": 0xF0B5C,
    "plus": 0xF0415,
    "minus": 0xF0374,
    "sum": 0xF04A0,
    "edit": 0xF03EB,
    "settings": 0xF08BB,
    "ride": 0xF14C2,
    "bench": 0xF0BE0,
    "numbers": 0xF15A6,
    "log": 0xF0EBF,
    "checklist": 0xF0756,
    "ruler": 0xF046D,
    "gauge": 0xF029A,
    "battery": 0xF008E,
    "wires": 0xF140C,
    "drive": 0xF105C,
    "driver": 0xF0476,
    "road": 0xF08F0,
    "flight": 0xF001D,
    "history": 0xF02DA,
    "due": 0xF009C,
    "clock": 0xF0150,
    "search": 0xF0349,
    "swap": 0xF04E1,
    "more": 0xF01D8,
    "about": 0xF02FD,
    "bin": 0xF09E7,
    "save": 0xF0818,
    "send": 0xF0B93,
    "take_in": 0xF02FA,
    "undo": 0xF054C,
    "theme": 0xF050E,
    "day": 0xF0599,
    "night": 0xF0594,
    "say": 0xF057E,
    "microphone": 0xF036C,
    "torch": 0xF0244,
    "view": 0xF06D0,
    "picture": 0xF0976,
    "file": 0xF0224,
    "locked": 0xF0341,
    "unticked": 0xF0131,
    "ticked": 0xF0135,
    "turn": 0xF0467,
    "step back": 0xF04AE,
    "question": 0xF02D6,
    "warning": 0xF0026,
    "fault": 0xF04D9,
    "fire": 0xF0238,
    "heat": 0xF050F,
    "join": 0xF0339,
    "units": 0xF05D1,
    "compare": 0xF018A,
    "charging": 0xF089F,
    "store": 0xF120E,
    "controller": 0xF062E,
    "descent": 0xF0533,
    "stop": 0xF0C48,
    "fit": 0xF084C,
    "motor": 0xF01FA,
    "speed": 0xF04C5,
    "wheel": 0xF1896,
}
"""Code points of the pictures in use. A table of the whole font would cost 25 ms at each start."""


def _register() -> None:
    """Register the font under its name without importing the package that carries it."""
    found = find_spec("kivymd")
    if found is None or not found.submodule_search_locations:
        message = "the icon font is missing: install the packages of pyproject.toml"
        raise ImportError(message)
    folder = Path(next(iter(found.submodule_search_locations)))
    LabelBase.register(ICON_FONT, str(folder / "fonts" / "materialdesignicons-webfont.ttf"))


_register()
