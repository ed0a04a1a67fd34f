"""An Android phone's Java side, played: classes with the signatures of Android's own, called as the bridge calls them.

Signatures: Android's public declarations, level 37, as published for TypeScript (types-android 9.1.1); the packager's own
classes by its sources. What the bridge takes for what: `calculate_score` of pyjnius 1.7.
"""

import os
import re
import sys
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path
from types import ModuleType
from typing import Any


class JavaException(Exception):  # noqa: N818  (the bridge's name)
    """What Java raises, as the bridge gives it."""


class JavaObject:
    """An object of Java's; `kinds` names what it can be taken for."""

    kinds: tuple[str, ...] = ()


class PythonJavaClass:
    """A class of Python's that Java calls."""

    __javainterfaces__: tuple[str, ...] = ()


ARGUMENT = re.compile(r"\[*(?:L[^;]+;|[ZBCSIJFD])")


def fits(wanted: str, given: object) -> bool:  # noqa: PLR0911  (one line a rule)
    """Tell whether the bridge hands an argument to a parameter."""
    if wanted == "Z":
        return isinstance(given, bool)
    if wanted in "BSIJ":
        return isinstance(given, int)
    if wanted in "FD":
        return isinstance(given, int | float)
    if given is None:
        return True
    if wanted == "[B":
        return isinstance(given, bytes | bytearray | list | tuple)
    if wanted.startswith("["):
        return isinstance(given, list | tuple) and all(fits(wanted[1:], one) for one in given)
    name = wanted[1:-1]
    if isinstance(given, str):
        return name in ("java/lang/String", "java/lang/Object")
    if isinstance(given, PythonJavaClass):
        return name in given.__javainterfaces__
    return isinstance(given, JavaObject) and (name in given.kinds or name == "java/lang/Object")


class Method:
    """A method with its signatures; it takes what one of them takes and raises what the phone makes it raise."""

    def __init__(self, function: Callable[..., Any], signatures: tuple[str, ...]) -> None:
        self.function, self.signatures = function, signatures
        self.name = function.__qualname__
        self.thing: object = None

    def __get__(self, thing: object, owner: type) -> "Method":
        bound = Method(self.function, self.signatures)
        bound.thing = thing
        return bound

    def __call__(self, *given: Any) -> Any:
        phone = Phone.now
        assert phone is not None
        phone.calls.append((self.name, given))
        for signature in self.signatures:
            wanted = ARGUMENT.findall(signature.partition(")")[0])
            if len(wanted) == len(given) and all(map(fits, wanted, given)):
                break
        else:
            raise JavaException(f"no method {self.name} takes {given}; {self.signatures}")
        if self.name in phone.fails:
            raise JavaException(f"{self.name} was refused")
        return self.function(*((self.thing,) if self.thing is not None else ()), *given)


def java(*signatures: str) -> Callable[[Callable[..., Any]], Any]:
    """Mark a method of Java's with its signatures."""
    return lambda function: Method(function, signatures)


class Phone:
    """A phone: its level, what it has, what it refuses; and what was asked of it."""

    now: "Phone | None" = None

    def __init__(self, folder: Path, level: int = 34) -> None:
        self.folder, self.level = folder, level
        self.fails: set[str] = set()
        self.lacks: set[str] = set()
        self.calls: list[tuple[str, tuple[Any, ...]]] = []
        self.classes: dict[str, Any] = {}
        self.leave: list[bool] = [True]
        self.has_leave = False
        self.asked: list[str] = []
        self.results: list[Callable[[int, int, Any], None]] = []

    def called(self, name: str) -> list[tuple[Any, ...]]:
        """Return what a method was called with, each time."""
        return [given for one, given in self.calls if one == name]

    def autoclass(self, name: str) -> Any:
        if name in self.lacks or name not in self.classes:
            raise JavaException(f"Class not found {name!r}")
        return self.classes[name]

    @contextmanager
    def here(self) -> Iterator["Phone"]:
        """Put it in place of the bridge."""
        modules = self._modules()
        before = {name: sys.modules.get(name) for name in modules}
        sys.modules.update(modules)
        os.environ["ANDROID_ARGUMENT"] = str(self.folder)
        Phone.now = self
        try:
            yield self
        finally:
            Phone.now = None
            del os.environ["ANDROID_ARGUMENT"]
            for name, module in before.items():
                if module is None:
                    del sys.modules[name]
                else:
                    sys.modules[name] = module

    def _modules(self) -> dict[str, ModuleType]:
        made = {
            name: ModuleType(name)
            for name in ("jnius", "android", "android.permissions", "android.activity", "android.runnable")
        }
        made["jnius"].autoclass = self.autoclass
        made["jnius"].cast = _cast
        made["jnius"].PythonJavaClass = PythonJavaClass
        made["jnius"].JavaException = JavaException
        made["jnius"].java_method = _java_method
        made["jnius"].detach = lambda: self.calls.append(("detach", ()))
        made["android.runnable"].Runnable = lambda work: work
        made["android.permissions"].check_permission = lambda _name: self.has_leave
        made["android.permissions"].request_permissions = self._ask
        made["android.activity"].bind = lambda on_activity_result: self.results.append(on_activity_result)
        for part in ("permissions", "activity", "runnable"):
            setattr(made["android"], part, made[f"android.{part}"])
        return made

    def _ask(self, names: list[str], answered: Callable[[list[str], list[bool]], None]) -> None:
        if "request_permissions" in self.fails:
            raise JavaException("request_permissions was refused")
        self.asked += names
        answered(names if self.leave else [], self.leave)


def _java_method(signature: str) -> Callable[[Any], Any]:
    def mark(function: Any) -> Any:
        function.__javasignature__ = signature
        return function

    return mark


def _cast(name: str, thing: Any) -> Any:
    assert isinstance(thing, JavaObject), f"{thing!r} is no object of Java's"
    assert name.replace(".", "/") in thing.kinds, f"a {type(thing).__name__} is no {name}"
    return thing
