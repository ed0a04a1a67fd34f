"""Where parts are chosen and figures explained."""

PAGES = {
    "numbers": "screens.numbers.home.NumbersHome",
    "numbers.gearing": "screens.numbers.gearing.GearingPage",
    "numbers.belt": "screens.numbers.belt.BeltPage",
    "numbers.fit": "screens.numbers.fit.FitPage",
}
"""Class of each page by its name; it is imported at the first visit."""
