"""What a piece of round bar weighs."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from handwheel.numbers.faults import HandwheelError
from handwheel.tables.materials import material as material_of
from handwheel.worked.result import CALCULATIONS, Density, Diameter, Length, Mass, Step, Text, Working, calculation


@dataclass(frozen=True)
class BarStock:
    """Mass of a piece of round bar, kg."""

    mass: Mass
    diameter: Diameter = field(repr=False)
    length: Length = field(repr=False)
    density: Density = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return Working(
            CALCULATIONS["bar-stock"].title,
            (
                Step("m", "Volume of the cylinder times density", {"in": "pi/4*D**2*L*q", "mm": "pi/4*D**2*L*q/10**9"},
                     {"D": (self.diameter, "length"), "L": (self.length, "length"), "q": (self.density, "density")},
                     self.mass, "mass"),
            ),
            CALCULATIONS["bar-stock"].sources,
            ("Know the weight before lifting; above what one person lifts safely, use a hoist or a second person.",),
        )  # fmt: skip


@calculation(
    "bar-stock",
    "Weight of a piece of round bar",
    given=(("diameter", "length", "material"), ("diameter", "length", "density")),
    meanings={
        "diameter": "diameter of the bar",
        "length": "length of the piece",
        "material": "the material, by its name in the table",
        "density": "density of the material, where it is not in the table",
        "mass": "what the piece weighs",
    },
    sources=("volume of a cylinder; densities by the table of materials",),
)
def bar_stock(
    diameter: Diameter, length: Length, density: Density | None = None, material: Text | None = None
) -> BarStock:
    """Return what a piece of round bar weighs.

    Args:
        diameter: diameter of the bar, mm.
        length: length of the piece, mm.
        density: density of the material, kg/m³; by the table where left out.
        material: the material's name in the table, a word without a unit.

    Returns:
        Mass, kg.

    Raises:
        HandwheelError: a value is not more than 0, or the material is not in the table.

    Examples:
        >>> round(bar_stock(25.4, 304.8, 7850).mass, 4)
        1.2124
    """
    if density is None:
        density = material_of(material or "").density
    for name, amount in (("diameter", diameter), ("length", length), ("density", density)):
        if not amount > 0:
            raise HandwheelError(f"{name}: must be more than 0")
    return BarStock(math.pi / 4 * diameter**2 * length * density / 1e9, diameter, length, density)
