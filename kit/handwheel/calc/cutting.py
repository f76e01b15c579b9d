"""Speed, force, power, finish and time of a turning cut."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass, field

from handwheel.calc.refusals import positive
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import (
    Angle,
    CuttingSpeed,
    Diameter,
    Feed,
    Force,
    Length,
    Number,
    Power,
    Roughness,
    SpecificForce,
    SpindleSpeed,
    SpindleSpeeds,
    Step,
    Time,
    Working,
    calculation,
    working,
)

GRACE = 1.05
"""A listed speed may exceed the exact one by this factor: 5 % is less than a grade of bar varies."""

TOO_FAST = "The slowest spindle speed is still faster than this cut wants: cut less deep, and look at the edge often."


@dataclass(frozen=True)
class SpindleSpeedResult:
    """Spindle speeds, rev/min: the exact one and the one to set."""

    exact_rpm: SpindleSpeed
    chosen_rpm: SpindleSpeed
    cautions: tuple[str, ...]
    cutting_speed: CuttingSpeed = field(repr=False)
    diameter: Diameter = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return working(
            "spindle-speed",
            (
                Step("n", "Surface speed over the length of one turn", {"in": "12*v/(pi*D)", "mm": "1000*v/(pi*D)"},
                     {"v": (self.cutting_speed, "cutting_speed"), "D": (self.diameter, "length")},
                     self.exact_rpm, "spindle_speed"),
            ),
            self.cautions,
        )  # fmt: skip


@calculation(
    "spindle-speed",
    "Spindle speed for a cutting speed",
    given=(("cutting_speed", "diameter"),),
    meanings={
        "cutting_speed": "surface speed of the work past the tool",
        "diameter": "largest diameter the tool cuts on",
        "speeds": "the lathe's spindle speeds, with commas between",
        "exact_rpm": "the speed that gives the cutting speed exactly",
        "chosen_rpm": "the largest listed speed not above 1.05 times the exact one",
    },
    sources=("definition of cutting speed, v = π D n",),
)
def spindle_speed(cutting_speed: CuttingSpeed, diameter: Diameter, speeds: SpindleSpeeds = ()) -> SpindleSpeedResult:
    """Return the spindle speed for a cutting speed, and which of the lathe's speeds to set.

    Args:
        cutting_speed: surface speed, m/min.
        diameter: diameter cut on, mm.
        speeds: the lathe's spindle speeds, rev/min; none gives the exact speed alone.

    Returns:
        The exact speed and the one to set, rev/min; a caution where every listed speed is too fast.

    Raises:
        HandwheelError: a speed or diameter is not more than 0.

    Examples:
        >>> result = spindle_speed(90 * 0.3048, 1.5 * 25.4, (45, 70, 105, 160, 240, 360))
        >>> round(result.exact_rpm, 2), result.chosen_rpm
        (229.18, 240)
    """
    positive(cutting_speed=cutting_speed, diameter=diameter)
    for speed in speeds:
        positive("each listed spindle speed turns the work", speeds=speed)
    exact = 1000 * cutting_speed / (math.pi * diameter)
    slow_enough = [speed for speed in speeds if speed <= GRACE * exact]
    chosen = max(slow_enough) if slow_enough else min(speeds, default=exact)
    cautions = () if slow_enough or not speeds else (TOO_FAST,)
    return SpindleSpeedResult(exact, chosen, cautions, cutting_speed, diameter)


@dataclass(frozen=True)
class TurningPower:
    """Cutting force (N) and the power it takes at the tool (kW)."""

    force: Force
    power: Power
    kc11: SpecificForce = field(repr=False)
    mc: Number = field(repr=False)
    depth: Length = field(repr=False)
    feed: Feed = field(repr=False)
    cutting_speed: CuttingSpeed = field(repr=False)
    approach_angle: Angle = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step; the specific force is one per mm², so inches are turned into mm."""
        thickness = self.feed * math.sin(math.radians(self.approach_angle))
        return working(
            "turning-power",
            (
                Step("h", "Chip thickness, square to the edge", "f*sin(K)",
                     {"f": (self.feed, "feed"), "K": (self.approach_angle, "angle")}, thickness, "feed"),
                Step("F", "Cutting force: specific force × depth × feed, thin chips being harder to part",
                     {"in": "25.4**2*k*a*f*(25.4*h)**(-m)", "mm": "k*a*f*h**(-m)"},
                     {"k": (self.kc11, "specific_force"), "a": (self.depth, "length"), "f": (self.feed, "feed"),
                      "h": (thickness, "feed"), "m": (self.mc, "number")}, self.force, "force"),
                Step("P", "Power at the tool", {"in": "0.3048*F*v/60000", "mm": "F*v/60000"},
                     {"F": (self.force, "force"), "v": (self.cutting_speed, "cutting_speed")}, self.power, "power"),
            ),
            ("Specific cutting forces differ by 20 % between sources, and a dull tool adds more; leave that in hand.",),
        )  # fmt: skip


@calculation(
    "turning-power",
    "Force and power of a turning cut",
    given=(("kc11", "mc", "depth", "feed", "cutting_speed"),),
    meanings={
        "kc11": "specific cutting force for a chip 1 mm thick and 1 mm wide",
        "mc": "how the specific force falls with chip thickness (exponent)",
        "approach_angle": "angle of the cutting edge to the lathe axis",
        "depth": "depth of cut, per side",
        "feed": "feed per turn",
        "cutting_speed": "surface speed",
        "force": "cutting force",
        "power": "power at the tool, before the lathe's losses",
    },
    sources=("Kienzle's law for the specific cutting force, from memory",),
)
def turning_power(
    kc11: SpecificForce, mc: Number, depth: Length, feed: Feed, cutting_speed: CuttingSpeed, approach_angle: Angle = 90
) -> TurningPower:
    """Return the cutting force and the power of a turning cut by the specific cutting force.

    Args:
        kc11: specific cutting force at 1 mm × 1 mm chip, MPa.
        mc: exponent of the chip thickness, a plain number from 0 to below 1.
        depth: depth of cut per side, mm.
        feed: feed per turn, mm/rev.
        cutting_speed: surface speed, m/min.
        approach_angle: angle of the edge to the axis, degrees.

    Returns:
        Force (N) and power (kW) at the tool.

    Raises:
        HandwheelError: a value is not positive, or the angle is not between 0 and 180°.

    Examples:
        >>> cut = turning_power(1700, 0.25, 2, 0.2, 80)
        >>> round(cut.force, 2), round(cut.power, 5)
        (1016.84, 1.35578)
    """
    positive(kc11=kc11, depth=depth, feed=feed, cutting_speed=cutting_speed)
    if not 0 <= mc < 1:
        raise HandwheelError("mc: lies between 0 and 1; .25 for most steels")
    if not 0 < approach_angle < 180:
        raise HandwheelError("approach-angle: lies between 0 and 180°; 90 for a tool square to the axis")
    thickness = feed * math.sin(math.radians(approach_angle))
    force = kc11 * depth * feed * thickness**-mc
    return TurningPower(force, force * cutting_speed / 60000, kc11, mc, depth, feed, cutting_speed, approach_angle)


@dataclass(frozen=True)
class SurfaceFinish:
    """Height of the feed marks and their mean, µm."""

    rt: Roughness
    ra: Roughness
    feed: Feed = field(repr=False)
    nose_radius: Length = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        values = {"f": (self.feed, "feed"), "r": (self.nose_radius, "length")}
        return working(
            "surface-finish",
            (
                Step("Rt", "Height of the marks the nose leaves", {"in": "10**6*f**2/(8*r)", "mm": "1000*f**2/(8*r)"},
                     values, self.rt, "roughness"),
                Step("Ra", "Their mean, the shop's usual form", {"in": "10**6*f**2/(32*r)", "mm": "1000*f**2/(32*r)"},
                     values, self.ra, "roughness"),
            ),
            ("The usual form is 2.6 % under the exact mean of the marks; a real surface is rougher, never smoother.",),
        )  # fmt: skip


@calculation(
    "surface-finish",
    "Finish a round nose leaves",
    given=(("feed", "nose_radius"),),
    meanings={
        "feed": "feed per turn",
        "nose_radius": "the tool's nose radius",
        "rt": "height of the feed marks",
        "ra": "their arithmetic mean",
    },
    sources=("geometry of the tool nose, feed small against the radius",),
)
def surface_finish(feed: Feed, nose_radius: Length) -> SurfaceFinish:
    """Return the finish that a round nose leaves at a feed.

    Args:
        feed: feed per turn, mm/rev.
        nose_radius: the tool's nose radius, mm.

    Returns:
        Height of the marks and their mean, µm.

    Raises:
        HandwheelError: a value is not positive, or the feed is more than the nose can cover.

    Examples:
        >>> marks = surface_finish(0.2, 0.8)
        >>> round(marks.rt, 2), round(marks.ra, 4)
        (6.25, 1.5625)
    """
    positive(feed=feed, nose_radius=nose_radius)
    if feed > 2 * nose_radius:
        raise HandwheelError("feed: is more than twice the nose radius, so the marks are no longer round; feed less")
    return SurfaceFinish(1000 * feed**2 / (8 * nose_radius), 1000 * feed**2 / (32 * nose_radius), feed, nose_radius)


def cutting_time(length: Length, feed: Feed, speed: SpindleSpeed) -> Time:
    """Return the minutes a cut takes.

    Args:
        length: length the tool travels in feed, mm.
        feed: feed per turn, mm/rev.
        speed: spindle speed, rev/min.

    Raises:
        HandwheelError: feed or speed is not more than 0.

    Examples:
        >>> cutting_time(120, 0.2, 500)
        1.2
    """
    positive(feed=feed, speed=speed)
    return length / (feed * speed)


def deepest_cut(
    available: Power, kc11: SpecificForce, mc: Number, feed: Feed, cutting_speed: CuttingSpeed, approach_angle: Angle
) -> Length:
    """Return the depth of cut (mm per side) that takes all of the power available: force grows with the depth.

    Args:
        available: power at the tool, kW.
        kc11: specific cutting force, MPa.
        mc: exponent of the chip thickness, a plain number.
        feed: feed per turn, mm/rev.
        cutting_speed: surface speed, m/min.
        approach_angle: angle of the edge to the axis, degrees.

    Examples:
        >>> round(deepest_cut(1.35578, 1700, 0.25, 0.2, 80, 90), 4)
        2.0
    """
    return available / turning_power(kc11, mc, 1.0, feed, cutting_speed, approach_angle).power


def coarsest_feed(feeds: Iterable[Feed], nose_radius: Length, finish: Roughness) -> Feed | None:
    """Return the coarsest of the lathe's feeds (mm/rev) that leaves a mean finish within `finish` (µm), or None.

    Args:
        feeds: the lathe's feeds, mm/rev.
        nose_radius: the tool's nose radius, mm.
        finish: the roughest mean finish allowed, µm.

    Returns:
        A feed, mm/rev, or None where even the finest is too coarse.

    Examples:
        >>> coarsest_feed((0.05, 0.1, 0.2), 0.4, 1.6)
        0.1
    """
    good = [feed for feed in feeds if feed <= 2 * nose_radius and surface_finish(feed, nose_radius).ra <= finish]
    return max(good, default=None)
