"""Does the screw reach: how far it goes into a hole, whether that is enough, and whether it goes too far."""

from logic.errors import DoesNotReach, InputError, not_negative, positive
from logic.frozen import frozen
from logic.joints.rules import rule
from logic.joints.threads import thread
from logic.si import Metre, One
from logic.tables import pick
from logic.workings import cited

SLACK = 1e-7
"""Metres that the sum of typed lengths may miss a limit by: a screw of the longest length offered is not too long."""


@frozen
class Reach:
    """How a screw sits in its hole.

    `engaged` is what the threads overlap, `least` and `wanted` what they should, `room` what is left to
    `end` (negative: past it): to what a screw must not touch in a hole that is open behind, to the end of the
    thread in a closed one, where the screw jams. `verdict` is "too short", "enough", "close" (less than half
    a millimetre of room), "reaches the windings" (open hole) or "bottoms" (closed one); `short` also tells a
    screw under `wanted`.
    """

    engaged: Metre
    least: Metre
    wanted: Metre
    room: Metre
    end: Metre
    verdict: str
    short: bool


@cited("screw_length - plate - washers", source="derived length below the head", standing="derived")
def into_hole(*, screw_length: Metre, plate: Metre, washers: Metre) -> Metre:
    """Length of screw past the plate.

    `screw_length` is from below the head, `washers` are all of them together.

    >>> round(into_hole(screw_length=0.012, plate=0.006, washers=0.0008) * 1000, 1)
    5.2
    """
    positive(screw_length=screw_length, plate=plate)
    not_negative(washers=washers)
    if screw_length <= plate + washers:
        raise DoesNotReach("screw_length", screw_length, "does not reach", low=plate + washers)
    return screw_length - plate - washers


@cited("min(into_hole, thread_depth)", source="derived the shorter of screw and thread", standing="derived")
def engaged_length(*, into_hole: Metre, thread_depth: Metre) -> Metre:
    """Return the length of thread that overlaps.

    >>> engaged_length(into_hole=0.0052, thread_depth=0.005)
    0.005
    """
    positive(into_hole=into_hole, thread_depth=thread_depth)
    return min(into_hole, thread_depth)


@cited("plate + washers + engaged", source="derived length below the head", standing="derived")
def screw_for_engagement(*, plate: Metre, washers: Metre, engaged: Metre) -> Metre:
    """Length of screw, below the head, that engages so much of the thread.

    >>> round(screw_for_engagement(plate=0.006, washers=0.001, engaged=0.004) * 1000, 1)
    11.0
    """
    positive(plate=plate, engaged=engaged)
    return plate + washers + engaged


@cited("plate + washers + hole_depth - room", source="derived length below the head", standing="derived")
def longest_screw(*, plate: Metre, washers: Metre, hole_depth: Metre, room: Metre) -> Metre:
    """Longest screw that leaves so much room at the end of the hole.

    >>> round(longest_screw(plate=0.006, washers=0.001, hole_depth=0.007, room=0.0005) * 1000, 1)
    13.5
    """
    positive(plate=plate, hole_depth=hole_depth)
    return plate + washers + hole_depth - room


@cited("diameters * nominal_diameter", source="design-news rules of engagement in diameters")
def engagement_in_diameters(*, diameters: One, nominal_diameter: Metre) -> Metre:
    """Return a rule of engagement as a length.

    >>> engagement_in_diameters(diameters=1.5, nominal_diameter=0.004)
    0.006
    """
    positive(diameters=diameters, nominal_diameter=nominal_diameter)
    return diameters * nominal_diameter


def rule_for(material: str) -> One:
    """Return the wanted engagement in diameters: 1 in steel, 1.5 in soft metals, 2 in plastics.

    Raises InputError for a soft member, which holds no thread.
    """
    line = pick("materials", material=material)
    if "feel" in line:
        raise InputError("material", material, "soft")
    kind = line.text("family")
    if kind in ("steel", "stainless"):
        return rule("engagement steel")
    return rule("engagement plastic" if "plastic" in kind else "engagement light alloy")


def reach(  # noqa: PLR0913  (the six things a person measures)
    designation: str,
    *,
    screw_length: Metre,
    plate: Metre,
    washers: Metre,
    thread_depth: Metre,
    hole_depth: Metre,
    material: str,
    through: bool = True,
) -> Reach:
    """Return how a screw sits: too short, enough, or too long.

    `hole_depth` is how far a screw may go in, `thread_depth` how much of it is tapped; `through` tells a
    hole that opens to the windings. Raises InputError when the screw does not reach the hole, or the thread
    is deeper than the hole.

    >>> sits = reach("M4", screw_length=0.012, plate=0.006, washers=0.0, thread_depth=0.005, hole_depth=0.005,
    ...              material="6061-T6")
    >>> sits.verdict, round(sits.room * 1000, 1)
    ('reaches the windings', -1.0)
    """
    if thread_depth > hole_depth:
        raise InputError("thread_depth", thread_depth, "deeper than the hole", high=hole_depth)
    screw = thread(designation)
    depth = into_hole(screw_length=screw_length, plate=plate, washers=washers)
    engaged = engaged_length(into_hole=depth, thread_depth=thread_depth)
    least = engagement_in_diameters(
        diameters=rule("engagement least"), nominal_diameter=screw.nominal_diameter
    )
    wanted = engagement_in_diameters(diameters=rule_for(material), nominal_diameter=screw.nominal_diameter)
    end = hole_depth if through else thread_depth
    room = end - depth
    if room < -SLACK or (through and room < SLACK):
        verdict = "reaches the windings" if through else "bottoms"
    elif engaged < least - SLACK:
        verdict = "too short"
    else:
        verdict = "close" if room < pick("reach_rules", rule="close").number("length") - SLACK else "enough"
    return Reach(engaged, least, wanted, room, end, verdict, engaged < wanted - SLACK)
