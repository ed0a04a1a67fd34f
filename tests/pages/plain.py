"""One word for one thing, and the words riders use: what is not said anywhere in the app, and what is said in its place."""

MOST_WORDS = 15
"""Words of a sentence at most."""

INSTEAD = {
    "speed constant": "motor constant (Kv)",
    "by number": "to torque; measured",
    "what rules": "what limits",
    "full remote": "full throttle",
    "way of one wheel turn": "circumference",
    "braking way": "stopping distance",
    "held for good": "for long",
    "least sure value": "weakest value",
    "put aside for now": "left open",
    "as far apart as their errors allow": "too far apart for their errors",
    "by the hand's feel": "by feel",
    "deflection": "pull depth",
    "durometer": "Shore A",
    "ratcheting": "skipping",
    "grub screw": "set screw",
    "speed controller": "controller",
    "esc": "controller",
    "remote lever": "throttle",
    "rim size": "wheel diameter",
    "wheel size": "wheel diameter",
    "gearing ratio": "gear ratio",
    "accumulator": "pack",
    "set point": "target",
}
"""What is not said, and what is said for it. Other names are kept in the search and the glossary, under `also`."""
