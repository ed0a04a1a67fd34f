"""What can stand in the named values of a joint, and what a look-up begins with."""

from functools import cache

from logic.board_joints import BoardJoint
from logic.errors import InputError
from logic.fields import Field, Option, Value
from logic.joints.materials import materials
from logic.joints.strength import strengths
from logic.joints.threads import Thread, threads
from logic.tables import Row, pick, rows
from logic.tongue import _

LOOK_UP = "lookup"
"""Key of a joint that is looked up and belongs to no board."""


def thread_label(thread: Thread) -> str:
    """Return a thread as a drawing names it.

    >>> from logic.joints.threads import thread
    >>> thread_label(thread("M4")), thread_label(thread("5/16-24"))
    ('M4 × 0.7', '5/16-24 UNF')
    """
    if thread.system == "inch":
        return f"{'#' if '/' not in thread.size else ''}{thread.designation} {thread.series}"
    pitch = float(thread.row.cells["pitch"]) * 1000
    return f"{thread.size} × {pitch:g}"


HOLDERS = (
    Option("nut", _("a plain nut")),
    Option("insert nut", _("a nylon-insert nut")),
    Option("brass insert", _("a brass insert")),
)
STRENGTH_FORMS = (
    ("A2", _("stainless {name}")),
    ("A4", _("stainless {name}")),
    ("A574", _("socket cap {name}")),
)


def strength_label(name: str) -> str:
    """Return a class or grade as one says it.

    >>> strength_label("8.8"), strength_label("A2-70"), strength_label("grade 5")
    ('class 8.8', 'stainless A2-70', 'grade 5')
    """
    if name[0].isdigit():
        return _("class {name}").format(name=name)
    return next(
        (form.format(name=_(name)) for start, form in STRENGTH_FORMS if name.startswith(start)), _(name)
    )


@cache
def options(field: Field) -> tuple[Option, ...]:
    """Return what a choice or a named value can be. Raises InputError for a number."""
    if field.options:
        return field.options
    stuff = tuple(Option(key, name) for key, name in materials())
    found = {
        "threads": lambda: tuple(Option(one.designation, thread_label(one)) for one in threads()),
        "strengths": lambda: tuple(Option(name, strength_label(name)) for name in strengths()),
        "conditions": lambda: tuple(
            Option(row.text("condition"), row.text("name")) for row in rows("friction")
        ),
        "holders": lambda: HOLDERS + stuff,
        "members": lambda: stuff,
    }
    if field.table not in found:
        raise InputError(field.key, field.kind, "choice")
    return found[field.table]()


def option_label(field: Field, key: str) -> str:
    """Return how one option is shown; the key itself where a newer table had it."""
    return next((option.label for option in options(field) if option.key == key), key)


def usual(kind: str) -> Row:
    """Return what a look-up of a kind of joint begins with."""
    return pick("joint_usual", kind=kind)


def usual_joint(kind: Row) -> BoardJoint:
    """Return a joint as the trade usually has it, all of it a guess.

    >>> from logic.joints.lookup import kinds
    >>> usual_joint(kinds()[0]).thread.si
    'M4'
    """
    row = usual(kind.text("kind"))
    found: dict[str, Value] = {}
    for name in ("thread", "into", "member", "washer", "carries", "screws"):
        if name in row:
            found[name] = Value(row.text(name))
    if "shaft" in row:
        found["shaft"] = Value(float(row.cells["shaft"]) / 1000.0, typed_unit="mm")
    if kind.text("way") != "feel":
        found["strength"] = Value("8.8")
        found["condition"] = Value("locker wet" if kind.text("grade") != "none" else "steel dry")
    return BoardJoint(LOOK_UP, **found)
