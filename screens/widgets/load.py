"""The kv file of a widget module is read once, when the module is imported."""

from pathlib import Path

from kivy.lang import Builder

# The kv files name these classes; a class is known to kv once its module is imported.
from screens.widgets import column, icon, text  # noqa: F401


def load_kv(module_file: str) -> None:
    """Load the kv file that stands beside a module. Given `__file__`."""
    Builder.load_file(str(Path(module_file).with_suffix(".kv")))
