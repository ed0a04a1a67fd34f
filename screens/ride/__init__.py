"""Where the board is ridden: checks at the kerb."""

PAGES = {
    "ride": "screens.ride.home.ride_page",
    "ride.run": "screens.ride.run.run_page",
    "ride.run_list": "screens.ride.run_list.run_list",
    "ride.run_over": "screens.ride.run_over.run_over",
    "ride.not_right": "screens.ride.not_right.not_right",
    "ride.lists": "screens.ride.lists.lists_page",
    "ride.tension": "screens.ride.tension.tension_check",
    "ride.tension_saved": "screens.ride.tension_saved.saved_page",
    "ride.flight": "screens.ride.flight.flight_page",
    "ride.flight_card": "screens.ride.flight_card.flight_card",
    "ride.pack_signs": "screens.ride.pack_signs.pack_signs",
}
"""Class of each page by its name; it is imported at the first visit."""
