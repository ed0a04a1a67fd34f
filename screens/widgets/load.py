"""The kv file of a widget module is read once, when the module is imported."""

from pathlib import Path

from kivy.lang import Builder


def load_kv(module_file: str) -> None:
    """Load the kv file that stands beside a module. Given `__file__`."""
    Builder.load_file(str(Path(module_file).with_suffix(".kv")))
