"""Numbers for cutting and proving a taper: set-over, compound, gauge and indicator."""

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
    Number,
    Step,
    TaperPerFoot,
    Text,
    Working,
    calculation,
)

GEOMETRY = ("geometry of a cone",)


@dataclass(frozen=True)
class TailstockSetover:
    """How far the tailstock is set over, mm, and which way."""

    direction: Text
    setover: Length
    setover_exact: Length
    centres_distance: Length = field(repr=False)
    diameter_per_length: Number = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        values = {"L": (self.centres_distance, "length"), "T": (self.diameter_per_length, "number")}
        return Working(
            CALCULATIONS["tailstock-setover"].title,
            (
                Step("s", "Half the taper over the WHOLE length between centres, the common approximation", "L*T/2",
                     values, self.setover, "length"),
                Step("x", "For ball centres, exactly: the side's sine, not its tangent", "L*sin(atan(T/2))",
                     values, self.setover_exact, "length"),
            ),
            CALCULATIONS["tailstock-setover"].sources,
            (
                "Set over by the length between centres, not by the taper's own length.",
                ("Plain 60° centres tilt in their holes: use ball centres or bell-mouthed holes above about 1.5°, "
                "and close with two measured diameters."),
            ),
        )  # fmt: skip


@calculation(
    "tailstock-setover",
    "Setting the tailstock over for a taper",
    given=(("taper_per_foot", "centres_distance"), ("large", "small", "length", "centres_distance")),
    meanings={
        "taper_per_foot": "change of diameter in a foot of length",
        "large": "diameter at the large end",
        "small": "diameter at the small end",
        "length": "length between the two, along the axis",
        "centres_distance": "length of the work between the centres",
        "direction": "which way the tailstock goes",
        "setover": "set-over by the common approximation",
        "setover_exact": "set-over for ball centres",
    },
    sources=GEOMETRY,
)
def tailstock_setover(
    centres_distance: Length,
    taper_per_foot: TaperPerFoot | None = None,
    large: Diameter | None = None,
    small: Diameter | None = None,
    length: Length | None = None,
) -> TailstockSetover:
    """Return how far the tailstock is set over for a taper on work between centres.

    Args:
        centres_distance: whole length of the work between the centres, mm.
        taper_per_foot: diameter per length, a plain number (1.5 in/ft is .125).
        large: diameter at the large end, mm.
        small: diameter at the small end, mm.
        length: length between the two diameters, mm.

    Returns:
        Direction in words, set-over by approximation and for ball centres, mm.

    Raises:
        HandwheelError: the sizes make no taper, or the length is not more than 0.

    Examples:
        >>> round(tailstock_setover(12, taper_per_foot=0.05).setover_exact, 6)
        0.299906
    """
    if not centres_distance > 0:
        raise HandwheelError("centres-distance: must be more than 0")
    found = taper(large, small, length, taper_per_foot)
    return TailstockSetover(
        "towards the operator puts the small end at the tailstock",
        centres_distance * found.diameter_per_length / 2,
        centres_distance * math.sin(math.radians(found.half_angle)),
        centres_distance,
        found.diameter_per_length,
    )


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


@dataclass(frozen=True)
class TailstockTest:
    """How far the tailstock centre stands off, and how far to move it, mm."""

    offset_now: Length
    move: Length
    near_diameter: Diameter = field(repr=False)
    far_diameter: Diameter = field(repr=False)
    collar_distance: Length = field(repr=False)
    centres_distance: Length = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return Working(
            CALCULATIONS["tailstock-test"].title,
            (
                Step("o", "Half the difference, carried from the collars' distance to the centres'", "(F - N)/2*C/K",
                     {"F": (self.far_diameter, "length"), "N": (self.near_diameter, "length"),
                      "C": (self.centres_distance, "length"), "K": (self.collar_distance, "length")},
                     self.offset_now, "length"),
            ),
            CALCULATIONS["tailstock-test"].sources,
            (
                "Cut both collars at one setting, lightly, the tool on the operator's side; a spring pass first.",
                "It cannot tell a headstock that points off: prove that with a bar held in the chuck alone.",
            ),
        )  # fmt: skip


@calculation(
    "tailstock-test",
    "Aligning the tailstock by two collars",
    given=(("near_diameter", "far_diameter", "collar_distance", "centres_distance"),),
    meanings={
        "near_diameter": "collar at the headstock",
        "far_diameter": "collar at the tailstock",
        "collar_distance": "distance between the collars",
        "centres_distance": "length of the work between the centres",
        "offset_now": "how far the tailstock centre is away from the operator",
        "move": "how far to move it towards the operator",
    },
    sources=GEOMETRY,
)
def tailstock_test(
    near_diameter: Diameter, far_diameter: Diameter, collar_distance: Length, centres_distance: Length
) -> TailstockTest:
    """Return how the tailstock stands and how far to move it, from two collars turned at one setting.

    Args:
        near_diameter: collar at the headstock, mm.
        far_diameter: collar at the tailstock, mm.
        collar_distance: distance between the collars, mm.
        centres_distance: length of the work between the centres, mm.

    Returns:
        Offset of the tailstock centre away from the operator, and the move towards the operator, mm.

    Raises:
        HandwheelError: a size is not more than 0, or the collars are further apart than the centres.

    Examples:
        >>> round(tailstock_test(1.0, 1.0012, 9, 12).move, 4)
        0.0008
    """
    for name, amount in (
        ("near-diameter", near_diameter),
        ("far-diameter", far_diameter),
        ("collar-distance", collar_distance),
    ):
        if not amount > 0:
            raise HandwheelError(f"{name}: must be more than 0")
    if not collar_distance <= centres_distance < math.inf:
        raise HandwheelError("centres-distance: the collars lie between the centres, so it can't be less than theirs")
    offset = (far_diameter - near_diameter) / 2 * centres_distance / collar_distance
    return TailstockTest(offset, offset, near_diameter, far_diameter, collar_distance, centres_distance)


def _sound(half_angle: float, reduce: float) -> None:
    if not 0 < half_angle < 90:
        raise HandwheelError("half-angle: lies between 0 and 90°, counted from the axis")
    if not 0 <= reduce < math.inf:
        raise HandwheelError("reduce: a cut takes 0 or more off the diameter")
