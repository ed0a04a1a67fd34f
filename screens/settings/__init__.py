"""Units, reading and tools."""

PAGES = {
    "settings": "screens.settings.home.SettingsHome",
    "settings.lists": "screens.settings.lists.OwnLists",
    "settings.list": "screens.settings.own_list.OwnList",
    "settings.files": "screens.settings.files.files_page",
    "settings.unread": "screens.settings.unread.unread_page",
    "settings.item": "screens.settings.own_item.OwnItem",
}
"""Class of each page by its name; it is imported at the first visit."""
