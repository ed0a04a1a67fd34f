"""One joint of a board as its subject sees it: read once, then shared by the results of its card."""

from dataclasses import replace
from functools import cached_property

from logic.answers.belt_parts import BeltParts
from logic.answers.joint_options import usual
from logic.answers.parts import chosen
from logic.answers.reading import Reading
from logic.errors import Missing, NoFigure
from logic.fields import ARM
from logic.joints.advice import Advice, advise
from logic.joints.insert_nut import Reuse, reuse
from logic.joints.limits import NUTS, Joint, friction_ends, state_of
from logic.joints.lookup import Book, ProofTorques, book, locker_for, proof_torques
from logic.joints.rules import shown_ceiling
from logic.joints.set_screw import Seating, seating
from logic.joints.shaft import ScrewHolding, flat_holding, holding, key_holding
from logic.joints.threadlocker import SURFACES, Locker, cure, screw_surface
from logic.joints.torque import pull_on_arm
from logic.person import Person
from logic.tables import Row, matching, pick
from logic.workings import Given, given

DECIDING = ("into", "strength")
"""Values that decide how strong a joint is: a guess at one of them counts as assumed."""

WEAKEST = "aluminium unknown"
"""Material that stands where a screw goes into aluminium and nobody has said which."""

BOOK_FRICTION = 0.14
"""Friction of the printed tables that are usually quoted."""


def family_of(material: str) -> str:
    """Return the family of a material; "" for a nut, an insert, or what the tables do not have."""
    row = next(matching("materials", material=material), None)
    return "" if row is None else row.text("family")


def told(number: float | None, instead: str = "by feel") -> float:
    """Return a number; where there is none, refuse with what is said instead."""
    if number is None:
        raise NoFigure("joint", None, instead)
    return number


class JointParts:
    """What the results of one joint share."""

    def __init__(self, reading: Reading, key: str, kind: Row, person: Person) -> None:
        """Take the joint with this key from a reading."""
        self.read, self.key, self.kind, self.person = reading, key, kind, person
        self.assumed: dict[str, str] = {}

    def text(self, name: str, otherwise: str | None = None) -> str:
        """Return a named value. Without one, `otherwise` is assumed; Missing when there is nothing to assume."""
        full = f"joints.{self.key}.{name}"
        value, found = self.read.board.value(full), self.read.choice(full, otherwise)
        unsure = value is None or (name in DECIDING and value.known == "guess")
        if unsure and not (self.by_feel and name != "stack"):
            self.assumed[name] = found
        return found

    def peek(self, name: str, otherwise: str) -> str:
        """Return a named value for a remark beside the answer: nothing is assumed by it."""
        full = f"joints.{self.key}.{name}"
        return otherwise if self.read.board.value(full) is None else self.read.choice(full)

    def optional(self, name: str) -> float | None:
        """Return a number, None when it is not set."""
        full = f"joints.{self.key}.{name}"
        return None if self.read.board.value(full) is None else self.read(full)

    @cached_property
    def thread(self) -> str:
        """Thread as the tables name it."""
        return self.text("thread")

    @cached_property
    def condition(self) -> str:
        """State of the threads; wet where locker is wanted, unknown elsewhere."""
        return self.text("condition", "locker wet" if self.kind.text("grade") != "none" else "unknown")

    @cached_property
    def by_feel(self) -> bool:
        """Tell whether this kind of joint has no torque of its own."""
        return self.kind.text("way") == "feel"

    @cached_property
    def of_set_screw(self) -> bool:
        """Tell whether a set screw holds it."""
        return self.kind.text("way") == "set screw"

    @cached_property
    def into(self) -> str:
        """What the screw goes into: the weakest metal that could be there until the person knows better."""
        if self.by_feel:
            return self.text("into", "insert nut")
        preset = usual(self.kind.text("kind")).text("into")
        return self.text("into", preset if preset == WEAKEST else None)

    @cached_property
    def joint(self) -> Joint:
        """The joint as the engine takes it."""
        size = self.thread
        into = self.into
        tapped = into not in (*NUTS, "brass insert")
        member = self.read.board.value(f"joints.{self.key}.member")
        return Joint(
            thread=size,
            strength="8.8" if self.by_feel else self.text("strength"),
            condition="unknown" if self.by_feel else self.condition,
            locker=self.locker.grade != "none",
            into=into,
            engagement=self.optional("engagement") if tapped else None,
            head=self.text("head", "socket"),
            member=None if member is None else str(member.si),
            washer=self.text("washer", "no") == "yes",
            running=self.optional("running"),
            kind=self.kind.text("kind"),
            solid_stack=self.kind.text("kind") == "axle nut" and self.peek("stack", "play") == "solid",
        )

    @cached_property
    def advice(self) -> Advice:
        """How tight. Missing names the value of this board that is not set."""
        joint = self.joint
        try:
            return advise(joint)
        except Missing as gap:
            raise Missing(*(f"joints.{self.key}.{name}" for name in gap.fields)) from gap

    @cached_property
    def seating(self) -> Seating:
        """How tight a set screw goes: by its own hex, or by the thread it is in where that is the weaker.

        Missing without the length of thread in the pulley.
        """
        size, into = self.thread, self.into
        if into in (*NUTS, "brass insert"):
            return seating(size)
        return seating(size, pulley=into, engagement=self.read(f"joints.{self.key}.engagement"))

    @cached_property
    def setting(self) -> float:
        """Torque that the joint is set to."""
        return told((self.seating.setting or None) if self.of_set_screw else self.advice.setting)

    @cached_property
    def wrench(self) -> float:
        """Torque on the wrench: the setting, and the drag of an insert nut that was measured."""
        return self.setting if self.of_set_screw else told(self.advice.wrench)

    @cached_property
    def wrench_ceiling(self) -> float:
        """Torque on the wrench that is never passed."""
        return self.ceiling if self.of_set_screw else shown_ceiling(told(self.advice.wrench_ceiling))

    @cached_property
    def ceiling(self) -> float:
        """Torque that the joint never gets."""
        return self.seating.shown_ceiling if self.of_set_screw else told(self.advice.shown_ceiling)

    @cached_property
    def pull(self) -> float:
        """Pull on the key's arm that makes the torque on the wrench."""
        return pull_on_arm(torque=self.wrench, arm=self.arm)

    @cached_property
    def arm(self) -> float:
        """Arm of the hex key."""
        value = self.person.key_arm
        if value is not None:
            entered = Given(
                ARM.label, float(value.si), "m", "length", known=value.known, typed_unit=value.typed_unit
            )
            return given(entered)
        row = pick("hand_tools", tool="hex key")
        usual_arm = Given(ARM.label, float(row.cells["arm"]), "m", "length", known="assumed")
        return given(replace(usual_arm, standing=row.standing, source=row.source, where=row.where))

    @cached_property
    def drag_missing(self) -> bool:
        """Tell whether the drag of an insert nut comes on top of the torque and is not measured."""
        return self.joint.into == "insert nut" and self.joint.running is None and not self.advice.feel

    # What a set screw carries

    @cached_property
    def drive_torque(self) -> float:
        """Most torque that the current limits let through to one motor pulley."""
        return BeltParts(self.read).torque

    @cached_property
    def holding(self) -> ScrewHolding:
        """What the screws alone hold on a round shaft."""
        return holding(
            self.thread,
            shaft_diameter=self.read(f"joints.{self.key}.shaft"),
            screws=self.text("screws", "one"),
        )

    @cached_property
    def carried(self) -> float:
        """Torque that what carries it may be asked for: the screws' points, a flat or a key; none of a clamp."""
        way = self.text("carries")
        if way == "clamp":
            raise NoFigure("carries", way, "by feel")
        at = f"joints.{self.key}"
        if way == "flat":
            return flat_holding(self.thread, engagement=self.read(f"{at}.engagement"), pulley=self.into)
        if way == "key":
            return key_holding(
                key_width=self.read(f"{at}.key_width"),
                key_height=self.read(f"{at}.key_height"),
                key_length=self.read(f"{at}.key_length"),
                shaft_diameter=self.read(f"{at}.shaft"),
                pulley=self.into,
            )
        return self.holding.least

    # What stands beside it

    @cached_property
    def book(self) -> Book:
        """What a printed table says for strong metal."""
        return book(
            self.thread,
            strength_name=self.joint.strength,
            friction=chosen("Friction of the table", BOOK_FRICTION, "1", "ratio"),
            head="hexagon" if self.joint.head == "hexagon" else "socket",
        )

    @cached_property
    def proof(self) -> ProofTorques:
        """Torques for three quarters of the proof load."""
        low, high = friction_ends(self.joint)
        state = pick("friction", condition=state_of(self.joint))
        return proof_torques(
            self.thread,
            strength_name=self.joint.strength,
            frictions=(low, state.number("nut_factor"), high),
        )

    @cached_property
    def hole(self) -> str:
        """What the screw goes into, or usually does: for remarks, nothing is assumed by it."""
        return self.peek("into", usual(self.kind.text("kind")).text("into"))

    @cached_property
    def surfaces(self) -> tuple[str, str]:
        """Surfaces of screw and hole."""
        into = self.hole
        own = screw_surface(
            "8.8" if self.of_set_screw or self.by_feel else self.text("strength"), self.condition
        )
        if into in (*NUTS, "brass insert"):
            return own, "brass" if into == "brass insert" else "zinc" if own == "zinc" else "steel"
        return own, SURFACES.get(family_of(into), "plastic")

    @cached_property
    def places(self) -> tuple[str, ...]:
        """Where threadlocker would get to that it must not."""
        found = []
        member = self.read.board.value(f"joints.{self.key}.member")
        for name in (self.hole, "" if member is None else str(member.si)):
            kind = family_of(name)
            if name in ("insert nut", "brass insert", "wood"):
                found.append(name)
            elif kind in ("cracking plastic", "plastic"):
                found.append(kind)
            elif kind == "soft":
                found.append("plastic")
        return tuple(dict.fromkeys(found))

    @cached_property
    def locker(self) -> Locker:
        """Grade of threadlocker, or none and why: none is known before size and class are."""
        kind = self.kind.text("kind")
        if self.kind.text("grade") == "none" or self.places:
            return locker_for(kind, "", places=self.places)
        return locker_for(kind, self.thread, surfaces=self.surfaces)

    @cached_property
    def cure(self) -> float:
        """How long to leave it at the day's temperature."""
        day = chosen("Temperature of the day", self.person.day, "K", "temperature")
        return told(cure(temperature=day, surfaces=self.surfaces).time, "too cold")

    @cached_property
    def reused(self) -> Reuse | None:
        """Verdict on the nut, when its drag is measured."""
        running = self.optional("running")
        if running is None or self.peek("into", "insert nut") != "insert nut":
            return None
        return reuse(self.thread, drag=running)
