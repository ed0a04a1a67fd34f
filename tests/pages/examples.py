"""Parameters that pages are looked at with, by the name of the page: what it cannot do without, and states worth a look."""

from typing import Any

from logic.answers.joint_guide import kind_named
from logic.answers.joint_options import usual_joint
from screens.bench.lookup import plain

EXAMPLES: dict[str, tuple[dict[str, Any], ...]] = {
    "ride.run": ({"list": "before_ride"}, {"list": "build.belt"}),
    "ride.run_list": ({"list": "before_ride"},),
    "ride.run_over": ({"list": "before_ride"},),
    "ride.not_right": (
        {"list": "before_ride", "item": "wheels"},
        {"list": "before_ride", "item": "mounts"},
        {"list": "before_ride", "item": "belts", "sign": "Tooth missing or torn"},
        {"list": "before_ride", "item": "pack", "sign": "Swollen"},
    ),
    "ride.tension_saved": ({"ids": []},),
    "bench.belt": ({}, {"way": "pulls", "side": "right"}, {"way": "weight"}),
    "bench.saved": ({"ids": []},),
    "bench.wear": ({"number": 0}, {"number": 1}),
    "bench.wear_sign": ({"number": 0}, {"number": 1}),
    "bench.view": ({"title": "Left belt", "big": "1.26 kg", "lines": ["Pull 1 mm aside", "Aim at 99 N"]},),
    "bench.fault": ({"fault": "brake"}, {"fault": "hot_motor"}),
    "bench.joint": (
        {"joint": "motor_face"},
        {"joint": "axle_nut"},
        {"joint": "motor_set_screw"},
        {"joint": "bearings"},
    ),
    "bench.joint_edit": ({"joint": "motor_face"}, {"joint": "axle_nut"}),
    "bench.joint_value": (
        {"key": "joints.motor_face.thread"},
        {"key": "joints.motor_face.engagement"},
        {"key": "person.key_arm"},
    ),
    "bench.joint_done": (
        {"joint": "motor_face"},
        {"joint": "axle_nut"},
        {"joint": "motor_face", "typing": True},
    ),
    "bench.lookup_card": tuple(
        {"kind": kind, "values": plain(usual_joint(kind_named(kind)))} for kind in ("screw", "motor face")
    ),
    "numbers.gearing": ({}, {"open_road": True}),
    "numbers.pair": ({"motor": 16, "wheel": 44, "belt": 59}, {"motor": 12, "wheel": 60, "belt": None}),
    "log.entry": ({"number": 1},),
    "log.ride": ({}, {"_field": ""}),
    "log.note": ({}, {"kind": "belt_fitted"}),
    "log.snooze": (
        {"rule": "water", "label": "Check after water", "stop": True},
        {"rule": "bolts", "label": "Look at the joints", "stop": False},
    ),
    "board.value": (
        {"key": "drive.wheel_diameter"},
        {"key": "drive.profile"},
        {"key": "pack.series"},
        {"key": "rider.mass"},
        {"guided": True},
        {"guided": True, "rest": True},
    ),
    "board.name": ({"purpose": "new"}, {"purpose": "copy"}, {"purpose": "keep"}, {"purpose": "rename"}),
    "settings.list": ({"key": "own/1"},),
    "settings.fault": ({"_record": "Deckhand, 2026-11-25T09:30:00+01:00\n\nValueError: a fault"},),
    "settings.sources": (
        {},
        {"key": "sdpsi-2017"},
        {"key": "practice"},
        {"key": "memory"},
        {"key": "derived"},
    ),
    "settings.item": ({"key": "own/1", "item": ""},),
    "glossary": ({}, {"keys": ["kv", "ratio"]}, {"word": "span"}, {"word": "kv"}, {"word": "axle nut"}),
}
