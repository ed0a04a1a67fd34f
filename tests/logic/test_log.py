"""Every kind of entry comes back from its text; what cannot be read says so and never raises."""

import json
from collections.abc import Mapping
from dataclasses import fields, replace
from functools import cache
from typing import Any, get_args, get_origin, get_type_hints

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from logic.errors import InputError
from logic.fields import Value
from logic.log import KINDS, BoardChanged, Change, Check, Entry, Fault, Ride, Tension, Unread, read, text_of

WORDS = st.text(st.characters(codec="utf-8"), max_size=12)
NUMBERS = st.floats(-1e6, 1e6)
JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | NUMBERS | WORDS,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(WORDS, inner, max_size=3),
    max_leaves=6,
)

# One body of each kind as the app wrote it before its entries were classes.
WRITTEN = {
    "belt_fitted": '{"belt":"right","note":""}',
    "tension": '{"belt":"left","method":"scale","pull":14.5,"unit":"kg","depth":0.0015,"tension":101.5,"error":11.0,'
    '"floor":75.6,"ceiling":118.8,"target":108.0,"word":"in window","certainty":"inside","scale":"luggage scale",'
    '"depth_tool":"calliper"}',
    "tightening": '{"joint":"motor_face","torque":1.7,"setting":1.7,"ceiling":null,"tool":"torque wrench",'
    '"locker":"medium","by":"Wren","note":"","looked":false}',
    "check": '{"list":"before_ride","base":"before_ride","title":"Before a ride","version":2,"verdict":"stopped",'
    '"fit":"do not ride","fit_why":["Wheels: Wobbles"],"faults":[["wheels","Wheels","Wobbles",true]],"right":3,'
    '"total":9,"aside":0,"notes":[["Grip and rock each wheel","Wobbles"]],"noted":["wheels"],'
    '"stopped_by":"Grip and rock each wheel","halted":"Not riding","reason":"Wobbles","held":"",'
    '"put_off":[["Check after water","dry by now"]],"began":"2026-11-25T09:32:41+00:00","seconds":56.0,"breaks":0,'
    '"fast":false,"values":{"charge":40.2},"answers":{"wheels":["failed","2026-11-25T09:33:37+00:00"]},'
    '"board":{"drive.motors":"2","drive.motor_teeth":15.0}}',
    "ride": '{"distance":8400.0,"energy":331200.0,"volts_before":41.2,"volts_after":null,"note":"Head wind",'
    '"crash":false,"wet":true}',
    "work": '{"note":"Dried the bearings"}',
    "note": '{"note":"Right belt sounds brighter"}',
    "board_changed": '{"changes":{"drive.motor_teeth":{"was":null,"is":{"si":17.0,"known":"chosen","on":"2026-11-25",'
    '"typed_unit":"teeth","note":""}}}}',
    "snooze": '{"rule":"water","name":"Check after water","reason":"Only the deck was wet","stop":true}',
}


def any_of(hint: Any) -> st.SearchStrategy[Any]:
    """Return values of an annotation."""
    origin, args = get_origin(hint), get_args(hint)
    if hint in (str, float, int, bool, type(None)):
        plain = {
            str: WORDS,
            float: NUMBERS,
            int: st.integers(0, 99),
            bool: st.booleans(),
            type(None): st.none(),
        }
        return plain[hint]
    if origin is tuple and args[1:] == (...,):
        return st.lists(any_of(args[0]), max_size=3).map(tuple)
    if origin is tuple:
        return st.tuples(*map(any_of, args))
    if origin is not None and isinstance(origin, type) and issubclass(origin, Mapping):
        return st.dictionaries(WORDS, any_of(args[1]), max_size=3)
    if args:
        return st.one_of(*map(any_of, args))
    return st.builds(hint, **{name: any_of(part) for name, part in get_type_hints(hint).items()})


@cache
def entries(kind: type[Entry]) -> st.SearchStrategy[Entry]:
    """Return entries of a kind, with every field and some that no version knows yet."""
    hints, drawn = get_type_hints(kind), {}
    for one in fields(kind):
        if "choices" in one.metadata:
            drawn[one.name] = st.sampled_from(one.metadata["choices"])
        elif "low" in one.metadata:
            drawn[one.name] = st.none() | st.floats(one.metadata["low"], min(one.metadata["high"], 1e9))
        elif one.name != "more":
            drawn[one.name] = any_of(hints[one.name])
    drawn["more"] = st.dictionaries(WORDS.map("new ".__add__), JSON, max_size=2)

    @st.composite
    def made(draw: st.DrawFn) -> Entry:
        try:
            return kind(**{name: draw(values) for name, values in drawn.items()})
        except InputError:
            assume(condition=False)
            raise

    return made()


@pytest.mark.parametrize("kind", KINDS)
@given(data=st.data())
def test_every_entry_comes_back_from_its_text(kind: str, data: st.DataObject) -> None:
    entry = data.draw(entries(KINDS[kind]))
    assert read(kind, entry.VERSION, text_of(entry)) == entry


@pytest.mark.parametrize("kind", KINDS)
def test_what_the_app_wrote_before_is_read_whole(kind: str) -> None:
    entry = read(kind, 1, WRITTEN[kind])
    assert type(entry) is KINDS[kind]
    assert entry.more == {}
    again, before = json.loads(text_of(entry)), json.loads(WRITTEN[kind])
    # What stands as it would by itself is not written again.
    assert again.items() <= before.items() if kind != "board_changed" else set(again) == set(before)
    assert read(kind, 1, text_of(entry)) == entry


def test_what_was_written_before_means_the_same() -> None:
    ride = read("ride", 1, WRITTEN["ride"])
    assert ride == Ride(distance=8400.0, energy=331200.0, volts_before=41.2, note="Head wind", wet=True)
    check = read("check", 1, WRITTEN["check"])
    assert isinstance(check, Check)
    assert check.faults == (Fault("wheels", "Wheels", "Wobbles", stops=True),)
    assert check.answers == {"wheels": ("failed", "2026-11-25T09:33:37+00:00")}
    assert check.volts("charge") == 40.2
    changed = read("board_changed", 1, WRITTEN["board_changed"])
    value = Value(17.0, "chosen", "2026-11-25", "teeth")
    assert changed == BoardChanged(changes={"drive.motor_teeth": Change(None, value)})


def test_a_check_of_before_it_said_whether_to_ride_is_read() -> None:
    body = {
        key: value
        for key, value in json.loads(WRITTEN["check"]).items()
        if key not in ("fit", "fit_why", "faults")
    }
    check = read("check", 1, json.dumps(body))
    assert isinstance(check, Check)
    assert (check.fit, check.faults) == ("", ())


@pytest.mark.parametrize("kind", KINDS)
@given(data=st.data())
def test_a_mangled_body_could_not_be_read_and_never_raises(kind: str, data: st.DataObject) -> None:
    """A known field holds what its type does not allow, or a text is cut short: nothing but `Unread` comes of it."""
    text = WRITTEN[kind]
    cut = read(kind, 1, text[: data.draw(st.integers(0, len(text) - 1))])
    assert isinstance(cut, Unread)
    assert not cut.later
    body = json.loads(text)
    known = [one for one in fields(KINDS[kind]) if one.name != "more"]
    mangled = data.draw(st.sampled_from(known))
    body[mangled.metadata.get("key", mangled.name)] = {"no": ["such"]}
    assert isinstance(read(kind, 1, json.dumps(body)), Unread)


@pytest.mark.parametrize("kind", [*KINDS, "walk"])
@given(text=st.text() | JSON.map(json.dumps), version=st.integers(-3, 4))
def test_whatever_stands_in_a_row_reading_it_never_raises(kind: str, text: str, version: int) -> None:
    entry = read(kind, version, text)
    assert isinstance(entry, Unread) or type(entry) is KINDS[kind]


@pytest.mark.parametrize(
    ("kind", "body"),
    [
        ("ride", '{"distance": "8400"}'),
        ("ride", '{"distance": true}'),
        ("ride", '{"distance": -1.0}'),
        ("ride", '{"distance": NaN}'),
        ("ride", '{"distance": 1e999}'),
        ("ride", '{"distance": 1' + "0" * 400 + "}"),
        ("ride", '{"wet": 1}'),
        ("ride", '{"note": null}'),
        ("ride", "[]"),
        ("ride", "null"),
        ("ride", ""),
        ("ride", "[" * 100_000),
        ("tension", "{}"),
        ("tension", '{"belt": "middle"}'),
        ("tension", '{"belt": "left", "floor": 90.0, "ceiling": 80.0}'),
        ("tension", '{"belt": "left", "pulls": [1.0, "two"]}'),
        ("check", '{"list": "a", "base": "a", "verdict": "fine"}'),
        ("check", '{"list": "a", "base": "a", "verdict": "all right", "faults": [["key", "name", "note"]]}'),
        ("board_changed", '{"changes": {"drive.side": {"was": {"known": "label"}}}}'),
        ("walk", "{}"),
        ("", "{}"),
    ],
)
def test_what_could_not_be_read(kind: str, body: str) -> None:
    entry = read(kind, 1, body)
    assert isinstance(entry, Unread)
    assert not entry.later
    assert entry.why


def test_a_later_version_is_told_from_what_is_damaged() -> None:
    assert read("ride", 2, '{"way": 3}') == Unread(later=True, why="a ride entry of version 2")
    assert not getattr(read("ride", 0, "{}"), "later", True)


def test_a_field_that_no_version_knows_is_kept_through_a_correction() -> None:
    entry = read("ride", 1, '{"distance": 900.0, "wind": {"from": [1, 2]}}')
    assert entry.more == {"wind": {"from": [1, 2]}}
    assert json.loads(text_of(replace(entry, note="into it"))) == {
        "distance": 900.0,
        "note": "into it",
        "wind": {"from": [1, 2]},
    }


@pytest.mark.parametrize(
    ("made", "name"),
    [
        (lambda: Ride(distance=0.5), "ride.distance"),
        (lambda: Tension(belt="both"), "tension.belt"),
        (lambda: Tension(belt="left", floor=2.0, ceiling=1.0), "tension.floor"),
    ],
)
def test_an_entry_outside_a_limit_is_not_made(made: Any, name: str) -> None:
    with pytest.raises(InputError) as refused:
        made()
    assert refused.value.field == name


def test_every_kind_has_an_upgrade_from_each_older_version_and_a_body_of_before() -> None:
    for kind in KINDS.values():
        assert sorted(kind.UPGRADES) == list(range(1, kind.VERSION)), kind
    assert set(WRITTEN) == set(KINDS)
