"""Units, reading and tools."""

PAGES = {
    "settings": "screens.settings.home.SettingsHome",
}
"""Class of each page by its name; it is imported at the first visit."""
