"""The rules that turn the weakest limit of a joint into one setting. They stand here and nowhere else.

The ceiling is the torque at which the weakest part reaches what it is allowed, at the lowest friction there
could be. The setting lies below it by the error of a hand tool, and is rounded down to a mark of the
wrench; it is never rounded up.
"""

from math import floor

from logic.errors import positive
from logic.si import NewtonMetre, One
from logic.tables import pick, rows
from logic.workings import Given, cited, given


def rule(name: str) -> One:
    """Return the number of a rule of assets/tables/joint_rules.toml, recorded with its source.

    >>> rule("yield share")
    0.9
    """
    line = pick("joint_rules", rule=name)
    value = float(line.cells["value"])
    return given(Given(name, value, "1", standing=line.standing, source=line.source, where=line.where))


@cited(
    "ceiling / (1 + tool_error)",
    source="practice setting below the ceiling by the tool's error",
    standing="practice",
)
def setting_below(*, ceiling: NewtonMetre, tool_error: One) -> NewtonMetre:
    """Torque to set so that a tool that reads low by its own error still stays under the ceiling.

    >>> round(setting_below(ceiling=1.64, tool_error=0.06), 3)
    1.547
    """
    positive(ceiling=ceiling, tool_error=tool_error)
    return ceiling / (1.0 + tool_error)


@cited(
    "floor(torque / step + 0.000000001) * step",
    source="practice rounded down to a mark of the wrench",
    standing="practice",
)
def rounded_down(*, torque: NewtonMetre, step: NewtonMetre) -> NewtonMetre:
    """Torque rounded down to a mark; 0 when it is below the first mark.

    >>> round(rounded_down(torque=1.547, step=0.1), 6), rounded_down(torque=12.9, step=0.5)
    (1.5, 12.5)
    """
    positive(torque=torque, step=step)
    return floor(torque / step + 0.000000001) * step


def step_for(torque: NewtonMetre, *, of: str) -> NewtonMetre:
    """Return the step for a "setting" or a "ceiling" of this size."""
    for line in rows("torque_steps"):
        if torque < line.cells["below"]:
            return line.number(of)
    return rows("torque_steps")[-1].number(of)


def setting_for(ceiling: NewtonMetre) -> NewtonMetre:
    """Return the torque to set under a ceiling, rounded down; 0 means too small for a wrench.

    >>> round(setting_for(1.64), 6)
    1.5
    """
    below = setting_below(ceiling=ceiling, tool_error=rule("tool error"))
    return rounded_down(torque=below, step=step_for(below, of="setting"))


def shown_ceiling(ceiling: NewtonMetre) -> NewtonMetre:
    """Return a ceiling rounded down for "never above".

    >>> round(shown_ceiling(1.64), 6)
    1.6
    """
    return rounded_down(torque=ceiling, step=step_for(ceiling, of="ceiling"))
