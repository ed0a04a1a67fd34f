"""Widgets of our own on Kivy's core: they declare properties and events and know no board.

Kv files name them freely: each is imported when a kv rule first asks for it.
"""

from kivy.factory import Factory

MODULES = {
    "bar": ("Bar", "IconButton"),
    "chart": ("Chart",),
    "chip": ("ChipFlow", "ValueChip"),
    "chips": ("WordChips",),
    "choice": ("Choice",),
    "column": ("Column", "Flow", "Pair"),
    "icon": ("Icon",),
    "keypad": ("Keypad",),
    "notice": ("Notice",),
    "result": ("Result", "ResultFlow"),
    "row": ("Foot", "Row", "Section"),
    "text": ("Text",),
    "undo": ("UndoBar",),
    "writing": ("Writing",),
}

for _module, _names in MODULES.items():
    for _name in _names:
        Factory.register(_name, module=f"screens.widgets.{_module}")
