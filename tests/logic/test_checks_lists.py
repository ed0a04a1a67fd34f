"""Every list of ours keeps to what research and the house ask of a list; form.toml names where each is said."""

import re

import pytest

from logic.answers.checks import FIGURES, figures, nearly_empty, volts_fault
from logic.answers.controller_card import controller_card
from logic.answers.fitted import for_board
from logic.answers.reading import Result
from logic.answers.tension import PLAN
from logic.board import board_fields
from logic.checks.faults import faults, find_faults
from logic.checks.lists import applies, build_stages, checklist, checklists, form
from logic.checks.own import copy_of, list_from_dict, list_to_dict, moved, reworded, with_item, without
from logic.errors import InputError
from logic.exchange import demo_boards
from logic.person import Person
from logic.tables import rows, sources
from tests.loose import loose_ends

LISTS = checklists().values()
KERB = [of for of in LISTS if of.kind == "do-confirm"]
JOINTS = {
    "motor_face",
    "motor_set_screw",
    "mount_clamp",
    "mount_plates",
    "wheel_pulley",
    "axle_nut",
    "kingpin",
    "deck_bolts",
    "enclosure",
    "bearings",
}
PAGES = {
    "bench.belt",
    "bench.power",
    "bench.controller",
    "ride.flight",
    "board",
    "bench.faults",
    "bench.spares",
    "ride.pack_signs",
    "bench.reach",
    "log",
    "ride.tension",
    "numbers.hold",
    "numbers.gearing",
    "numbers.feel",
}
SIGNALS = {"", "danger", "warning", "caution", "notice"}
DANGERS = re.compile(r"swollen|hissing|smok|hot pack|hisses|wet pack|joining packs", re.IGNORECASE)
"""DANGER is kept for these (decisions of the trade, packs); a wrong charger is not in a list's hands."""


def words(text: str) -> int:
    return len(text.split())


def by_key(lists):
    return pytest.mark.parametrize("of", lists, ids=lambda of: of.key)


def test_each_rule_says_where_it_comes_from():
    for rule in form().values():
        assert rule.source in sources()
        assert rule.where
        assert rule.text


@by_key(LISTS)
def test_length_and_wording(of):
    rule = form()
    assert rule["items"].least <= len(of.items) <= rule["items"].most
    for item in of.items:
        assert words(item.action) <= rule["action words"].most, item.action
        assert words(item.state) <= rule["state words"].most, item.state
        assert words(item.why) <= rule["why words"].most, item.why
        assert words(item.fix) <= rule["why words"].most, item.fix
        assert item.why
        assert item.fix
        assert item.spoken
        assert item.state.casefold() not in ("ok", "done", "checked", "set")
        assert " and then " not in item.action


@by_key(KERB)
def test_lists_of_the_kerb_are_short_begin_with_a_killer_and_take_a_value(of):
    rule = form()
    assert of.seconds <= rule["seconds"].most
    assert of.items[0].stop
    assert sum(item.stop for item in of.items) <= rule["stops"].most
    assert sum(bool(item.ask) for item in of.items) >= rule["value"].least


def test_before_a_ride_has_eight_or_nine_items_with_the_remote_as_a_stop():
    of = checklist("before_ride")
    assert len(of.items) in (8, 9)
    assert of.item("remote").stop
    assert of.lapses


def test_before_a_ride_follows_the_hands_and_reads_volts_of_a_board_that_is_on():
    # Handbook, rules of lists: pack, wheels, trucks, belts, mount, power, brake, rider; nothing shows volts before it is on.
    of = checklist("before_ride")
    order = ["pack", "wheels", "trucks", "belts", "mounts", "charge", "remote", "brake", "rider"]
    assert [item.key for item in of.items] == order
    assert of.item("charge").action == "Switch on, read the volts"
    assert not any("Pack off" in item.how for item in of.items[order.index("charge") :])
    assert "Pack off" in of.item("belts").how


def test_volts_at_which_the_controller_holds_back_are_nearly_empty():
    # Towpath 36 is 10S NMC: its own low-voltage figures are 33 V and 30 V (table of low voltage, 3.30 and 3.00 V a cell).
    towpath = demo_boards()[0]
    charge = checklist("before_ride").item("charge")
    assert nearly_empty(charge, 30.1, towpath)
    assert nearly_empty(charge, 32.9, towpath)
    assert not nearly_empty(charge, 33.1, towpath)
    assert volts_fault(charge, 30.1, towpath) == ""
    card = controller_card(towpath, None, {})
    assert figures(("low_start",), towpath, Person())["low_start"].value == card.items["low_start"].value
    # A pack that is put away or comes home low is as it should be.
    assert not nearly_empty(checklist("storage").item("volts"), 30.1, towpath)


@by_key(LISTS)
def test_signal_words_are_few_short_and_danger_only_where_the_trade_keeps_it(of):
    cards = [bool(item.care_word) for item in of.items]
    for start in range(max(1, len(cards) - 6)):
        assert sum(cards[start : start + 7]) <= form()["signal words"].most
    for item in of.items:
        assert {item.word, item.care_word} <= SIGNALS
        for word, text in ((item.word, item.hazard), (item.care_word, item.care)):
            assert bool(word) == bool(text)
            assert words(text) <= 25, text
            if word == "danger":
                assert DANGERS.search(text), text


@by_key(LISTS)
def test_stop_signs_are_signs_with_a_hazard_on_items_that_are_no_stop(of):
    for item in of.items:
        if item.stop_signs:
            assert set(item.stop_signs) < set(item.signs)
            assert item.hazard
            assert not item.stop


def test_a_mount_that_moves_ends_the_ride_wherever_it_is_looked_at():
    for of in (of for of in LISTS if of.place == "ride"):
        for item in of.items:
            moving = {sign for sign in item.signs if sign.startswith("Mount ") or sign == "Screw missing"}
            assert moving - {"Mount screw moved"} <= set(item.stop_signs), item.key


@by_key(LISTS)
def test_what_an_item_refers_to_exists(of):
    for item in of.items:
        assert item.source in sources()
        assert item.where
        assert item.standing in ("published", "derived", "practice", "estimate")
        assert item.joint in JOINTS | {""}
        for name in item.figures:
            assert name in PLAN or name in FIGURES or name in board_fields(), name
        if item.opens.startswith("list:"):
            assert item.opens[5:] in checklists()
        else:
            assert item.opens in PAGES | {""}
        for condition in item.when:
            assert condition.split()[0] in board_fields()


@by_key(LISTS)
def test_nothing_is_promised_and_nothing_pleads(of):
    said = " ".join(
        f"{item.action} {item.state} {item.how} {item.why} {item.fix} {item.hazard}" for item in of.items
    )
    assert not re.search(r"\bsafe\b|please|\boops\b|sorry|!|simply", said, re.IGNORECASE)


def test_the_build_follows_the_order_of_the_trade():
    keys = [f"{stage}/{item.key}" for stage in build_stages() for item in checklist(stage).items]
    order = [
        "build.layout/parts",
        "build.trucks/lean",
        "build.wheels/bearings",
        "build.wheels/wheel_pulley",
        "build.wheels/wheels_on",
        "build.wheels/kingpins",
        "build.motor/side",
        "build.motor/motor",
        "build.motor/pulley",
        "build.motor/align",
        "build.motor/lock",
        "build.belt/belt_on",
        "build.belt/set",
        "build.belt/turn",
        "build.belt/again",
        "build.belt/motor_lock",
        "build.wiring/pack_in",
        "build.wiring/controller",
        "build.wiring/polarity",
        "first_power/precharge",
        "first_power/direction",
        "first_power/brake",
        "first_power/failsafe",
        "build.first_ride/slow",
        "first_recheck/tension",
    ]
    places = [keys.index(key) for key in order]
    assert places == sorted(places)


def test_a_list_fits_its_board():
    towpath, lock_keeper, _, ferry = demo_boards()
    two = {item.key for item in for_board(checklist("first_power"), towpath).items}
    one = {item.key for item in for_board(checklist("first_power"), lock_keeper).items}
    assert two - one == {"same_way"}
    assert "second_pack" in {item.key for item in for_board(checklist("build.wiring"), ferry).items}
    assert "second_pack" not in {item.key for item in for_board(checklist("build.wiring"), towpath).items}


def test_what_a_board_does_not_say_is_asked():
    assert all(applies(item, lambda _: None) for of in LISTS for item in of.items)


@pytest.mark.parametrize("board", demo_boards(), ids=lambda board: board.name)
def test_every_number_of_the_build_is_given_on_the_example_boards(board):
    names = {name for stage in build_stages() for item in checklist(stage).items for name in item.figures}
    found = figures(sorted(names), board, Person())
    assert found
    for name, item in found.items():
        assert isinstance(item, Result), name
        assert loose_ends(item) == [], name
    for name in names - set(found):
        field = board_fields()[name]
        assert board.value(name) is not None or not board.applies(field), name


def test_faults_point_to_what_exists():
    for fault in faults():
        assert words(fault.hazard) <= 25
        assert bool(fault.word) == bool(fault.hazard)
        efforts = [cause.effort for cause in fault.causes]
        assert efforts == sorted(efforts)
        for cause in fault.causes:
            kind, _, key = cause.opens.partition(":")
            assert kind != "list" or key in checklists()
            assert kind != "joint" or key in JOINTS
            assert ":" in cause.opens or cause.opens in PAGES | {""}
            assert cause.source in sources()


def test_nothing_that_ends_a_ride_is_cleared_by_riding():
    for fault in faults():
        for cause in fault.causes:
            said = f"{fault.hazard} {cause.remedy}".replace("Do not ride", "")
            assert not (cause.danger and re.search(r"\bride\b", said, re.IGNORECASE)), cause.name


def test_no_number_parts_from_its_unit_at_the_end_of_a_line():
    texts = [
        text for of in LISTS for item in of.items for text in (item.how, item.why, item.fix, item.hazard)
    ]
    texts += [text for fault in faults() for cause in fault.causes for text in (cause.check, cause.remedy)]
    parted = re.compile(r"\d (?:mm|km|km/h|kg|N|Wh|V|A|%|°C|s|min)(?!\w)")
    assert [text for text in texts if parted.search(text)] == []
    assert any("0.3\u00a0mm" in text for text in texts)


def test_a_full_pack_may_cut_the_brake_out_at_once():
    # Decisions of the trade, amps and limits: on a full pack say "may cut out at once", not "fades".
    names = ("Full pack refuses the brake", "Pack full")
    remedies = [cause.remedy for fault in faults() for cause in fault.causes if cause.name in names]
    assert len(remedies) == len(names)
    for said in (*remedies, checklist("before_ride").item("charge").fix):
        assert "may cut out at once" in said


@pytest.mark.parametrize(
    ("said", "key"),
    [
        ("brake weak", "brake"),
        ("turns backwards", "wrong_way"),
        ("wheel loose", "wobble"),
        ("range", "shorter"),
        ("overheating", "hot_motor"),
        ("warm", "hot_motor"),
        ("squeal", "noise"),
        ("grinding", "noise"),
        ("clicking", "noise"),
        ("vibration", "vibrates"),
        ("charger", "no_charge"),
        ("won't charge", "no_charge"),
        ("won't switch on", "no_switch"),
        ("beeps", "beeps"),
        ("water", "water"),
    ],
)
def test_the_fault_guide_is_found_by_common_words(said, key):
    assert find_faults(said)[0].key == key


def test_own_lists_leave_ours_alone():
    ours = checklist("before_ride")
    own = copy_of(ours, 1)
    with pytest.raises(InputError, match="list full"):
        with_item(own, "Look at the lights", "Both lit", number=1)
    with pytest.raises(InputError, match="stop item"):
        without(own, "brake")
    own = without(own, "rider")
    own = with_item(own, "Look at the lights", "Both lit", number=2)
    own = reworded(own, "brake", "Try the brake", "Stops all wheels")
    own = moved(own, "own_2", -1)
    assert own.items[-2].action == "Look at the lights"
    assert own.item("brake").stop
    assert own.item("brake").hazard == ours.item("brake").hazard
    assert own.base == "before_ride"
    assert own.version > 1
    assert list_from_dict(list_to_dict(own)) == own
    assert checklist("before_ride") == ours
    with pytest.raises(InputError, match="words length"):
        reworded(own, "brake", " ", "x")


def test_upkeep_rules_and_spares_name_their_sources():
    for table in ("upkeep_rules", "spares"):
        for row in rows(table):
            assert row.source in sources()
            assert row.where
    for row in rows("upkeep_rules"):
        kind, _, key = row.text("opens").partition(":")
        assert kind != "list" or key in checklists()


def test_no_sentence_of_a_list_or_a_fault_has_more_than_fifteen_words():
    """Issue "First answer", words: at most 15 words a sentence."""
    texts = [
        (of.key, text)
        for of in LISTS
        for item in of.items
        for text in (
            item.action,
            item.state,
            item.how,
            item.why,
            item.fix,
            item.hazard,
            item.care,
            *item.fixes,
        )
    ]
    texts += [
        (one.key, text)
        for one in faults()
        for text in (one.hazard, *(said for cause in one.causes for said in (cause.check, cause.remedy)))
    ]
    assert len(texts) > 500
    sentences = [(key, one) for key, text in texts for one in re.split(r"(?<=[.:?!;])\s+", text)]
    assert [(key, one) for key, one in sentences if words(one) > 15] == []
