"""The search over everything, and the words of the trade."""

import re

import pytest

from logic.board import board_fields
from logic.glossary import word_of, words, words_in
from logic.log import Note
from logic.search import Thing, search
from logic.tables import rows, sources
from screens.acts import Explain, Place
from screens.acts.entering import Write
from screens.acts.keeping import Record
from screens.bench.explained import explained
from screens.blocks import Section
from screens.register import PAGES
from screens.told.tools import with_tools
from screens.tongue import texts
from tests.pages.reader import Reader
from tests.pages.states import names

OPENED_FROM_ANOTHER = {
    "ride.run",
    "ride.run_list",
    "ride.run_over",
    "ride.not_right",
    "ride.tension_saved",
    "ride.flight_card",
    "bench.saved",
    "bench.view",
    "bench.wear_sign",
    "bench.fault",
    "numbers.pair",
    "log.entry",
    "log.snooze",
    "board.value",
    "board.name",
    "settings.list",
    "settings.item",
    "settings.unread",
    "settings.fault",
    "working",
    "search",
}
"""Pages that show one thing of another page, or are no answer to a search."""
HOMES = ("ride", "bench", "numbers", "log")
MOST_WORDS = 15


def look(pages: Reader, wanted: str) -> Reader:
    pages.open("search")
    pages.act(Write("search", wanted))
    return pages


def rows_of(pages: Reader, kind: str) -> list[str]:
    return [block.title for block in pages.blocks() if block.key.startswith(f"{kind} ")]


# What is found


@pytest.mark.parametrize("home", HOMES)
def test_the_search_is_one_tap_from_every_place(pages: Reader, home: str) -> None:
    pages.act(Place(home))
    pages.tap("Search")
    assert pages.name == "search"
    assert pages.shows("Pack hot or swollen?")


@pytest.mark.parametrize(
    ("wanted", "kind", "first"),
    [
        ("stopping", "page", "Stopping"),
        ("airline", "page", "Pack for a flight"),
        ("which pulleys", "page", "Pairs of pulleys"),
        ("how far", "page", "Range"),
        ("grub", "screw", "Motor pulley set screws"),
        ("kv", "word", "Motor constant (Kv)"),
        ("10S2P", "word", "Cells in series"),
        ("durometer", "word", "Shore A"),
        ("locker", "page", "Threadlocker"),
    ],
)
def test_the_words_of_a_rider_find_it(pages: Reader, wanted: str, kind: str, first: str) -> None:
    look(pages, wanted)
    assert rows_of(pages, kind)[0] == first


def test_one_word_finds_all_kinds_and_each_row_opens(pages: Reader) -> None:
    pages.act(Record(Note(note="Left belt sings")))
    look(pages, "belt")
    for kind in ("page", "fault", "word", "entry"):
        found = [block for block in pages.blocks() if block.key.startswith(f"{kind} ")]
        assert found, kind
        for block in found:
            pages.act(block.act)
            assert pages.page.title
            pages.back()
    pages.tap("Left belt sings")
    assert pages.name == "log.entry"


def test_the_rest_of_a_kind_opens_with_the_same_words(pages: Reader) -> None:
    look(pages, "belt")
    more = [block for block in pages.blocks() if block.key.startswith("more ")]
    assert more
    for block in more:
        count = int(block.title.split()[0])
        pages.act(block.act)
        assert count > 0
        assert "belt" in [pages.world.typed.get(key) for key in ("lookup", "faults", "glossary", "log")]
        look(pages, "belt")


def test_nothing_that_fits_says_so_and_offers_ways_on(bare: Reader) -> None:
    look(bare, "zeppelin")
    assert bare.shows("Nothing fits.")
    assert bare.shows("Something is wrong")


def test_a_joint_of_the_board_opens_its_own_card(pages: Reader) -> None:
    look(pages, "motor face")
    pages.tap("Motor face screws")
    assert (pages.name, pages.world.args["joint"]) == ("bench.joint", "motor_face")


def test_every_word_must_fit_and_the_title_counts_most() -> None:
    things = (
        Thing("page", "a", "Range", ("how", "far"), "Speed and climb"),
        Thing("page", "b", "Gearing and speed"),
        Thing("page", "c", "Speed"),
    )
    assert [one.key for one in search("speed", things)] == ["c", "b", "a"]
    assert [one.key for one in search("far range", things)] == ["a"]
    assert search("speed boat", things) == ()
    assert search("  ", things) == ()


def test_every_page_that_opens_from_nothing_is_found_by_its_own_title(pages: Reader) -> None:
    listed = set(texts("pages")["titles"])
    assert listed <= set(PAGES)
    apart = OPENED_FROM_ANOTHER | {
        name for name in PAGES if name.startswith(("bench.joint_", "bench.lookup"))
    }
    data = set(names())
    assert (
        data - listed - apart - set(HOMES) - {"bench.joint", "bench.motor", "bench.sound", "bench.power"}
        == set()
    )
    for page, title in texts("pages")["titles"].items():
        if page in data and page not in ("ride.tension", "bench.belt", "numbers.belt"):
            assert pages.open(page).page.title == title, page


# Words of the trade


def test_each_word_says_what_it_is_and_how_one_finds_it_in_short_sentences() -> None:
    for word in words().values():
        for text in (word.what, word.find):
            assert text.endswith("."), word.key
            for sentence in re.split(r"(?<=[.:?;])\s+", text):
                assert len(sentence.split()) <= MOST_WORDS, (word.key, sentence)


def test_each_word_has_a_source_and_leads_to_what_exists(pages: Reader) -> None:
    keys = [row.text("key") for row in rows("glossary")]
    assert len(keys) == len(set(keys))
    for word in words().values():
        assert word.row.source in sources(), word.key
        assert word.row.standing in ("practice", "published"), word.key
        assert word.row.where, word.key
        assert set(word.see) <= set(keys), word.key
        assert set(word.fields) <= set(board_fields()), word.key
        assert not word.picture or explained(pages.world, pages.world.board, word.picture), word.key


def test_values_that_are_read_off_a_part_have_a_word() -> None:
    for field, key in (("motor.kv", "kv"), ("pack.series", "series"), ("drive.profile", "belt profile")):
        word = word_of(field)
        assert word is not None
        assert word.key == key
    assert word_of("load.board_mass") is None


def test_words_are_found_in_running_text_but_not_inside_others() -> None:
    assert [word.key for word in words_in("The spans of both belts, and a fuse")][:1] == ["span"]
    assert "fuse" in [word.key for word in words_in("Fuse 15 A")]
    assert "fuse" not in [word.key for word in words_in("refused")]


def test_the_words_of_a_page_are_one_tap_from_it(pages: Reader) -> None:
    pages.open("numbers.gearing")
    shown = with_tools(pages.page, hears=False)
    row = shown.blocks[-1]
    # What hands the page on is no part of its own last group.
    head = shown.blocks[-4]
    assert isinstance(head, Section)
    assert head.title == "This page"
    assert (row.title, row.act) == ("Words on this page", Explain())
    pages.act(row.act)
    assert pages.name == "glossary"
    titles = rows_of(pages, "word")
    assert {"Motor pulley", "Wheel pulley", "Gear ratio"} <= set(titles)
    assert "Threadlocker" not in titles
    pages.tap("All words")
    assert len(rows_of(pages, "word")) == len(words())


def test_a_page_without_an_answer_has_no_row_of_words(pages: Reader) -> None:
    pages.open("glossary", word="span")
    assert with_tools(pages.page, hears=False) == pages.page


def test_a_value_leads_to_its_word(pages: Reader) -> None:
    pages.open("board.value", key="pack.series")
    pages.tap("What it means: Cells in series")
    assert pages.page.title == "Cells in series"
    pages.open("board.value", key="load.board_mass")
    assert not pages.shows("What it means")


def test_a_word_shows_the_value_of_this_board(pages: Reader) -> None:
    pages.open("glossary")
    pages.act(Write("glossary", "kv"))
    pages.tap("Motor constant (Kv)")
    assert pages.page.title == "Motor constant (Kv)"
    assert "rpm/V" in pages["motor.kv"].value
    assert pages.shows("Common practice, no source: words of the trade.")
    pages.tap("Gear ratio")
    assert pages.page.title == "Gear ratio"
    pages.back()
    pages.back()
    assert pages.shows("Motor constant (Kv)")


@pytest.mark.parametrize(
    ("typed", "title"),
    [
        ("send", "Files and copies"),
        ("friend", "Files and copies"),
        ("fuse", "Wiring and fuse"),
        ("wet", "Fault guide"),
    ],
)
def test_a_word_one_would_say_finds_its_page(bare: Reader, typed: str, title: str) -> None:
    bare.open("search")
    bare.act(Write("search", typed))
    assert title in [getattr(block, "title", "") for block in bare.blocks()]


def test_the_icon_opens_an_empty_search_also_where_no_board_is(bare: Reader) -> None:
    bare.open("search")
    bare.act(Write("search", "friend"))
    bare.act(Place("ride"))
    bare.tap("Search")
    assert (bare.name, bare["search"].text) == ("search", "")
