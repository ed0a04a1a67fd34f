"""Where the board is ridden: checks at the kerb."""

PAGES = {
    "ride": "screens.ride.home.RideHome",
    "ride.tension": "screens.ride.tension.TensionCheck",
    "ride.tension_saved": "screens.ride.tension_saved.TensionSaved",
}
"""Class of each page by its name; it is imported at the first visit."""
