"""Every answer of the app on boards drawn at random, at the limits of their fields or anywhere between."""

import math
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, fields, is_dataclass
from functools import cached_property
from random import Random
from typing import Any

from logic.answers import checks
from logic.answers.asked import questions
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
from logic.answers.bench_motor import bench_motor, to_lay_over
from logic.answers.carrying import flight
from logic.answers.charging import charging, wrong_charger
from logic.answers.compare import comparison
from logic.answers.controller_card import controller_card
from logic.answers.descents import descent
from logic.answers.drag import coasting, ride_fit
from logic.answers.energy import pack_energy, pack_figures
from logic.answers.feel import feel
from logic.answers.first_descent import first_descent
from logic.answers.first_hold import first_hold
from logic.answers.first_push import first_push
from logic.answers.first_range import first_range, range_so_far
from logic.answers.first_speed import first_speed, road_speed
from logic.answers.first_stop import first_stop, stop_so_far
from logic.answers.fitted import for_board, snapshot
from logic.answers.gearing import gearing, top_speed
from logic.answers.hold import holding
from logic.answers.joining import SECOND, joining, like
from logic.answers.joint_options import options
from logic.answers.joints import joint_card, joints_of
from logic.answers.pair import pair_board, pair_details
from logic.answers.pair_wish import best_pairs, wish_of
from logic.answers.pairs import pair_table
from logic.answers.push import pushing
from logic.answers.range import range_alone, range_answer
from logic.answers.reach import reach_card, reach_fields
from logic.answers.reading import RIDER, Open, Result
from logic.answers.spares import spares
from logic.answers.stopping import stop_alone, stopping
from logic.answers.tension import belt_plan, belt_reading
from logic.answers.unit_page import RULES, by_rule
from logic.answers.wheel import wheel
from logic.answers.wiring import first_power, wiring
from logic.belt.history import Point
from logic.board import Board, Field, Value, board_fields, faults
from logic.board_joints import joint_places
from logic.checks.lists import checklists
from logic.drive.fit import Sample
from logic.exchange import demo_boards
from logic.fields import ARM, joint_fields
from logic.log.rides import LoggedRide
from logic.person import Person
from logic.tables import Row, rows
from logic.units import quantities
from tests.random_boards import EMPTY

EXAMPLES = demo_boards()
KNOWN = ("measured", "label", "guess")
EDGE = 0.3
"""Share of values that stand at a limit of their field."""


@dataclass(frozen=True)
class Case:
    """One board and all that is asked beside it."""

    board: Board
    other: Board
    rider: Value | None
    asking: dict[str, Value]
    person: Person
    dice: Random

    def number(self, low: float, high: float) -> float:
        """Return a number between two ends above 0, or an end."""
        return number(self.dice, low, high)


def number(dice: Random, low: float, high: float) -> float:
    """Return a number between two ends, often an end, evenly over its powers of ten where there are any."""
    if dice.random() < EDGE:
        return float(dice.choice([low, high]))
    if low > 0.0 and high > 10.0 * low:
        return min(high, max(low, math.exp(dice.uniform(math.log(low), math.log(high)))))
    return dice.uniform(low, high)


def value_of(dice: Random, field: Field) -> Value:
    """Return a value that a field can hold."""
    if field.kind in ("choice", "named"):
        return Value(dice.choice(options(field)).key, dice.choice(KNOWN))
    assert field.low is not None
    assert field.high is not None
    si = number(dice, field.low, field.high)
    return Value(float(round(si)) if field.kind == "count" else si, dice.choice(KNOWN))


def any_board(dice: Random) -> Board:
    """Return an example board with some values changed, a board with every value drawn, or one with gaps."""
    share = dice.choice([0.05, 0.2, 1.0])
    board = EMPTY if share == 1.0 and dice.random() < 0.5 else dice.choice(EXAMPLES)
    for key, field in board_fields().items():
        if dice.random() < share:
            board = board.with_value(key, None if dice.random() < 0.03 else value_of(dice, field))
    for key, place in joint_places().items():
        for name in place.asks:
            if dice.random() < share:
                board = board.with_value(f"joints.{key}.{name}", value_of(dice, joint_fields()[name]))
    return board


def any_case(dice: Random, board: Board | None = None) -> Case:
    """Return a board, drawn or given, with a rider, a person and questions."""
    asked = {
        key: value_of(dice, question.field)
        for key, question in questions().items()
        if dice.random() < dice.choice([0.1, 0.9])
    }
    tools = rows("measuring_tools")
    person = Person(
        scale=dice.choice([row.text("name") for row in tools if "scale_error" in row]),
        depth_tool=dice.choice([row.text("name") for row in tools if "depth_error" in row]),
        key_arm=dice.choice([None, value_of(dice, ARM)]),
        day=dice.uniform(253.15, 323.15),
    )
    rider = None if dice.random() < 0.02 else value_of(dice, RIDER)
    return Case(board or any_board(dice), any_board(dice), rider, asked, person, dice)


def boards_at_limits() -> Iterator[Board]:
    """Yield each example board with each of its fields at each end, or at each option."""
    for board in EXAMPLES:
        for key, field in board_fields().items():
            ends: tuple[Any, ...] = (field.low, field.high)
            options: list[Any] = [one.key for one in field.options]
            for si in options or [float(end) for end in ends]:
                yield board.with_value(key, Value(si, "measured"))


def _belt(case: Case) -> Iterator[object]:
    board, person = case.board, case.person
    force, depth = case.number(0.5, 500.0), case.number(0.0002, 0.02)
    yield bench_plan(board, person)
    yield positions(board, person, tuple(case.number(0.5, 300.0) for _ in range(4)), depth)
    pulls = tuple(
        (case.number(0.5, 300.0), case.number(0.0002, 0.02)) for _ in range(case.dice.randint(0, 5))
    )
    yield fitted_reading(board, person, pulls)
    yield weight_reading(board, person, force, depth)
    yield motor_reading(board, person, force)
    yield nudge_for(board, person, force)
    yield belt_plan(board, person)
    yield belt_plan(board, person, depth)
    yield belt_reading(board, person, force)
    yield belt_reading(board, person, force, depth)


def _sound(case: Case) -> Iterator[object]:
    board, person = case.board, case.person
    pitch, force = case.number(20.0, 2000.0), case.number(1.0, 500.0)
    yield sound_plan(board, person)
    calibrated = calibrate(board, person, pitch, force, case.number(0.1, 100.0))
    yield calibrated
    for made in (None, calibrated):
        yield sound_reading(board, person, pitch, case.number(0.1, 50.0), made)
        yield ways(board, person, made)
    first, second = (Told(way, case.number(1.0, 500.0), case.number(0.1, 100.0)) for way in ("pull", "sound"))
    yield together(board, person, first, second)
    points = tuple(
        Point(case.number(1.0, 2e6), case.number(1.0, 500.0), case.number(0.1, 100.0))
        for _ in range(case.dice.randint(0, 5))
    )
    yield belt_history(board, points)


def _belt_choice(case: Case) -> Iterator[object]:
    yield belt_choice(case.board, case.rider)
    yield belt_choice(case.board, case.rider, case.number(0.02, 1.0))
    yield centre_of(case.board)
    worn = case.number(0.0, 0.01)
    yield belt_fit(case.board, worn)
    yield narrowest_gap(case.board, worn)


def _joints(case: Case) -> Iterator[object]:
    yield joints_of(case.board, case.person)
    yield joint_card(case.board, case.dice.choice(list(joint_places())), case.person)
    lengths = {key: value_of(case.dice, field) for key, field in reach_fields().items()}
    named = joint_fields()
    yield reach_card(
        str(value_of(case.dice, named["thread"]).si),
        lengths,
        str(value_of(case.dice, named["into"]).si),
        through=case.dice.random() < 0.5,
    )


def _pairs(case: Case) -> Iterator[object]:
    table = pair_table(case.board, case.rider, case.asking)
    yield table
    yield best_pairs(table, wish_of(case.asking))
    for pair in case.dice.sample(table.pairs, min(1, len(table.pairs))):
        made = pair.option
        belt = None if pair.belt is None else pair.belt.teeth
        other = pair_board(case.board, made.motor_teeth, made.wheel_teeth, belt)
        yield pair_details(other, case.rider, case.asking)
    yield pair_details(case.board, case.rider, case.asking)


def _drive(case: Case) -> Iterator[object]:
    board, rider, asking = case.board, case.rider, case.asking
    yield gearing(board, rider, case.number(0.1, 30.0))
    yield top_speed(board, rider)
    yield first_speed(board, rider)
    yield first_push(board, rider, case.number(0.1, 30.0))
    yield road_speed(board, rider)
    yield pushing(board, rider, asking)
    yield holding(board, rider, asking)
    yield wheel(board, rider, asking)
    yield feel(board, rider, asking)
    items = bench_motor(board, asking)
    yield items
    yield to_lay_over(board, items)
    yield comparison(board, case.other, rider, asking)


def _stopping(case: Case) -> Iterator[object]:
    board, rider, asking = case.board, case.rider, case.asking
    yield stopping(board, rider, asking)
    yield stop_alone(board, rider, asking)
    yield stopping(board, rider, asking).curves
    yield descent(board, rider, asking)


def _energy(case: Case) -> Iterator[object]:
    board, rider, asking = case.board, case.rider, case.asking
    yield coasting(board, rider, asking)
    count = case.dice.randint(0, 6)
    samples = [
        Sample(speed=case.number(0.5, 25.0), energy_per_distance=case.number(3.6, 360.0))
        for _ in range(count)
    ]
    yield ride_fit(board, rider, samples)
    rides = [
        LoggedRide(
            case.dice.choice([None, case.number(100.0, 60000.0)]),
            case.dice.choice([None, case.number(1000.0, 5e6)]),
            case.dice.choice([None, case.number(1.0, 130.0)]),
            case.dice.choice([None, case.number(1.0, 130.0)]),
        )
        for _ in range(count)
    ]
    yield range_answer(board, rider, asking, rides)
    yield range_alone(board, rider, asking, rides)
    yield first_range(board, rider, asking)
    yield first_stop(board, rider, asking)
    yield stop_so_far(board, rider, asking)
    yield first_hold(board, rider, asking)
    yield first_descent(board, rider, asking)
    yield range_so_far(board, rider, asking, rides)


def _packs(case: Case) -> Iterator[object]:
    board, rider, asking = case.board, case.rider, case.asking
    yield pack_figures(board, rider, asking)
    yield pack_energy(board)
    yield controller_card(board, rider, asking)
    yield charging(board, asking)
    yield wrong_charger(board)
    yield joining(board, asking)
    yield [like(board, key) for key in SECOND]
    yield wiring(board, asking)
    yield first_power(board, asking)
    yield flight(board, asking, damaged=case.dice.random() < 0.5)


def _board(case: Case) -> Iterator[object]:
    board = case.board
    yield faults(board)
    yield spares(board, case.person, lambda value, quantity: f"{value} {quantities()[quantity].si}")
    yield snapshot(board)
    yield checks.figures(checks.FIGURES, board, case.person)
    for of in checklists().values():
        fitted = for_board(of, board)
        yield fitted
        for item in fitted.items:
            volts = case.number(1.0, 130.0)
            yield checks.volts_fault(item, volts, board)
            yield checks.nearly_empty(item, volts, board)
    for key in RULES:
        yield by_rule(case.asking, key)


ANSWERS: dict[str, Callable[[Case], Iterator[object]]] = {
    "belt": _belt,
    "sound": _sound,
    "belt choice": _belt_choice,
    "joints": _joints,
    "pairs": _pairs,
    "drive": _drive,
    "stopping": _stopping,
    "energy": _energy,
    "packs": _packs,
    "board": _board,
}


NO_ANSWERS = (Open, Field, Value, Row, Exception)
"""What stands in an answer and is none of its numbers."""


def numbers_of(answer: object) -> Iterator[tuple[str, object]]:
    """Yield every shown number of an answer with its name."""
    parts: dict[str, object] = {}
    if isinstance(answer, Result):
        parts = {"value": answer.value, "band": answer.band}
    elif isinstance(answer, Mapping):
        parts = {str(key): part for key, part in answer.items()}
    elif isinstance(answer, (tuple, list)):
        parts = {str(place): part for place, part in enumerate(answer)}
    elif isinstance(answer, (float, complex)):
        yield "", answer
    elif is_dataclass(answer) and not isinstance(answer, NO_ANSWERS):
        read = [name for name, part in vars(type(answer)).items() if isinstance(part, cached_property)]
        parts = {name: getattr(answer, name) for name in (*(item.name for item in fields(answer)), *read)}
    for name, part in parts.items():
        yield from ((f"{name} {inner}", found) for inner, found in numbers_of(part))


def wrong_numbers(answer: object) -> list[str]:
    """Return the numbers that are none: not finite, or not real."""
    return [
        f"{name}= {found!r}"
        for name, found in numbers_of(answer)
        if not isinstance(found, float) or not math.isfinite(found)
    ]


def troubles(case: Case, wanted: str = "") -> Iterator[tuple[str, str, BaseException | None]]:
    """Yield what goes wrong: the group of answers, a line of words, the exception if there was one."""
    for name, act in ANSWERS.items():
        if wanted and name != wanted:
            continue
        try:
            for answer in act(case):
                for line in wrong_numbers(answer):
                    yield name, f"{type(answer).__name__}: {line}", None
        except Exception as problem:  # noqa: BLE001  (whatever it is, it is what is looked for)
            yield name, f"{type(problem).__name__}: {problem}", problem
