"""Words of choosing, fitting, setting and following a belt."""

from typing import TYPE_CHECKING

from logic.answers.reading import Item, Result
from logic.answers.tension import BeltPlan
from screens.tongue import _
from screens.words import Style

if TYPE_CHECKING:
    from logic.answers.belt_choice import Stock

CHOICE = {
    "centre": "Centre distance of this belt",
    "span": "Free span",
    "wrap": "Wrap on the small pulley",
    "teeth_in_mesh": "Teeth in mesh",
    "mesh_factor": "Rating left by the teeth in mesh",
    "lay_on": "In, to lay the belt on",
    "take_up": "Out, to tension it",
    "tolerance": "The belt's own length, ±",
    "slot_inner": "Mount should reach in to",
    "slot_outer": "Mount should reach out to",
    "belt_speed": "Belt at top speed",
    "angular_speed_loaded": "Motor at top speed",
    "rated_start": "Rated torque at the start",
    "peak_torque": "Most torque of one motor",
    "used_start": "Share of the rating, start",
    "rated_top": "Rated torque at top speed",
    "steady_torque": "Torque that holds top speed",
    "used_top": "Share of the rating, top speed",
    "smallest": "Teeth suggested for long life",
}
"""Label of each result of choosing a belt."""

FIT = {
    "pulley_ground": "Belt on the wheel pulley to the ground",
    "pulley_ground_worn": "The same, wheel worn",
    "can_ground": "Motor to the ground",
    "can_ground_worn": "The same, wheel worn",
    "pulley_deck": "Belt on the wheel pulley to the deck",
    "can_deck": "Motor to the deck",
    "can_hanger": "Motor to the hanger",
    "motors_gap": "Between the two motors",
}
"""Label of each clearance."""

TOUCHES = {
    "pulley_ground": "The belt runs on the ground. Take a smaller wheel pulley or a larger wheel.",
    "pulley_ground_worn": "The belt touches the ground before the wheel is worn so far.",
    "can_ground": "The motor hangs on the ground. Turn the mount up or take a smaller can.",
    "can_ground_worn": "The motor touches the ground before the wheel is worn so far.",
    "pulley_deck": "The belt touches the deck. Put a riser under the truck.",
    "can_deck": "Under the deck the motor touches it. Turn the mount down or put a riser under the truck.",
    "can_hanger": "The motor touches the hanger. Take a longer belt.",
    "motors_gap": "The two motors do not fit side by side: a longer hanger, shorter cans, or one before"
    " and one behind the axle.",
}
"""What a clearance below zero means and what one does about it."""

LACKS = {
    "": "",
    "in": "The mount stays too far out for it.",
    "out": "The mount does not reach out far enough to tension it.",
    "laying on": "Over the flange it needs more travel: belt and pulleys go on together.",
}
"""What the mount lacks for a belt in stock."""

BEYOND = (
    "Boards normally run beyond these ratings. They mean a life of some 3000 hours on a machine, not breaking."
    " Shock, braking and short belts are outside the catalogues."
)

BENCH = {
    "best_depth": "Best pull depth",
    "best_pull": "Scale reads there, at the target",
    "best_error": "One pull is good to",
    "best_share": "As a share of the tension",
    "from_depth": "Of that, from the depth",
    "from_scale": "Of that, from the scale",
    "from_stiffness": "Of that, from the belt's stiffness",
    "motor_pull": "Pull on the motor, at the target",
    "motor_error": "Good to",
    "mass": "Belt, by its length",
    "pitch_target": "Pitch at the target",
    "pitch_floor": "Pitch at the floor",
    "pitch_ceiling": "Pitch at the ceiling",
    "tension": "Belt tension, each span",
    "error": "Known to within",
    "spread": "Moves round the wheel by",
    "zero": "Add to every depth read",
    "apart": "Difference over its limit",
    "nudge": "Move the motor by",
    "stretch": "Grown since it was fitted",
    "left": "Lasts, if the trend holds",
}
"""Label of each result on the bench and in the history."""

WAYS = {
    "scale": "Spring scale",
    "pulls": "Several pulls, fitted together",
    "weight": "A known weight hung on it",
    "motor": "Pull the motor",
    "pluck": "Pluck and listen",
    "together": "Two ways together",
}
"""Name of each way to a tension."""

REFUSALS = {
    "clipped": "Too loud: the recording is cut off at its peaks. Move the phone away or pluck softer.",
    "too short": "Too short: a pluck needs a tenth of a second of sound after it. Record again.",
    "no pluck": "No pluck stands out. Hold the microphone near the middle of the span and pluck once.",
    "noise": "Only noise was heard. Find a quieter place, come nearer, pluck a little harder.",
    "two pitches": "Two pitches at once. Lay a finger on the other span, touch nothing else.",
    "steady": "The tone does not fade: a hum or a whistle. Switch off what hums and pluck again.",
    "unsure": "The pitch wanders too much to be trusted. Pluck softly at the middle, once, and let it ring.",
    "out of band": "Not where this belt can sound: an overtone or another thing. Pluck softly at the middle.",
}
"""What was wrong with a recording and what to do."""

SHORT_WAY = {
    "scale": "by scale",
    "pulls": "several pulls",
    "weight": "by weight",
    "motor": "by pulling the motor",
    "pluck": "by sound",
    "together": "two ways",
}
"""How a recorded reading was taken."""


def stock_title(belt: "Stock", style: Style) -> str:
    """Return the size of a belt in stock."""
    return f"{belt.teeth} teeth, {style.number(belt.length, 'length')}"


def makers(belt: "Stock") -> str:
    """Return how many makers list a belt."""
    if not belt.sure:
        return "From memory, ask the seller."
    count = len(belt.lists)
    return "In one maker's list." if count == 1 else f"In {count} makers' lists."


def percent(item: Item, style: Style) -> str:
    """Return an error as a share, "" where it is not known."""
    return f"± {style.number(item.value, 'share', 2)}" if isinstance(item, Result) else ""


def held_text(plan: BeltPlan, style: Style) -> str:
    """Return what a right belt would seem to have if both pulleys were held, for this very belt."""
    misread = plan.items["misread"]
    if not isinstance(misread, Result):
        return _("One pulley must be free to turn.")
    seems = style.number(misread.value, "force")
    return _(
        "One pulley must be free to turn: with both held a right belt would seem to have {seems}."
    ).format(seems=seems)


def nudge_text(nudge: Item, style: Style) -> str:
    """Return how far to move the motor, as a first try."""
    if not isinstance(nudge, Result):
        return _("Move the motor a little, turn, measure again.")
    amount = style.number(abs(nudge.value), "length", 1)
    said = (
        _("Nudge the motor {amount} away from the wheel, more in a soft frame. Turn, measure again.")
        if nudge.value > 0
        else _("Nudge the motor {amount} towards the wheel, more in a soft frame. Turn, measure again.")
    )
    return said.format(amount=amount)
