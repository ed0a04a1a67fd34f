"""Words of the parts that decide how a board rides."""

from screens.tongue import _

LABELS = {
    "radius": _("Radius of the turn"),
    "circle": _("Width of a full turn"),
    "gap": _("Deck over the wheel, board level"),
    "gap_lean": _("Deck over the wheel, leaning"),
    "bite": _("Wheel bite from a lean of"),
    "turn_dry": _("Slides out of that turn at, dry"),
    "turn_wet": _("Slides out of that turn at, wet"),
    "bushing": _("Bushings for your weight, Shore A"),
    "edge_push": _("Push to roll over the edge"),
    "edge_larger": _("The same, wheel {larger} larger"),
    "larger_speed": _("Speed with a wheel {larger} larger"),
    "larger_push": _("Push with a wheel {larger} larger"),
    "steer_front": _("Front axle steers"),
    "steer_rear": _("Rear axle steers"),
    "deck_ground": _("Deck above the ground"),
    "pulley_ground": _("Belt on the wheel pulley to the ground"),
    "motors_gap": _("Between the two motors"),
}
"""Label of each figure; {larger} is how much larger a wheel is compared with."""

DETAILS = {
    "gap_lean": _("The deck leans about its middle line. Weight and soft bushings take more."),
    "turn_dry": _("Level road, clean asphalt, both axles loaded alike."),
    "edge_push": _("Share of what the wheel carries, from standstill."),
    "larger_speed": _("Where gears alone set it."),
    "deck_ground": _("Nobody on it. A deck that flexes comes nearer."),
}
"""What each figure holds for."""

BUSHING = {
    "softer": _("Yours are softer: it turns easily and wobbles sooner."),
    "harder": _("Yours are harder: steadier, and it wants more weight to turn."),
    "suits": _("Yours suit your weight."),
    "": _("Where one begins to try, for riders with their gear."),
}
"""What is said of the bushings that are fitted."""

PARTS = {
    "wheels": _("Wheels"),
    "bushings": _("Bushings"),
    "trucks": _("Trucks"),
    "deck": _("Deck and riser"),
}
"""Heading of each part."""

BITES = _("A wheel that touches the deck in a turn stops at once and throws you. Make room before you ride.")
WOBBLE = _("Above about {speed} a board may begin to wobble. Softer parts and more turn bring it sooner.")
