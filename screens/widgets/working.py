"""The working of a result: for each step the formula, the numbers put in, the result, the source."""

from dataclasses import dataclass
from typing import Any

from kivy.properties import ListProperty, StringProperty

from screens.theme import theme
from screens.widgets.column import Column
from screens.widgets.load import load_kv
from screens.widgets.surface import Surface


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a working, in words ready to be shown."""

    title: str
    formula: str
    lines: tuple[str, ...]
    result: str
    source: str
    standing: str


class StepPanel(Surface, Column):
    """One step."""

    title = StringProperty()
    formula = StringProperty()
    numbers = StringProperty()
    result = StringProperty()
    source = StringProperty()
    standing = StringProperty()

    def dress(self, *_: object) -> None:
        """Outline the step."""
        self.fill, self.edge = theme.panel, theme.outline


class Working(Column):
    """All steps, the first one first."""

    steps = ListProperty()

    def __init__(self, **kwargs: Any) -> None:  # noqa: ANN401 - Kivy passes property values through.
        """Build the panels."""
        super().__init__(**kwargs)
        self._build()
        self.fbind("steps", self._build)

    def _build(self, *_: object) -> None:
        self.clear_widgets()
        for step in self.steps:
            self.add_widget(
                StepPanel(
                    title=step.title,
                    formula=step.formula,
                    numbers="\n".join(step.lines),
                    result=step.result,
                    source=step.source,
                    standing=step.standing,
                )
            )


load_kv(__file__)
