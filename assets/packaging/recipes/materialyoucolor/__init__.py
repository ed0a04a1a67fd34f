"""KivyMD wants 3.0.3 or later and the packager's own recipe stops at 2.0.10: the wheel that its authors build is taken."""

from pythonforandroid.recipe import PyProjectRecipe


class MaterialyoucolorRecipe(PyProjectRecipe):
    """No source to unpack: the packager looks for a wheel of this version for Android first, and there is one."""

    version = "3.0.4"
    url = None


recipe = MaterialyoucolorRecipe()
