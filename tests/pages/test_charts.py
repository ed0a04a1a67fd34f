"""What stands on the axes of a chart."""

import re

from screens.acts import Go
from screens.acts.keeping import Settle
from screens.blocks import Picture
from screens.pictures.chart import Curve, chart
from screens.pictures.history import Reading, history
from screens.pictures.strokes import Drawing, Label
from tests.pages.reader import Reader

CHARTS = ("numbers.gearing", "numbers.stopping", "numbers.range", "numbers.hold")


def labels(drawn: Drawing) -> list[str]:
    """Return the words of a drawing."""
    return [stroke.text for stroke in drawn.strokes if isinstance(stroke, Label)]


def test_the_ticks_have_the_decimal_mark_that_is_asked_for() -> None:
    drawn = chart([Curve("", [(0.0, 0.0), (0.4, 1.0)])], x_title="", y_title="", mark=",")
    assert {"0,2", "0,4"} <= set(labels(drawn))
    kept = history([Reading(0.1, 90.0, 1.0), Reading(0.4, 91.0, 1.0)], None, y_title="", mark=",")
    assert kept is not None
    assert {"0,1", "0,4"} <= set(labels(kept))


def test_no_chart_has_a_point_where_the_person_writes_a_comma(pages: Reader) -> None:
    pages.act(Settle({"mark": ","}))
    drawn = 0
    for name in CHARTS:
        pages.act(Go(name))
        for block in pages.page.blocks:
            if isinstance(block, Picture):
                drawn += 1
                assert [text for text in labels(block.strokes) if re.search(r"\d\.\d", text)] == []
    assert drawn >= len(CHARTS)
