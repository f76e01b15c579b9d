"""60° centre holes: the drill's body and point, the hole's mouth, and the shaft it is meant for."""

from __future__ import annotations

from fractions import Fraction

from attrs import frozen

from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.units import to_inside
from handwheel.tables.load import load


@frozen
class CentreHoleSize:
    """A centre hole: the drill's body and point and the hole's mouth, mm; a mouth not standardised is None.

    `shaft` is over and up to which finished diameter (mm) it is meant, None where the standard does not say;
    `how_known` says which figures are from memory.
    """

    name: str
    body: float
    point: float
    mouth: float | None
    shaft: tuple[float, float] | None
    how_known: str


def centre_holes() -> tuple[CentreHoleSize, ...]:
    """Return every centre hole of the table."""
    return tuple(_made(row) for row in load("centre_holes").rows)


def centre_hole(name: str) -> CentreHoleSize:
    """Return a centre hole by its name: `No. 4`, `A 3.15 x 6.7`.

    Raises:
        HandwheelError: the table does not hold it; the sentence lists what it holds.

    >>> centre_hole("A 4 x 8.5").mouth
    8.5
    """
    wanted = _folded(name)
    for each in centre_holes():
        if _folded(each.name) == wanted:
            return each
    have = ", ".join(each.name for each in centre_holes())
    raise HandwheelError(f"centre hole: {name!r} is not in the table; it has {have}")


def centre_hole_for(diameter: float) -> CentreHoleSize:
    """Return the form A centre hole meant for a shaft by its finished diameter (mm), a guide.

    Raises:
        HandwheelError: the table does not reach to the diameter.

    >>> centre_hole_for(28).name
    'A 3.15 x 6.7'
    """
    for each in centre_holes():
        # a diameter on the edge of two bands belongs to the lower
        if each.shaft and each.shaft[0] < diameter <= each.shaft[1]:
            return each
    most = max(each.shaft[1] for each in centre_holes() if each.shaft)
    raise HandwheelError(f"diameter: {diameter:g} mm lies outside the table, which goes from over 0 to {most:g} mm")


def _made(row: dict[str, str]) -> CentreHoleSize:
    def size(key: str) -> float:
        return to_inside(Fraction(row[key]), row["unit"], "length")

    return CentreHoleSize(
        row["name"],
        size("body"),
        size("point"),
        size("mouth") if row["mouth"] else None,
        (size("shaft_over"), size("shaft_to")) if row["shaft_to"] else None,
        row["how_known"],
    )


def _folded(name: str) -> str:
    return "".join(name.casefold().replace("×", "x").split())
