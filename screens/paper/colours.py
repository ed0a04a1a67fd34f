"""The colour of each tone, in the theme in force."""

from screens.theme import palettes, theme

SIGNALS = ("danger", "warning", "caution", "notice")


def colour(tone: str) -> list[float]:
    """Return the colour of a tone."""
    if tone == "hair":
        red, green, blue, _ = theme.outline
        return [red, green, blue, 0.45 if theme.name == "sun" else 0.3]
    if tone.removeprefix("on_") in SIGNALS:
        panel, over = theme.signal(tone.removeprefix("on_"))
        return over if tone.startswith("on_") else panel
    found: list[float] = getattr(theme, tone)
    return found


__all__ = ["colour", "palettes"]
