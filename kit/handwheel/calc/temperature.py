"""Sizes at the reference temperature of 20 °C."""

from __future__ import annotations

from dataclasses import dataclass, field

from handwheel.calc.refusals import positive
from handwheel.numbers.faults import HandwheelError
from handwheel.tables.materials import material
from handwheel.worked.result import (
    Diameter,
    Expansion,
    Figure,
    Length,
    LookUp,
    Step,
    Temperature,
    Working,
    calculation,
    working,
)

REFERENCE = 20.0
"""The temperature at which a drawing's sizes hold, °C (ISO 1)."""


@dataclass(frozen=True)
class SizeAt20:
    """The size at 20 °C, and what was added to the reading to get it, mm."""

    size: Diameter
    correction: Length
    reading: Diameter = field(repr=False)
    part_temperature: Temperature = field(repr=False)
    instrument_temperature: Temperature = field(repr=False)
    expansion: Expansion = field(repr=False)
    instrument_expansion: Expansion = field(repr=False)

    def worked(self) -> Working:
        """Return the working, step by step."""
        return working(
            "size-at-20",
            (
                Step("S", "A warm instrument reads small, a warm part is large",
                     "M*(1 + b*(u - 20))/(1 + a*(t - 20))",
                     {"M": (self.reading, "length"), "b": (self.instrument_expansion, "expansion"),
                      "u": (self.instrument_temperature, "temperature"), "a": (self.expansion, "expansion"),
                      "t": (self.part_temperature, "temperature")}, self.size, "length"),
                Step("c", "Correction to the reading", "S - M",
                     {"S": (self.size, "length"), "M": (self.reading, "length")}, self.correction, "length"),
            ),
            (
                "Where no instrument temperature is given, the instrument is taken to be as warm as the part.",
                ("Hand heat and a fresh cut warm a part unevenly; let it lie beside the micrometer until both "
                "are one temperature."),
            ),
        )  # fmt: skip


def _expansion(name: str) -> Figure:
    found = material(name)
    return Figure(found.expansion, f"expansion of {found.name}: {found.expansion_source}")


@calculation(
    "size-at-20",
    "A reading corrected to 20 °C",
    given=(("reading", "part_temperature", "expansion"),),
    look_ups=(LookUp("material", "expansion", _expansion),),
    meanings={
        "reading": "what the instrument read, its zero error taken off",
        "part_temperature": "temperature of the part",
        "instrument_temperature": "temperature of the instrument; the part's where none is given",
        "material": "the part's material, by its name in the table",
        "expansion": "expansion of the part's material per °C, where it is not in the table",
        "instrument_expansion": "expansion of the instrument per °C; steel where none is given",
        "size": "the size at 20 °C",
        "correction": "size at 20 °C less the reading",
    },
    sources=("ISO 1, reference temperature 20 °C; linear expansion",),
)
def size_at_20(
    reading: Diameter,
    part_temperature: Temperature,
    instrument_temperature: Temperature | None = None,
    *,
    expansion: Expansion,
    instrument_expansion: Expansion = 11.5e-6,
) -> SizeAt20:
    """Return a size at 20 °C from a reading, part and instrument each at its own temperature.

    Args:
        reading: what the instrument read, mm.
        part_temperature: temperature of the part, °C.
        instrument_temperature: temperature of the instrument, °C; the part's where left out.
        expansion: expansion of the part's material, 1/°C.
        instrument_expansion: expansion of the instrument, 1/°C; steel's 11.5e-6 where left out.

    Returns:
        Size at 20 °C and the correction, mm.

    Raises:
        HandwheelError: a reading, temperature or expansion no shop can have.

    Examples:
        >>> result = size_at_20(50.8, 48.9, 20, expansion=11.7e-6)
        >>> round(result.correction / 25.4, 6)
        -0.000676
    """
    positive(reading=reading)
    instrument = part_temperature if instrument_temperature is None else instrument_temperature
    for name, degrees in (("part-temperature", part_temperature), ("instrument-temperature", instrument)):
        if not -40 <= degrees <= 400:
            raise HandwheelError(f"{name}: {degrees:g} °C is no temperature at which a part is measured; give it in °C")
    for name, rate in (("expansion", expansion), ("instrument-expansion", instrument_expansion)):
        if not 0 <= rate < 1e-4:
            raise HandwheelError(f"{name}: must lie between 0 and 100e-6 per °C; steel has 11.5e-6")
    size = (
        reading
        * (1 + instrument_expansion * (instrument - REFERENCE))
        / (1 + expansion * (part_temperature - REFERENCE))
    )
    return SizeAt20(size, size - reading, reading, part_temperature, instrument, expansion, instrument_expansion)
