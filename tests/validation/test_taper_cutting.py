"""Cutting and proving a taper beside worked examples, exact triangles and turned cones."""

from __future__ import annotations

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

import handwheel
from handwheel.calc.tailstock import tailstock_setover, tailstock_test
from handwheel.calc.taper_cutting import indicator_rise, taper_advance, taper_compound_feed
from handwheel.numbers.faults import HandwheelError

pytestmark = pytest.mark.validation


# Set-over: L = 10, .59941 in/ft: .2498, and .2497 by L sin (computed). L = 12: .600 in/ft .299906 exact against .300,
# 1.5 in/ft .748539 against .750 (the project's own, cross-checked by turned diameters in 3D).
@pytest.mark.parametrize(
    ("length", "per_foot", "common", "exact"),
    [(10, 0.59941, 0.2498, 0.2497), (12, 0.6, 0.3, 0.299906), (12, 1.5, 0.75, 0.748539)],
)
def test_set_over(length, per_foot, common, exact):
    found = tailstock_setover(length, taper_per_foot=per_foot / 12)
    assert found.setover == pytest.approx(common, abs=5e-5)
    assert found.setover_exact == pytest.approx(exact, abs=5e-5)


def test_the_second_jobs_cone_would_need_more_than_its_tailstock_has():
    # 1:10 over 529 mm: 26.45, beyond the lathe's 12
    found = tailstock_setover(529, large=25, small=21, length=40)
    assert found.setover == pytest.approx(26.45)


@given(st.floats(0.01, 0.2), st.floats(50, 900))
def test_a_bar_set_over_on_ball_centres_turns_that_taper(per_length, length):
    """The work's axis as a line in space, the tool moving parallel to the bed: the diameters it leaves."""
    offset = tailstock_setover(length, taper_per_foot=per_length).setover_exact
    tilt = math.asin(offset / length)
    along = np.array([0.2, 0.8]) * length  # two places on the work's own axis
    # from the operator: the axis leans away by tilt, the tool's line is fixed; distance square to the axis
    tool = 100.0
    radii = (tool - along * math.sin(tilt)) / math.cos(tilt)
    made = abs(2 * (radii[1] - radii[0]) / (along[1] - along[0]))
    assert made == pytest.approx(per_length, rel=1e-9)


# Advance per .001 of diameter: .008 (1.5 in/ft), .016 (.75), .020 (.600), .024 (.500); stand-off .120 at 1.5 in/ft is .015 on
# the diameter (exact triangles).
@pytest.mark.parametrize(("per_foot", "advance"), [(1.5, 0.008), (0.75, 0.016), (0.6, 0.020), (0.5, 0.024)])
def test_advance(per_foot, advance):
    assert taper_advance(0.001, taper_per_foot=per_foot / 12).advance == pytest.approx(advance)


def test_compound_and_advance_tell_one_story():
    assert taper_advance(0.015, taper_per_foot=0.125).advance == pytest.approx(0.120)
    half = math.degrees(math.atan(1 / 16))
    feed = taper_compound_feed(half, 0.015)
    assert feed.carriage_travel == pytest.approx(0.120)
    assert math.hypot(feed.carriage_travel, 0.0075) == pytest.approx(feed.along_cone)


# Indicator: .0625 in over an inch of carriage, .0623783 over an inch of compound at 1.5 in/ft; .00024 apart over 2 in.
def test_indicator():
    half = math.degrees(math.atan(1 / 16))
    assert indicator_rise(half, 1, "axis").rise == pytest.approx(0.0625)
    assert indicator_rise(half, 1, "cone").rise == pytest.approx(0.0623783, abs=5e-8)
    apart = indicator_rise(half, 2, "axis").rise - indicator_rise(half, 2, "cone").rise
    assert apart == pytest.approx(0.00024, abs=5e-6)


# Two collars: +.0012 at the tailstock, collars 9 apart, centres 12: move .0008 towards the operator (cross-checked in 3D).
@given(st.floats(-0.01, 0.01), st.floats(3, 11))
def test_two_collars_find_an_offset(offset, apart):
    """A centre standing off by `offset` tilts the axis; the tool on the operator's side cuts what is left to it."""
    length, tool = 12.0, 0.5
    near, far = 0.5, 0.5 + apart
    diameters = [2 * (tool + offset * place / length) for place in (near, far)]  # away from the operator: cuts less
    found = tailstock_test(*diameters, collar_distance=apart, centres_distance=length)
    assert found.offset_now == pytest.approx(offset, abs=1e-12)
    assert found.move == found.offset_now


def test_two_collars_worked_example():
    assert tailstock_test(1.0, 1.0012, 9, 12).move == pytest.approx(0.0008)


@pytest.mark.parametrize(
    "ask",
    [
        lambda: handwheel.tailstock_setover(taper_per_foot=".6", centres_distance="0"),
        lambda: handwheel.taper_compound_feed(half_angle="95", reduce=".01"),
        lambda: handwheel.taper_advance(half_angle="3", taper_per_foot=".6", reduce=".01"),
        lambda: handwheel.indicator_rise(half_angle="3", travel="1", along="bed"),
        lambda: handwheel.tailstock_test(
            near_diameter="1", far_diameter="1", collar_distance="13", centres_distance="12"
        ),
    ],
)
def test_nonsense_is_refused(ask):
    with pytest.raises(HandwheelError):
        ask()
