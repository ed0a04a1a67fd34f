"""What a belt's wear tells: from what one sees to its cause and what to do."""

from functools import partial
from typing import Any

from kivy.properties import ObjectProperty, StringProperty

from logic.tables import rows
from screens.app_page import AppPage
from screens.widgets.load import load_kv
from screens.widgets.row import Row
from screens.words.workings import source_text


class WearPage(AppPage):
    """The signs; a tap shows one."""

    signs = ObjectProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """List the signs once."""
        super().__init__(*args, title="Wear of a belt", **kwargs)
        for number, line in enumerate(rows("belt_wear")):
            row = Row(title=line.text("sign"), detail=line.text("look"))
            row.bind(on_release=partial(self._go, number))
            self.signs.add_widget(row)

    def _go(self, number: int, *_: object) -> None:
        self.shell.go("bench.wear_sign", number=number)


class WearSign(AppPage):
    """One sign, its causes and what to do."""

    sign = StringProperty()
    look = StringProperty()
    causes = StringProperty()
    do = StringProperty()
    source = StringProperty()

    def __init__(self, *args: Any, **kwargs: Any) -> None:  # noqa: ANN401  (as AppPage)
        """Build it empty."""
        super().__init__(*args, title="Wear of a belt", **kwargs)

    def refresh(self) -> None:
        """Show the row `number` of the table."""
        line = rows("belt_wear")[self.args["number"]]
        self.sign, self.look = line.text("sign"), line.text("look")
        self.causes, self.do = line.text("causes"), line.text("do")
        self.source = source_text(line.source, line.where)


load_kv(__file__)
