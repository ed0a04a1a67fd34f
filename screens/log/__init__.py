"""What was measured, done and ridden."""

PAGES = {
    "log": "screens.log.home.LogHome",
    "log.tension": "screens.log.tension.TensionHistory",
}
"""Class of each page by its name; it is imported at the first visit."""
