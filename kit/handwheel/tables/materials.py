"""Shaft materials: weight, expansion and the figures a first cut is planned with."""

from __future__ import annotations

from attrs import frozen

from handwheel.numbers.faults import HandwheelError
from handwheel.tables.load import load


@frozen
class Material:
    """A material's figures.

    Density in kg/m³, expansion per °C, cutting speeds in m/min for HSS and carbide tools, `kc11` (MPa) and
    `mc` of the specific cutting force; `source` says where they come from.
    """

    name: str
    density: float
    expansion: float
    hss_speed: float
    carbide_speed: float
    kc11: float
    mc: float
    source: str

    def cutting_speed(self, tool_material: str) -> float:
        """Return the cutting speed (m/min) for a tool of 'HSS' or 'carbide'."""
        return self.hss_speed if tool_material == "HSS" else self.carbide_speed


def materials() -> dict[str, Material]:
    """Return every material of the table by its name."""
    table = load("materials")
    source = f"{table.head['source']} ({table.head['edition']})"
    return {
        row["name"]: Material(
            row["name"],
            float(row["density"]),
            float(row["expansion"]) * 1e-6,
            float(row["hss_speed"]),
            float(row["carbide_speed"]),
            float(row["kc11"]),
            float(row["mc"]),
            source,
        )
        for row in table.rows
    }


def material(name: str) -> Material:
    """Return a material by its name or another name of it.

    Raises:
        HandwheelError: the table does not hold it; the sentence lists what it holds.

    >>> material("4140 pre-hardened").density
    7850.0
    """
    wanted = _folded(name)
    known = materials()
    for row in load("materials").rows:
        if wanted in {_folded(each) for each in (row["name"], *row["aliases"].split("|"))}:
            return known[row["name"]]
    raise HandwheelError(f"material: {name!r} is not in the table; it has {', '.join(known)}")


def _folded(name: str) -> str:
    return "".join(name.casefold().split())
