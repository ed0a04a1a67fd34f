"""Words of the pairs of pulleys."""

LABELS = {
    "top_loaded": "Top speed, loaded",
    "top_full": "Unloaded, full pack",
    "ratio": "Gear ratio",
    "push_start": "Push from standstill",
    "climb_start": "Steepest climb, from standstill",
    "climb_heat": "Heat of one motor on the reference climb",
    "stop": "Stop from the top speed, without reaction",
    "angular_speed_loaded": "Motor at the top speed",
    "electrical": "Electrical speed, unloaded, full pack",
    "erpm_margin": "Left under the controller's electrical limit",
    "belt_load": "Pull of the belt against its working tension",
    "belt": "Belt",
    "centre": "Centre distance",
    "teeth_in_mesh": "Teeth in mesh",
}
"""Label of each figure of a pair."""

COLUMNS = {
    "loaded": "Loaded",
    "push": "Push",
    "climb": "Climb",
    "heat": "Heat",
    "stop": "Stop",
    "belt": "Belt",
    "centre": "Centre",
    "in_mesh": "In mesh",
    "belt_load": "Belt load",
    "ratio": "Ratio",
    "unloaded": "Unloaded",
    "angular_speed": "Motor",
    "erpm_margin": "Left, electrical",
}
"""Head of each column of the table, in the order they come into view."""

NONE_FITS = "No pair of catalogue pulleys has a belt in stock within this mount's travel."
CAUTION = (
    "Local law may allow far less than these speeds, and above about 35 km/h a board may begin to wobble."
)
