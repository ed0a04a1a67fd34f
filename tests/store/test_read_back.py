"""Each stored thing is read on its own: one that cannot be read is kept as it was, named, and the rest opens."""

import json
from dataclasses import replace

import pytest

from logic import read_back
from logic.board import Value
from logic.board_saved import from_dict, to_dict
from logic.checks.lists import checklist
from logic.checks.own import copy_of, list_to_dict
from logic.checks.session import Session
from logic.errors import InputError
from logic.exchange import demo_boards
from logic.log import Ride
from logic.person import Person, person_to_dict
from screens.acts import Arrive
from screens.asked import answered, answers
from screens.register import page_function
from screens.update import update
from screens.world import Step, open_world
from tests.pages.states import examples, names

BAD = (
    "",
    "{",
    "null",
    "7",
    '"words"',
    "[1, 2]",
    "{}",
    '{"version": 99}',
    '{"version": "new"}',
    "[" * 5000 + "]" * 5000,
    b"\xff\xfe\x00",
)
"""Texts that hold no board, trial, run or list: no JSON, another shape, a later version, too deep, not even text."""


@pytest.fixture
def kept(store):
    """Return a store with two boards, a trial, a run, a list, settings and a ride."""
    weir, ferry = (board for board in demo_boards() if board.name in ("Weir", "Ferry"))
    for board in (weir, ferry):
        store.save_board(board.id, board.name, to_dict(board))
    store.put("board", weir.id)
    store.put("person", person_to_dict(Person(theme="sun", mark=",")))
    return store


def test_a_board_that_cannot_be_read_is_named_and_the_others_open(kept, raw):
    weir = kept.get("board")
    for text in BAD:
        raw("UPDATE board SET body = ? WHERE id = ?", text, weir)
        assert [board.name for board in read_back.boards(kept)] == ["Ferry"]
        assert open_world(kept, kept._clock).is_scratch  # noqa: SLF001  (its clock)
        (told,) = read_back.unread(kept)
        assert (told.what, told.name) == ("board", "Weir")
        assert raw("SELECT CAST(body AS BLOB) FROM board WHERE id = ?", weir) == [
            (text if isinstance(text, bytes) else text.encode(),)
        ]


def test_one_field_outside_its_limits_leaves_the_board_open_and_is_kept(kept):
    weir = kept.board(kept.get("board"))
    body = json.loads(json.dumps(weir.body))
    body["drive"]["motor_teeth"]["si"] = 1e9
    body["lamp"] = {"colour": "warm"}
    kept.save_board(weir.id, weir.name, body)
    board = read_back.board(kept, weir.id)
    assert board.drive.motor_teeth is None
    assert board.drive.wheel_teeth is not None
    again = to_dict(board)
    assert again["drive"]["motor_teeth"]["si"] == 1e9
    assert again["lamp"] == {"colour": "warm"}


@pytest.mark.parametrize("said", [{"known": ""}, {"known": "rumour"}, {"on": 7}, {"note": ["x"]}])
def test_a_value_of_a_board_that_is_known_in_no_way_we_know_is_kept_and_not_used(kept, said):
    weir = kept.board(kept.get("board"))
    body = json.loads(json.dumps(weir.body))
    body["drive"]["motor_teeth"] |= said
    kept.save_board(weir.id, weir.name, body)
    board = read_back.board(kept, weir.id)
    assert board.drive.motor_teeth is None
    assert to_dict(board)["drive"]["motor_teeth"].items() >= said.items()


@pytest.mark.parametrize("version", [0, -7])
def test_a_board_of_no_version_there_was_is_refused(version):
    with pytest.raises(InputError):
        from_dict({"version": version, "id": "b", "name": "b"})


def test_settings_are_read_one_by_one(kept, reopened):
    kept.put(
        "person",
        {**person_to_dict(Person(mark=",")), "theme": "pink", "text": "large", "day": "warm", "later": 3},
    )
    person = read_back.person(kept)
    assert (person.mark, person.theme, person.text, person.day) == (",", "day", 1.0, 293.15)
    # What could not be read is written again as it was, whatever else is set.
    kept.put("person", person_to_dict(person))
    body = reopened().get("person")
    assert (body["theme"], body["text"], body["day"], body["later"]) == ("pink", "large", "warm", 3)


@pytest.mark.parametrize("text", BAD[:3] + BAD[9:], ids=range(5))
def test_a_setting_that_is_no_json_is_set_aside_before_it_is_written_over(kept, raw, reopened, text):
    raw("UPDATE setting SET value = ? WHERE key = 'person'", text)
    assert read_back.person(kept) == Person()
    kept.put("person", person_to_dict(Person(theme="night")))
    store = reopened()
    assert read_back.person(store).theme == "night"
    if text != "null":
        (told,) = read_back.unread(store)
        assert (told.what, told.name) == ("setting", "person")
        assert told.text == (text.decode("utf-8", "replace") if isinstance(text, bytes) else text)


def test_a_trial_opens_with_the_values_that_can_stand(kept, raw):
    weir = kept.get("board")
    good = {"si": 15.0, "known": "chosen", "on": "", "typed_unit": "", "note": ""}
    values = {
        "drive.motor_teeth": good,
        "drive.wheel_teeth": {**good, "si": 1e9},
        "drive.feather": good,
        "pack.series": 12,
    }
    kept.save_trial(weir, {"values": values, "typed": {"drive.centre": "7x", "load.drag_area": 4}})
    world = open_world(kept, kept._clock)  # noqa: SLF001  (its clock)
    assert list(world.trial) == ["drive.motor_teeth"]
    assert world.typed == {"drive.centre": "7x"}
    (told,) = read_back.unread(kept)
    assert told.what == "trial"
    assert json.loads(told.text)["values"] == values
    for text in BAD:
        raw("UPDATE trial SET body = ?", text)
        assert open_world(kept, kept._clock).trial == {}  # noqa: SLF001  (its clock)


def test_a_run_that_cannot_be_read_is_begun_anew(kept, raw, clock):
    weir, of = kept.get("board"), checklist("before_ride")
    Session(kept, weir, of, clock).begin()
    whole = raw("SELECT body FROM run")[0][0]
    for text in (
        *BAD,
        whole.replace('"began":"2026', '"began":"20x6'),
        whole.replace('"order":[', '"order":[[],'),
    ):
        raw("UPDATE run SET body = ?", text)
        session = Session(kept, weir, of, clock)
        if session.run is None:
            session.begin()
        assert session.under_way.at == of.items[0].key
    assert {one.what for one in read_back.unread(kept)} == {"run"}


def test_a_list_that_cannot_be_read_leaves_the_others(kept):
    good = copy_of(checklist("before_ride"), 1)
    kept.put("own_lists", {good.key: list_to_dict(good), "own/2": {"title": 7}, "own/3": None})
    assert list(read_back.own_lists(kept)) == [good.key]
    assert {one.name for one in read_back.unread(kept)} == {"own/2", "own/3"}
    kept.put("own_lists", [1])
    assert read_back.own_lists(kept) == {}


@pytest.mark.parametrize("at", ["", "yesterday", "2026-11-25", 7, b"\xff"])
@pytest.mark.parametrize("offset", [0, 10**9, "x"])
def test_an_entry_with_a_bad_time_is_shown_and_counts_for_nothing(store, raw, at, offset):
    store.append("b1", Ride(distance=4000.0))
    raw(
        "INSERT INTO log (board, kind, at, offset, version, body) VALUES ('b1', 'ride', ?, ?, 1, '{}')",
        at,
        offset,
    )
    bad, good = store.page("b1")
    assert good.readable
    assert bad.readable == (at == "2026-11-25" and offset == 0)
    assert [record.id for record in store.entries("b1", "ride")][-1] == good.id
    for one in store.page("b1"):
        assert one.at.utcoffset() is not None


def test_an_entry_of_a_strange_version_is_unread(store, raw):
    for version in ("new", b"\xff", 2.5):
        raw(
            "INSERT INTO log (board, kind, at, offset, version, body)"
            " VALUES ('b1', 'ride', '2026-11-25T09:30:00.000000+00:00', 0, ?, '{}')",
            version,
        )
    assert [record.readable for record in store.page("b1")] == [False] * 3


def test_answers_to_questions_are_read_one_by_one_and_grow_old(kept, clock):
    world = open_world(kept, clock)
    kept.put(*answered(world, "ask.first_volts", Value(40.1, typed_unit="V")))
    key, stored = answered(world, "ask.stop_speed", Value(9.0, typed_unit="km/h"))
    kept.put(key, stored | {"ask.charge": {"si": "half"}, "ask.fog": {"si": 1.0}, "ask.range_speed": 5})
    assert {name: value.si for name, value in answers(open_world(kept, clock)).items()} == {
        "ask.first_volts": 40.1,
        "ask.stop_speed": 9.0,
    }
    clock.move(hours=30)
    assert set(answers(open_world(kept, clock))) == {"ask.stop_speed"}


@pytest.mark.parametrize("name", names())
def test_every_page_opens_on_a_file_full_of_things_that_cannot_be_read(kept, raw, clock, name):
    weir = kept.get("board")
    kept.save_trial(weir, {"values": 3})
    for key in BAD_SETTINGS:
        kept.put(key.format(weir), [7])
    raw("UPDATE board SET body = '{' WHERE id != ?", weir)
    raw(
        "INSERT INTO log (board, kind, at, offset, version, body) SELECT ?, value, 'never', 'x', 'y', '[' FROM"
        ' json_each(\'["ride", "check", "tension", "tightening", "belt_fitted", "note"]\')',
        weir,
    )
    world = replace(open_world(kept, clock), trail=(Step(name, examples(name)[0]),))
    assert page_function(name)(update(world, Arrive())).title


BAD_SETTINGS = (
    "own_lists",
    "answers/{}",
    "ride speeds {}",
    "place",
    "joint_tool",
    "person",
    "own_number",
    "pluck/{}/left",
)


@pytest.mark.parametrize("strange", ["NaN", "-Infinity", "1" + "0" * 400, '"\\ud800"'], ids=range(4))
def test_a_number_no_json_has_costs_its_field_and_the_board_can_be_saved(kept, raw, strange):
    weir = kept.board(kept.get("board"))
    body = json.loads(json.dumps(weir.body))
    body["drive"]["motor_teeth"]["si"] = "@"
    raw("UPDATE board SET body = ? WHERE id = ?", json.dumps(body).replace('"@"', strange), weir.id)
    board = read_back.board(kept, weir.id)
    assert board.drive.motor_teeth is None
    assert board.drive.wheel_teeth is not None
    kept.save_board(board.id, board.name, to_dict(board))
    assert to_dict(read_back.board(kept, weir.id)) == to_dict(board)
    assert "motor_teeth" in to_dict(board)["drive"]


def test_a_value_of_a_unit_we_do_not_know_is_shown_in_one_that_we_do(kept, clock):
    weir = kept.board(kept.get("board"))
    body = json.loads(json.dumps(weir.body))
    for name in ("motor_teeth", "belt_width", "wheel_diameter"):
        body["drive"][name]["typed_unit"] = "furlong"
    kept.save_board(weir.id, weir.name, body)
    world = open_world(kept, clock)
    for page, args in (
        ("board", {}),
        ("numbers.gearing", {}),
        ("board.value", {"key": "drive.belt_width"}),
        ("ride.tension", {}),
        ("board.sheet", {}),
    ):
        if page in names():
            shown = page_function(page)(replace(world, trail=(Step(page, args),)))
            assert shown.title
            assert "furlong" not in " ".join(block.said() for block in shown.blocks)
    assert to_dict(world.saved)["drive"]["belt_width"]["typed_unit"] == "furlong"
