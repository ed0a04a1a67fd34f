"""Bench, the build from the first stage to the last, threadlocker, and what is read from a metre away."""

from logic.checks.lists import build_stages, checklist
from logic.log.checks import STOPPED, Check
from screens.acts.runs import Answer
from screens.blocks import PLAIN, RIGHT, Notice, Progress
from screens.register import PAGES
from tests.pages.reader import Reader


def test_bench_opens_every_task(pages: Reader) -> None:
    pages.open("bench")
    for block in pages.blocks():
        assert block.act.page in PAGES
    assert pages["bench.build"].detail == "0 of 9 stages done."


def test_what_to_set_in_the_controller_stands_with_the_numbers(pages: Reader) -> None:
    assert "bench.controller" not in pages.open("bench")
    assert pages.open("numbers")["bench.controller"].title == "Set the controller"


def test_the_stage_under_way_stands_on_bench(pages: Reader) -> None:
    pages.open("ride.run", list="build.wheels")
    pages.act(Answer("right"))
    pages.open("bench")
    assert pages["bench.build"].detail.startswith(f"{checklist('build.wheels').title}. ")
    pages.tap("Build, stage by stage")
    assert pages.page.foot.main.text == f"Go on: {checklist('build.wheels').title}"
    states = next(block for block in pages.blocks() if isinstance(block, Progress)).states
    assert states.count("front") == 1


def test_the_whole_build_runs_on_the_example_board(pages: Reader) -> None:
    pages.open("bench.build")
    assert (pages.page.crown.word, pages.page.crown.form) == ("0 of 9 stages done", PLAIN)
    for key in build_stages():
        pages.enter()
        assert (pages.name, pages.world.args["list"]) == ("ride.run", key)
        while pages.name == "ride.run":
            session = pages.world.session(key)
            one = session.of.item(session.under_way.at)
            value = 40.0 if one.ask == "volts" else one.options[0] if one.ask else None
            pages.act(Answer("right", value))
        pages.world.session(key).finish({})
        pages.back()
        pages.restart()
        assert pages.name == "bench.build"
    assert (pages.page.crown.word, pages.page.crown.form) == ("9 of 9 stages done", RIGHT)
    assert pages.page.foot.main.text.startswith("Begin again: ")


def test_a_stage_that_was_stopped_is_not_done(pages: Reader) -> None:
    key = build_stages()[1]
    pages.store.append(pages.world.saved.id, Check(list=key, base=key, verdict=STOPPED))
    pages.open("bench.build")
    assert pages["progress"].states[1] == "noted"
    assert (pages[key].icon, pages.page.crown.word) == ("cross", "0 of 9 stages done")


def test_first_power_opens_from_the_build(pages: Reader) -> None:
    pages.open("bench.build")
    pages.tap("First power")
    assert pages.name == "bench.power"


def test_threadlocker_by_size_and_need(pages: Reader) -> None:
    pages.open("bench.locker")
    assert pages.page.crown.word == "Medium strength"
    pages.tap("M3")
    assert pages.page.crown.word == "Low strength"
    assert pages.shows("A stronger grade could twist a screw this small")
    pages.tap("Already together")
    assert pages.page.crown.word == "Penetrating strength"
    assert [one.word for one in pages.blocks() if isinstance(one, Notice)] == ["caution"]
    pages.tap("Cure by temperature")
    assert pages.shows("Below 5 °C it may never cure")
    pages.tap("Strength on M10 steel")
    assert pages.shows("breaks loose at")
    pages.tap("Take off")
    pages.tap("Surfaces")
    assert pages.shows("Start the cure: ")


def test_what_is_read_from_a_metre_away_keeps_the_screen_on(pages: Reader) -> None:
    page = pages.open("bench.view", title="Left belt", big="1.26\u00a0kg", lines=["Pull 1 mm aside"]).page
    assert (page.title, page.crown.number, page.awake) == ("Left belt", "1.26\u00a0kg", True)
    assert [(block.text, block.role) for block in page.blocks] == [("Pull 1 mm aside", "title")]
