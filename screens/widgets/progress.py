"""How far a list has come, as a row of boxes: right, not right, still open."""

from kivy.graphics import Line, Rectangle
from kivy.metrics import dp
from kivy.properties import ListProperty

from screens.theme import theme
from screens.widgets.drawing import Drawing

GAP = 3
HIGH = 12


class Progress(Drawing):
    """`states` holds one word for each item: "right", "noted", "front" or "open".

    Told apart by shape as well as colour: filled, crossed, framed twice, framed.
    """

    states = ListProperty()

    def height_wanted(self) -> float:
        """Return the height of the row."""
        return dp(HIGH + 4)

    def draw(self) -> None:
        """Draw the boxes."""
        if not self.states or self.width < dp(40):
            return
        wide = (self.width - dp(GAP) * (len(self.states) - 1)) / len(self.states)
        for place, state in enumerate(self.states):
            x, y, high = place * (wide + dp(GAP)), dp(2), dp(HIGH)
            self.ink(theme.main if state in ("right", "front") else theme.outline)
            if state == "noted":
                self.ink(theme.bad)
            if state == "right":
                self.add(Rectangle(pos=(x, y), size=(wide, high)))
            else:
                thick = dp(1.5) if state == "front" else dp(1.01)
                self.add(Line(rectangle=(x + 1, y, wide - 2, high), width=thick))
            if state == "noted":
                self.add(Line(points=(x + 2, y + 2, x + wide - 2, y + high - 2), width=dp(1.01)))
