"""What was measured, done and ridden."""

PAGES = {
    "log": "screens.log.home.log_page",
    "log.tension": "screens.log.tension.history_page",
    "log.due": "screens.log.due.due_page",
    "log.entry": "screens.log.entry.entry_page",
    "log.ride": "screens.log.ride.ride_page",
    "log.note": "screens.log.note.note_page",
    "log.snooze": "screens.log.snooze.snooze_page",
    "log.bin": "screens.log.bin.bin_page",
    "log.export": "screens.log.export.export_page",
}
"""Class of each page by its name; it is imported at the first visit."""
