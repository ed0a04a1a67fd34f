"""Checklists at the kerb, item after item: signs and their advice, what ends a run, and what stays until it is cleared."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import timedelta
from pathlib import Path

import pytest

from logic.checks.lists import checklist, checklists
from logic.log import Check, Fault, Ride, Tension
from screens.acts import Back, Both, Place
from screens.acts.entering import Write
from screens.acts.outside import Say
from screens.acts.runs import Finish, PutInFront
from screens.blocks import RIGHT, UNSURE, WRONG, Line, Notice
from screens.paper.room import look_of, whole_look
from screens.register import PAGES
from screens.tongue import texts
from screens.world import open_world
from tests.pages.reader import Reader
from tests.pages.sight import in_sight
from tests.pages.test_layout import SCALES, SIZES, faults, laids

PRE = checklist("before_ride")
GAP = "\u00a0"


def begin(pages: Reader, key: str = "before_ride") -> None:
    pages.open("ride.run", list=key)


def item(pages: Reader) -> str:
    return str(pages.world.session(pages.world.args["list"]).under_way.at)


def right(pages: Reader) -> None:
    """Say that the item in front is as wanted."""
    pages.time += timedelta(seconds=8)
    pages.act(pages.page.foot.main.act or answered(pages))


def answered(pages: Reader):
    """Enter what the item asks, then return what its bar does."""
    session = pages.world.session(pages.world.args["list"])
    one = session.of.item(session.under_way.at)
    if one.ask == "volts":
        pages.type("40.2")
    elif one.ask:
        pages.tap(one.options[0])
    return pages.page.foot.main.act


def right_until(pages: Reader, key: str) -> None:
    while pages.name == "ride.run" and item(pages) != key:
        right(pages)


def last_check(pages: Reader) -> Check:
    found: Check = pages.records("check")[0].body
    return found


def logged(pages: Reader, check: Check) -> Check:
    """Write a check into the log and open the app anew; return it."""
    pages.store.append(pages.world.saved.id, check)
    pages.restart()
    return check


def looked_over(pages: Reader) -> None:
    """Log what a board wants after its first ride: the tension of each belt and the re-check."""
    board = pages.world.saved
    for side in board.sides:
        pages.store.append(board.id, Tension(belt=side, tension=60.0, error=10.0))
    recheck = Check(list="first_recheck", base="first_recheck", verdict="all right", right=7, total=7)
    pages.store.append(board.id, recheck)


def test_a_check_before_a_ride_takes_ninety_seconds_and_writes_the_log(pages: Reader) -> None:
    looked_over(pages)
    begin(pages)
    for one in PRE.items:
        assert item(pages) == one.key
        right(pages)
    crown = pages.page.crown
    assert (crown.word, crown.text, crown.form) == ("Fit to ride", "9 of 9 right.", RIGHT)
    assert pages.shows("A record of what you looked at, not a promise.")
    pages.tap("FINISH")
    assert pages.name == "ride"
    body = last_check(pages)
    assert (body.verdict, body.right, body.values) == ("all right", 9, {"charge": pytest.approx(40.2)})
    assert body.seconds <= 90
    assert pages.store.run(pages.world.saved.id, "before_ride") is None


def test_a_failed_stop_item_has_no_way_on_and_ends_in_not_riding(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "wheels")
    pages.tap("NOT RIGHT")
    # The warning stands where a great bar would say that all is done.
    assert isinstance(pages.page.crown, Notice)
    assert pages.page.crown.word == "warning"
    assert pages.page.foot.main is None
    assert not pages.shows("NOTE IT AND GO ON")
    stop = pages.page.foot.beside[-1]
    assert (stop.text, stop.act, stop.why) == ("STOP: NOT RIDING", None, "Tap a sign.")
    pages.tap("FIXED: CHECK IT AGAIN")
    assert (pages.name, item(pages)) == ("ride.run", "wheels")
    pages.tap("NOT RIGHT")
    pages.tap("Wobbles")
    pages.tap("STOP: NOT RIDING")
    assert pages.name == "ride.run_over"
    assert (pages.page.crown.word, pages.page.crown.form) == ("Do not ride", WRONG)
    assert "Wobbles" in pages.page.crown.text
    assert pages.page.foot.main is None
    body = last_check(pages)
    assert (body.verdict, body.reason, body.halted) == ("stopped", "Wobbles", "Not riding")
    pages.tap("CLOSE")
    # The next run begins with it, until it is found right.
    begin(pages)
    assert item(pages) == "wheels"
    assert pages.shows("Last time: Wobbles")
    right(pages)
    assert item(pages) == "pack"


def test_what_ended_a_ride_comes_first_until_it_is_right_however_many_runs_break_off(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "brake")
    pages.tap("NOT RIGHT")
    pages.tap("Weak")
    pages.tap("STOP: NOT RIDING")
    pages.tap("CLOSE")
    # A later run that ends at another item does not hide the brake.
    begin(pages)
    assert item(pages) == "brake"
    pages.open("ride.run_list", list="before_ride")
    pages.tap("Grip and rock each wheel")
    assert (pages.name, item(pages)) == ("ride.run", "wheels")
    pages.tap("NOT RIGHT")
    pages.tap("Wobbles")
    pages.tap("STOP: NOT RIDING")
    pages.tap("CLOSE")
    begin(pages)
    assert {item(pages), pages.world.session("before_ride").under_way.order[1]} == {"brake", "wheels"}
    assert {fault.key for fault in pages.world.history().faults} == {"brake", "wheels"}


@pytest.mark.parametrize(
    ("key", "sign", "said"),
    [
        ("wheels", "Grinds or drags", "bearing"),
        ("wheels", "Wobbles", "axle nut"),
        ("belts", "Loose", "tension"),
        ("belts", "Tooth missing or torn", "new belt"),
        ("brake", "Drives instead of braking", "direction"),
        ("rider", "No lights", "lights"),
    ],
)
def test_the_advice_follows_the_sign(pages: Reader, key: str, sign: str, said: str) -> None:
    pages.open("ride.not_right", list="before_ride", item=key)
    before = pages["fix"].text
    pages.tap(sign)
    assert said in pages["fix"].text
    others = [one for one in PRE.item(key).signs if one != sign]
    for other in others:
        pages.tap(other)
        assert pages["fix"].text != f"Do: {PRE.item(key).remedy(sign)}"
    assert before


def test_every_sign_of_the_kerb_has_advice_of_its_own() -> None:
    for key in ("before_ride", "after_ride", "first_recheck", "after_crash", "after_water", "from_storage"):
        for one in checklist(key).items:
            if one.signs:
                assert len(one.fixes) == len(one.signs), f"{key} {one.key}"
                told = [one.remedy(sign) for sign in one.signs]
                assert len(set(told)) == len(told), f"{key} {one.key}: {told}"
                assert all(len(text.split()) <= 25 for text in told), f"{key} {one.key}: {told}"


def test_signs_and_advice_are_in_sight_on_the_smallest_phone(pages: Reader) -> None:
    for one in PRE.items:
        pages.open("ride.not_right", list="before_ride", item=one.key, sign=one.signs[0])
        assert {"sign", "fix"} <= in_sight(pages.page, 320, 568, 1.0), one.key


def test_another_item_can_be_noted_and_the_sign_off_says_so(pages: Reader) -> None:
    looked_over(pages)
    begin(pages)
    right_until(pages, "mounts")
    pages.tap("NOT RIGHT")
    assert pages.page.crown is None
    pages.tap("Line broken")
    pages.tap("NOTE IT AND GO ON")
    assert item(pages) == "charge"
    right_until(pages, "")
    crown = pages.page.crown
    assert (crown.word, crown.form) == ("With care", UNSURE)
    assert crown.text == "Mounts: Line broken. 8 of 9 right, 1 noted."
    pages.tap("FINISH")
    assert last_check(pages).verdict == "with notes"


@pytest.mark.parametrize("sign", ["Mount moves", "Screw missing"])
def test_a_stop_sign_on_another_item_leaves_no_way_on(pages: Reader, sign: str) -> None:
    begin(pages)
    right_until(pages, "mounts")
    pages.tap("NOT RIGHT")
    assert pages.shows("NOTE IT AND GO ON")
    assert pages.page.crown is None
    pages.tap(sign)
    assert pages.page.crown.word == "warning"
    assert not pages.shows("NOTE IT AND GO ON")
    pages.tap("Line broken")
    assert pages.shows("NOTE IT AND GO ON")
    pages.tap(sign)
    pages.tap("STOP: NOT RIDING")
    assert (last_check(pages).verdict, last_check(pages).reason) == ("stopped", sign)


def test_words_of_ones_own_are_enough_and_outlive_a_restart(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "rider")
    pages.tap("NOT RIGHT")
    pages.act(Write("note/before_ride/rider", "Strap torn"))
    pages.restart(minutes=2)
    assert pages.page.foot.beside[-1].act is not None
    pages.tap("NOTE IT AND GO ON")
    right_until(pages, "")
    assert "Strap torn" in pages.page.crown.text
    assert pages.world.typed.get("note/before_ride/rider") is None


def test_a_nearly_empty_pack_makes_the_verdict(pages: Reader) -> None:
    looked_over(pages)
    begin(pages)
    right_until(pages, "charge")
    pages.type("30.1")
    assert pages.shows("Nearly empty, short ride only")
    pages.act(pages.page.foot.main.act)
    right_until(pages, "")
    assert (pages.page.crown.word, pages.page.crown.form) == ("With care", UNSURE)
    assert "nearly empty, short ride only" in pages.page.crown.text.lower()
    pages.tap("FINISH")
    assert (last_check(pages).fit, last_check(pages).faults) == ("with care", ())


def test_back_goes_one_level_and_takes_nothing_away(pages: Reader) -> None:
    begin(pages)
    right(pages)
    pages.back()
    assert pages.name == "ride"
    begin(pages)
    assert pages.shows("You stopped at 2 of 9, just now.")
    pages.tap("GO ON")
    assert item(pages) == "wheels"
    pages.tap("Back one")
    assert item(pages) == "pack"


@pytest.mark.parametrize(
    ("minutes", "first", "at"),
    [(5, "GO ON", "wheels"), (15, "GO ON", "wheels"), (15, "START AGAIN", "pack"), (40, "", "pack")],
)
def test_a_broken_off_check_goes_on_begins_again_or_lapses(
    pages: Reader, minutes: int, first: str, at: str
) -> None:
    begin(pages)
    right(pages)
    pages.restart(minutes=minutes)
    if first:
        assert pages.page.foot.main.text == "GO ON"
        pages.tap(first)
    else:
        assert last_check(pages).verdict == "not finished"
        assert pages.shows("That run lapsed")
    assert item(pages) == at


@pytest.mark.parametrize(
    ("minutes", "broken", "logged"), [(5, False, 0), (15, True, 0), (40, False, 1), (-90, False, 1)]
)
def test_a_run_that_lay_open_for_long_is_broken_off_too(
    pages: Reader,
    minutes: int,
    broken: bool,  # noqa: FBT001  (a case)
    logged: int,
) -> None:
    """The phone slept on an item, or its clock was set back: what was right then is not taken as right now."""
    begin(pages)
    right(pages)
    act = pages.page.foot.main.act
    pages.time += timedelta(minutes=minutes)
    pages.act(act)
    assert len(pages.records("check")) == logged
    if broken:
        assert pages.shows("You stopped at 2 of 9, 15\u00a0min ago.")
        assert pages.page.foot.main.text == "GO ON"
    else:
        assert item(pages) == ("pack" if logged else "trucks")


def test_a_sign_off_that_was_gone_back_from_is_broken_off_after_a_restart(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "")
    pages.back()
    pages.restart(minutes=15)
    assert pages.shows("You stopped at 9 of 9")
    assert pages.page.foot.main.text == "GO ON"


def test_volts_that_this_pack_cannot_have_are_refused_and_kept(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "charge")
    pages.type("58")
    assert pages.page.foot.main.act is None
    assert "above this pack's full volts" in pages.page.foot.entry.sentence
    pages.restart(minutes=1)
    pages.tap("GO ON")
    assert pages.typed == "58"
    pages.rub(2)
    pages.type("40.2")
    assert pages.page.foot.entry.sentence == ""
    pages.act(pages.page.foot.main.act)
    assert item(pages) == "remote"


def test_back_from_the_end_opens_the_last_item(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "")
    assert pages.name == "ride.run_over"
    pages.back()
    assert (pages.name, item(pages)) == ("ride.run", "rider")
    right(pages)
    assert pages.name == "ride.run_over"


def test_a_skipped_item_is_named_at_the_end(pages: Reader) -> None:
    looked_over(pages)
    begin(pages)
    right_until(pages, "rider")
    pages.tap("Skip this for now")
    crown = pages.page.crown
    assert (crown.word, crown.text) == (
        "With care",
        f"{PRE.item('rider').name}: not looked at. 8 of 9 right, 1 skipped.",
    )


def test_the_whole_list_says_where_each_item_stands(pages: Reader) -> None:
    begin(pages)
    right(pages)
    pages.tap("The whole list")
    assert pages.shows("1 of 9 right. Pause: before you step on.")
    assert [pages[key].icon for key in ("pack", "wheels")] == ["ticked", "unticked"]
    pages.tap("Look at and smell the pack")
    assert (pages.name, item(pages)) == ("ride.run", "pack")


def test_the_card_can_be_said_aloud(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "charge")
    pages.tap("Say it")
    assert pages.out == [
        Say(
            "Volts. Wheels off the ground, remote first, then the board. Read and enter them."
            f" Pack when full: 42{GAP}V. Controller holds back below: 33{GAP}V. Pack when empty: 30{GAP}V."
        )
    ]


def test_pages_open_from_an_item_and_come_back_to_it(pages: Reader) -> None:
    begin(pages, "build.belt")
    right_until(pages, "set")
    pages.tap("Tension check")
    pages.back()
    assert (pages.name, item(pages)) == ("ride.run", "set")


def test_a_run_left_through_another_page_is_broken_off(pages: Reader) -> None:
    begin(pages)
    right_until(pages, "mounts")
    pages.tap("Joint: torque and locker")
    pages.back()
    assert item(pages) == "mounts"
    pages.tap("Joint: torque and locker")
    pages.time += timedelta(minutes=14)
    pages.act(Place("ride"))
    begin(pages)
    assert pages.shows("You stopped at 5 of 9, 14\u00a0min ago.")


# What stands in the way of a ride.


@pytest.fixture
def out(pages: Reader) -> Reader:
    """Give the pages with the pack of Towpath 36 taken out of use."""
    pages.open("ride.pack_signs")
    pages.tap("Swollen")
    pages.tap("Take this pack out of use")
    pages.back()
    return pages


def test_a_run_with_the_pack_out_of_use_never_ends_in_right(out: Reader) -> None:
    begin(out)
    right_until(out, "")
    assert (out.page.crown.word, out.page.crown.form) == ("Do not ride: pack swollen", WRONG)
    assert out.page.crown.text == "That forbids it. Of the items here, 9 of 9 right."
    out.tap("PACK OUT OF USE:\nwhat to do")
    assert out.name == "ride.pack_signs"
    out.back()
    out.tap("FINISH: NOT RIDING")
    assert last_check(out).held == "pack swollen"
    # No ride comes of it: nothing that counts rides moves on.
    assert out.world.history().ridden(-1)[0] == 0


def test_every_other_list_says_so_too_and_still_counts_as_done(out: Reader) -> None:
    out.store.append(out.world.saved.id, Ride(distance=8000.0, wet=True))
    looked_over(out)
    out.restart()
    begin(out, "after_water")
    right_until(out, "")
    assert out.page.crown.word == "Do not ride: pack swollen"
    out.tap("FINISH: NOT RIDING")
    assert out.world.due == ()


@pytest.fixture
def wet(pages: Reader) -> Reader:
    """Give the pages at the end of a check before a ride, every item right, a check after water due."""
    pages.store.append(pages.world.saved.id, Ride(distance=8000.0, wet=True))
    looked_over(pages)
    pages.restart()
    begin(pages)
    right_until(pages, "")
    return pages


def test_a_due_check_that_stops_a_ride_comes_before_the_sign_off(wet: Reader) -> None:
    assert (wet.page.crown.word, wet.page.crown.form) == ("Not yet: check after water is due", WRONG)
    assert wet.page.crown.text == "That comes first. Of the items here, 9 of 9 right."
    assert not any(bar.text == "FINISH" for bar in (wet.page.foot.main, *wet.page.foot.beside))
    wet.act(Finish())
    assert wet.name == "ride.run_over"
    assert wet.world.last("check", base="before_ride") is None
    wet.tap("Check after water")
    right_until(wet, "")
    wet.tap("FINISH")
    assert wet.page.crown.word == "Fit to ride"
    wet.tap("FINISH")
    lists = [record.body.list for record in wet.records("check")]
    assert lists == ["before_ride", "after_water", "first_recheck"]
    assert last_check(wet).put_off == ()


def test_a_list_says_in_one_sentence_what_it_found_and_when(pages: Reader) -> None:
    why = ("Wheels: wobble",)
    logged(
        pages,
        Check(list="before_ride", base="before_ride", verdict="stopped", fit="do not ride", fit_why=why),
    )
    pages.open("ride.lists")
    assert pages.shows("Do not ride: wheels (wobble), just now.")


def test_what_another_list_left_open_forbids_riding_until_that_list_finds_it_right(pages: Reader) -> None:
    slips = Fault("set_screw", "Motor pulley", "Turns on the shaft", stops=True)
    recheck = logged(
        pages, Check(list="first_recheck", base="first_recheck", verdict="stopped", faults=(slips,))
    )
    begin(pages)
    right_until(pages, "")
    crown = pages.page.crown
    assert (crown.word, crown.form) == ("Do not ride", WRONG)
    assert crown.text.startswith("Motor pulley: Turns on the shaft.")
    assert pages.page.foot.main is None
    pages.tap("FINISH: NOT RIDING")
    assert last_check(pages).fit == "do not ride"
    logged(pages, replace(recheck, verdict="not finished", faults=(), answers={"set_screw": ("right", "")}))
    begin(pages)
    right_until(pages, "")
    assert pages.page.crown.word != "Do not ride"


def test_a_swollen_pack_that_ends_a_run_leads_to_taking_it_out(pages: Reader) -> None:
    begin(pages)
    pages.tap("NOT RIGHT")
    assert pages.page.crown.word == "danger"
    pages.tap("Swollen")
    pages.tap(PRE.halt.upper())
    pages.tap("TAKE THE PACK OUT OF USE")
    pages.tap("Swollen")
    pages.tap("Take this pack out of use")
    assert pages.shows("Out of use: swollen, just now.")
    pages.act(Back())
    pages.tap("CLOSE")
    assert pages.name == "ride"


# How it is laid out.


def ends(pages: Reader) -> Iterator[tuple[str, object]]:
    """The pages that a run comes through and that need one under way."""
    begin(pages)
    right(pages)
    pages.tap("The whole list")
    yield "list", pages.page
    pages.back()
    right_until(pages, "mounts")
    pages.tap("NOT RIGHT")
    pages.tap("Line broken")
    pages.tap("NOTE IT AND GO ON")
    right_until(pages, "")
    yield "noted", pages.page
    pages.back()
    pages.tap("NOT RIGHT")
    pages.tap("No lights")
    pages.tap("STOP: NOT RIDING")
    yield "stopped", pages.page


def test_the_end_of_a_run_and_its_list_are_whole_at_every_size(pages: Reader) -> None:
    found = []
    for what, page in ends(pages):
        assert any(isinstance(block, Line) for block in page.blocks) or what == "stopped"
        for width, height in SIZES:
            for scale in SCALES:
                found += [
                    f"{what} {width}x{height} {scale} {part}: {fault}"
                    for part, laid in laids(page, width, height, scale)
                    for fault in faults(laid)
                ]
    assert found == []


@pytest.mark.parametrize("demo", [True, False], ids=["example board", "no board"])
@pytest.mark.parametrize("scale", [1.0, 1.3])
def test_an_item_is_read_and_answered_without_a_swipe_on_the_smallest_phone(
    tmp_path: Path,
    scale: float,
    demo: bool,  # noqa: FBT001
) -> None:
    """Issue's bar: 320 x 568 with text 1.3. Hazards stand before the act; both answers are in the foot."""
    pages = Reader(tmp_path, demo=demo)
    out, count = [], 0
    for key in pages.world.lists():
        pages.act(Place("ride"))
        begin(pages, key)
        for one in pages.world.checklist(key).items:
            pages.act(PutInFront(one.key))
            page = pages.page
            seen = in_sight(page, 320, 568, scale)
            wanted = {
                "action",
                "wanted",
                *(["how"] if one.how else []),
                *(["choice"] if one.ask == "choice" else []),
            }
            if not wanted <= seen:
                out.append(f"{key} {one.key}: {sorted(wanted - seen)}")
            keys = [block.key for block in page.blocks]
            assert not one.care or keys.index("care") < keys.index("action")
            assert (page.foot.main.text, page.foot.beside[0].text) == (one.state.upper(), "NOT RIGHT")
            count += 1
    pages.close()
    assert count > 100
    assert out == []


def test_text_shrinks_by_a_quarter_at_most_and_never_below_normal(pages: Reader) -> None:
    begin(pages, "after_ride")
    pages.act(PutInFront("heat"))
    page = pages.page
    for scale in (1.0, 1.3, 2.0):
        look = look_of(568, scale)
        small = whole_look(page.blocks, page.whole, 320, look, 10.0)
        assert max(1.0, 0.75 * scale) == pytest.approx(small.scale)
        assert whole_look(page.blocks, page.whole, 320, look, 10_000.0) == look


def test_a_run_that_ended_elsewhere_says_so(pages: Reader) -> None:
    begin(pages, "before_ride")
    pages.store.drop_run(pages.world.saved.id, "before_ride")
    pages.world = replace(open_world(pages.store, lambda: pages.time), trail=pages.world.trail)
    assert pages.shows("This run has ended.")


def test_a_line_of_the_whole_list_touched_twice_fails_nowhere(pages: Reader) -> None:
    twice = Both((Back(), PutInFront("wheels")))
    pages.act(Place("ride"))
    pages.act(twice)
    assert pages.page.title


def test_every_page_that_an_item_leads_to_has_a_name() -> None:
    opens = {item.opens for of in checklists().values() for item in of.items}
    assert opens & set(PAGES) <= {*texts("pages")["titles"], *texts("pages")["called"]}
