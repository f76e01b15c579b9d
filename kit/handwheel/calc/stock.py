"""What a piece of round bar weighs."""

from __future__ import annotations

import math
from dataclasses import dataclass, field

from handwheel.calc.refusals import positive
from handwheel.tables.materials import material
from handwheel.worked.result import Density, Diameter, Figure, Length, LookUp, Mass, Step, Working, calculation, working


@dataclass(frozen=True)
class BarStock:
    """Mass of a piece of round bar, kg."""

    mass: Mass
    diameter: Diameter = field(repr=False)
    length: Length = field(repr=False)
    density: Density = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return working(
            "bar-stock",
            (
                Step("m", "Volume of the cylinder times density", {"in": "pi/4*D**2*L*q", "mm": "pi/4*D**2*L*q/10**9"},
                     {"D": (self.diameter, "length"), "L": (self.length, "length"), "q": (self.density, "density")},
                     self.mass, "mass"),
            ),
            ("Know the weight before lifting; above what one person lifts safely, use a hoist or a second person.",),
        )  # fmt: skip


def _density(name: str) -> Figure:
    found = material(name)
    return Figure(found.density, f"density of {found.name}: {found.density_source}")


@calculation(
    "bar-stock",
    "Weight of a piece of round bar",
    given=(("diameter", "length", "density"),),
    look_ups=(LookUp("material", "density", _density),),
    meanings={
        "diameter": "diameter of the bar",
        "length": "length of the piece",
        "material": "the material, by its name in the table",
        "density": "density of the material, where it is not in the table",
        "mass": "what the piece weighs",
    },
    sources=("volume of a cylinder",),
)
def bar_stock(diameter: Diameter, length: Length, density: Density) -> BarStock:
    """Return what a piece of round bar weighs.

    Args:
        diameter: diameter of the bar, mm.
        length: length of the piece, mm.
        density: density of the material, kg/m³.

    Returns:
        Mass, kg.

    Raises:
        HandwheelError: a value is not more than 0.

    Examples:
        >>> round(bar_stock(25.4, 304.8, 7850).mass, 4)
        1.2124
    """
    positive(diameter=diameter, length=length, density=density)
    return BarStock(math.pi / 4 * diameter**2 * length * density / 1e9, diameter, length, density)
