"""Bringing a taper to size and proving it: compound, gauge and indicator."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from handwheel.calc.tapers import taper
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import (
    CALCULATIONS,
    Along,
    Angle,
    Diameter,
    Length,
    Step,
    TaperPerFoot,
    Working,
    calculation,
)

GEOMETRY = ("geometry of a cone",)


@dataclass(frozen=True)
class TaperCompoundFeed:
    """How a taper is brought to size: along the axis by the carriage, or measured along the cone, mm."""

    carriage_travel: Length
    along_cone: Length
    half_angle: Angle = field(repr=False)
    reduce: Diameter = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        values = {"x": (self.reduce, "length"), "A": (self.half_angle, "angle")}
        return Working(
            CALCULATIONS["taper-compound-feed"].title,
            (
                Step("z", "The carriage alone, along the axis, takes the whole cut", "x/(2*tan(A))",
                     values, self.carriage_travel, "length"),
                Step("c", "The same shift measured along the cone", "x/(2*sin(A))", values, self.along_cone, "length"),
            ),
            CALCULATIONS["taper-compound-feed"].sources,
            (
                "The compound runs along the cone: fed in, it takes nothing.",
                "Move the carriage, or the cross-slide by half the cut.",
            ),
        )  # fmt: skip


@calculation(
    "taper-compound-feed",
    "Bringing a taper to size",
    given=(("half_angle", "reduce"),),
    meanings={
        "half_angle": "angle of the side to the axis",
        "reduce": "what comes off the diameter",
        "carriage_travel": "carriage travel towards the large end that takes it off",
        "along_cone": "the same shift, measured along the cone",
    },
    sources=GEOMETRY,
)
def taper_compound_feed(half_angle: Angle, reduce: Diameter) -> TaperCompoundFeed:
    """Return the carriage travel that takes an amount off a taper's diameter, the compound standing along the cone.

    Args:
        half_angle: angle of the side to the axis, degrees.
        reduce: what comes off the diameter, mm; not negative.

    Returns:
        Carriage travel along the axis, and the same shift along the cone, mm.

    Raises:
        HandwheelError: the angle is not between 0 and 90°, or the reduction is negative.

    Examples:
        >>> round(taper_compound_feed(3.576334, 0.015).carriage_travel, 4)
        0.12
    """
    _sound(half_angle, reduce)
    half = math.radians(half_angle)
    return TaperCompoundFeed(reduce / (2 * math.tan(half)), reduce / (2 * math.sin(half)), half_angle, reduce)


@dataclass(frozen=True)
class TaperAdvance:
    """How far a gauge moves along a taper, mm."""

    advance: Length
    reduce: Diameter = field(repr=False)
    half_angle: Angle = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return Working(
            CALCULATIONS["taper-advance"].title,
            (
                Step("a", "The gauge goes on until the diameter it sits on is back", "x/(2*tan(A))",
                     {"x": (self.reduce, "length"), "A": (self.half_angle, "angle")}, self.advance, "length"),
            ),
            CALCULATIONS["taper-advance"].sources,
            ("It holds only where gauge and taper have one angle: prove the contact with blue first.",),
        )  # fmt: skip


@calculation(
    "taper-advance",
    "How far a gauge advances on a taper",
    given=(("half_angle", "reduce"), ("taper_per_foot", "reduce")),
    meanings={
        "half_angle": "angle of the side to the axis",
        "taper_per_foot": "change of diameter in a foot of length",
        "reduce": "what comes off the diameter",
        "advance": "how far the gauge moves along",
    },
    sources=GEOMETRY,
)
def taper_advance(
    reduce: Diameter, half_angle: Angle | None = None, taper_per_foot: TaperPerFoot | None = None
) -> TaperAdvance:
    """Return how far a ring gauge or hub moves along a taper when its diameter is reduced.

    Args:
        reduce: what comes off the diameter, mm; not negative.
        half_angle: angle of the side to the axis, degrees.
        taper_per_foot: diameter per length, a plain number.

    Returns:
        The advance, mm.

    Raises:
        HandwheelError: the angle is not between 0 and 90°, or the reduction is negative.

    Examples:
        >>> round(taper_advance(0.001, taper_per_foot=0.125).advance, 6)
        0.008
    """
    half = taper(half_angle=half_angle, taper_per_foot=taper_per_foot).half_angle
    _sound(half, reduce)
    return TaperAdvance(reduce / (2 * math.tan(math.radians(half))), reduce, half)


@dataclass(frozen=True)
class IndicatorRise:
    """What an indicator on the taper's side reads over a travel, mm."""

    rise: Length
    half_angle: Angle = field(repr=False)
    travel: Length = field(repr=False)
    along: Along = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        function = "tan" if self.along == "axis" else "sin"
        return Working(
            CALCULATIONS["indicator-rise"].title,
            (
                Step("r", f"Rise over a travel along the {self.along}", f"z*{function}(A)",
                     {"z": (self.travel, "length"), "A": (self.half_angle, "angle")}, self.rise, "length"),
            ),
            CALCULATIONS["indicator-rise"].sources,
            ("Indicator on centre height and square to the axis; wind out the backlash before it is zeroed.",),
        )  # fmt: skip


@calculation(
    "indicator-rise",
    "Proving an angle with an indicator",
    given=(("half_angle", "travel", "along"),),
    meanings={
        "half_angle": "angle of the side to the axis",
        "travel": "travel over which the indicator is read",
        "along": "what travels: the carriage along the axis, or the compound along the cone",
        "rise": "what the indicator reads",
    },
    sources=GEOMETRY,
)
def indicator_rise(half_angle: Angle, travel: Length, along: Along) -> IndicatorRise:
    """Return what an indicator reads over a travel, square to the axis.

    Args:
        half_angle: angle of the side to the axis, degrees.
        travel: travel, mm.
        along: 'axis' for the carriage, 'cone' for the compound, a word without a unit.

    Returns:
        The rise, mm.

    Raises:
        HandwheelError: the angle is not between 0 and 90°, or the travel is not more than 0.

    Examples:
        >>> round(indicator_rise(3.576334, 1.0, "axis").rise, 6), round(indicator_rise(3.576334, 1.0, "cone").rise, 7)
        (0.0625, 0.0623783)
    """
    if not travel > 0:
        raise HandwheelError("travel: must be more than 0")
    if along not in ("axis", "cone"):
        raise HandwheelError("along: it can be axis or cone")
    _sound(half_angle, 0.0)
    half = math.radians(half_angle)
    return IndicatorRise(travel * (math.tan(half) if along == "axis" else math.sin(half)), half_angle, travel, along)


def _sound(half_angle: float, reduce: float) -> None:
    if not 0 < half_angle < 90:
        raise HandwheelError("half-angle: lies between 0 and 90°, counted from the axis")
    if not 0 <= reduce < math.inf:
        raise HandwheelError("reduce: a cut takes 0 or more off the diameter")
