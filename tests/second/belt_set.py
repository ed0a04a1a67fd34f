"""Setting a belt and reading it, a second time: pulls, a weight, the motor, the plucked span, two ways together."""

from collections.abc import Sequence
from math import hypot, isclose, sqrt
from typing import Any

from scipy.linalg import inv, lstsq
from scipy.optimize import least_squares

from tests.second.belt import (
    FOOT_A_MINUTE,
    HORSEPOWER,
    MM,
    POUND,
    SMALL,
    Answer,
    Belt,
    Impossible,
    Numbers,
    Row,
    all_told,
    force,
    loop,
    practice,
    pulled,
    slopes,
    tension_at,
    told,
)


def plan(belt: Belt, depth: float | None) -> Numbers:
    def at() -> float:
        return belt.best_depth if depth is None else depth

    def design() -> float:
        """Effective pull of the design torque."""
        return belt.service * belt.torque / (belt.motor_pulley / 2.0)

    def greatest() -> float:
        """20 HP / S, tried with a belt that runs at 10 m/s."""
        speed = 10.0
        return 20.0 * (design() * speed / HORSEPOWER) / (speed / FOOT_A_MINUTE / 1000.0) * POUND

    def locked() -> float:
        if at() > belt.span / 4.0:
            raise Impossible
        return force(belt.target, at(), belt.span, belt.stiffness, belt.span)

    def misread() -> float:
        belt.check(at())
        return tension_at(locked(), at(), *belt.stretched)

    return all_told(
        {
            "target": lambda: belt.target,
            "least": lambda: belt.least,
            "floor": lambda: belt.edges[0],
            "ceiling": lambda: belt.edges[1],
            "run_in": lambda: max(belt.least, 0.8 * belt.target),
            "depth": at,
            "pull_target": lambda: belt.pull(belt.target, at()),
            "pull_least": lambda: belt.pull(belt.least, at()),
            "pull_floor": lambda: belt.pull(belt.edges[0], at()),
            "pull_ceiling": lambda: belt.pull(belt.edges[1], at()),
            "pull_locked": locked,
            "misread": misread,
            "span": lambda: belt.span,
            "centre": lambda: belt.centre,
            "wrap": lambda: belt.wrap,
            "teeth_in_mesh": lambda: belt.mesh,
            "mesh_factor": lambda: belt.mesh_factor,
            "slack_torque": lambda: 2.0 * belt.target * belt.motor_pulley / 2.0,
            "slack_margin": lambda: belt.target / belt.aim["swing"],
            "shaft_pull": lambda: belt.target * belt.shaft,
            "least_of_manuals": lambda: 0.812 * belt.service * belt.torque / belt.motor_pulley,
            "most_of_manuals": greatest,
        }
    )


def apart(belt: Belt) -> str:
    """The measured value that stands more than a millimetre from what follows of belt and pulleys, "" for none."""
    own = told(lambda: belt.own_centre)
    if isinstance(own, str):
        return ""
    for key, follows in (("drive.centre", own), ("drive.span", belt.span_of(own))):
        if belt.has(key) and abs(belt[key] - follows) > MM:
            return key
    return ""


def bench(belt: Belt) -> Numbers:
    def pull() -> float:
        return belt.pull(belt.target, belt.best_depth)

    def error() -> float:
        return belt.error(belt.target, belt.best_depth, belt.scale_error)

    def part(which: int) -> float:
        limits = belt.scale_error, belt.depth_error, belt.stiffness_error
        _ = pull()
        span, stiffness, length = belt.stretched
        return abs(slopes(belt.target, belt.best_depth, span, stiffness, length)[which]) * limits[which]

    return all_told(
        {
            "best_depth": lambda: belt.best_depth,
            "best_pull": pull,
            "best_error": lambda: pull() * 0.0 + error(),
            "best_share": lambda: pull() * 0.0 + error() / belt.target,
            "from_scale": lambda: part(0),
            "from_depth": lambda: part(1),
            "from_stiffness": lambda: part(2),
            "motor_pull": lambda: belt.target * belt.shaft,
            "motor_error": lambda: belt.shaft_error(belt.target, belt.target * belt.shaft),
        }
    )


def weighed(belt: Belt, weight: float, depth: float) -> dict[str, Answer]:
    return belt.judged(lambda: belt.read(weight, depth, practice("weighing error") * weight))


def motor(belt: Belt, pull: float) -> dict[str, Answer]:
    return belt.judged(lambda: (pull / belt.shaft, belt.shaft_error(pull / belt.shaft, pull)))


def nudge(belt: Belt, tension: float) -> Answer:
    """The centre at which the loop asks for the missing stretch, to first order: from a step either way."""

    def way() -> float:
        stretch = (belt.target - tension) * belt.length / belt.stiffness
        _ = belt.lean
        step = 1e-5 * belt.centre
        longer = loop(belt.centre + step, *belt.pulleys) - loop(belt.centre, *belt.pulleys)
        more = loop(belt.centre + 2.0 * step, *belt.pulleys) - loop(belt.centre, *belt.pulleys)
        return stretch * step / (2.0 * longer - more / 2.0)

    return told(way)


def left_open(equations: Sequence[Row]) -> float:
    """Error of the first unknown of many equations, each of error 1; columns brought to one size first."""
    size = [hypot(*column) for column in zip(*equations, strict=True)]
    even = [[each / of for each, of in zip(line, size, strict=True)] for line in equations]
    normal = [[sum(line[a] * line[b] for line in even) for b in range(len(size))] for a in range(len(size))]
    return sqrt(float(inv(normal)[0][0])) / size[0]


def fitted(belt: Belt, pulls: Sequence[tuple[float, float]]) -> dict[str, Any]:
    """Tension, zero error of the depth and stiffness that fit all pulls; the last two held to what is known."""
    found: dict[str, Any] = {}
    reads = practice("zero share")

    def fit() -> tuple[float, float]:
        span, stiffness, length = belt.stretched
        depths = [depth for _, depth in pulls]
        if len(pulls) < 2 or max(depths) - min(depths) < belt.depth_error / 2.0:
            raise Impossible
        for depth in depths:
            belt.check(depth)
        zero_limit, each_limit = reads * belt.depth_error, sqrt(1.0 - reads**2) * belt.depth_error

        def by(at: Row, depth: float) -> list[float]:
            """Slopes of a pull by tension, zero error in mm and share of the stiffness."""
            put = at[0], depth + at[1] * MM, at[2] * stiffness
            steps = ((SMALL, 0.0, 0.0), (0.0, SMALL * MM, 0.0), (0.0, 0.0, SMALL * stiffness))
            moved = [[one + 1j * step for one, step in zip(put, each, strict=True)] for each in steps]
            return [pulled(one, two, span, three, length).imag / SMALL for one, two, three in moved]

        at: Row = [pulls[0][0] * span / (4.0 * depths[0]), 0.0, 1.0]
        tight = MM / zero_limit, stiffness / belt.stiffness_error
        for _ in range(60):
            # Of each pull: the scale, and what the depth's own error does to the force.
            limits = [hypot(belt.scale_error, each_limit * by(at, depth)[1] / MM) for depth in depths]

            def misses(at: Row, limits: list[float] = limits) -> list[float]:
                of_pulls = [
                    (force(at[0], depth + at[1] * MM, span, at[2] * stiffness, length) - pull) / limit
                    for (pull, depth), limit in zip(pulls, limits, strict=True)
                ]
                return [*of_pulls, tight[0] * at[1], tight[1] * (at[2] - 1.0)]

            def slopes_of(at: Row, limits: list[float] = limits) -> list[list[float]]:
                each = zip(depths, limits, strict=True)
                of_pulls = [[slope / limit for slope in by(at, depth)] for depth, limit in each]
                return [*of_pulls, [0.0, tight[0], 0.0], [0.0, 0.0, tight[1]]]

            before = at
            at = least_squares(
                misses, at, slopes_of, x_scale=[100.0, 0.1, 1.0], xtol=1e-15, ftol=1e-15, gtol=1e-15
            ).x
            if all(isclose(*pair, rel_tol=1e-10, abs_tol=1e-10) for pair in zip(before, at, strict=True)):
                break
        found["zero"] = float(at[1]) * MM
        found["misfit"] = max(abs(each) for each in misses(at)[: len(pulls)])
        return float(at[0]), left_open(slopes_of(at))

    said = belt.judged(fit)
    return {**said, "zero": found.get("zero", said["tension"]), "agree": found.get("misfit", 0.0) <= 1.5}


def sound(belt: Belt) -> Numbers:
    return all_told(
        {
            "mass": lambda: belt.mass,
            "pitch_target": lambda: belt.pitch_of(belt.target),
            "pitch_floor": lambda: belt.pitch_of(belt.edges[0]),
            "pitch_ceiling": lambda: belt.pitch_of(belt.edges[1]),
        }
    )


Calibrated = tuple[float, float, float]
"""Factor, the tension it was set at, the share of that pull's error."""


def calibrated_by(belt: Belt, pitch: float, tension: float, error: float) -> Calibrated | str:
    factor = told(lambda: tension / belt.plucked(pitch))
    return factor if isinstance(factor, str) else (factor, tension, error / tension)


def calibrated_error(tension: float, share: float, by: Calibrated) -> float:
    factor, at, pull = by
    return hypot(tension * pull, 2.0 * share * tension, (tension - at) * (1.0 - factor))


def heard(belt: Belt, pitch: float, error: float, by: Calibrated | None) -> dict[str, Answer]:
    def read() -> tuple[float, float]:
        plain = belt.plucked(pitch)
        if by is None:
            return plain, hypot(belt.pluck_error(plain, error / pitch), practice("bending, most") * plain)
        return by[0] * plain, calibrated_error(by[0] * plain, error / pitch, by)

    said = belt.judged(read)
    return said if by is not None else {**said, "word": "nothing"}


def ways(belt: Belt, by: Calibrated | None) -> Numbers:
    def pulls() -> float:
        """What a fit would leave open on pulls without an error, at five depths from half the best to twice it."""
        reads, tension, span = practice("zero share"), belt.target, belt.span
        lines_of = [
            [0.0, 1.0 / (reads * belt.depth_error), 0.0],
            [0.0, 0.0, 1.0 / belt.stiffness_error],
        ]
        for share in (0.5, 0.875, 1.25, 1.625, 2.0):
            depth = share * belt.best_depth
            belt.check(depth)
            slope = [
                pulled(tension + 1j * SMALL, depth, span, belt.stiffness, belt.length).imag / SMALL,
                pulled(tension, depth + 1j * SMALL, span, belt.stiffness, belt.length).imag / SMALL,
                pulled(tension, depth, span, belt.stiffness + 1j * SMALL, belt.length).imag / SMALL,
            ]
            limit = hypot(belt.scale_error, sqrt(1.0 - reads**2) * belt.depth_error * slope[1])
            lines_of.append([each / limit for each in slope])
        return left_open(lines_of) / tension

    def weight() -> float:
        hung = practice("weighing error") * belt.pull(belt.target, belt.best_depth)
        return belt.error(belt.target, belt.best_depth, hung) / belt.target

    def by_motor() -> float:
        if belt.text("mount.adjust", "slots") == "fixed":
            raise Impossible
        return belt.shaft_error(belt.target, belt.target * belt.shaft) / belt.target

    def pluck() -> float:
        share = practice("pluck error")
        _ = belt.pitch_of(belt.target)
        if by is not None:
            return calibrated_error(belt.target, share, by) / belt.target
        return hypot(belt.pluck_error(belt.target, share) / belt.target, practice("bending, most"))

    return all_told(
        {
            "scale": lambda: bench_share(belt),
            "pulls": pulls,
            "weight": weight,
            "motor": by_motor,
            "pluck": pluck,
        }
    )


def bench_share(belt: Belt) -> float:
    share = bench(belt)["best_share"]
    if share == "missing":
        raise KeyError
    if isinstance(share, str):
        raise Impossible
    return share


def two(belt: Belt, first: tuple[float, float], second: tuple[float, float]) -> dict[str, Answer]:
    """Two readings as one: the tension at which the squares of both misses are least, each in its own error."""
    away = abs(first[0] - second[0]) / hypot(first[1], second[1])
    if away > 1.0:
        return {"apart": away, "tension": "nothing", "error": "nothing", "word": "nothing"}
    matrix = [[1.0 / first[1]], [1.0 / second[1]]]
    mean = float(lstsq(matrix, [first[0] / first[1], second[0] / second[1]])[0][0])
    error = left_open(matrix)
    return {"apart": away, **belt.judged(lambda: (mean, error))}
