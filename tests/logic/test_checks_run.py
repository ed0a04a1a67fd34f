"""A run of a checklist, step by step, without a screen."""

from dataclasses import replace
from datetime import UTC, datetime, timedelta

import pytest

from logic.checks.lists import checklist
from logic.checks.open_faults import finding
from logic.checks.run import (
    ASIDE,
    FAILED,
    NOTED,
    RIGHT,
    Answer,
    answered,
    back_one,
    begin,
    fit,
    go_to,
    how_old,
    resumed,
    run_from_dict,
    run_to_dict,
)
from logic.checks.verdict import (
    ALL_RIGHT,
    CARE,
    FIT,
    NOT,
    STOPPED,
    UNFINISHED,
    WITH_NOTES,
    Fitness,
    check_entry,
    fitness,
    verdict,
)
from logic.errors import InputError
from logic.history import Event, History

NOW = datetime(2026, 11, 25, 10, 0, tzinfo=UTC)
OF = checklist("before_ride")


def say(run, state, note="", seconds=0.0):
    at = (NOW + timedelta(seconds=seconds)).isoformat()
    return answered(run, OF.item(run.at), Answer(state, at, note, 40.0 if run.at == "charge" else None))


def through(until="", *, pace=9.0, noted=""):
    run, seconds = begin(OF, NOW), 0.0
    while run.at and run.at != until:
        seconds += pace
        run = say(run, NOTED if run.at == noted else RIGHT, "creeps" if run.at == noted else "", seconds)
    return run


def test_all_right_is_counted_and_nothing_is_promised():
    found = verdict(through(), OF)
    assert (found.word, found.right, found.total, found.seconds) == (ALL_RIGHT, 9, 9, 81.0)
    assert not found.fast
    assert verdict(through(pace=2.0), OF).fast


def test_a_stop_item_cannot_be_waved_through():
    run = begin(OF, NOW)
    for state in (NOTED, ASIDE):
        with pytest.raises(InputError, match="stop item"):
            say(run, state, "no")
    for item in OF.items:
        if item.stop:
            before = through(item.key)
            assert before.at == item.key
            with pytest.raises(InputError, match="stop item"):
                say(before, NOTED, "no")


def test_a_stop_sign_makes_a_stop_of_an_item_that_is_none():
    run = through("mounts")
    for sign in ("Mount moves", "Screw missing"):
        for state in (NOTED, ASIDE):
            with pytest.raises(InputError, match="stop item"):
                answered(run, OF.item("mounts"), Answer(state, NOW.isoformat(), sign, sign=sign))
        ended = answered(run, OF.item("mounts"), Answer(FAILED, NOW.isoformat(), sign, sign=sign))
        assert verdict(ended, OF).reason == sign
    noted = answered(
        run, OF.item("mounts"), Answer(NOTED, NOW.isoformat(), "Line broken", sign="Line broken")
    )
    assert noted.at == "charge"
    assert run_from_dict(run_to_dict(noted)) == noted


def test_a_problem_needs_a_note_and_a_failed_stop_item_ends_the_run_with_its_reason():
    run = through("wheels")
    with pytest.raises(InputError, match="note wanted"):
        say(run, FAILED, "  ")
    found = verdict(say(run, FAILED, "Wobbles"), OF)
    assert (found.word, found.stopped_by, found.reason) == (STOPPED, "wheels", "Wobbles")
    body = check_entry(say(run, FAILED, "Wobbles"), OF, {})
    assert body.halted == "Not riding"


def test_a_check_before_a_ride_ends_in_one_of_three_verdicts():
    assert fitness(through(), OF) == Fitness(FIT)
    assert fitness(through(noted="mounts"), OF) == Fitness(CARE, ("Mounts: creeps",))
    low = answered(through("charge"), OF.item("charge"), Answer(RIGHT, NOW.isoformat(), "nearly empty", 30.1))
    while low.at:
        low = say(low, ASIDE if low.at == "rider" else RIGHT)
    assert fitness(low, OF) == Fitness(CARE, ("nearly empty", f"{OF.item('rider').name}: not looked at"))
    assert verdict(low, OF).word == WITH_NOTES
    stopped = say(through("wheels"), FAILED, "Wobbles")
    assert fitness(stopped, OF) == Fitness(NOT, ("Wheels: Wobbles",))
    # What else forbids riding, is put off or was left open comes into it.
    assert fitness(through(), OF, "pack swollen") == Fitness(NOT, ("pack swollen",))
    assert fitness(
        through(), OF, "", [("Check after water", "dry by now")], ["Motor screws: Line broken"]
    ) == (Fitness(CARE, ("Motor screws: Line broken", "Check after water is put off")))
    # No verdict on a run with gaps, nor on a list after which nobody rides.
    assert fitness(through("brake"), OF) is None
    storage = checklist("storage")
    assert fitness(begin(storage, NOW), storage) is None


def log_of(*bodies):
    events = enumerate(bodies, start=1)
    return History(
        Event(row, NOW, "check", body.base, found=finding(body, NOW)) for row, body in events
    ).faults


def test_a_fault_stays_open_until_its_list_finds_it_right():
    stopped = check_entry(say(through("wheels"), FAILED, "Wobbles"), OF, {})
    (fault,) = log_of(stopped)
    assert (fault.text, fault.stops) == ("Wheels: Wobbles", True)
    # A run that is broken off before the item clears nothing; one that finds it right does, finished or not.
    assert log_of(stopped, replace(check_entry(through("wheels"), OF, {}), verdict=UNFINISHED)) == (fault,)
    assert log_of(stopped, replace(check_entry(through("trucks"), OF, {}), verdict=UNFINISHED)) == ()
    assert log_of(stopped, check_entry(through(), OF, {})) == ()
    # Noted again it is open once, as it was seen last; another list says nothing of it.
    noted = check_entry(through(noted="mounts"), OF, {})
    assert [one.text for one in log_of(noted, noted)] == ["Mounts: creeps"]
    after = checklist("after_ride")
    assert len(log_of(noted, check_entry(begin(after, NOW), after, {}))) == 1
    # An item that an own list no longer asks is no longer open after a whole run of it.
    fewer = replace(OF, items=tuple(item for item in OF.items if item.key != "mounts"))
    run = begin(fewer, NOW)
    while run.at:
        run = answered(run, fewer.item(run.at), Answer(RIGHT, NOW.isoformat()))
    assert log_of(noted, check_entry(run, fewer, {})) == ()
    # Lists of storage and travel keep nothing open.
    storage = checklist("storage")
    run = begin(storage, NOW)
    full = answered(run, storage.item(run.at), Answer(FAILED, NOW.isoformat(), "Swollen"))
    assert log_of(check_entry(full, storage, {})) == ()


def test_a_second_tap_in_a_rush_answers_nothing():
    run = begin(OF, NOW)
    first = OF.items[0]
    after = answered(run, first, Answer(RIGHT, NOW.isoformat()))
    with pytest.raises(InputError, match="not in front"):
        answered(after, first, Answer(RIGHT, NOW.isoformat()))


def test_a_note_is_never_all_right_and_comes_first_next_time():
    run = through(noted="mounts")
    found = verdict(run, OF)
    assert (found.word, found.right, found.notes) == (WITH_NOTES, 8, (("mounts", "creeps"),))
    body = check_entry(run, OF, {})
    assert begin(OF, NOW, body.noted).at == "mounts"


def test_back_one_takes_the_answer_back():
    run = through("trucks")
    back = back_one(run, NOW)
    assert back.at == "wheels"
    assert "wheels" not in back.answers
    assert back_one(begin(OF, NOW), NOW).at == OF.items[0].key
    jumped = go_to(through(), "charge", NOW)
    assert jumped.at == "charge"
    assert verdict(jumped, OF).word == UNFINISHED
    assert say(jumped, RIGHT).at == ""


@pytest.mark.parametrize(
    ("minutes", "age"),
    [
        (5, "fresh"),
        (9.9, "fresh"),
        (15, "stale"),
        (30, "stale"),
        (31, "lapsed"),
        # The phone's clock corrected by itself, then set back by hand: nobody knows how long it was.
        (-0.5, "fresh"),
        (-5, "lapsed"),
        (-600, "lapsed"),
    ],
)
def test_a_broken_off_run_goes_on_begins_again_or_lapses(minutes, age):
    run = through("trucks", pace=0.0)
    assert how_old(run, OF, NOW + timedelta(minutes=minutes)) == age
    build = checklist("build.belt")
    assert how_old(begin(build, NOW), build, NOW + timedelta(days=20)) == "fresh"


def test_a_break_is_kept_and_left_out_of_the_time():
    run = resumed(through("trucks", pace=1.0), NOW + timedelta(minutes=8))
    while run.at:
        run = say(run, RIGHT, seconds=500)
    body = check_entry(run, OF, {})
    assert body.breaks == 1
    assert body.seconds == pytest.approx(500 - (480 - 2))


def test_a_run_survives_its_own_text():
    run = resumed(through("brake", noted="mounts"), NOW + timedelta(minutes=3))
    assert run_from_dict(run_to_dict(run)) == run


def test_a_run_fits_itself_to_a_board_that_changed():
    full = checklist("first_power")
    run = begin(full, NOW)
    while run.at != "same_way":
        run = answered(run, full.item(run.at), Answer(RIGHT, NOW.isoformat()))
    fewer = type(full)(
        **{**full.__dict__, "items": tuple(one for one in full.items if one.key != "same_way")}
    )
    assert fit(run, fewer).at == "brake"
    assert fit(fit(run, fewer), full).at == "brake"
    assert "same_way" in fit(fit(run, fewer), full).order
