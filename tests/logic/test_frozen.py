"""Our frozen dataclasses do what the standard library's do: the same cases are put to both."""

# ruff: noqa: ARG005  (each case is given both classes)

import copy
import pickle
from collections.abc import Callable
from dataclasses import FrozenInstanceError, asdict, dataclass, field, fields, is_dataclass, replace
from functools import cached_property
from typing import Any

import pytest

from logic.frozen import frozen


@frozen
class OurBase:
    """A value with a list of its own and one that is not compared."""

    name: str
    parts: list[int] = field(default_factory=list)
    note: str = field(default="", compare=False)


@frozen(kw_only=True)
class OurMore(OurBase):
    """One more field, held to a limit."""

    size: int = 1

    def __post_init__(self) -> None:
        """Refuse what is too small."""
        if self.size < 0:
            raise ValueError(self.size)

    @cached_property
    def double(self) -> int:
        """Twice the size."""
        return 2 * self.size


@dataclass(frozen=True)
class Base:
    """A value with a list of its own and one that is not compared."""

    name: str
    parts: list[int] = field(default_factory=list)
    note: str = field(default="", compare=False)


@dataclass(frozen=True, kw_only=True)
class More(Base):
    """One more field, held to a limit."""

    size: int = 1

    def __post_init__(self) -> None:
        """Refuse what is too small."""
        if self.size < 0:
            raise ValueError(self.size)

    @cached_property
    def double(self) -> int:
        """Twice the size."""
        return 2 * self.size


@dataclass(frozen=True)
class Mixed(OurBase):
    """A standard one made of ours."""

    size: int = 1


def outcome(act: Callable[[], Any]) -> Any:
    """Return what an act gives, or the kind of its fault."""
    try:
        found = act()
    except (TypeError, ValueError, FrozenInstanceError, AttributeError) as problem:
        return type(problem)
    return repr(found).removeprefix("Our")


@pytest.mark.parametrize(
    "act",
    [
        lambda base, more: base("a"),
        lambda base, more: base("a", [1], "note"),
        lambda base, more: base("a", note="x"),
        lambda base, more: base(),
        lambda base, more: base("a", [1], "x", 4),
        lambda base, more: base("a", name="b"),
        lambda base, more: base("a", size=3),
        lambda base, more: base("a").parts is base("a").parts,
        lambda base, more: base("a") == base("a", note="other"),
        lambda base, more: base("a") == base("b"),
        lambda base, more: base("a") == more("a"),
        lambda base, more: more("a", size=2).double,
        lambda base, more: more("a", [], "", 2),
        lambda base, more: more("a", size=-1),
        lambda base, more: replace(more("a", size=2), name="b"),
        lambda base, more: replace(more("a", size=2), size=-1),
        lambda base, more: asdict(more("a", [1], size=2)),
        lambda base, more: [part.name for part in fields(more)],
        lambda base, more: is_dataclass(more),
        lambda base, more: copy.deepcopy(more("a", [1], size=2)),
        lambda base, more: pickle.loads(pickle.dumps(more("a", [1]))),  # noqa: S301  (our own)
        lambda base, more: setattr(base("a"), "name", "b"),
        lambda base, more: delattr(base("a"), "name"),
        lambda base, more: hash(base("a")),
        lambda base, more: hash(base("a", ())) == hash(base("a", (), "other")),
        lambda base, more: {base("a", ()): 1}[base("a", (), "other")],
    ],
)
def test_what_the_standard_library_does(act: Callable[[Any, Any], Any]) -> None:
    assert outcome(lambda: act(OurBase, OurMore)) == outcome(lambda: act(Base, More))


def test_a_standard_one_may_be_made_of_ours() -> None:
    assert Mixed("a", size=2) == Mixed("a", size=2)
    with pytest.raises(FrozenInstanceError):
        Mixed("a").size = 3  # type: ignore[misc]


def test_a_field_may_have_any_name() -> None:
    @frozen
    class Names:
        """Names that the written function might use itself."""

        kept: tuple[int, ...] = ()
        named: int = 0
        made: int = 1

    assert asdict(Names((1,), made=3)) == {"kept": (1,), "named": 0, "made": 3}


def test_what_a_class_defines_itself_stays() -> None:
    @frozen
    class Own:
        """Equal to everything."""

        name: str

        def __eq__(self, other: object) -> bool:
            return True

        def __hash__(self) -> int:
            return 7

    assert Own("a") == Own("b")
    assert hash(Own("a")) == 7
