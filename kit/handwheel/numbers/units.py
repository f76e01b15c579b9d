"""Units people type, with their exact size in the kit's inside units; the one place that knows pint."""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from typing import TYPE_CHECKING, Any

from handwheel.numbers.faults import HandwheelError

if TYPE_CHECKING:
    import pint

INCH = Fraction(254, 10)
POUND_FORCE = Fraction("4.4482216152605")
POUND = Fraction("0.45359237")
FOOT = 12 * INCH


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit a person may type: its symbol, its kind, its exact size in the inside unit, its spellings."""

    symbol: str
    kind: str
    factor: Fraction
    spellings: tuple[str, ...]
    pint_name: str


def _u(symbol: str, kind: str, factor: Fraction | int | str, pint_name: str, *spellings: str) -> Unit:
    return Unit(symbol, kind, Fraction(factor), (symbol, *spellings), pint_name)


_ALL = (
    _u("in", "length", INCH, "inch", '"', "″", "inch", "inches", "''"),
    _u("mm", "length", 1, "mm"),
    _u("cm", "length", 10, "cm"),
    _u("m", "length", 1000, "m"),
    _u("ft", "length", FOOT, "foot", "′", "feet", "foot"),
    _u("°", "angle", 1, "degree", "deg", "degree", "degrees"),
    _u("sfm", "cutting_speed", FOOT / 1000, "foot/minute", "ft/min", "fpm", "sfpm"),
    _u("m/min", "cutting_speed", 1, "m/minute"),
    _u("in/rev", "feed", INCH, "inch", "ipr"),
    _u("mm/rev", "feed", 1, "mm"),
    _u("rev/min", "spindle_speed", 1, "1/minute", "rpm", "r/min"),
    _u("°C", "temperature", 1, "degC", "C", "c"),
    _u("°F", "temperature", Fraction(5, 9), "degF", "F", "f"),
    _u("lbf", "force", POUND_FORCE, "lbf", "lb"),
    _u("N", "force", 1, "N"),
    _u("kN", "force", 1000, "kN"),
    _u("psi", "stress", POUND_FORCE / INCH**2, "psi"),
    _u("ksi", "stress", 1000 * POUND_FORCE / INCH**2, "ksi"),
    _u("MPa", "stress", 1, "MPa", "N/mm2", "N/mm²"),
    _u("GPa", "stress", 1000, "GPa"),
    _u("MPa", "specific_force", 1, "MPa", "N/mm2", "N/mm²"),
    _u("psi", "specific_force", POUND_FORCE / INCH**2, "psi"),
    _u("hp", "power", Fraction("0.74569987158227022"), "hp"),
    _u("kW", "power", 1, "kW", "kw"),
    _u("W", "power", Fraction(1, 1000), "W"),
    _u(
        "lbf·in",
        "torque",
        POUND_FORCE * INCH / 1000,
        "lbf*inch",
        "lbf in",
        "in-lb",
        "lbf-in",
        "in·lbf",
        "lbf*in",
        "lb-in",
        "lb·in",
        "in·lb",
        "in-lbf",
        "in lb",
        "lb in",
    ),
    _u(
        "lbf·ft",
        "torque",
        POUND_FORCE * FOOT / 1000,
        "lbf*foot",
        "lbf ft",
        "ft-lb",
        "lbf-ft",
        "ft·lbf",
        "lbf*ft",
        "lb-ft",
        "lb·ft",
        "ft·lb",
        "ft-lbf",
        "ft lb",
        "lb ft",
    ),
    _u("N·m", "torque", 1, "N*m", "Nm", "N m", "N*m", "N.m", "N-m"),
    _u("lb", "mass", POUND, "lb", "lbs"),
    _u("kg", "mass", 1, "kg"),
    _u("lb/in³", "density", POUND * 10**9 / INCH**3, "lb/inch**3", "lb/in3", "lb/in^3"),
    _u("kg/m³", "density", 1, "kg/m**3", "kg/m3", "kg/m^3"),
    _u("g/cm³", "density", 1000, "g/cm**3", "g/cm3", "g/cm^3"),
    _u("/°C", "expansion", 1, "1/delta_degC", "/C", "1/°C", "1/C", "/K", "1/K", "per °C"),
    _u("/°F", "expansion", Fraction(9, 5), "1/delta_degF", "/F", "1/°F", "1/F", "per °F"),
    _u("µin", "roughness", INCH / 1000, "microinch", "uin", "μin"),
    _u("µm", "roughness", 1, "micrometer", "um", "μm"),
    _u("min", "time", 1, "minute"),
    _u("h", "time", 60, "hour"),
    _u("s", "time", Fraction(1, 60), "second"),
    _u("1", "number", 1, ""),
    _u("1", "taper", 1, ""),
    _u("in/ft", "taper", Fraction(1, 12), "inch/foot", "ipf", '"/ft'),
    _u("mm/m", "taper", Fraction(1, 1000), "mm/m"),
)

UNITS: dict[tuple[str, str], Unit] = {(unit.kind, spelling): unit for unit in _ALL for spelling in unit.spellings}
"""Every unit by kind and spelling."""

for (_kind, _spelling), _unit in list(UNITS.items()):
    if len(_spelling) > 1:  # drawings are lettered in capitals: 25 MM
        UNITS.setdefault((_kind, _spelling.upper()), _unit)

_SAME_AS = {
    "diameter": "length",
    "maximum": "length",
    "minimum": "length",
    "pitch": "length",
    "ratio": "number",
    "count": "number",
}

INSIDE = {
    "length": "mm", "angle": "°", "cutting_speed": "m/min", "feed": "mm/rev", "spindle_speed": "rev/min",
    "temperature": "°C", "force": "N", "stress": "MPa", "specific_force": "MPa", "power": "kW",
    "torque": "N·m", "mass": "kg", "density": "kg/m³", "expansion": "/°C",
    "roughness": "µm", "time": "min", "number": "1", "taper": "1",
}  # fmt: skip
"""The unit the kit computes in, by kind."""

_BARE_INCH = {
    "length": "in", "cutting_speed": "sfm", "feed": "in/rev", "force": "lbf", "stress": "psi", "power": "hp",
    "torque": "lbf·in", "mass": "lb", "density": "lb/in³", "roughness": "µin", "taper": "in/ft",
}  # fmt: skip


_TURNING = {"feed": "mm/turn", "spindle_speed": "turn/minute"}


def family(kind: str) -> str:
    """Return the kind whose units a kind is typed in: a pitch is typed as a length.

    >>> family("pitch")
    'length'
    """
    return _SAME_AS.get(kind, kind)


def bare_unit(kind: str, system: str) -> str:
    """Return the unit a number typed without one is read in, `system` being 'in' or 'mm'.

    >>> bare_unit("cutting_speed", "in"), bare_unit("power", "mm")
    ('sfm', 'kW')
    """
    kind = family(kind)
    if system == "in":
        return _BARE_INCH.get(kind, INSIDE[kind])
    return INSIDE[kind]


def find(kind: str, spelling: str) -> Unit | None:
    """Return the unit of a kind by any spelling of it, or None."""
    return UNITS.get((family(kind), spelling))


def spellings(kind: str) -> tuple[str, ...]:
    """Return the symbols of the units a kind can be typed in."""
    return tuple(unit.symbol for unit in _ALL if unit.kind == family(kind) and unit.symbol != "1")


def to_inside(amount: float | Fraction, unit: str, kind: str) -> float:
    """Return an amount of a unit in the kit's inside unit of its kind.

    Raises:
        HandwheelError: the unit is none of the kind's.

    >>> to_inside(Fraction(1), "in", "length"), round(to_inside(113, "°F", "temperature"), 9)
    (25.4, 45.0)
    """
    found = _known(kind, unit)
    exact = Fraction(amount)
    if found.symbol == "°F":
        exact -= 32
    return float(exact * found.factor)


def from_inside(value: float, unit: str, kind: str) -> float:
    """Return a value of the kit's inside unit in another unit of its kind.

    Raises:
        HandwheelError: the unit is none of the kind's.

    >>> from_inside(25.4, "in", "length")
    1.0
    """
    found = _known(kind, unit)
    amount = value / float(found.factor)
    return amount + 32 if found.symbol == "°F" else amount


def quantity(value: float, kind: str, system: str = "in") -> pint.Quantity[Any]:
    """Return an inside value as a pint Quantity in the unit a bare number of its kind has in `system`."""
    unit = _known(kind, bare_unit(kind, system))
    made: pint.Quantity[Any] = registry().Quantity(from_inside(value, unit.symbol, kind), unit.pint_name)
    return made


def from_quantity(amount: pint.Quantity[Any], kind: str) -> float:
    """Return a pint Quantity in the kit's inside unit of a kind.

    A turn, which pint counts as 2π radians, is one turn to the trade: a feed or speed in turns is read so.

    Raises:
        HandwheelError: the quantity is of another kind, a difference of temperatures, or no single finite number.
    """
    unit = _known(kind, INSIDE[family(kind)])
    turns = "radian" in str(amount.to_root_units().units)
    wanted = _TURNING.get(kind, unit.pint_name) if turns else unit.pint_name
    difference = kind == "temperature" and "delta" in str(amount.units)
    if difference or not amount.is_compatible_with(wanted):
        raise HandwheelError(f"{amount} is no {kind.replace('_', ' ')}; give it in {unit.symbol} or the like")
    try:
        value = float(amount.to(wanted).magnitude)
    except TypeError:
        value = math.nan
    if not math.isfinite(value):
        raise HandwheelError(f"{amount} is no {kind.replace('_', ' ')}; give one finite number")
    return value


@cache
def registry() -> pint.UnitRegistry[Any]:
    """Return the one pint registry of the kit, made on first use."""
    import pint

    return pint.UnitRegistry()


def _known(kind: str, spelling: str) -> Unit:
    found = find(kind, spelling)
    if found is None:
        raise HandwheelError(f"{spelling!r} is no unit of {kind}; use {', '.join(spellings(kind))}")
    return found
