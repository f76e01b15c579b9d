"""The size table: every section by station from the datum face, as a micrometer and a rule would read it."""

from __future__ import annotations

from handwheel.numbers import showing
from handwheel.part.features import KINDS
from handwheel.part.values import Part


def size_table(part: Part) -> list[dict[str, str]]:
    """Return a row for each section in order of station; lengths in the part's units, limits rounded inward."""
    units = part.units
    rows = []
    for section in part.sections:
        small = f" to {showing.limits(section.small_end, units)}" if section.small_end else ""
        rows.append(
            {
                "feature": section.name,
                "kind": section.kind,
                "from": showing.length(section.start, units, 3),
                "to": showing.limits(section.end_limits, units, 3)
                if section.end_limits.tolerance
                else showing.length(section.end, units, 3),
                "length": showing.length(section.end - section.start, units, 3),
                "diameter": showing.limits(section.diameter, units) + small,
                "aim": showing.length(section.stands_as.middle, units),
                "typed": section.diameter.typed,
                "turning": "cut" if section.planned else KINDS[section.kind].stands,
            }
        )
    return rows
