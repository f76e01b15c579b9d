"""Numbers of other kinds at the edge: quantities with units, numpy's numbers, decimals."""

from __future__ import annotations

import decimal
import fractions
import math

import numpy as np
import pint
import pytest

import handwheel
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.units import registry

OTHER = pint.UnitRegistry()
"""A notebook's own registry: a quantity need not come from the kit's."""


@pytest.mark.parametrize("ureg", [registry(), OTHER], ids=["the kit's", "another"])
def test_a_feed_or_a_speed_in_turns_counts_turns_not_radians(ureg):
    """pint makes a turn 2π radians; one thousandth a turn is one thousandth a turn all the same."""
    marks = handwheel.surface_finish(feed=".004 in/rev", nose_radius="1/64")
    for unit in ("inch", "inch/revolution", "inch/turn"):
        assert handwheel.surface_finish(feed=ureg.Quantity(0.004, unit), nose_radius="1/64").rt == pytest.approx(
            marks.rt
        )
    for unit in ("1/minute", "rpm", "revolution/minute"):
        found = handwheel.spindle_speed(cutting_speed=90, diameter=1.5, speeds=[ureg.Quantity(240, unit), 70])
        assert found.chosen_rpm == pytest.approx(240)


@pytest.mark.parametrize(
    "number", [np.float64(0.125), np.float32(0.125), decimal.Decimal(".125"), fractions.Fraction(1, 8)]
)
def test_a_number_is_a_number(number):
    assert handwheel.taper(ratio=number).ratio == "1:8"
    assert handwheel.taper(large=np.int64(1), small=0.5, length=4).ratio == "1:8"


def test_temperatures_and_ratios_as_quantities():
    q = registry().Quantity
    warm = handwheel.size_at_20(
        reading=q(2, "inch"), part_temperature=q(120, "degF"), expansion=q(6.5e-6, "1/delta_degF")
    )
    plain = handwheel.size_at_20(reading=2, part_temperature="120 F", expansion="11.7e-6")
    assert warm.size == pytest.approx(plain.size, rel=1e-12)
    assert handwheel.taper(ratio=q(0.1, "")).ratio == "1:10"
    assert handwheel.taper(half_angle=q(math.pi / 6, "radian")).included_angle == pytest.approx(60)


@pytest.mark.parametrize(
    "wrong",
    [registry().Quantity(1, "second"), registry().Quantity(math.nan, "inch"), np.nan, np.array([1, 2]), 1j, b"1"],
)
def test_what_is_no_length_is_refused_in_one_sentence(wrong):
    with pytest.raises(HandwheelError, match=r"^large: ") as refused:
        handwheel.taper(large=wrong, small=0.5, length=2)
    assert "\n" not in str(refused.value)


def test_an_answer_offers_its_results_by_name():
    answer = handwheel.taper(ratio="1:8")
    assert {"half_angle", "ratio", "taper_per_foot"} <= set(dir(answer))
    assert answer.taper_per_foot == pytest.approx(1.5)
    with pytest.raises(AttributeError, match="half_angle"):
        _ = answer.halfangle


def test_an_answer_says_how_text_was_read():
    answer = handwheel.taper(large="1-1/16", small=".828125", length="47.625 mm")
    assert answer.echoes[0] == "large: 1-1/16 in = 1.0625 in"
    assert handwheel.taper(ratio=0.125).echoes == ()
