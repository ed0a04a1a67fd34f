"""The packager's own recipe of Kivy also brings what asks a network, which Deckhand never does: that stays out."""

from pathlib import Path

from pythonforandroid.recipes import __path__ as recipes
from pythonforandroid.recipes.kivy import KivyRecipe


class KivyAlone(KivyRecipe):
    """Kivy, built and patched as the packager does it; of what it asks for, what it imports at once."""

    name = "kivy"
    python_depends = ("filetype",)

    def get_recipe_dir(self) -> str:
        """Return the folder of the packager's recipe, where its patches lie."""
        return str(Path(recipes[0]) / "kivy")


recipe = KivyAlone()
