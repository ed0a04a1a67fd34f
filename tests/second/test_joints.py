"""The cards of joints against a second calculation, over the example boards and joints drawn at random.

`DECKHAND_LONG=1` draws a thousand, `SECOND_BOARDS=200` as many; the suite draws a few dozen.
"""

import os
from collections import Counter
from collections.abc import Mapping
from dataclasses import replace
from random import Random

import pytest

from logic.answers.joint_guide import choose_locker, cure_hours, locker_needs
from logic.answers.joint_options import options
from logic.answers.joints import JointCard, joint_card, joints_of
from logic.answers.reach import NAMES, reach_card
from logic.answers.reading import Item, Result
from logic.board import Board, Value
from logic.board_joints import joint_places
from logic.exchange import demo_boards
from logic.fields import joint_fields
from logic.person import Person
from tests.second import joints as second
from tests.second.pack import table

BOARDS = 1000 if "DECKHAND_LONG" in os.environ else int(os.environ.get("SECOND_BOARDS", "40"))
WITHIN = 1e-3
DEMOS = demo_boards()
SCALES = [one["name"] for one in table("measuring_tools") if "scale_error" in one]
KNOWN = ["measured", "label", "guess"]

LENGTHS = {
    "engagement": (0.0005, 0.014),
    "running": (0.02, 4.0),
    "shaft": (0.003, 0.02),
    "key_width": (0.001, 0.006),
    "key_height": (0.001, 0.006),
    "key_length": (0.002, 0.02),
    "count": (1, 8),
}


SETS: list[dict[str, str | None]] = [
    {"thread": "M4", "strength": "8.8", "into": "brass insert", "member": None},
    {"thread": "M5", "strength": "A2-70", "into": "nut", "condition": "stainless dry", "member": None},
]
"""What chance hardly puts together."""


def drawn(number: int) -> tuple[Board, Person]:
    """Return an example board with every joint drawn anew, and a person with tools of their own."""
    luck = Random(number)
    board = luck.choice(DEMOS)
    for key, place in joint_places().items():
        usual = next(one for one in table("joint_kinds") if one["kind"] == place.kind)["sizes"]
        for name in place.asks:
            field = joint_fields()[name]
            if field.kind in ("choice", "named"):
                found: float | str = luck.choice([option.key for option in options(field)])
                if name == "thread" and luck.random() < 0.7:
                    found = luck.choice(usual)
            else:
                found = luck.uniform(*LENGTHS[name]) if name != "count" else float(luck.randint(1, 8))
            value = None if luck.random() < 0.12 else Value(found, luck.choice(KNOWN))
            board = board.with_value(f"joints.{key}.{name}", value)
        if "carries" in place.asks and luck.random() < 0.15:
            board = board.with_value(f"joints.{key}.into", Value("steel"))
        if "strength" in place.asks and luck.random() < 0.15:
            for name, option in luck.choice(SETS).items():
                board = board.with_value(f"joints.{key}.{name}", None if option is None else Value(option))
    for name, low, high in (
        ("motor.kv", 5.0, 60.0),
        ("controller.motor_current", 10.0, 80.0),
        ("controller.brake_current", 10.0, 80.0),
    ):
        board = board.with_value(name, None if luck.random() < 0.05 else Value(luck.uniform(low, high)))
    meaning = luck.choice([None, Value("six-step"), Value("sine peak"), Value("sine rms")])
    board = board.with_value("controller.current_meaning", meaning)
    arm = luck.choice([None, Value(luck.uniform(0.03, 0.3), "measured")])
    day = luck.choice([luck.uniform(273.0, 320.0), 293.15])
    return board, replace(Person(), key_arm=arm, day=day, scale=luck.choice(SCALES))


def numbers_agree(items: Mapping[str, Item], others: Mapping[str, float], where: object) -> None:
    """Both have the same results, each within a thousandth."""
    ours = {name: item.value for name, item in items.items() if isinstance(item, Result)}
    assert set(ours) == set(others), where
    for name, value in ours.items():
        assert value == pytest.approx(others[name], rel=WITHIN, abs=1e-9), (where, name)


def words_of(card: JointCard) -> second.Words:
    """Return what a card says in words, in the form of the second calculation."""
    lock = card.locker
    return {
        "limit": card.limit,
        "feel": card.feel,
        "locker": lock
        and {
            "grade": lock.grade,
            "why": lock.reason,
            "activator": lock.activator,
            "cautions": lock.cautions,
        },
        "surfaces": card.surfaces,
        "reuse": card.reused and card.reused.verdict,
        "holds": card.holds,
        "notice": card.notice,
        "notes": set(card.notes),
        "drag_missing": card.drag_missing,
        "assumed": card.assumed if isinstance(card.items["setting"], Result) else None,
        "tools": card.tools and dict(card.tools.cells),
        "alike": {other for other, _ in card.alike},
    }


def compared(board: Board, person: Person) -> Counter[str]:
    """Compare all cards of a board; return how often each result and each word was met."""
    counted: Counter[str] = Counter()
    short = {card.key: card for card in joints_of(board, person)}
    for key, place in joint_places().items():
        card = joint_card(board, key, person)
        other = second.Card(
            board,
            key,
            place.kind,
            arm=0.08 if person.key_arm is None else float(person.key_arm.si),
            day=person.day,
            scale=person.scale,
        )
        numbers_agree(card.items, other.numbers, (board.name, key))
        said = words_of(card)
        for name, word in other.words.items():
            if name == "tools" and word is not None:
                word = {column: cell for column, cell in word.items() if column in said[name]}  # noqa: PLW2901
            assert said[name] == word, (board.name, key, name)
        listed = {name: item for name, item in short[key].items.items() if isinstance(item, Result)}
        numbers_agree(listed, {name: other.numbers[name] for name in listed}, (board.name, key, "listed"))
        counted.update(other.numbers)
        counted.update(f"{name}: {said[name]}" for name in ("limit", "feel", "reuse", "holds", "notice"))
        counted.update(f"note: {note}" for note in card.notes)
        counted.update([f"locker: {said['locker'] and said['locker']['grade']}"])
    return counted


@pytest.mark.parametrize("board", DEMOS, ids=[board.name for board in DEMOS])
def test_example_boards(board: Board) -> None:
    assert sum(compared(board, Person()).values()) > 100


def test_random_boards() -> None:
    counted: Counter[str] = Counter()
    for number in range(BOARDS):
        counted.update(compared(*drawn(number)))
    # A result or a word that is never met is not held.
    expected = {
        "setting", "wrench", "wrench_ceiling", "ceiling", "lower_preload", "upper_preload", "hole strips", "screw strips",
        "screw strength", "screw twists off", "head sinks in", "insert spins", "bearing stack", "wood crushes", "drive_torque",
        "carried", "slip", "bare_most", "bare_least", "pull", "pull_error", "cure", "locking", "book", "needed",
        "proof_lowest", "proof_usual", "proof_highest", "drag_least", "drag_most", "drag_reuse",
        "limit: hex of the screw", "limit: hole strips", "limit: head sinks in", "limit: screw strength",
        "limit: insert spins", "limit: bearing stack", "feel: wood", "feel: soft hub", "feel: bearing play",
        "feel: bushing setting", "feel: too small for a wrench", "reuse: pass", "reuse: discard",
        "holds: True", "holds: False", "note: add the drag", "note: hard washer", "note: class gains nothing",
        "note: head not checked", "note: degrease first", "note: not stainless", "note: seizes", "note: steel not named",
        "locker: none", "locker: low", "locker: medium",
    }  # fmt: skip
    assert expected - set(counted) == set()


def test_random_screws_reach_or_not() -> None:
    luck, met = Random(11), Counter[str]()
    materials = [one["material"] for one in table("materials")]
    threads = [one["thread"] for one in table("threads_metric") + table("threads_inch")]
    for _ in range(40 * BOARDS):
        steps = {name: round(luck.uniform(1.0, 14.0) * 4.0) / 4000.0 for name in NAMES}
        steps["screw_length"] = round(luck.uniform(4.0, 30.0)) / 1000.0
        steps["washers"] = luck.choice([0.0, 0.0008, 0.0016])
        steps["hole_depth"] = steps["thread_depth"] + luck.choice([0.0, 0.0, 0.001, 0.003, -0.001])
        thread, stuff, through = luck.choice(threads), luck.choice(materials), luck.random() < 0.5
        card = reach_card(
            thread,
            {name: Value(length, "measured") for name, length in steps.items()},
            stuff,
            through=through,
        )
        numbers, verdict, short = second.reach(thread, steps, stuff, through=through)
        numbers_agree(card.items, numbers, (thread, steps, stuff, through))
        assert (card.verdict, card.short) == (verdict, short), (thread, steps, stuff, through)
        met.update([verdict])
    assert set(met) == {
        "", "does not reach", "reaches the windings", "bottoms", "too short", "close", "enough"
    }  # fmt: skip


@pytest.mark.parametrize("thread", [one["thread"] for one in table("threads_metric") + table("threads_inch")])
def test_choice_of_locker(thread: str) -> None:
    for wanted in locker_needs():
        told = choose_locker(thread, need=wanted)
        grade, weaker = second.grade_for(thread, wanted)
        assert (told.grade, told.cautions) == (grade, ("smaller grade",) if weaker else ())


@pytest.mark.parametrize("celsius", [-5.0, 4.9, 5.1, 10.0, 18.0, 22.0, 30.0, 39.9])
def test_time_of_a_cure(celsius: float) -> None:
    ours, other = cure_hours(celsius + 273.15), second.cured(celsius + 273.15)
    assert ours == (None if other is None else pytest.approx(other, rel=WITHIN))


def test_the_second_calculation_by_hand() -> None:
    """Towpath 36, motor face, each step on paper, so that both calculations rest on more than each other.

    M4 x 0.7, 6 mm in 6061-T6, threadlocker wet, K 0.12 to 0.20; 8.8, socket cap.
    Turns that carry: (6 - 0.7) / 0.7 = 7.5714. Ring a turn: pi x 3.838 x (0.35 + 0.57735 x (3.838 - 3.663))
    = 12.0574 x 0.451036 = 5.4383 mm2; together 41.176 mm2. Strips at 41.176 x 186.16 = 7665.3 N; allowed
    7665.3 / (1.5 x 1.35) = 3785.3 N; 0.12 x 4 mm x 3785.3 = 1.8170 N m.
    Set: 1.8170 / 1.06 = 1.7141, down to a mark of 0.1: 1.7; never above: down to 0.05: 1.80.
    Clamp: 1.7 / (0.20 x 0.004) = 2125 N to 1.7 / (0.12 x 0.004) = 3541.7 N.
    Key of 80 mm: 1.7 / 0.08 = 21.25 N; a scale good to 0.05 kgf = 0.4903 N is 2.307 % of it.
    Medium locker: 20 x 0.4 ** 2.585 = 1.8722 N m. At 20 degrees: 24 h x 2 ** (2 / 17.547) = 25.97 h.
    """
    board = next(board for board in DEMOS if board.name == "Towpath 36")
    person = Person()
    card = second.Card(board, "motor_face", "motor face", arm=0.08, day=person.day, scale=person.scale)
    found = card.numbers
    assert found["hole strips"] == pytest.approx(1.8170, abs=5e-5)
    assert (found["setting"], found["wrench_ceiling"]) == (pytest.approx(1.7), pytest.approx(1.8))
    assert found["lower_preload"] == pytest.approx(2125.0)
    assert found["upper_preload"] == pytest.approx(3541.7, abs=0.05)
    assert found["pull"] == pytest.approx(21.25)
    assert found["pull_error"] == pytest.approx(0.02307, abs=5e-6)
    assert found["locking"] == pytest.approx(1.872, abs=5e-4)
    assert found["cure"] / 3600.0 == pytest.approx(25.97, abs=5e-3)
    assert card.words["limit"] == "hole strips"
    assert card.words["locker"]["grade"] == "medium"
