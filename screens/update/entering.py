"""Typing and putting values. The old value stands until a new one is accepted."""

from collections.abc import Mapping
from dataclasses import replace
from typing import TypeVar

from logic.answers.asked import questions
from logic.answers.reading import RIDER
from logic.board import Value
from logic.board_saved import to_dict
from logic.person import person_to_dict
from logic.store.errors import Full
from screens.acts import Both
from screens.acts.entering import Ask, Done, Put, Type, Write
from screens.acts.keeping import Save, Set
from screens.asked import answered
from screens.asking import field_of, keeps, read_entry, standing, unit_of
from screens.tongue import _
from screens.update import does
from screens.words import label_of
from screens.world import CLOSE, Asking, TakeBack, World

T = TypeVar("T")


@does(Ask)
def ask(world: World, act: Ask) -> World:
    """Begin to enter a value; what was typed for it before and could not be used is there again."""
    world = left(world)
    return replace(world, asking=Asking(act.key, standing(world, act.key)))


@does(Done)
def done(world: World, _act: Done) -> World:
    """End it."""
    return left(world)


def left(world: World) -> World:
    """Return the world with nothing asked. Text that is no value stays typed; text that became one is not needed any more."""
    if world.asking is None:
        return world
    key = world.asking.key
    text, field = world.typed.get(key, ""), field_of(key)
    if text and field.kind != "choice":
        read = read_entry(world, text, field, unit_of(world, key))
        if read.found is not None:
            # What the text says of other fields is taken up now that it is whole.
            for other, value in read.found.others:
                world = put(world, Put(other, value, keeps(other)))
        if read.problem is None:
            world = noted(world, key, "")
    return replace(world, asking=None)


@does(Type)
def typed(world: World, act: Type) -> World:
    """Take the text, and the value it makes.

    Text that cannot be used puts back what stood before the typing began; no text puts back what is saved.
    """
    if act.unit and world.units.get(act.key) != act.unit:
        world = replace(world, units={**world.units, act.key: act.unit})
    if act.keeps == "typed":
        return noted(world, act.key, act.text)
    world = replace(world, typed=_with(world.typed, act.key, act.text))
    found = read_entry(world, act.text, act.field, act.unit)
    asking = world.asking
    before = asking.before if asking is not None and asking.key == act.key and found.problem else None
    return put(world, Put(act.key, found.value or before, act.keeps))


@does(Write)
def write(world: World, act: Write) -> World:
    """Take free text."""
    return noted(world, act.key, act.text)


@does(Put)
def put(world: World, act: Put) -> World:
    """Put a value where it is kept. Raises InputError outside its limits."""
    if act.keeps == "question":
        if act.value is not None:
            questions()[act.key].field.check(act.value.si)
        world = stored(world)
        world.store.put(*answered(world, act.key, act.value))
        return replace(world)
    if act.keeps == "rider":
        world = stored(world)
        if act.value is None:
            return world
        RIDER.check(act.value.si)
        person = replace(world.person, rider=act.value)
        world.store.put("person", person_to_dict(person))
        return replace(world, person=person)
    if act.keeps == "saved" and not world.is_scratch:
        before, known = world.saved, field_of(act.key).known
        value = _dated(world, act.value and replace(act.value, known=known))
        after = before.with_value(act.key, value)
        world.store.save_board(after.id, after.name, to_dict(after))
        return replace(world, saved=after, undo=TakeBack(saved_text(act.key, value), Save(before), before.id))
    value = _dated(world, act.value and _as_known(world, act.key, act.value))
    if value is None:
        return _trial(world, _with(world.trial, act.key, None))
    world.board.with_value(act.key, value)
    same = world.saved.value(act.key)
    kept = None if same is not None and same.si == value.si else value
    return _trial(world, _with(world.trial, act.key, kept))


@does(Set)
def set_values(world: World, act: Set) -> World:
    """Write values that belong together. Raises InputError outside their limits; nothing has changed then."""
    values = {key: _dated(world, value) for key, value in act.values.items()}
    before = after = world.board if world.is_scratch else world.saved
    for key, value in values.items():
        after = after.with_value(key, value)
    if world.is_scratch:
        trial = {key: value for key, value in ({**world.trial} | values).items() if value is not None}
        return _trial(world, trial)
    world.store.save_board(after.id, after.name, to_dict(after))
    said = saved_text(*next(iter(values.items())))
    return replace(world, saved=after, undo=TakeBack(said, Save(before), before.id))


def saved_text(key: str, value: Value | None) -> str:
    """Return what is said beside the way back from a value."""
    said = _("Taken out: {label}") if value is None else _("Saved: {label}")
    return said.format(label=label_of(key))


def noted(world: World, key: str, text: str) -> World:
    """Return the world with the text typed for a key, stored."""
    if text == world.typed.get(key, ""):
        return world
    return stored(replace(world, typed=_with(world.typed, key, text)))


def _trial(world: World, trial: dict[str, Value]) -> World:
    return stored(replace(world, trial=trial))


def stored(world: World) -> World:
    """Write trial and typed text in one go, then return the world. Where storage is full it is told, and one types on."""
    if not world.trial and not world.typed:
        world.store.drop_trial(world.saved.id)
        return world
    values = {key: dict(vars(value)) for key, value in world.trial.items()}
    try:
        world.store.save_trial(world.saved.id, {"values": values, "typed": dict(world.typed)})
    except Full as problem:
        from screens.words.storage import sentence  # noqa: PLC0415  (only where there is no room)

        # A belt can be read and a screw looked up on a phone without room: the next key writes it all.
        return replace(world, undo=TakeBack(sentence(problem), Both(()), "", CLOSE))
    return world


def _dated(world: World, value: Value | None) -> Value | None:
    return value and replace(value, on=value.on or world.now.date().isoformat())


def _as_known(world: World, key: str, value: Value) -> Value:
    """Return a value that is tried as one knows it: teeth are no guess at teeth, and without a board a print is read."""
    field = field_of(key)
    if value.known != "guess":
        return value
    if world.is_scratch and field.known == "label":
        return replace(value, known="label")
    return replace(value, known="chosen") if field.kind in ("count", "choice", "named") else value


def _with(items: Mapping[str, T], key: str, item: T | None) -> dict[str, T]:
    """Return the items with one more, or one less where it is empty."""
    rest = {name: one for name, one in items.items() if name != key}
    return {**rest, key: item} if item else rest
