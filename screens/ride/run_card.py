"""The card of one item of a run: what to do, what good looks like, its numbers, and where it leads."""

from typing import Any

from kivy.properties import BooleanProperty, ObjectProperty, StringProperty

from logic.answers.tension import belt_plan
from logic.checks.lists import Item
from logic.tables import sources
from screens.ride.picture import fill_drive
from screens.ride.run_figures import figure_cards
from screens.ride.run_links import Link, links
from screens.widgets.column import Column
from screens.widgets.drive_drawing import DriveDrawing
from screens.widgets.load import load_kv
from screens.widgets.notice import Notice
from screens.widgets.refill import refill
from screens.widgets.row import Row


class RunCard(Column):
    """Shows an item of the run that `page` holds, or where the run was broken off."""

    page = ObjectProperty(rebind=False)
    action = StringProperty()
    must = StringProperty()
    how = StringProperty()
    wanted = StringProperty()
    tool = StringProperty()
    before = StringProperty()
    why = StringProperty()
    why_open = BooleanProperty(defaultvalue=False)
    source = StringProperty()
    hint = StringProperty()
    big = BooleanProperty(defaultvalue=False)
    care = ObjectProperty()
    flow = ObjectProperty()
    links = ObjectProperty()
    drawing = ObjectProperty()
    why_slot = ObjectProperty()

    def show(self, item: Item, before: str, *, big: bool, fresh: bool) -> None:
        """Show an item. `before` is what was noted last time, `fresh` that another one was shown until now."""
        self.big, self.before = big, before
        self.why_open = self.why_open and not fresh
        self.must = "Must pass" if item.stop else ""
        self.action, self.how = item.action, item.how
        self.wanted = f"Wanted: {item.state[0].lower() + item.state[1:]}."
        self.tool = f"Tool: {item.tool}." if item.tool and not big else ""
        self.why = f"{item.why} If not: {item.fix[0].lower() + item.fix[1:]}" if item.fix else item.why
        self.source = f"{sources()[item.source].title}, {item.where}" if item.source in sources() else ""
        self._show_why()
        care = (item.care_word, item.care)
        refill(self.care, care, lambda: [Notice(word=item.care_word, text=item.care)] if item.care else [])
        self.flow.clear_widgets()
        for card in figure_cards(item, self.page, big=big):
            self.flow.add_widget(card)
        self._show_links(item)
        self._show_picture(item)

    def tell(self, action: str, wanted: str) -> None:
        """Show where a run was broken off, and nothing of an item."""
        self.must = self.how = self.tool = self.before = self.why = self.source = self.hint = ""
        self.action, self.wanted, self.why_open = action, wanted, False
        for column in (self.care, self.links, self.why_slot):
            refill(column, None, list)
            column.clear_widgets()
        self.flow.clear_widgets()
        self.drawing.clear_widgets()

    def _show_why(self) -> None:
        shown = (bool(self.why), self.why_open)
        refill(self.why_slot, shown, lambda: [self._why_row()] if self.why else [])

    def _why_row(self) -> Row:
        row = Row(title="Why this item", icon="shut" if self.why_open else "open", chevron=False)
        row.bind(on_release=lambda *_: self.toggle_why())
        return row

    def toggle_why(self) -> None:
        """Tell why the item is there, or no longer."""
        self.why_open = not self.why_open
        self._show_why()

    def _show_links(self, item: Item) -> None:
        wanted = list(links(item, self.page.state, self.page.style))
        refill(self.links, wanted, lambda: [self._link(one) for one in wanted])

    def _link(self, one: Link) -> Row:
        row = Row(title=one.title, detail=one.detail, value=one.value, icon=one.icon)
        row.bind(on_release=lambda *_: self.page.leave_for(one.page, **one.args))
        return row

    def _show_picture(self, item: Item) -> None:
        state: Any = self.page.state
        self.drawing.clear_widgets()
        if item.picture == "drive" and not self.big:
            picture = DriveDrawing(size_hint_y=None)
            picture.bind(wanted_height=picture.setter("height"))
            plan = belt_plan(state.saved, state.person)
            if fill_drive(picture, state.saved, self.page.style, state.person.scale_unit, plan):
                self.drawing.add_widget(picture)


load_kv(__file__)
