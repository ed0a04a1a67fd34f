"""Boards drawn at random for property tests: any values within their limits, or an example board with some changed."""

from collections.abc import Mapping

from hypothesis import strategies as st

from logic.board import Board, Field, Value, board_fields
from logic.exchange import demo_boards

EMPTY = Board("b1", "Mooring")


def values_of(field: Field) -> st.SearchStrategy[Value]:
    """Return values that a field can hold."""
    if field.kind == "choice":
        numbers: st.SearchStrategy[float | str] = st.sampled_from([option.key for option in field.options])
    elif field.kind == "count":
        numbers = st.integers(int(field.low or 0.0), int(field.high or 0.0)).map(float)
    else:
        numbers = st.floats(field.low, field.high, allow_nan=False)
    return st.builds(
        Value,
        numbers,
        st.sampled_from(["measured", "label", "guess"]),
        on=st.sampled_from(["", "2026-11-25"]),
        typed_unit=st.sampled_from(["", "mm"]),
        note=st.sampled_from(["", "nameplate"]),
    )


def with_values(board: Board, values: Mapping[str, Value | None]) -> Board:
    """Return a board with these values set, or taken out."""
    for key, value in values.items():
        board = board.with_value(key, value)
    return board


EACH_FIELD = {key: values_of(field) for key, field in board_fields().items()}

SPARSE = st.fixed_dictionaries({}, optional=EACH_FIELD).map(lambda values: with_values(EMPTY, values))
"""Boards with any of their values set."""

CHANGES = st.lists(st.sampled_from(sorted(EACH_FIELD)), max_size=6, unique=True).flatmap(
    lambda keys: st.fixed_dictionaries({key: st.none() | EACH_FIELD[key] for key in keys})
)

CHANGED = st.builds(with_values, st.sampled_from(demo_boards()), CHANGES)
"""Example boards with up to six values changed or taken out."""
