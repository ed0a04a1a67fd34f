"""Where parts are chosen and figures explained."""

PAGES = {
    "numbers": "screens.numbers.home.NumbersHome",
    "numbers.gearing": "screens.numbers.gearing.GearingPage",
    "numbers.pairs": "screens.numbers.pairs.PairsPage",
    "numbers.pair": "screens.numbers.pair.PairPage",
    "numbers.stopping": "screens.numbers.stopping.StoppingPage",
    "numbers.push": "screens.numbers.push.PushPage",
    "numbers.compare": "screens.numbers.compare.ComparePage",
    "numbers.consumption": "screens.numbers.consumption.ConsumptionPage",
    "numbers.rides": "screens.numbers.rides.RidesPage",
    "numbers.coast": "screens.numbers.coast.CoastPage",
    "numbers.hold": "screens.numbers.hold.HoldPage",
    "numbers.wheel": "screens.numbers.wheel.WheelPage",
    "numbers.bench_motor": "screens.numbers.bench_motor.BenchMotorPage",
    "numbers.units": "screens.numbers.units.UnitsPage",
}
"""Class of each page by its name; it is imported at the first visit."""
