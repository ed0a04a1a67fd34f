"""Where parts are chosen and figures explained."""

PAGES = {
    "numbers": "screens.numbers.home.NumbersHome",
    "numbers.gearing": "screens.numbers.gearing.GearingPage",
    "numbers.packs": "screens.numbers.packs.PacksPage",
    "numbers.range": "screens.numbers.range.RangePage",
    "numbers.charging": "screens.numbers.charging.ChargingPage",
    "numbers.joining": "screens.numbers.joining.JoiningPage",
    "numbers.wiring": "screens.numbers.wiring.WiringPage",
    "numbers.descents": "screens.numbers.descents.DescentsPage",
    "numbers.care": "screens.numbers.care.CarePage",
    "numbers.belt": "screens.numbers.belt.BeltPage",
    "numbers.fit": "screens.numbers.fit.FitPage",
}
"""Class of each page by its name; it is imported at the first visit."""
