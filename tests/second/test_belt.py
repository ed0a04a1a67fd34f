"""The answers about belts against a second calculation, over the example boards and boards drawn at random.

`SECOND_BOARDS=1000` draws as many; the suite draws a few dozen.
"""

import os
from collections import Counter
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, replace
from math import pi
from random import Random
from typing import Any

import pytest

from logic.answers.belt_bench import (
    bench_plan,
    fitted_reading,
    motor_reading,
    nudge_for,
    positions,
    weight_reading,
)
from logic.answers.belt_choice import belt_choice, centre_of
from logic.answers.belt_fit import belt_fit, narrowest_gap
from logic.answers.belt_history import belt_history
from logic.answers.belt_sound import calibrate, sound_plan, sound_reading
from logic.answers.belt_together import Told, together, ways
from logic.answers.reading import Item, Result
from logic.answers.tension import BeltReading, belt_plan, belt_reading
from logic.belt.history import Point
from logic.board import Board, Value
from logic.exchange import demo_boards
from logic.person import Person
from tests.second import belt as second
from tests.second import belt_choice as choosing
from tests.second import belt_set as setting

BOARDS = int(os.environ.get("SECOND_BOARDS", "40"))
DEMOS = demo_boards()
RIDER = 80.0
PITCHES = {"HTD 5M": 5.0, "HTD 3M": 3.0, "GT 5M": 5.0, "GT 3M": 3.0}
SCALES = ("luggage scale", "coarse luggage scale", "fish scale", "coarse fish scale")
DEPTHS = ("steel rule", "calliper", "feeler gauge")
GAPS = (
    "drive.profile", "drive.belt_width", "drive.belt_teeth", "drive.motor_teeth", "drive.wheel_teeth", "drive.motors",
    "drive.wheel_diameter", "motor.kv", "motor.resistance", "motor.no_load_current", "controller.motor_current",
    "controller.brake_current", "controller.battery_current", "controller.duty", "pack.series", "pack.chemistry",
    "pack.cell_resistance", "pack.parallel", "load.board_mass", "load.rolling", "load.drag_area", "load.efficiency",
    "mount.angle", "mount.can_diameter", "mount.can_length", "mount.hanger_length", "mount.hanger_width", "mount.inset",
    "mount.plate", "mount.deck_height",
)  # fmt: skip
WAYS = ("scale", "pulls", "weight", "motor", "pluck")


@dataclass(frozen=True)
class Case:
    """A board, the person's tools, and what was measured on the bench; `full` is the board before values were lost."""

    board: Board
    full: Board
    person: Person
    pulls: tuple[float, ...]
    depth: float
    series: tuple[tuple[float, float], ...]
    hung: float
    on_motor: float
    now: float
    heard: tuple[float, float]
    told: tuple[Told, Told]
    points: tuple[tuple[float, float, float], ...]
    wanted: float
    worn: float


def drawn_board(luck: Random) -> Board:
    """Return an example board with another belt drive: mostly one that fits, now and then one that cannot."""
    board = luck.choice(DEMOS)
    profile = luck.choice(["HTD 5M", "HTD 5M", "HTD 5M", "GT 5M", "HTD 3M", "GT 3M"])
    pitch = PITCHES[profile]
    small, large = luck.randint(11, 30), luck.randint(26, 80)
    if luck.random() < 0.1:
        small, large = large, small
    touching = pitch * (small + large) / (2.0 * pi)
    centre = touching * luck.uniform(0.97, 1.2) if luck.random() < 0.2 else touching * luck.uniform(1.1, 2.5)
    teeth = round(
        (2.0 * centre + pi * touching) / pitch + (large - small) ** 2 * pitch / (4.0 * pi**2 * centre)
    )
    numbers: dict[str, Any] = {
        "drive.motor_teeth": float(small),
        "drive.wheel_teeth": float(large),
        "drive.belt_teeth": float(min(max(teeth, 20), 400)),
        "drive.belt_width": luck.choice([6.0, 9.0, 12.0, 15.0, 20.0, 25.0, luck.uniform(3.0, 34.0)]) / 1000.0,
        "motor.kv": luck.uniform(60.0, 300.0) * pi / 30.0,
        "controller.motor_current": luck.uniform(5.0, 90.0),
        "controller.brake_current": luck.uniform(5.0, 90.0),
        "controller.battery_current": luck.uniform(5.0, 90.0),
        "controller.duty": luck.uniform(0.5, 1.0),
        "motor.resistance": luck.uniform(0.01, 0.2),
        "motor.no_load_current": luck.uniform(0.0, 4.0),
        "pack.series": float(luck.randint(5, 14)),
        "pack.cell_resistance": luck.uniform(0.005, 0.09),
        "load.board_mass": luck.uniform(4.0, 20.0),
        "load.rolling": luck.uniform(0.005, 0.04),
        "load.drag_area": luck.uniform(0.3, 0.9),
        "load.efficiency": luck.uniform(0.8, 1.0),
        "drive.wheel_diameter": luck.uniform(0.07, 0.2),
        "mount.angle": luck.uniform(-0.8, 1.2),
        "mount.can_diameter": luck.uniform(0.04, 0.08),
        "mount.can_length": luck.uniform(0.04, 0.1),
        "mount.hanger_length": luck.uniform(0.15, 0.35),
        "mount.hanger_width": luck.uniform(0.01, 0.03),
        "mount.inset": luck.uniform(0.005, 0.03),
        "mount.plate": luck.uniform(0.004, 0.012),
        "mount.deck_height": luck.uniform(0.05, 0.15),
    }
    for key, often, low, high in (
        ("drive.centre", 0.3, 0.98, 1.03),
        ("drive.span", 0.15, 0.8, 1.02),
        ("mount.centre_least", 0.5, 0.85, 1.01),
        ("mount.centre_most", 0.5, 0.99, 1.15),
    ):
        numbers[key] = centre / 1000.0 * luck.uniform(low, high) if luck.random() < often else None
    numbers["drive.belt_mass"] = luck.uniform(0.008, 0.05) if luck.random() < 0.3 else None
    numbers["motor.radial_load"] = luck.uniform(60.0, 300.0) if luck.random() < 0.4 else None
    choices = {
        "drive.profile": [profile],
        "drive.motors": ["1", "2"],
        "drive.service": ["1.3", "1.5", "2.0", None],
        "controller.current_meaning": ["six-step", "sine peak", "sine rms", None],
        "pack.chemistry": ["NMC", "NCA", "LFP"],
        "mount.flanged": ["none", "one", "both", None],
        "mount.adjust": ["slots", "screw", "fixed", None],
    }
    numbers |= {key: luck.choice(options) for key, options in choices.items()}
    for key, number in numbers.items():
        board = board.with_value(
            key, None if number is None else Value(number, luck.choice(["measured", "label"]))
        )
    return board


def with_gap(board: Board, luck: Random) -> Board:
    """Return the board, now and then without one of its values."""
    keys = [key for key in GAPS if board.value(key) is not None]
    return board.with_value(luck.choice(keys), None) if luck.random() < 0.3 else board


def drawn(number: int) -> Case:
    """Return a board with tools and readings that might come of it, or of a slip of the hand."""
    luck = Random(number)
    full = drawn_board(luck)
    return measured(full, with_gap(full, luck), luck)


def measured(full: Board, board: Board, luck: Random) -> Case:
    person = Person(scale=luck.choice(SCALES), depth_tool=luck.choice(DEPTHS))
    belt = second.Belt(board, person)
    span, least = second.told(lambda: belt.span), second.told(lambda: belt.least)
    true = (least if isinstance(least, float) else 60.0) * luck.uniform(0.7, 3.0)
    long = span if isinstance(span, float) else 0.065

    def pull_at(depth: float) -> float:
        found = second.told(lambda: belt.pull(true, depth))
        return found if isinstance(found, float) else 12.0

    depth = long / luck.uniform(3.9 if luck.random() < 0.1 else 10.0, 80.0)
    depths = sorted(long / luck.uniform(18.0, 70.0) for _ in range(luck.randint(0, 5)))
    off = luck.choice([0.0, 0.0, 0.5 * belt.depth_error])
    tensions = [true * luck.uniform(0.8, 1.2) for _ in range(2)]
    fall = luck.uniform(-1e-4, 1e-3)
    points = tuple(
        (way, true * 1.3 - fall * way + luck.uniform(-4.0, 4.0), luck.uniform(2.0, 20.0))
        for way in sorted(luck.choice([0.0, luck.uniform(0.0, 9e4)]) for _ in range(luck.randint(0, 6)))
    )
    return Case(
        board,
        full,
        person,
        tuple(pull_at(depth) * luck.uniform(0.9, 1.1) for _ in range(luck.randint(1, 4))),
        depth,
        tuple((pull_at(each) * luck.uniform(0.93, 1.07), max(each + off, 1e-4)) for each in depths),
        luck.uniform(3.0, 30.0),
        2.0 * true * luck.uniform(0.8, 1.1),
        true,
        (luck.uniform(100.0, 900.0), luck.uniform(0.5, 15.0)),
        tuple(Told(luck.choice(WAYS), tension, luck.uniform(0.03, 0.25) * tension) for tension in tensions),
        tuple(point for point in points if point[1] > 0.0),
        long * luck.uniform(0.8, 1.4),
        luck.uniform(0.0, 0.01),
    )


def said(item: object) -> object:
    """Return what an item of an answer says: its number, or the word for why there is none."""
    if isinstance(item, Result):
        return float(item.value)
    assert not isinstance(item, float)
    if getattr(item, "missing", ()):
        return "missing"
    return "impossible" if getattr(item, "problem", None) or getattr(item, "outcome", "") else "nothing"


def of_reading(reading: BeltReading | None) -> dict[str, object]:
    if reading is None:
        return dict.fromkeys(("tension", "error", "word"), "nothing")
    if isinstance(reading.tension, Result) and isinstance(reading.error, Result):
        tension, error = reading.tension.value, reading.error.value
        band = reading.tension.band
        assert band == pytest.approx((tension - error, tension + error)) if band else reading.verdict is None
    verdict = "nothing" if reading.verdict is None else reading.verdict.word
    return {"tension": said(reading.tension), "error": said(reading.error), "word": verdict}


def of_items(items: Mapping[str, Item]) -> dict[str, object]:
    return {name: said(item) for name, item in items.items()}


Pairs = Iterator[tuple[str, Mapping[str, object], Mapping[str, object]]]


def tensions(case: Case) -> Pairs:
    """Yield page, what the app says and what the second calculation says: setting and reading a belt."""
    board, person, belt = case.board, case.person, second.Belt(case.board, case.person)
    for depth in (None, case.depth):
        found = belt_plan(board, person, depth)
        yield "plan", of_items(found.items), setting.plan(belt, depth)
        yield "step", {"step": found.step}, {"step": belt.step}
        flags = {
            "held_down": found.held_down,
            "over_working": found.over_working,
            "held_by_bearing": found.held_by_bearing,
        }
        aim = second.told(lambda: belt.aim)
        yield "aim", flags, {name: not isinstance(aim, str) and aim[name] for name in flags}
        mesh, pulleys = second.told(lambda: float(belt.whole_mesh)), second.told(lambda: belt.pulleys)
        yield (
            "notes",
            {
                "few": found.few_teeth,
                "apart": found.fault.field if found.fault else "",
                "window": found.window is not None,
                "motor": found.diameters[0],
                "both": sum(found.diameters),
            },
            {
                "few": not isinstance(mesh, str) and mesh < 6,
                "apart": setting.apart(belt),
                "window": not isinstance(aim, str),
                "motor": 0.0 if isinstance(pulleys, str) else belt.motor_pulley,
                "both": 0.0 if isinstance(pulleys, str) else sum(pulleys),
            },
        )
        reading = belt_reading(board, person, case.pulls[0], depth)
        yield "reading", of_reading(reading), belt.judged(lambda depth=depth: belt.read(case.pulls[0], depth))


def on_the_bench(case: Case) -> Pairs:
    board, person, belt = case.board, case.person, second.Belt(case.board, case.person)
    yield "bench", of_items(bench_plan(board, person)), setting.bench(belt)
    round_it = positions(board, person, case.pulls, case.depth)
    each = [belt.judged(lambda pull=pull: belt.read(pull, case.depth)) for pull in case.pulls]
    for reading, other in zip(round_it.readings, each, strict=True):
        yield "position", of_reading(reading), other
    known = [other for other in each if isinstance(other["tension"], float)]
    if known:
        ends = [end(known, key=lambda other: float(other["tension"])) for end in (max, min)]
        yield "tightest", of_reading(round_it.tightest), ends[0]
        yield "slackest", of_reading(round_it.slackest), ends[1]
        spread = float(ends[0]["tension"]) - float(ends[1]["tension"])
        yield "spread", {"spread": said(round_it.spread)}, {"spread": spread}
    else:
        yield "spread", of_reading(round_it.tightest), of_reading(None)
    fit = fitted_reading(board, person, case.series)
    yield (
        "fit",
        {**of_reading(fit.reading), "zero": said(fit.zero), "agree": fit.agree},
        setting.fitted(belt, case.series),
    )
    yield (
        "weight",
        of_reading(weight_reading(board, person, case.hung, case.depth)),
        setting.weighed(belt, case.hung, case.depth),
    )
    yield "motor", of_reading(motor_reading(board, person, case.on_motor)), setting.motor(belt, case.on_motor)
    yield (
        "nudge",
        {"nudge": said(nudge_for(board, person, case.now))},
        {"nudge": setting.nudge(belt, case.now)},
    )


def by_ear(case: Case) -> Pairs:
    board, person, belt = case.board, case.person, second.Belt(case.board, case.person)
    plan, other = sound_plan(board, person), setting.sound(belt)
    yield "sound", of_items(plan.items), other
    low, high = other["pitch_floor"], other["pitch_ceiling"]
    band = (0.0, 0.0) if isinstance(low, str) or isinstance(high, str) else (0.5 * low, 2.2**0.5 * high)
    weighed = board.drive.belt_mass is not None
    yield (
        "sound band",
        {"low": plan.band[0], "high": plan.band[1], "weighed": plan.weighed},
        {"low": band[0], "high": band[1], "weighed": weighed},
    )
    pitch, error = case.heard
    pulled = case.told[0]
    made = calibrate(board, person, pitch * 1.1, pulled.tension, pulled.error)
    by = setting.calibrated_by(belt, pitch * 1.1, pulled.tension, pulled.error)
    assert (made is None) is isinstance(by, str)
    if made is not None and not isinstance(by, str):
        yield "calibrate", vars(made), dict(zip(("factor", "pulled", "share"), by, strict=True))
    for here, there in ((None, None), (made, None if isinstance(by, str) else by)):
        yield (
            "heard",
            of_reading(sound_reading(board, person, pitch, error, here)),
            setting.heard(belt, pitch, error, there),
        )
        found, others = ways(board, person, here), setting.ways(belt, there)
        yield "ways", of_items(found.items), others
        yield "best way", {"best": found.best}, {"best": second.best_way(others)}


def side_by_side(case: Case) -> Pairs:
    """Yield two readings as one, and how a belt's tension falls."""
    belt = second.Belt(case.board, case.person)
    one, other = case.told
    both = together(case.board, case.person, one, other)
    yield (
        "together",
        {"apart": said(both.apart), **of_reading(both.reading)},
        setting.two(belt, (one.tension, one.error), (other.tension, other.error)),
    )
    past = belt_history(case.board, tuple(Point(*point) for point in case.points))
    numbers = choosing.history(belt, case.points)
    found: dict[str, object] = {"falls": past.falls, **of_items(past.items)}
    if past.trend is not None:
        found |= vars(past.trend)
    yield "history", found, {name: value for name, value in numbers.items() if value is not None}


def one_choice(case: Case, mass: float | None, wanted: float | None) -> Pairs:
    belt = choosing.Choice(case.board, case.person, mass)
    found = belt_choice(case.board, None if mass is None else Value(mass, "measured"), wanted)
    numbers = choosing.choice(belt)
    yield "choice", of_items(found.items), numbers
    aim = choosing.wanted_centre(belt) if wanted is None else wanted
    yield "wanted", {"wanted": found.wanted}, {"wanted": None if isinstance(aim, str) else aim}
    told = aim if isinstance(aim, str) else second.told(lambda: choosing.in_stock(belt, aim))
    rows: Any = [] if isinstance(told, str) else told
    yield (
        "rows",
        {f"{row.belt.teeth} {row.lacks}": (row.centre, row.off) for row in found.rows},
        {f"{teeth} {lacks}": (centre, centre - aim) for teeth, centre, lacks in rows},
    )
    smallest, small = numbers["smallest"], second.told(lambda: belt.small_teeth)
    own = second.told(lambda: belt["drive.belt_teeth"])
    yield (
        "choice notes",
        {"few": found.few_teeth, "small": found.small_pulley, "stock": found.in_stock},
        {
            "few": second.told(lambda: belt.whole_mesh < 6) is True,
            "small": isinstance(smallest, float) and isinstance(small, float) and small < smallest,
            "stock": own in [teeth for teeth, _, _ in rows],
        },
    )


def which_belt(case: Case) -> Pairs:
    board = case.board
    for mass in (RIDER, None):
        for wanted in (None, case.wanted):
            yield from one_choice(case, mass, wanted)
    belt = choosing.Choice(board, case.person, RIDER)
    yield "centre", {"centre": said(centre_of(board))}, {"centre": choosing.choice(belt)["centre"]}
    fit, gaps = belt_fit(board, case.worn), choosing.fit(belt, case.worn)
    yield "clearances", of_items(fit.items), gaps
    order = list(second.best_of(gaps))
    tight = [name for name, gap in gaps.items() if isinstance(gap, float) and gap <= 0.0]
    narrowest = narrowest_gap(board, case.worn)
    yield (
        "narrowest",
        {
            "name": fit.narrowest,
            "tight": " ".join(fit.tight),
            "gap": None if narrowest is None else narrowest.value,
        },
        {
            "name": order[0] if order else "",
            "tight": " ".join(tight),
            "gap": gaps[order[0]] if order else None,
        },
    )


PAGES = (tensions, on_the_bench, by_ear, side_by_side, which_belt)


def same(one: object, other: object) -> bool:
    """Tell whether two say the same: numbers within 0.1 %, words and flags exactly."""
    if isinstance(one, tuple) and isinstance(other, tuple):
        return all(same(*pair) for pair in zip(one, other, strict=True))
    if isinstance(one, bool) or isinstance(other, bool):
        return bool(one) is bool(other)
    if isinstance(one, float) and isinstance(other, float):
        return second.close(one, other)
    return one == other


REFUSED = {"missing", "impossible"}


def refused_twice(case: Case, page: Callable[[Case], Pairs], name: str, key: str) -> bool:
    """Tell whether what lacks a value would be impossible with it: then either may be said first."""
    with_it = page(replace(case, board=case.full))
    return "impossible" in [other.get(key) for place, _, other in with_it if place == name]


def differences(case: Case, counted: Counter[str]) -> list[str]:
    """Return where the two differ; count what was compared, a number and a refusal apart."""
    found = []
    for page in PAGES:
        for name, ours, other in page(case):
            if ours.keys() != other.keys():
                found.append(f"{name}: {sorted(ours)} and {sorted(other)}")
                continue
            for key, value in ours.items():
                counted[f"{name}.{key}" if isinstance(value, float) else f"{name}.{key} {value}"] += 1
                if {value, other[key]} == REFUSED and refused_twice(case, page, name, key):
                    continue
                if not same(value, other[key]):
                    found.append(f"{name}.{key}: {value!r} and {other[key]!r}")
    return found


def test_random_boards() -> None:
    counted: Counter[str] = Counter()
    wrong = {number: differences(drawn(number), counted) for number in range(BOARDS)}
    assert {number: found for number, found in wrong.items() if found} == {}
    # A result that is hardly ever compared is not held, nor a word that never comes up.
    numbers = {
        name: times for name, times in counted.items() if " " not in name and not name.startswith("rows")
    }
    assert len(numbers) >= 95
    assert min(numbers.values()) >= BOARDS // 20, sorted(numbers.items(), key=lambda each: each[1])[:5]
    words = {name.partition(".word ")[2] for name in counted if ".word " in name}
    assert words >= {
        "in window",
        "slack",
        "tight",
        "nothing",
        "cannot tell: take a finer tool or a second way",
    }
    assert words >= {"on the edge: may be slack", "on the edge: may be tight"}
    flags = ("held_down", "over_working", "held_by_bearing", "few", "small", "stock", "falls", "agree")
    for flag in flags:
        for state in (True, False):
            assert any(name.endswith(f".{flag} {state}") for name in counted), (flag, state)


@pytest.mark.parametrize("board", DEMOS, ids=[board.name for board in DEMOS])
def test_example_boards(board: Board) -> None:
    counted: Counter[str] = Counter()
    assert differences(measured(board, board, Random(7)), counted) == []
    assert len(counted) >= 100


def test_the_second_calculation_by_hand() -> None:
    """Towpath 36, each step on paper, so that both calculations rest on more than each other.

    Pulley 16 x 5 / pi = 25.465 mm. Kt = 9.549 / 170 = 0.05617 N m/A; 45 A give 2.5277 N m; over 25.465 mm 99.26 N.
    0.812 x 1.3 x 99.26 = 104.78 N. Unloaded 0.95 x 36 V x 170 = 5814 rpm, 96.9 turns a second of 80 mm: 7.752 m/s;
    m = 0.272 lbf in (1000 ft/min)2 is 0.046884 kg/m: 2.818 N. Target 107.60 N; the tight span has 206.9 N, less than
    the 454 N x 15 / 25.4 = 268.1 N of its width. Floor 0.7 of it 75.32 N (the width's least is 53.4), ceiling 118.36 N.
    Centre 67.27 mm (a drive of 20 and 44 teeth with 60 has the same, printed 2.65 in), half difference of the pulleys
    19.099 mm: span (67.270^2 - 19.099^2)^0.5 = 64.502 mm. Stiffness 2048 x 24.9 lbf = 226.84 kN.
    Pulled aside by 1 mm each half span is (32.251^2 + 1)^0.5 = 32.2665 mm, both 0.0310 mm longer than before; over
    280 mm that is 1.1071e-4, 25.11 N. (107.60 + 25.11) x 2 x 1 / 32.2665 = 8.226 N on the scale.
    A pull of 8.0 N at 1 mm: 8.0 x 32.2665 / 2 = 129.07, less 25.11: 103.95 N. Scale 0.49 N x 16.13 = 7.91 N; depth
    0.1 mm x (8.0 x 64.502^2 / (4 x 64.533) + 4 x 226840 / (280 x 64.533) = 128.9 + 50.2 N/mm) = 17.92 N; a fifth of the
    stiffness 5.02 N; together 20.22 N. Inside the ceiling by 14.4 N, more than a third of it: in window.
    """
    board = next(board for board in DEMOS if board.name == "Towpath 36")
    belt = second.Belt(board, Person(scale="luggage scale", depth_tool="calliper"))
    plan = setting.plan(belt, 0.001)
    by_hand = {
        "target": 107.60,
        "floor": 75.32,
        "ceiling": 118.36,
        "centre": 0.06727,
        "span": 0.064502,
        "pull_target": 8.226,
    }
    assert {name: plan[name] for name in by_hand} == pytest.approx(by_hand, rel=1e-4)
    tension, error = belt.read(8.0, 0.001)
    assert (tension, error) == pytest.approx((103.95, 20.22), abs=0.005)
    assert belt.judged(lambda: (tension, error))["word"] == "in window"


def test_a_motor_with_the_larger_pulley_is_rated_by_the_smaller_one() -> None:
    """The handbook's table is by the smaller pulley: 16 teeth at 1000 rpm carry 1.72 N m on a belt 9 mm wide.

    A motor with 32 teeth turns it with half its rotation and twice the torque; 15 mm and 265 mm make it 1.87 x 0.75.
    """
    board = next(board for board in DEMOS if board.name == "Towpath 36")
    for key, number in (("drive.motor_teeth", 32.0), ("drive.wheel_teeth", 16.0), ("drive.belt_teeth", 53.0)):
        board = board.with_value(key, Value(number, "measured"))
    # 200 rpm of the motor are 400 of the small pulley, two thirds of the way between 2.52 and 2.02 N m.
    start = (2.52 - (2.52 - 2.02) * 2.0 / 3.0) * 2.0 * 1.87 * 0.75
    found = belt_choice(board, Value(RIDER, "measured")).items
    rated = found["rated_start"]
    assert isinstance(rated, Result)
    assert rated.value == pytest.approx(start, rel=1e-9)


def test_the_smallest_pulley_is_told_of_a_belt_of_any_width() -> None:
    """It is printed by profile and rotation; a width that nobody makes or nobody entered hides nothing of it."""
    board = next(board for board in DEMOS if board.name == "Towpath 36")
    for width in (None, Value(0.05, "measured")):
        item = belt_choice(board.with_value("drive.belt_width", width), Value(RIDER, "measured")).items[
            "smallest"
        ]
        assert isinstance(item, Result)
        assert item.value == 30.0


@pytest.mark.parametrize(
    ("least", "most", "lacks"),
    [
        (65.99, 68.35, "laying on"),
        (66.09, 68.35, "in"),
        (52.82, 68.35, "laying on"),
        (52.72, 68.35, ""),
        (52.72, 68.25, "out"),
    ],
)
def test_what_a_mount_lacks_by_hand(least: float, most: float, lacks: str) -> None:
    """The belt of 280 mm of Towpath 36 at 67.27 mm, one flange, a twentieth of a millimetre either side of each edge.

    Its tolerance is 0.23 mm, its travel 1.0 mm in and 0.8 mm out, the flange adds 13.5 mm (tables 15 and 4): the
    shortest belt of its length needs 67.27 - 0.23 - 1.0 = 66.04 mm, over the flange it takes 67.27 - 14.5 = 52.77 mm,
    the longest is tight at 67.27 + 0.23 + 0.8 = 68.30 mm.
    """
    board = next(board for board in DEMOS if board.name == "Towpath 36").with_value(
        "mount.flanged", Value("one")
    )
    for key, number in (("mount.centre_least", least), ("mount.centre_most", most)):
        board = board.with_value(key, Value(number / 1000.0, "measured"))
    rows = belt_choice(board, None, 0.0673).rows
    assert [row.lacks for row in rows if row.belt.teeth == 56] == [lacks]
