"""Shaft materials: weight, expansion and the figures a first cut is planned with."""

from __future__ import annotations

from attrs import frozen

from handwheel.numbers.faults import HandwheelError
from handwheel.tables.load import load


@frozen
class Material:
    """A material's figures, and where each comes from and how it is known.

    Density in kg/m³, expansion per °C, cutting speeds in m/min for HSS and carbide tools, `kc11` (MPa) and
    `mc` of the specific cutting force. `aliases` are its other names.
    """

    name: str
    aliases: tuple[str, ...]
    density: float
    density_source: str
    expansion: float
    expansion_source: str
    hss_speed: float
    carbide_speed: float
    speed_source: str
    kc11: float
    mc: float
    force_source: str

    def cutting_speed(self, tool_material: str) -> float:
        """Return the cutting speed (m/min) for a tool of 'HSS' or 'carbide'."""
        return self.hss_speed if tool_material == "HSS" else self.carbide_speed


def materials() -> dict[str, Material]:
    """Return every material of the table by its name."""
    return {
        row["name"]: Material(
            row["name"],
            tuple(row["aliases"].split("|")),
            float(row["density"]),
            row["density_source"],
            float(row["expansion"]) * 1e-6,
            row["expansion_source"],
            float(row["hss_speed"]),
            float(row["carbide_speed"]),
            row["speed_source"],
            float(row["kc11"]),
            float(row["mc"]),
            row["force_source"],
        )
        for row in load("materials").rows
    }


def material(name: str) -> Material:
    """Return a material by its name or another name of it.

    Raises:
        HandwheelError: the table does not hold it; the sentence lists what it holds.

    >>> material("4140 pre-hardened").density
    7850.0
    """
    known = materials()
    for each in known.values():
        if _folded(name) in {_folded(one) for one in (each.name, *each.aliases)}:
            return each
    raise HandwheelError(f"material: {name!r} is not in the table; it has {', '.join(known)}")


def same_material(one: str, other: str) -> bool:
    """Return whether two names mean one material: the same name, or two names of one row of the table.

    >>> same_material("4140 PH", "4140 pre-hardened"), same_material("4140 PH", "4140 annealed")
    (True, False)
    """
    return _common_name(one) == _common_name(other)


def _common_name(name: str) -> str:
    try:
        return _folded(material(name).name)
    except HandwheelError:  # a steel the table does not hold still goes by its own name
        return _folded(name)


def _folded(name: str) -> str:
    return "".join(name.casefold().split())
