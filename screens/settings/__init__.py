"""Units, reading and tools."""

PAGES = {
    "settings": "screens.settings.home.settings_page",
    "settings.lists": "screens.settings.lists.lists_page",
    "settings.list": "screens.settings.own_list.list_page",
    "settings.code": "screens.settings.code.code_page",
    "settings.fault": "screens.settings.fault.fault_page",
    "settings.files": "screens.settings.files.files_page",
    "settings.unread": "screens.settings.unread.unread_page",
    "settings.sources": "screens.settings.sources.sources_page",
    "settings.licences": "screens.settings.licences.licences_page",
    "settings.item": "screens.settings.own_item.item_page",
}
"""Where each page is made, by its name; it is imported at the first visit."""
