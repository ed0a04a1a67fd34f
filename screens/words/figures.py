"""Sentences in place of a number, wherever figures of a drive are shown."""

from screens.words.refusals import SENTENCES

OUTCOMES = {
    "cannot start": "Cannot start: the road asks for more than the motors push.",
    "runs past": "Runs past: on this slope gravity drives it faster than the motors can.",
    "not reached": "Not held: the motors cannot push that hard at this speed.",
    "needs the brake": "Rolls by itself here: this speed must be braked.",
    "does not stop": "Does not stop: the slope is stronger than the brake.",
    "never reached": "Never reached: push and load meet at a lower speed.",
    "beyond the weight": "The push is more than the weight: no hill is too steep for it, but the tyre is.",
    "stays below": "Stays below the limit however long it climbs.",
    "too hot at the start": "At or above the limit from the start.",
    "runs away": "Does not settle: the winding gains heat faster than the air takes it.",
    "odd magnets": "Magnets come in pairs of poles: an odd count was miscounted.",
    "no such motor": "Volts and turns do not go together: check both.",
    "own drag": "The motor's own drag alone warms it past the limit.",
    "too alike": "The rides are too alike in speed to tell rolling from air. Ride some slower and some faster.",
    "too few rides": "Too few rides yet: four tell something.",
    "rolls on": "Air and motors alone would have slowed it sooner: the drag area is too large, or it went downhill.",
    "clear of the wheels": SENTENCES["clear of the wheels"],
    "by feel": SENTENCES["by feel"],
    "too cold": SENTENCES["too cold"],
}
"""Plain sentence of each outcome."""
