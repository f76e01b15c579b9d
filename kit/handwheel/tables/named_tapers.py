"""Named self-holding tapers: their rates and sizes."""

from __future__ import annotations

from attrs import frozen

from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.units import to_inside
from handwheel.tables.load import load


@frozen
class NamedTaper:
    """A named taper: its diameter per length, its large and small diameters and the length between them, mm."""

    name: str
    per_length: float
    large: float
    small: float
    length: float


def named_taper(name: str) -> NamedTaper:
    """Return a taper by its name: `Morse 3`, `Jarno 6`.

    Raises:
        HandwheelError: the table does not hold it; the sentence says what it holds.

    >>> round(named_taper("Morse 3").per_length * 12, 5)
    0.60235
    """
    wanted = "".join(name.casefold().split())
    for row in load("named_tapers").rows:
        if "".join(row["name"].casefold().split()) == wanted:
            large, small, length = (to_inside(float(row[key]), "in", "length") for key in ("large", "small", "length"))
            return NamedTaper(row["name"], float(row["per_foot"]) / 12, large, small, length)
    raise HandwheelError(f"named: {name!r} is not in the table; it has Morse 0 to 7 and Jarno 2 to 20")
