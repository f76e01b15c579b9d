"""Numbers as a dial, a micrometer or a drawing shows them: the only rounding for display."""

from __future__ import annotations

import math
from decimal import ROUND_CEILING, ROUND_FLOOR, ROUND_HALF_EVEN, Decimal, localcontext
from fractions import Fraction

from handwheel.numbers import units
from handwheel.numbers.calls import Limits
from handwheel.numbers.faults import HandwheelError

DIGITS = 400
"""Digits a number may have while it is rounded: more than any size typed can have."""

PLACES = {"in": 4, "mm": 3}
"""Decimal places of a length as a micrometer reads it: tenths of a thou, or thousandths of a millimetre."""


def length(value: float, system: str = "in", places: int | None = None) -> str:
    """Return a length (mm) in inches or millimetres; an inch size below one has no leading zero.

    >>> length(22.2123), length(25.4), length(25.4, "mm"), length(-0.254, places=3)
    ('.8745', '1.0000', '25.400', '-.010')
    """
    inches = system == "in"
    return _decimal(_in(value, system), PLACES[system] if places is None else places, bare_point=inches)


def limits(size: Limits, system: str = "in", places: int | None = None) -> str:
    """Return limits, larger first, each rounded inward: no shown limit lies outside the true ones.

    Limits closer together than the places can tell are shown to as many more places as they need.

    >>> from handwheel.numbers.reading import read_limits
    >>> limits(read_limits("30 mm +.015 +.002"))
    '1.1816 / 1.1812'
    """
    shown = PLACES[system] if places is None else places
    exact = [size.nominal.exact + deviation for deviation in (size.upper, size.lower)]
    unit = units.find("length", size.nominal.unit)
    here = units.find("length", system)
    assert unit is not None
    assert here is not None
    high, low = (amount * unit.factor / here.factor for amount in exact)
    while math.floor(high * 10**shown) < math.ceil(low * 10**shown) and low < high:
        shown += 1
    bare = system == "in"
    return f"{_decimal(high, shown, ROUND_FLOOR, bare)} / {_decimal(low, shown, ROUND_CEILING, bare)}"


def on_dial(amount: float, division: float, system: str = "in") -> str:
    """Return a dial reading (mm as marked) with as many places as the dial's divisions (mm as marked) need.

    >>> on_dial(1.905, 0.0254), on_dial(0.4, 0.02, "mm")
    ('.075', '0.40')
    """
    step = _in(division, system).limit_denominator(100_000)
    places = 0
    while (step * 10**places).denominator != 1 and places < 5:
        places += 1
    return _decimal(_in(amount, system), places, bare_point=system == "in")


def angle(degrees: float, places: int = 2) -> str:
    """Return an angle in degrees.

    >>> angle(87.134016)
    '87.13°'
    """
    return _decimal(_clean(degrees), places) + "°"


def number(value: float, significant: int = 4) -> str:
    """Return a plain number to so many significant figures, never with an exponent between 1e-4 and 1e9.

    >>> number(1016.8437), number(0.00123456), number(2.5)
    ('1017', '0.001235', '2.5')
    """
    if _clean(value) == 0:
        return "0"
    magnitude = abs(value)
    if not 1e-4 <= magnitude < 1e9:
        return f"{value:.{significant - 1}e}"
    places = max(0, significant - 1 - Decimal(magnitude).adjusted())
    text = _decimal(_clean(value), places)
    return text.rstrip("0").rstrip(".") if "." in text else text


def minutes(value: float) -> str:
    """Return a time in minutes as hours and minutes.

    >>> minutes(85), minutes(11.6)
    ('1 h 25 min', '12 min')
    """
    whole = round(_clean(value))
    if whole >= 60:
        return f"{whole // 60} h {whole % 60:02d} min"
    return f"{whole} min" if value >= 10 else f"{value:.1f} min"


def money(amount: float, currency: str) -> str:
    """Return an amount of money.

    >>> money(419.995, "USD")
    '420.00 USD'
    """
    return f"{_decimal(Fraction(str(amount)), 2)} {currency}"


def speed(rev_per_min: float) -> str:
    """Return a spindle speed as the lathe's plate shows it.

    >>> speed(360.0)
    '360 rev/min'
    """
    return f"{number(rev_per_min)} rev/min"


def feed(mm_per_rev: float, system: str = "in") -> str:
    """Return a feed as the feed box shows it.

    >>> feed(0.1016), feed(0.2, "mm")
    ('.004 in/rev', '0.2 mm/rev')
    """
    text = _decimal(_in(mm_per_rev, system), 5, bare_point=system == "in").rstrip("0")
    if system == "in" and len(text.partition(".")[2]) < 3:
        text = text.ljust(len(text.partition(".")[0]) + 4, "0")
    return f"{text.rstrip('.')} {system}/rev"


def value(amount: float, kind: str, system: str = "in") -> tuple[str, str]:
    """Return an inside value of any kind as shown text and the unit it is shown in.

    >>> value(25.4, "length"), value(1.5, "power", "mm")
    (('1.0000', 'in'), ('1.500', 'kW'))
    """
    unit = units.bare_unit(kind, system)
    if kind in ("maximum", "minimum"):  # a shown limit never lies outside the true one
        rounding = ROUND_FLOOR if kind == "maximum" else ROUND_CEILING
        return _decimal(_in(amount, system), PLACES[system], rounding, bare_point=system == "in"), unit
    if units.family(kind) == "length":
        return length(amount, system), unit
    if kind == "angle":
        return _decimal(_clean(amount), 4), unit
    shown = units.from_inside(amount, unit, kind) if unit != "1" else amount
    if kind in ("power", "force", "torque", "mass"):
        return _decimal(_clean(shown), 3), unit
    return number(shown, 5), "" if unit == "1" else unit


def put_in(amount: float, kind: str, system: str = "in") -> str:
    """Return an inside value as it is put into a formula: in the system's unit, exact enough to do the sum again.

    >>> put_in(0.79375, "length"), put_in(26.9875, "length"), put_in(1e-5, "expansion")
    ('.03125', '1.0625', '1e-05')
    """
    unit = units.bare_unit(kind, system)
    shown = amount if unit == "1" else units.from_inside(amount, unit, kind)
    if shown and abs(shown) < 1e-3:
        return f"{shown:.6g}"
    text = _decimal(Fraction(round(shown * 10**6), 10**6), 6, bare_point=unit == "in")
    return text.rstrip("0").rstrip(".") or "0"


def _in(value: float, system: str) -> Fraction:
    """Return mm as an exact number of inches or millimetres, a float's last bits taken off."""
    _clean(value)
    exact = Fraction(value) / (units.INCH if system == "in" else 1)
    return Fraction(round(exact * 10**12), 10**12)


def _clean(value: float) -> Fraction:
    """Return a float as the decimal it stands for, its last bits taken off; refuse what is no number."""
    if not math.isfinite(value):
        raise HandwheelError(f"{value} cannot be shown; a shown value is a finite number")
    return Fraction(f"{value:.13g}")


def _decimal(exact: Fraction, places: int, rounding: str = ROUND_HALF_EVEN, bare_point: bool = False) -> str:
    with localcontext() as context:
        context.prec = DIGITS
        scaled = (Decimal(exact.numerator) / Decimal(exact.denominator)).quantize(
            Decimal(1).scaleb(-places), rounding=rounding
        )
    text = f"{abs(scaled):f}"
    if bare_point and text.startswith("0."):
        text = text[1:]
    return f"-{text}" if scaled < 0 else text
