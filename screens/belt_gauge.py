"""A belt's window on the gauge, with what was read and what stood there last time."""

from logic.answers.reading import Item, Result
from logic.answers.tension import BeltPlan, BeltReading
from screens.widgets.gauge import Gauge
from screens.words import Style, offer


def show_window(
    gauge: Gauge, plan: BeltPlan, reading: BeltReading | None, last: float | None, style: Style
) -> None:
    """Show the window of a plan, a reading with its band, and the last tension in N."""
    window = plan.window
    if window is None:
        gauge.floor = gauge.ceiling = gauge.low = gauge.high = 0
        gauge.estimate = None
        missing = plan.items["target"]
        gauge.empty_text = offer(missing.missing) if getattr(missing, "missing", ()) else ""
        return

    def newton(force: float) -> float:
        return style.scale(force, "force")

    gauge.floor, gauge.ceiling = newton(window.floor), newton(window.ceiling)
    gauge.floor_text = style.number(window.floor, "force")
    gauge.ceiling_text = style.number(window.ceiling, "force")
    gauge.target, gauge.target_text = newton(window.new_low), "set to"
    gauge.run_in, gauge.run_in_text = newton(window.run_in), "run-in"
    gauge.last = None if last is None else newton(last)
    gauge.last_text = "" if last is None else "last"
    ends = [gauge.floor, gauge.ceiling, *([] if last is None else [gauge.last])]
    tension: Item | None = None if reading is None else reading.tension
    if isinstance(tension, Result) and tension.band:
        low, high = tension.band
        gauge.estimate_low, gauge.estimate_high = newton(low), newton(high)
        gauge.estimate = newton(tension.value)
        gauge.estimate_text = style.number(tension.value, "force")
        ends += [gauge.estimate_low, gauge.estimate_high]
    else:
        gauge.estimate = gauge.estimate_low = gauge.estimate_high = None
    room = 0.6 * (gauge.ceiling - gauge.floor)
    gauge.low, gauge.high = max(0.0, min(ends) - room), max(ends) + room
