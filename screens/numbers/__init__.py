"""Where parts are chosen and figures explained."""

PAGES = {
    "numbers": "screens.numbers.home.numbers_page",
    "numbers.gearing": "screens.numbers.gearing.gearing_page",
    "numbers.packs": "screens.numbers.packs.packs_page",
    "numbers.range": "screens.numbers.range.range_page",
    "numbers.charging": "screens.numbers.charging.charging_page",
    "numbers.joining": "screens.numbers.joining.joining_page",
    "numbers.wiring": "screens.numbers.wiring.wiring_page",
    "numbers.descents": "screens.numbers.descents.descents_page",
    "numbers.care": "screens.numbers.care.care_page",
    "numbers.belt": "screens.numbers.belt.belt_page",
    "numbers.fit": "screens.numbers.fit.fit_page",
    "numbers.feel": "screens.numbers.feel.feel_page",
    "numbers.pairs": "screens.numbers.pairs.pairs_page",
    "numbers.pair": "screens.numbers.pair.pair_page",
    "numbers.stopping": "screens.numbers.stopping.stopping_page",
    "numbers.compare": "screens.numbers.compare.compare_page",
    "numbers.rides": "screens.numbers.rides.rides_page",
    "numbers.coast": "screens.numbers.coast.coast_page",
    "numbers.hold": "screens.numbers.hold.hold_page",
    "numbers.wheel": "screens.numbers.wheel.wheel_page",
    "numbers.bench_motor": "screens.numbers.bench_motor.bench_motor_page",
    "numbers.units": "screens.numbers.units.units_page",
}
"""Class of each page by its name; it is imported at the first visit."""
