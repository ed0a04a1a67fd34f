"""Where parts are chosen and figures explained."""

PAGES = {
    "numbers": "screens.numbers.home.NumbersHome",
    "numbers.gearing": "screens.numbers.gearing.GearingPage",
}
"""Class of each page by its name; it is imported at the first visit."""
