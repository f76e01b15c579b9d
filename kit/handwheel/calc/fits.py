"""Limits of a shaft or a hole by ISO 286, and a rolling bearing's seat."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from handwheel.numbers.faults import HandwheelError
from handwheel.tables import iso286
from handwheel.worked.result import (
    CALCULATIONS,
    Diameter,
    Length,
    Maximum,
    Minimum,
    Step,
    Text,
    Working,
    calculation,
)

_ZONE = re.compile(r"(js|JS|[A-Za-z])(\d{1,2})")
_BEARING = re.compile(r"(60|62|63|68|69)(\d\d)(?:[-/ ].*)?")
_BORES = {0: 10.0, 1: 12.0, 2: 15.0, 3: 17.0}

_BORE_TOLERANCE = ((18.0, 8.0), (30.0, 10.0), (50.0, 12.0), (80.0, 15.0), (120.0, 20.0), (180.0, 25.0), (250.0, 30.0))
"""How far (µm) a bearing's bore of the Normal class may lie under its nominal size, up to each bore (mm): ISO 492."""


@dataclass(frozen=True)
class FitLimits:
    """Deviations and limits of size, mm."""

    upper: Length
    lower: Length
    max: Maximum
    min: Minimum
    size: Diameter = field(repr=False)
    zone: Text = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        values = {"D": (self.size, "length")}
        return Working(
            CALCULATIONS["fit-limits"].title,
            (
                Step("U", f"Largest size: {self.zone} by the table of deviations, its upper one added", "D + u",
                     {**values, "u": (self.upper, "length")}, self.max, "maximum"),
                Step("L", "Smallest size: the lower deviation added", "D + l",
                     {**values, "l": (self.lower, "length")}, self.min, "minimum"),
            ),
            CALCULATIONS["fit-limits"].sources,
            ("A limit shown in inches is rounded inward, so that the shown limit never lies outside the true one.",),
        )  # fmt: skip


@calculation(
    "fit-limits",
    "Limits of a shaft or a hole",
    given=(("size", "zone"),),
    meanings={
        "size": "nominal size",
        "zone": "tolerance zone: k6 for a shaft, H7 for a hole",
        "upper": "upper deviation",
        "lower": "lower deviation",
        "max": "largest size allowed",
        "min": "smallest size allowed",
    },
    sources=("ISO 286-1, tolerance grades and fundamental deviations, from memory",),
)
def fit_limits(size: Diameter, zone: Text) -> FitLimits:
    """Return the limits of a shaft (small letter) or a hole (capital) by ISO 286.

    Args:
        size: nominal size, mm; up to 500.
        zone: letter and grade, a word without a unit: `k6`, `H7`, `js5`.

    Returns:
        Upper and lower deviation, largest and smallest size, mm.

    Raises:
        HandwheelError: the zone is none of the table's, or the size lies outside it.

    Examples:
        >>> seat = fit_limits(35, "k6")
        >>> round(seat.max, 3), round(seat.min, 3)
        (35.018, 35.002)
    """
    match = _ZONE.fullmatch(zone.strip())
    if match is None:
        raise HandwheelError(f"zone: {zone!r} is no tolerance zone; type letter and grade, such as k6 or H7")
    letter, number = match[1], int(match[2])
    tolerance = iso286.grade(size, number)
    upper, lower = (_shaft if letter.islower() else _hole)(size, letter, number, tolerance)
    return FitLimits(upper / 1000, lower / 1000, size + upper / 1000, size + lower / 1000, size, f"{letter}{number}")


def _shaft(size: float, letter: str, number: int, tolerance: float) -> tuple[float, float]:
    """Return a shaft zone's upper and lower deviation, µm."""
    if letter == "js":
        return tolerance / 2, -tolerance / 2
    deviation = iso286.shaft_deviation(size, letter)
    if letter in "defgh":
        return deviation, deviation - tolerance
    if letter == "j" and number not in (5, 6):
        raise HandwheelError(f"zone: j{number} is not in the table; it has j5 and j6, or take js{number}")
    if letter == "k" and not 4 <= number <= 7:
        deviation = 0.0
    return deviation + tolerance, deviation


def _hole(size: float, letter: str, number: int, tolerance: float) -> tuple[float, float]:
    """Return a hole zone's upper and lower deviation, µm: the shaft's turned over, with the rule for tight grades."""
    small = letter.lower()
    if small == "js":
        return tolerance / 2, -tolerance / 2
    if small == "j":
        raise HandwheelError(f"zone: {letter}{number} is not in the table; take JS{number}")
    deviation = iso286.shaft_deviation(size, small)
    if small in "defgh":
        return -deviation + tolerance, -deviation
    if small == "n" and number >= 9:
        return (-deviation, -deviation - tolerance) if size <= 3 else (0.0, -tolerance)
    # Tight holes lie higher by the step to the next finer grade, so that H7/p6 and P7/h6 fit alike.
    tight = number <= (8 if small in "kmn" else 7)
    step = tolerance - iso286.grade(size, number - 1) if tight and size > 3 and number > iso286.GRADES[0] else 0.0
    if tight and size > 3 and number == iso286.GRADES[0]:
        raise HandwheelError(f"zone: {letter}{number} is not in the table; it has grade 6 and coarser for this letter")
    if small == "k" and number > 8 and size > 3:
        raise HandwheelError(f"zone: {letter}{number} is not in the table; it has K6, K7 and K8")
    upper = -deviation + step
    if letter == "M" and number == 6 and 250 < size <= 315:
        upper = -9.0  # the standard's own exception
    return upper, upper - tolerance


@dataclass(frozen=True)
class BearingSeat:
    """A bearing's bore, its seat's limits, and the fit at both ends of the limits (interference positive), mm."""

    bore: Diameter
    shaft_max: Maximum
    shaft_min: Minimum
    tightest: Length
    loosest: Length
    bore_min: Diameter = field(repr=False)
    zone: Text = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return Working(
            CALCULATIONS["bearing-seat"].title,
            (
                Step("t", f"Tightest: the largest seat ({self.zone}) in the smallest bore", "S - b",
                     {"S": (self.shaft_max, "length"), "b": (self.bore_min, "length")}, self.tightest, "length"),
                Step("l", "Loosest: the smallest seat in the largest bore", "s - B",
                     {"s": (self.shaft_min, "length"), "B": (self.bore, "length")}, self.loosest, "length"),
            ),
            CALCULATIONS["bearing-seat"].sources,
            (
                "Interference is positive, clearance negative. Measure the bearing's own bore where it is at hand.",
                "Which zone a seat wants depends on load and rotation: ask the bearing's maker.",
            ),
        )  # fmt: skip


@calculation(
    "bearing-seat",
    "Seat of a rolling bearing",
    given=(("bearing", "zone"),),
    meanings={
        "bearing": "the bearing's number, of the series 60, 62, 63, 68 or 69",
        "zone": "tolerance zone of the shaft, such as k6",
        "bore": "nominal bore",
        "shaft_max": "largest seat",
        "shaft_min": "smallest seat",
        "tightest": "tightest fit, interference positive",
        "loosest": "loosest fit, interference positive",
    },
    sources=(
        "bore by the bearing's number (ISO 15 designation, from memory)",
        "bore tolerance of the Normal class, ISO 492, from memory",
        "ISO 286-1, from memory",
    ),
)
def bearing_seat(bearing: Text, zone: Text) -> BearingSeat:
    """Return the limits of a bearing's seat and how the bearing fits it.

    Args:
        bearing: the bearing's number, a word without a unit: `6207`, `6207-2RS`.
        zone: the shaft's tolerance zone, a word without a unit: `k6`.

    Returns:
        Bore, seat limits, tightest and loosest fit, mm.

    Raises:
        HandwheelError: no bearing of the five series, or no shaft zone.

    Examples:
        >>> seat = bearing_seat("6207", "k6")
        >>> seat.bore, round(seat.tightest, 3), round(seat.loosest, 3)
        (35.0, 0.03, 0.002)
    """
    match = _BEARING.fullmatch(bearing.strip().upper())
    if match is None:
        raise HandwheelError(
            f"bearing: {bearing!r} is none of the series 60, 62, 63, 68 and 69; type its number, such as 6207"
        )
    code = int(match[2])
    bore = _BORES.get(code, 5.0 * code)
    if not zone.strip()[:1].islower():
        raise HandwheelError(f"zone: {zone!r} is a hole's; a seat has a small letter, such as k6")
    limits = fit_limits(bore, zone)
    under = next((amount for size, amount in _BORE_TOLERANCE if bore <= size), None)
    if under is None:
        raise HandwheelError(
            f"bearing: {bearing!r} has a bore beyond the table of bore tolerances, which ends at 250 mm"
        )
    least = bore - under / 1000
    return BearingSeat(bore, limits.max, limits.min, limits.max - least, limits.min - bore, least, limits.zone)
