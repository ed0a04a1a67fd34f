"""Where something comes from, in words."""

from logic.tables import sources
from screens.tongue import _
from screens.words import begun

OURS = {
    "derived": "",
    "practice": _("Common practice, no source: "),
    "memory": _("From memory, not confirmed: "),
}
"""What stands in place of a title where nothing printed is cited."""


def source_text(key: str, where: str) -> str:
    """Return a source as title and place, or what stands in its place."""
    if key in OURS and where:
        return begun(OURS[key] + where)
    return ", ".join(part for part in (sources()[key].title, where) if part)
