"""The five ways to state one taper, from any one of them."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from handwheel.calc.refusals import positive
from handwheel.numbers.faults import HandwheelError
from handwheel.tables.load import load
from handwheel.tables.named_tapers import named_taper
from handwheel.worked.result import (
    Angle,
    Diameter,
    Figure,
    Length,
    LookUp,
    Number,
    Ratio,
    Step,
    TaperPerFoot,
    Text,
    Working,
    calculation,
    working,
)


@dataclass(frozen=True)
class Taper:
    """A taper: diameter per length (also as taper per foot and `1:k`), half and included angle in degrees."""

    taper_per_foot: TaperPerFoot
    diameter_per_length: Number
    half_angle: Angle
    included_angle: Angle
    ratio: Text
    stated: Step = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        per_length, half = self.diameter_per_length, self.half_angle
        return working(
            "taper",
            (
                self.stated,
                Step("A", "Half angle: the side to the axis", "atan(T/2)", {"T": (per_length, "number")},
                     half, "angle"),
                Step("I", "Included angle", "2*A", {"A": (half, "angle")}, self.included_angle, "angle"),
                Step("F", "Taper per foot", "12*T", {"T": (per_length, "number")}, self.taper_per_foot, "taper"),
                Step("k", "The taper as 1:k", "1/T", {"T": (per_length, "number")}, 1 / per_length, "number"),
            ),
            (
                "The compound is set to the HALF angle, counted from the lathe axis; ask where its scale has its zero.",
                "Scales lie: prove the taper over a measured length before it is cut to size.",
            ),
        )  # fmt: skip


def _named(name: str) -> Figure:
    head = load("named_tapers").head
    return Figure(named_taper(name).per_length, f"{head['source']} ({head['edition']})")


@calculation(
    "taper",
    "A taper, however it is stated",
    given=(("large", "small", "length"), ("taper_per_foot",), ("ratio",), ("half_angle",)),
    look_ups=(LookUp("named", "ratio", _named),),
    meanings={
        "large": "diameter at the large end",
        "small": "diameter at the small end",
        "length": "length between the two, along the axis",
        "taper_per_foot": "change of diameter in a foot of length",
        "ratio": "taper as 1:k, change of diameter to length",
        "half_angle": "angle of the side to the axis",
        "named": "a taper of the standard's table, such as Morse 3",
        "diameter_per_length": "change of diameter for each unit of length",
        "included_angle": "angle between the two sides",
    },
    sources=("geometry of a cone",),
)
def taper(
    large: Diameter | None = None,
    small: Diameter | None = None,
    length: Length | None = None,
    taper_per_foot: TaperPerFoot | None = None,
    ratio: Ratio | None = None,
    half_angle: Angle | None = None,
) -> Taper:
    """Return a taper in all its forms, from two diameters and their distance or from one form alone.

    Args:
        large: diameter at the large end, mm.
        small: diameter at the small end, mm.
        length: length between them along the axis, mm.
        taper_per_foot: diameter per length, a plain number (1.5 in/ft is .125).
        ratio: diameter per length, a plain number (1:8 is .125).
        half_angle: angle of the side to the axis, degrees.

    Returns:
        Diameter per length, taper per foot, half and included angle (degrees), and `1:k`.

    Raises:
        HandwheelError: the sizes make no taper, or not exactly one set of them is given.

    Examples:
        >>> round(taper(taper_per_foot=0.125).half_angle, 6), taper(ratio=0.1).ratio
        (3.576334, '1:10')
    """
    meaning = "Change of diameter for each unit of length"
    if large is not None and small is not None and length is not None:
        positive(large=large, length=length)
        if not 0 <= small < large:
            raise HandwheelError("large and small: the large end must be the larger diameter, and neither below 0")
        per_length = (large - small) / length
        values = {"D": (large, "length"), "d": (small, "length"), "L": (length, "length")}
        stated = Step("T", meaning, "(D - d)/L", values, per_length, "number")
    elif half_angle is not None:
        if not 0 < half_angle < 90:
            raise HandwheelError("half-angle: lies between 0 and 90°, counted from the axis")
        per_length = 2 * math.tan(math.radians(half_angle))
        stated = Step("T", meaning, "2*tan(A)", {"A": (half_angle, "angle")}, per_length, "number")
    elif taper_per_foot is not None:
        positive(taper_per_foot=taper_per_foot)
        per_length = taper_per_foot
        stated = Step("T", meaning, "F/12", {"F": (taper_per_foot, "taper")}, per_length, "number")
    elif ratio is not None:
        positive(ratio=ratio)
        per_length = ratio
        stated = Step("T", meaning, "t", {"t": (ratio, "number")}, per_length, "number")
    else:
        raise HandwheelError("taper: give two diameters and a length, or taper-per-foot, or ratio, or half-angle")
    half = math.degrees(math.atan(per_length / 2))
    return Taper(per_length, per_length, half, 2 * half, f"1:{_short(1 / per_length)}", stated)


def _short(k: float) -> str:
    """Return k of 1:k without the tail that a division leaves behind."""
    return f"{k:.6f}".rstrip("0").rstrip(".")
