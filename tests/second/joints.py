"""The cards of the joints, worked out a second time: millimetres, newtons and the printed tables, with rules of their own.

Nothing is taken from logic but the board's values. Printed tables are read as data, in their printed units.
`Card.numbers` has results by the name of the answer's, in SI; a name is left out where a value is missing or no table
has it. `Card.words` has what is said beside them.
"""

from collections.abc import Callable
from functools import cached_property
from math import log, pi, radians, sqrt, tan
from typing import Any

from logic.board import Board
from tests.second.pack import table

INCH = 25.4
POUND = 4.4482216152605
GRAVITY = 9.80665
ICE = 273.15
NUTS = ("nut", "insert nut")
WEAKEST = "aluminium unknown"

Words = dict[str, Any]


class LackError(Exception):
    """A value is not set, or no table has it."""


def find(table_name: str, /, **cells: object) -> dict[str, Any] | None:
    """Return the first row with these cells, None without one."""
    return next(
        (each for each in table(table_name) if all(each.get(key) == cell for key, cell in cells.items())),
        None,
    )


def need(table_name: str, /, **cells: object) -> dict[str, Any]:
    found = find(table_name, **cells)
    if found is None:
        raise LackError(f"{table_name} {cells}")
    return found


def down(torque: float, steps: tuple[tuple[float, float], ...]) -> float:
    """Round down to the mark that belongs to a torque of this size, in N m."""
    mark = next(mark for below, mark in steps if torque < below)
    return int(torque / mark + 1e-9) * mark


def set_to(ceiling: float) -> float:
    """A hand tool is up to 6 % off: it is set that much lower, on a mark of a wrench of its size."""
    return down(ceiling / 1.06, ((0.1, 0.1), (0.5, 0.05), (5.0, 0.1), (1e6, 0.5)))


def never_above(ceiling: float) -> float:
    return down(ceiling, ((0.1, 0.01), (0.5, 0.01), (5.0, 0.05), (1e6, 0.1)))


class Screw:
    """A thread in millimetres."""

    def __init__(self, name: str) -> None:
        metric = find("threads_metric", thread=name)
        line = metric or need("threads_inch", thread=name)
        limits = need("thread_limits_metric" if metric else "thread_limits_inch", thread=name)
        scale = 1.0 if metric else INCH
        self.name, self.size, self.inch = name, name.replace("x", "-").split("-")[0], not metric
        self.d = line["nominal_diameter"] * scale
        self.pitch = line["pitch"] if metric else INCH / line["threads_per_length"]
        self.area = line["stress_area"] * scale**2
        # The sharp triangle of the thread, ISO 68-1.
        high = sqrt(3.0) / 2.0 * self.pitch
        self.middle, self.core = self.d - 0.75 * high, self.d - 17.0 / 12.0 * high
        self.limit = {key: cell * scale for key, cell in limits.items() if isinstance(cell, int | float)}

    def sheared(self, length: float, crest: float, flank: float) -> float:
        """FED-STD-H28/2: a ring a turn, on the crest's circle, as wide as the flanks leave it there."""
        turns = length / self.pitch
        return turns * pi * crest * (self.pitch / 2.0 + tan(radians(30.0)) * (crest - flank))

    def hole_area(self, length: float) -> float:
        return self.sheared(length, self.limit["screw_major_min"], self.limit["hole_pitch_max"])

    def own_area(self, length: float) -> float:
        # The crest is the hole's: its flank lies outside it.
        crest, flank = self.limit["hole_minor_max"], self.limit["screw_pitch_min"]
        return length / self.pitch * pi * crest * (self.pitch / 2.0 + tan(radians(30.0)) * (flank - crest))

    def tightened(self, strength: float, rub: float) -> float:
        """VDI 2230: stretch and twist together at 90 % of the yield stress."""
        across = (self.middle + self.core) / 2.0
        twist = 1.5 * self.middle / across * (self.pitch / (pi * self.middle) + 1.155 * rub)
        return 0.9 * strength * self.area / sqrt(1.0 + 3.0 * twist * twist)


def family(stuff: str) -> str:
    line = find("materials", material=stuff)
    return "" if line is None else line["family"]


def shear(stuff: str) -> float:
    """0.6 of the guaranteed tensile strength, or the least shear strength that is printed."""
    line = need("materials", material=stuff)
    if "shear" in line:
        return float(line["shear"])
    if "tensile" not in line:
        raise LackError(stuff)
    return 0.6 * line["tensile"]


def strength(name: str) -> dict[str, float]:
    """Strengths in MPa."""
    metric = find("property_classes", strength=name)
    line, scale = (
        (metric, 1.0) if metric else (need("property_grades", strength=name), 1000.0 * POUND / INCH**2)
    )
    return {key: line[key] * scale for key in ("tensile", "yield", "proof") if key in line}


def rub_of(factor: float) -> float:
    """Friction of thread and head that a nut factor stands for: K = 0.026 + 1.165 mu, M3 to M12 hexagon."""
    return (factor - 0.026) / 1.165


def grade_for(thread: str, wanted: str, *, set_screw: bool = False) -> tuple[str, bool]:
    """Return the grade of locker for a need, and whether it is a weaker one than was wanted.

    Medium could twist a screw under 4 mm or round the small hex of a set screw under 5; high is for 6 mm and over, of set
    screws for 8.
    """
    size = Screw(thread).d
    medium, high = (5.0, 8.0) if set_screw else (4.0, 6.0)
    ladder = {
        "comes apart often": ("low",),
        "comes apart for service": ("low", "medium"),
        "never comes apart": ("low", "medium", "high"),
        "already together": ("penetrating",),
    }[wanted]
    fit = [
        grade
        for grade in ladder
        if grade in ("low", "penetrating") or size >= {"medium": medium, "high": high}[grade] - 1e-9
    ]
    return fit[-1], fit[-1] != ladder[-1]


def cured(kelvin: float) -> float | None:
    """Seconds of a full cure: 24 h at 22 C, half an hour at 120 C, by halves between; never less than a day."""
    celsius = kelvin - ICE
    if celsius < 5.0 or celsius > 40.0:
        return None
    halves = log(24.0 / 0.5) / log(2.0)
    hours = 24.0 * 2.0 ** ((22.0 - celsius) / ((120.0 - 22.0) / halves))
    return 3600.0 * max(hours, 24.0)


SURFACE_OF_HOLE = {"light alloy": "aluminium", "steel": "steel", "stainless": "stainless", "brass": "brass"}
SURFACE_OF_SCREW = {"titanium": "titanium", "aluminium": "aluminium", "brass": "brass"}


class Card:
    """One joint of a board."""

    def __init__(  # noqa: PLR0913  (a board, and what a person has at hand)
        self, board: Board, key: str, kind: str, *, arm: float, day: float, scale: str
    ) -> None:
        self.board, self.key = board, key
        self.kind = need("joint_kinds", kind=kind)
        self.way = self.kind["way"]
        self.arm, self.day = arm, day
        self.scale = need("measuring_tools", name=scale)["scale_error"] * GRAVITY
        self.screwed = self.way == "set screw"

    # What the board says

    def said(self, name: str) -> Any:
        value = self.board.value(f"joints.{self.key}.{name}")
        return None if value is None else value.si

    def must(self, name: str) -> Any:
        found = self.said(name)
        if found is None:
            raise LackError(name)
        return found

    @cached_property
    def screw(self) -> Screw:
        return Screw(self.must("thread"))

    @cached_property
    def into(self) -> str:
        """The weakest metal that could be there, where it is a metal."""
        if self.way == "feel":
            return self.said("into") or "insert nut"
        preset = need("joint_usual", kind=self.kind["kind"])["into"]
        return str(self.said("into") or (WEAKEST if preset == WEAKEST else self.must("into")))

    @property
    def tapped(self) -> bool:
        return self.into not in (*NUTS, "brass insert")

    @cached_property
    def state(self) -> str:
        """State of the threads: wet where locker is the rule, else not known."""
        if self.way == "feel":
            return "unknown"
        return self.said("condition") or ("unknown" if self.kind["grade"] == "none" else "locker wet")

    @cached_property
    def metal(self) -> str:
        return "8.8" if self.way in ("feel", "set screw") else str(self.must("strength"))

    @cached_property
    def running(self) -> float | None:
        found = self.said("running")
        return None if found is None else float(found)

    @property
    def engaged(self) -> float:
        return float(self.must("engagement")) * 1000.0

    @cached_property
    def feel(self) -> str:
        """Why it is set by feel, from what it is and what it clamps or goes into."""
        self.must("thread")
        if self.kind["kind"] == "axle nut" and self.said("stack") == "solid":
            return "" if find("aviation_nuts", thread=self.screw.name) else "bearing play"
        if self.way == "feel":
            return str(self.kind["feel"])
        soft = {"wood": "wood", "urethane": "soft hub"}
        return next((soft[stuff] for stuff in (self.said("member"), self.into) if stuff in soft), "")

    # Threadlocker

    @cached_property
    def hole(self) -> str:
        """What it goes into or usually does, for what is said beside the torque."""
        return str(self.said("into") or need("joint_usual", kind=self.kind["kind"])["into"])

    @cached_property
    def surfaces(self) -> tuple[str, str]:
        if self.metal[:2] in ("A2", "A4"):
            own = "stainless"
        else:
            own = SURFACE_OF_SCREW.get(self.metal, "zinc" if self.state.startswith("zinc") else "steel")
        if self.hole == "brass insert":
            return own, "brass"
        if self.hole in NUTS:
            return own, "zinc" if own == "zinc" else "steel"
        return own, SURFACE_OF_HOLE.get(family(self.hole), "plastic")

    @cached_property
    def bans(self) -> list[str]:
        """Places where locker must not get to, the hole's first."""
        found = []
        for stuff in (self.hole, self.said("member") or ""):
            kind = family(stuff)
            if stuff in ("insert nut", "brass insert", "wood"):
                found.append(stuff)
            elif "plastic" in kind:
                found.append(kind)
            elif kind == "soft":
                found.append("plastic")
        return found

    @cached_property
    def locker(self) -> dict[str, Any]:
        if self.kind["grade"] == "none":
            return {"grade": "none", "why": self.kind["no_locker"], "activator": False, "cautions": ()}
        if self.bans:
            why = need("threadlocker_places", place=self.bans[0])["why"]
            return {"grade": "none", "why": why, "activator": False, "cautions": ()}
        grade, weaker = grade_for(self.screw.name, "comes apart for service", set_screw=self.screwed)
        lively = [need("threadlocker_surfaces", surface=one)["active"] == "yes" for one in self.surfaces]
        return {
            "grade": grade,
            "why": need("threadlocker_grades", grade=grade)["need"],
            "activator": not any(lively),
            "cautions": (
                *(("smaller grade",) if weaker else ()),
                *(() if all(lively) else ("inactive surface",)),
            ),
        }

    @property
    def wet(self) -> bool:
        return bool(self.locker["grade"] != "none")

    # How tight a screw with a head goes

    @cached_property
    def odd_stainless(self) -> bool:
        """Stainless on stainless is said of threads that are not."""
        other = family(self.into) != "stainless" and self.into not in NUTS
        return bool(self.state == "stainless dry" and other)

    @cached_property
    def factors(self) -> tuple[float, float, float]:
        """Least, usual and highest nut factor that could be there."""
        states = [need("friction", condition="unknown" if self.odd_stainless else self.state)]
        if self.wet:
            states.append(need("friction", condition="locker wet"))
        return (
            min(one["nut_factor_low"] for one in states),
            states[-1]["nut_factor"],
            max(one["nut_factor_high"] for one in states),
        )

    def torque(self, force: float, factor: float) -> float:
        """N m."""
        return factor * self.screw.d * force / 1000.0

    @cached_property
    def limits(self) -> dict[str, float]:
        """Torque at which each thing has had enough."""
        screw, metal, low = self.screw, strength(self.metal), self.factors[0]
        found = {"screw strength": self.torque(screw.tightened(metal["yield"], rub_of(low)), low)}
        ratio = {"8.8": 0.84, "10.9": 0.79, "12.9": 0.75}.get(self.metal)
        if ratio and "screw_minor_min" in screw.limit:
            core = screw.limit["screw_minor_min"]
            found["screw twists off"] = ratio * metal["tensile"] * pi * core**3 / 16.0 / 1000.0
        if self.into == "brass insert":
            found["insert spins"] = need("brass_inserts", thread=screw.name)["torque"]
        elif self.tapped:
            carries = self.engaged - screw.pitch
            if carries <= 0.0:
                raise LackError("less than one thread")
            share = 1.0 / 4.0 if "plastic" in family(self.into) else 1.0 / (1.5 * 1.35)
            found["hole strips"] = self.torque(share * screw.hole_area(carries) * shear(self.into), low)
            found["screw strips"] = self.torque(share * screw.own_area(carries) * 0.6 * metal["tensile"], low)
        sinks = self.sinks
        if sinks is not None:
            found["head sinks in"] = self.torque(sinks, low)
        return found

    def face(self, head: str) -> dict[str, Any] | None:
        return next(
            (
                one
                for one in table("heads")
                if one["head"] == head and abs(one["thread_diameter"] - self.screw.d) < 1e-6
            ),
            None,
        )

    @cached_property
    def sinks(self) -> float | None:
        """Clamp at which the head sinks in; None where head or member is not known."""
        member = self.said("member")
        ring = self.face("washer" if self.said("washer") == "yes" else self.said("head") or "socket")
        bears = find("bearing_pressures", material=member) if member else None
        if ring is None or bears is None:
            return None
        return float(bears["pressure"] * pi / 4.0 * (ring["bearing_diameter"] ** 2 - ring["hole"] ** 2))

    @cached_property
    def advice(self) -> tuple[str, float, float, float]:
        """What governs, the setting, the exact ceiling, the drag on top."""
        if self.feel:
            raise LackError(self.feel)
        drag = self.running if self.into == "insert nut" and self.running is not None else 0.0
        if self.way == "feel":
            line = need("aviation_nuts", thread=self.screw.name)
            low, high = (line[end] * POUND * INCH / 1000.0 for end in ("low", "high"))
            return "bearing stack", down(low, ((0.1, 0.1), (0.5, 0.05), (5.0, 0.1), (1e6, 0.5))), high, drag
        weakest = min(self.limits, key=lambda name: self.limits[name])
        ceiling = self.limits[weakest]
        return weakest, set_to(ceiling), ceiling, drag

    # A set screw

    @cached_property
    def strips(self) -> float | None:
        """The pull in the thread over 1.5, times the lever of a ramp that rubs in the thread and on the cup; no head."""
        if not self.tapped:
            return None
        screw = self.screw
        safety = 4.0 if "plastic" in family(self.into) else 1.5
        carries = self.engaged - screw.pitch
        if carries <= 0.0:
            raise LackError("less than one thread")
        rub = rub_of(need("friction", condition="locker wet")["nut_factor_low"])
        lever = screw.pitch / (2.0 * pi) + (0.577 * screw.middle + self.cup / 2.0) * rub
        return screw.hole_area(carries) * shear(self.into) / safety * lever / 1000.0

    @property
    def cup(self) -> float:
        return float(need("set_screw_cups", size=self.screw.size)["cup_diameter"])

    @cached_property
    def listed(self) -> float:
        """Metric: the lowest of what is printed; inch: the higher list."""
        metric = [
            one["torque"]
            for one in table("set_screws")
            if one["thread"] == self.screw.name and one["material"] == "alloy" and one["part"] != "low"
        ]
        inch = {
            one["part"]: one["torque"] for one in table("set_screws_inch") if one["size"] == self.screw.size
        }
        if metric:
            return float(min(metric))
        if not inch:
            raise LackError("no list has it")
        return float(min(inch["seat"], inch.get("most", inch["seat"]))) * POUND * INCH / 1000.0

    @property
    def seated(self) -> float:
        return self.listed if self.strips is None else min(self.listed, self.strips)

    @property
    def slips(self) -> float:
        """Torque at which the points slip on a round shaft."""
        like = find("set_screw_sizes", thread=self.screw.name)
        size = like["size"] if like else self.screw.size
        force = need("set_screws_inch", size=size, part="seat")["holding_force"] * POUND
        screws = {"one": 1.0, "two in line": 2.0, "two at 60": 1.75, "two at 90": 1.3, "two at 180": 1.3}
        return force * screws[self.said("screws") or "one"] * float(self.must("shaft")) / 2.0

    @property
    def carries(self) -> float:
        """A flat tips the screw out on the edge of its cup; a key is sheared or pressed; each with a safety of two."""
        way = self.must("carries")
        if way == "flat":
            length = self.engaged - self.screw.pitch
            if length <= 0.0:
                raise LackError("less than one thread")
            return self.screw.hole_area(length) * shear(self.into) * self.cup / 2.0 / 1000.0 / 2.0
        if way == "key":
            wide, high, long = (
                float(self.must(f"key_{side}")) * 1000.0 for side in ("width", "height", "length")
            )
            arm = float(self.must("shaft")) / 2.0
            pressed = need("bearing_pressures", material=self.into)["pressure"] * high / 2.0 * long * arm
            return float(min(0.6 * 340.0 * wide * long * arm, pressed)) / 2.0
        if way == "bare":
            return self.slips / 8.0
        raise LackError("not judged by its screws")

    @property
    def driven(self) -> float:
        """Most torque of one motor: amps in the convention they are stated in, over the speed constant."""
        kv_and_drive = [self.board.value(key) for key in ("motor.kv", "controller.motor_current")]
        values = [*kv_and_drive, self.board.value("controller.brake_current") or kv_and_drive[1]]
        if None in values:
            raise LackError("motor")
        kv, drive, brake = (float(value.si) for value in values if value is not None)
        meaning = self.board.value("controller.current_meaning")
        worth = {"six-step": 1.0, "sine peak": sqrt(3.0) / 2.0, "sine rms": sqrt(1.5)}
        return max(drive, brake) * worth["six-step" if meaning is None else str(meaning.si)] / kv

    # The card

    @cached_property
    def numbers(self) -> dict[str, float]:
        found = self.of_a_set_screw if self.screwed else {**self.of_a_head, **self.of_wood}
        if "wrench" in found:
            found["pull"] = found["wrench"] / self.arm
            found["pull_error"] = self.scale / found["pull"]
        if self.has(lambda: self.locker) and self.wet:
            time = cured(self.day)
            if time is not None:
                found["cure"] = time
            typical = {"low": 7.0, "medium": 20.0, "high": 35.0}[self.locker["grade"]]
            # Twice the size, six times the torque.
            found["locking"] = typical * (self.screw.d / 10.0) ** (log(6.0) / log(2.0))
        if not self.screwed and self.described and self.into == "insert nut":
            found |= self.drags
        return found

    @property
    def of_a_set_screw(self) -> dict[str, float]:
        found: dict[str, float] = {}
        if self.has(lambda: self.seated):
            setting, ceiling = set_to(self.seated), never_above(self.seated)
            found |= {"ceiling": ceiling, "wrench_ceiling": ceiling}
            found |= {"setting": setting, "wrench": setting} if setting > 0.0 else {}
            found |= {} if self.strips is None else {"hole strips": self.strips}
        more: dict[str, Callable[[], float]] = {
            "drive_torque": lambda: self.driven,
            "carried": lambda: self.carries,
            "slip": lambda: self.slips,
            "bare_most": lambda: self.slips / 4.0,
            "bare_least": lambda: self.slips / 8.0,
        }
        for name, compute in more.items():
            if self.has(compute):
                found[name] = compute()
        return found

    @property
    def of_a_head(self) -> dict[str, float]:
        if not self.has(lambda: self.advice):
            return {}
        _, setting, ceiling, drag = self.advice
        found = {"bearing stack": ceiling} if self.way == "feel" else dict(self.limits)
        if setting <= 0.0:
            return found
        found |= {
            "setting": setting,
            "ceiling": never_above(ceiling),
            "wrench": setting + drag,
            "wrench_ceiling": never_above(ceiling + drag),
            **self.printed,
        }
        if self.way != "feel":
            low, _, high = self.factors
            found["upper_preload"] = setting / low / self.screw.d * 1000.0
            found["lower_preload"] = setting / high / self.screw.d * 1000.0
        return found

    @property
    def of_wood(self) -> dict[str, float]:
        """Birch below the washer gives way at 6.7 MPa; a zinc plated screw, dry."""
        washer = self.face("washer") if self.feel_or_lack == "wood" else None
        if washer is None:
            return {}
        ring = pi / 4.0 * (washer["bearing_diameter"] ** 2 - washer["hole"] ** 2)
        return {"wood crushes": self.torque(6.7 * ring, 0.2)}

    @property
    def described(self) -> bool:
        """Tell whether size, hole and class are known."""
        return self.has(lambda: (self.screw, self.into, self.metal))

    def has(self, compute: Callable[[], object]) -> bool:
        try:
            compute()
        except LackError:
            return False
        return True

    @property
    def feel_or_lack(self) -> str:
        if self.screwed or not self.described:
            return ""
        return self.feel

    @property
    def drags(self) -> dict[str, float]:
        line = find("insert_nuts", thread=self.screw.name, nut_class="8")
        if line is not None:
            least, most = line["fifth_off_min"], line["first_on_max"]
            return {"drag_least": least, "drag_most": most, "drag_reuse": least}
        inch = [one["reuse_min"] for one in table("insert_nuts_inch") if one["thread"] == self.screw.name]
        return {"drag_reuse": max(inch) * POUND * INCH / 1000.0} if inch else {}

    @property
    def printed(self) -> dict[str, float]:
        """What printed tables say for strong metal, the torque at 3/4 of proof, the thread that breaks the screw first."""
        found: dict[str, float] = {}
        screw, metal = self.screw, strength(self.metal)
        ring = self.face("hexagon" if self.said("head") == "hexagon" else "socket")
        if ring is not None:
            force = screw.tightened(metal["yield"], 0.14)
            rubs = (ring["bearing_diameter"] + ring["hole"]) / 4.0 + 0.577 * screw.middle
            found["book"] = force * (screw.pitch / (2.0 * pi) + 0.14 * rubs) / 1000.0
        if "proof" in metal:
            for name, factor in zip(("lowest", "usual", "highest"), self.factors, strict=True):
                found[f"proof_{name}"] = self.torque(0.75 * metal["proof"] * screw.area, factor)
        if self.tapped and self.said("engagement") is not None:
            for_hole = metal["tensile"] * screw.area / (screw.hole_area(1.0) * shear(self.into))
            # The screw's own thread is to hold twice its stress area in shear (FED-STD-H28).
            for_own = 2.0 * screw.area / screw.own_area(1.0)
            found["needed"] = (max(for_hole, for_own) + screw.pitch) / 1000.0
        return found

    @cached_property
    def words(self) -> Words:
        lock = self.locker if self.has(lambda: self.locker) else None
        return {
            "limit": self.governs,
            "feel": self.by_feel,
            "locker": lock,
            "surfaces": self.surfaces if self.has(lambda: self.surfaces) else (),
            "reuse": self.reuse,
            "holds": self.holds,
            "notice": self.notice,
            "notes": set(self.notes),
            "drag_missing": self.drag_missing,
            "assumed": self.assumed if "setting" in self.numbers else None,
            "tools": find("tools", size=self.screw.size) if self.has(lambda: self.screw) else None,
            "alike": {
                there
                for one in table("lookalikes")
                for here, there in ((one["one"], one["other"]), (one["other"], one["one"]))
                if here == self.said("thread")
            },
        }

    @property
    def governs(self) -> str:
        if self.screwed:
            if not self.has(lambda: self.seated):
                return ""
            return "hex of the screw" if self.seated == self.listed else "hole strips"
        if not self.has(lambda: self.advice):
            return ""
        return self.advice[0] if self.advice[1] > 0.0 else ""

    @property
    def by_feel(self) -> str:
        if self.screwed:
            small = self.has(lambda: self.seated) and set_to(self.seated) <= 0.0
        elif self.feel_or_lack:
            return self.feel_or_lack
        else:
            small = self.has(lambda: self.advice) and self.advice[1] <= 0.0
        return "too small for a wrench" if small else ""

    @property
    def reuse(self) -> str | None:
        if self.running is None or self.said("into") not in (None, "insert nut"):
            return None
        if not self.has(lambda: self.screw) or "drag_reuse" not in self.drags:
            return None
        return "pass" if self.running >= self.drags["drag_reuse"] else "discard"

    @property
    def holds(self) -> bool | None:
        if not self.screwed:
            return None
        if self.said("carries") == "bare":
            return False
        if "carried" in self.numbers and "drive_torque" in self.numbers:
            return self.numbers["drive_torque"] <= self.numbers["carried"]
        return None

    @property
    def notice(self) -> tuple[str, str]:
        if self.holds is False:
            return "warning", f"pulley slips {self.said('carries')}"
        if self.reuse == "discard":
            return "warning", "nut is worn"
        asked = not self.screwed and self.described
        if asked and self.tapped and self.said("engagement") is not None and self.engaged < self.screw.d:
            return "notice", "too few threads"
        return "", ""

    @property
    def drag_missing(self) -> bool:
        told = not self.screwed and self.has(lambda: self.advice) and self.advice[1] > 0.0
        return told and self.into == "insert nut" and self.running is None

    @property
    def notes(self) -> list[str]:
        if self.screwed:
            return ["steel not named"] if self.governs == "hole strips" and self.into == "steel" else []
        if not self.governs:
            return []
        stainless = self.metal.startswith("A2-") or self.metal.startswith("A4-")
        said = {
            "add the drag": self.drag_missing,
            "hard washer": self.governs == "head sinks in" and self.said("washer") != "yes",
            "class gains nothing": self.metal in ("10.9", "12.9", "A574", "grade 8")
            and self.governs in ("hole strips", "head sinks in")
            and family(self.into) == "light alloy",
            "head not checked": self.governs != "bearing stack" and self.sinks is None,
            "degrease first": self.wet and self.state in ("oiled", "phosphate oiled", "anti-seize"),
            "not stainless": self.odd_stainless,
            "seizes": stainless and self.state == "stainless dry" and not self.odd_stainless,
        }
        return [note for note, holds in said.items() if holds]

    @property
    def assumed(self) -> dict[str, str]:
        """What stands for values that were not set, and a guess at what decides the strength."""
        if self.way == "feel":
            return {} if self.said("stack") is not None else {"stack": "play"}
        presets = {"condition": self.state, "into": self.into}
        if self.screwed:
            if self.said("shaft") is not None:
                presets["screws"] = "one"
        else:
            presets |= {"head": "socket", "washer": "no"}
        found = {name: preset for name, preset in presets.items() if self.said(name) is None}
        for name in ("into",) if self.screwed else ("into", "strength"):
            value = self.board.value(f"joints.{self.key}.{name}")
            if value is not None and value.known == "guess":
                found[name] = str(value.si)
        return found


def reach(
    thread: str, lengths: dict[str, float], stuff: str, *, through: bool
) -> tuple[dict[str, float], str, bool]:
    """Return lengths in m, the verdict and whether it is short of what is wanted."""
    size = Screw(thread).d / 1000.0
    plate, washers, screw = lengths["plate"], lengths["washers"], lengths["screw_length"]
    thread_deep, free = lengths["thread_depth"], lengths["hole_depth"]
    past = screw - plate - washers
    if thread_deep > free:
        return {}, "", False
    if past <= 0.0:
        return {}, "does not reach", False
    if family(stuff) == "soft":
        return {}, "", False
    kind = family(stuff)
    wanted = size * (1.0 if kind in ("steel", "stainless") else 2.0 if "plastic" in kind else 1.5)
    bottom = free if through else thread_deep
    engaged, room = min(past, thread_deep), bottom - past
    hair = 1e-7
    if room < -hair or (through and room < hair):
        verdict = "reaches the windings" if through else "bottoms"
    elif engaged < size - hair:
        verdict = "too short"
    elif room < 0.0005 - hair:
        verdict = "close"
    else:
        verdict = "enough"
    longest = plate + washers + bottom - 0.0005
    numbers = {"engaged": engaged, "least": size, "wanted": wanted, "room": room, "longest": longest}
    fits = [
        plate + washers + deep
        for deep in (wanted, size)
        if deep <= thread_deep + hair and plate + washers + deep <= longest + hair
    ]
    if fits:
        numbers["shortest"] = fits[0]
    return numbers, verdict, engaged < wanted - hair
