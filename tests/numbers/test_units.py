"""The table of units against pint, the reference library; and the door for Quantities."""

from __future__ import annotations

import pytest

from handwheel.numbers import units
from handwheel.numbers.faults import HandwheelError

PINT = units.registry()
ALL = [unit for unit in units._ALL if unit.pint_name and unit.symbol not in ("°C", "°F")]


@pytest.mark.validation
@pytest.mark.parametrize("unit", ALL, ids=lambda unit: f"{unit.kind} {unit.symbol}")
def test_every_factor_is_pints(unit):
    inside = units.find(unit.kind, units.INSIDE[unit.kind])
    if unit.kind == "taper":  # dimensionless inside
        expected = PINT.Quantity(1, unit.pint_name).to_base_units().magnitude
    elif unit.kind == "spindle_speed":
        expected = 1.0
    else:
        expected = PINT.Quantity(1, unit.pint_name).to(inside.pint_name).magnitude
    assert float(unit.factor) == pytest.approx(expected, rel=1e-9)


def test_temperatures():
    assert units.to_inside(68, "°F", "temperature") == pytest.approx(20)
    assert units.from_inside(20, "°F", "temperature") == pytest.approx(68)


def test_a_quantity_goes_in_and_out():
    assert units.from_quantity(PINT.Quantity(1.25, "inch"), "length") == pytest.approx(31.75)
    assert units.quantity(31.75, "length").magnitude == pytest.approx(1.25)
    with pytest.raises(HandwheelError, match="is no length"):
        units.from_quantity(PINT.Quantity(1, "kg"), "length")


def test_a_turn_is_one_turn_and_not_two_pi():
    assert units.from_quantity(PINT.Quantity(500, "rpm"), "spindle_speed") == pytest.approx(500)
    assert units.from_quantity(PINT.Quantity(0.004, "inch/turn"), "feed") == pytest.approx(0.1016)


@pytest.mark.parametrize(
    ("amount", "unit", "kind"),
    [(5, "delta_degC", "temperature"), (float("nan"), "inch", "length"), ([1, 2], "inch", "length")],
)
def test_a_quantity_that_is_no_single_size_is_refused(amount, unit, kind):
    with pytest.raises(HandwheelError, match="give"):
        units.from_quantity(PINT.Quantity(amount, unit), kind)
