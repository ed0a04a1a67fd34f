"""Words of stopping and descents."""

from screens.tongue import _, texts

TEXTS = texts("stopping")

SURFACE, REACTION = TEXTS["surface"], TEXTS["reaction"]

LABELS = {
    **{
        f"stop_{surface}_{reaction}": f"{SURFACE[surface].capitalize()}, {REACTION[reaction]}"
        for surface in SURFACE
        for reaction in REACTION
    },
    **TEXTS["labels"],
}
"""Label of each result."""

RULERS = TEXTS["rulers"]
"""What holds the brake down."""

RUNS_ON = _(
    "This slope is stronger than the brake: the board does not stop on it. Do not ride down it; walk."
)
CUTS_OUT = _(
    "Braking lifts {pack} above full charge: the brake may cut out at once. Ride some charge off before you need it."
)
THIS_PACK, FULL_PACK = "this pack", "a full pack"
ANY_CHARGE = _("Pack nearly empty: the longest way of any charge.")
