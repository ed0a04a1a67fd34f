"""What was measured, done and ridden."""

PAGES = {
    "log": "screens.log.home.LogHome",
    "log.tension": "screens.log.tension.history_page",
    "log.due": "screens.log.due.DuePage",
    "log.entry": "screens.log.entry.EntryPage",
    "log.ride": "screens.log.ride.RideEntry",
    "log.note": "screens.log.note.NotePage",
    "log.snooze": "screens.log.snooze.SnoozePage",
    "log.bin": "screens.log.bin.BinPage",
    "log.export": "screens.log.export.ExportPage",
}
"""Class of each page by its name; it is imported at the first visit."""
