"""The tailstock: set over for a taper, and aligned again by two collars."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from handwheel.calc.tapers import taper
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import (
    CALCULATIONS,
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
