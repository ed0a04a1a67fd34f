"""Whether this machine has a service of the phone at all: asking for a missing one would print a trace."""

from importlib import import_module
from importlib.util import find_spec
from typing import Any


def service(name: str) -> Any:  # noqa: ANN401  (each service has its own methods)
    """Return a service by its name. Raises ImportError where the platform has none."""
    plyer = import_module("plyer")
    platform = import_module("plyer.utils").platform
    if find_spec(f"plyer.platforms.{platform}.{name}") is None:
        message = f"no {name} on {platform}"
        raise ImportError(message)
    return getattr(plyer, name)
