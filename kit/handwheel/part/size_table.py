"""The size table: every section by station from the datum face, as a micrometer and a rule would read it."""

from __future__ import annotations

from handwheel.numbers import showing, units
from handwheel.numbers.reading import Limits
from handwheel.part.features import KINDS
from handwheel.part.values import Part

FEWEST = {"in": 3, "mm": 1}
"""Decimal places a station has at least."""


def station(value: float, system: str, fewest: int | None = None) -> str:
    """Return a station (mm) with as few decimal places as say it whole, within what a micrometer reads.

    >>> station(66.675, "in"), station(233.3625, "in"), station(26.25, "mm")
    ('2.625', '9.1875', '26.25')
    """
    return showing.length(value, system, _places((value,), system, fewest))


def station_limits(limits: Limits, system: str, fewest: int | None = None) -> str:
    """Return a station's limits, both with as few decimal places as say them whole.

    >>> from handwheel.numbers.reading import read_limits
    >>> station_limits(read_limits("3.313 ±.005"), "in"), station_limits(read_limits("9.1875 ±.0004"), "in")
    ('3.318 / 3.308', '9.1879 / 9.1871')
    """
    return showing.limits(limits, system, _places((limits.maximum, limits.minimum), system, fewest))


def _places(values: tuple[float, ...], system: str, fewest: int | None) -> int:
    """Return the fewest places that say every value whole; where none do, as many as a micrometer reads."""
    most = showing.PLACES[system]
    shown = [units.from_inside(value, system, "length") for value in values]
    for places in range(FEWEST[system] if fewest is None else fewest, most):
        if all(abs(value - round(value, places)) < 1e-7 for value in shown):
            return places
    return most


def size_table(part: Part) -> list[dict[str, str]]:
    """Return a row for each section in order of station; lengths in the part's units, limits rounded inward."""
    system = part.units
    rows = []
    for section in part.sections:
        small = f" to {showing.limits(section.small_end, system)}" if section.small_end else ""
        rows.append(
            {
                "feature": section.name,
                "kind": section.kind,
                "from": station(section.start, system, 3),
                "to": station_limits(section.end_limits, system, 3)
                if section.end_limits.tolerance
                else station(section.end, system, 3),
                "length": station(section.end - section.start, system, 3),
                "diameter": showing.limits(section.diameter, system) + small,
                "aim": showing.length(section.stands_as.middle, system),
                "typed": section.diameter.typed,
                "turning": "cut" if section.planned else KINDS[section.kind].stands,
            }
        )
    return rows
