"""Evaluates the text of a formula, with plain numbers or with Pint quantities: the second reader of every working."""

import ast
import math
from collections.abc import Callable
from typing import Any

from logic.units import registry

ALLOWED = (
    ast.Expression, ast.BinOp, ast.UnaryOp, ast.IfExp, ast.Compare, ast.BoolOp, ast.And, ast.Or, ast.Call, ast.Name, ast.Load,
    ast.Constant, ast.Add, ast.Sub, ast.Mult, ast.Div, ast.Pow, ast.USub, ast.UAdd, ast.Lt, ast.LtE, ast.Gt, ast.GtE, ast.Eq,
)  # fmt: skip

NUMBERS: dict[str, Any] = {
    "pi": math.pi, "sqrt": math.sqrt, "sin": math.sin, "cos": math.cos, "tan": math.tan, "asin": math.asin,
    "acos": math.acos, "atan": math.atan, "exp": math.exp, "log": math.log, "abs": abs, "floor": math.floor,
    "min": min, "max": max,
}  # fmt: skip


def _angle(function: Callable[[float], float]) -> Callable[[Any], Any]:
    def with_quantity(x: Any) -> Any:
        unit = registry()
        number = x.to("radian").magnitude if hasattr(x, "to") else x
        return unit.Quantity(function(number), "")

    return with_quantity


QUANTITIES: dict[str, Any] = {
    **{name: _angle(NUMBERS[name]) for name in ("sin", "cos", "tan", "asin", "acos", "atan", "exp", "log")},
    "pi": math.pi, "sqrt": lambda x: x**0.5, "abs": abs, "floor": lambda x: x, "min": min, "max": max,
}  # fmt: skip


def evaluate(text: str, names: dict[str, Any], functions: dict[str, Any]) -> Any:
    """Return the value of a formula text; refuses anything outside the grammar."""
    tree = ast.parse(text, mode="eval")
    for node in ast.walk(tree):
        if not isinstance(node, ALLOWED):
            raise TypeError(f"{type(node).__name__} is not in the grammar: {text}")
    return eval(compile(tree, text, "eval"), {"__builtins__": {}}, {**functions, **names})  # noqa: S307  (grammar checked)
