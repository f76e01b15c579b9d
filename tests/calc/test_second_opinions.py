"""The calculations beside independent ways to the same number, on random sizes."""

from __future__ import annotations

import math
from fractions import Fraction

import numpy as np
import pint
import pytest
import sympy
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy import integrate

from handwheel.calc.cutting import spindle_speed, surface_finish, turning_power
from handwheel.calc.dials import dial_cut, fine_feed_angle
from handwheel.calc.stock import bar_stock
from handwheel.calc.tapers import taper
from handwheel.calc.temperature import size_at_20

pytestmark = pytest.mark.property
ureg = pint.UnitRegistry()


@given(
    st.integers(0, 40_000),
    st.sampled_from([(1000, 100), (1000, 250), (2000, 250), (1000, 125), (500, 200)]),
    st.sampled_from(["travel", "diameter"]),
    st.integers(0, 10_000),
)
def test_a_dial_in_whole_ten_thousandths(reduce, dial, reads, start):
    """The same cut in exact fractions of an inch, the dial turned over like a counter."""
    per_inch, count = dial
    start %= 10_000 * count // per_inch
    division, per_turn = Fraction(1, per_inch), Fraction(count, per_inch)
    exact = Fraction(reduce, 10_000)
    wanted = (exact if reads == "diameter" else exact / 2) / division
    assume(wanted % 1 != Fraction(1, 2))  # at a half both neighbours are nearest
    divisions = round(wanted)
    total = Fraction(start, 10_000) + divisions * division
    left = exact - divisions * division * (1 if reads == "diameter" else 2)
    cut = dial_cut(
        *(float(each) * 25.4 for each in (exact, division, per_turn)),
        reads,
        start=float(Fraction(start, 10_000)) * 25.4,
    )
    assert (cut.divisions, cut.turns) == (divisions, total // per_turn)
    assert cut.reading / 25.4 == pytest.approx(float(total % per_turn), abs=1e-9)
    assert cut.left_over / 25.4 == pytest.approx(float(left), abs=1e-9)
    assert cut.travel / 25.4 == pytest.approx(float(exact) / 2)


@given(st.floats(0, 60), st.floats(0.9, 1.1), st.sampled_from(["travel", "diameter"]), st.floats(0, 2.5))
def test_a_cut_is_the_slides_true_travel_and_what_is_left_over(reduce, true_lead, reads, start):
    """Turn the dial as told, move the slide by its screw, and measure the bar."""
    per_turn, per_mark = (4.0, 0.5) if reads == "diameter" else (2.6, 1.0)
    cut = dial_cut(reduce, 0.02, per_turn, reads, start, true_lead)
    slide = (cut.turns * per_turn + cut.reading - start) * per_mark * true_lead
    assert 2 * slide + cut.left_over == pytest.approx(reduce, abs=1e-9)
    one_division = 2 * 0.02 * per_mark * true_lead  # on the diameter
    assert abs(cut.left_over) <= one_division / 2 + 1e-6


@given(st.floats(10, 1000), st.floats(0.1, 20))
def test_spindle_speed_by_units_alone(sfm, inches):
    turns = (ureg.Quantity(sfm, "foot/minute") / (math.pi * ureg.Quantity(inches, "inch"))).to("1/minute").magnitude
    assert spindle_speed(sfm * 0.3048, inches * 25.4).exact_rpm == pytest.approx(turns)


@given(st.lists(st.floats(20, 3000), min_size=1, max_size=12), st.floats(3, 200), st.floats(5, 400))
def test_the_chosen_speed_is_the_fastest_allowed(speeds, metres, diameter):
    found = spindle_speed(metres, diameter, tuple(speeds))
    assert found.chosen_rpm in speeds
    if found.cautions:
        assert found.chosen_rpm == min(speeds) > 1.05 * found.exact_rpm
    else:
        assert found.chosen_rpm <= 1.05 * found.exact_rpm
        assert all(speed <= found.chosen_rpm or speed > 1.05 * found.exact_rpm for speed in speeds)


@given(
    st.floats(1000, 4000),
    st.floats(0, 0.4),
    st.floats(0.1, 5),
    st.floats(0.02, 0.6),
    st.floats(10, 300),
    st.floats(30, 95),
)
def test_force_and_power_by_chip_width_and_thickness(kc11, mc, depth, feed, speed, angle):
    """The law in its first form, F = kc1.1 b h^(1-mc), on the chip's own width; power as force times speed, by units."""
    width = depth / math.sin(math.radians(angle))
    thickness = feed * math.sin(math.radians(angle))
    force = kc11 * width * thickness ** (1 - mc)
    cut = turning_power(kc11, mc, depth, feed, speed, angle)
    assert cut.force == pytest.approx(force)
    watts = (ureg.Quantity(force, "newton") * ureg.Quantity(speed, "meter/minute")).to("kilowatt").magnitude
    assert cut.power == pytest.approx(watts)


@given(st.floats(0.05, 0.4), st.floats(0.4, 3.2))
def test_finish_by_measuring_the_marks(feed, radius):
    """Height and mean deviation of the parabola that the marks are taken for, by integration."""
    height = feed**2 / (8 * radius)
    mean = height / 3
    deviation, _ = integrate.quad(
        lambda x: abs(x**2 / (2 * radius) - mean), -feed / 2, feed / 2, points=[-feed / 12**0.5, feed / 12**0.5]
    )
    marks = surface_finish(feed, radius)
    assert marks.rt == pytest.approx(1000 * height)
    assert marks.ra == pytest.approx(1000 * deviation / feed, rel=0.027)  # the shop's form is 2.6 % under the mean
    assert marks.ra < 1000 * deviation / feed


@given(st.floats(1, 300), st.floats(1, 6000), st.floats(1000, 20_000))
def test_a_bars_mass_by_units_alone(diameter, length, density):
    volume = math.pi / 4 * ureg.Quantity(diameter, "mm") ** 2 * ureg.Quantity(length, "mm")
    mass = (volume * ureg.Quantity(density, "kg/m**3")).to("kg").magnitude
    assert bar_stock(diameter, length, density).mass == pytest.approx(mass)


@given(st.floats(1, 500), st.floats(-10, 100), st.floats(-10, 100), st.floats(1e-6, 3e-5), st.floats(1e-6, 3e-5))
def test_a_reading_is_the_warm_part_in_the_warm_instruments_own_marks(size, part, instrument, a, b):
    """Warm a part of known size, count it off in marks that have grown themselves, and get the size back."""
    warm = size * (1 + a * (part - 20))
    mark = 1 + b * (instrument - 20)
    found = size_at_20(warm / mark, part, instrument, expansion=a, instrument_expansion=b)
    assert found.size == pytest.approx(size, rel=1e-12)
    assert found.correction == pytest.approx(size - warm / mark, abs=1e-9)


def test_the_signs_of_warmth():
    # a warm part is large: the size at 20 °C is smaller than the reading; a warm instrument reads small: it is larger
    assert size_at_20(50, 40, 20, expansion=11.5e-6).correction < 0
    assert size_at_20(50, 20, 40, expansion=11.5e-6).correction > 0
    # aluminium by a steel micrometer, both warm: the part has grown more
    assert size_at_20(50, 40, expansion=23e-6).correction < 0


@given(st.floats(0.5, 300), st.floats(0.001, 0.999), st.floats(0.5, 500))
def test_a_taper_by_its_triangle(large, share, length):
    small = large * share
    found = taper(large=large, small=small, length=length)
    side = np.array([length, (large - small) / 2])
    cosine = side[0] / np.hypot(*side)
    assert math.cos(math.radians(found.half_angle)) == pytest.approx(cosine)
    assert found.included_angle == pytest.approx(2 * found.half_angle)
    for again in (
        taper(half_angle=found.half_angle),
        taper(ratio=found.diameter_per_length),
        taper(taper_per_foot=found.taper_per_foot),
    ):
        assert again.half_angle == pytest.approx(found.half_angle)
    assert 1 / float(found.ratio.removeprefix("1:")) == pytest.approx(found.diameter_per_length, rel=1e-3, abs=1e-6)


def test_half_angle_symbolically():
    # tan a = (T/2) exactly, not tan 2a = T: 1.5 in/ft is 3.5763°, never 3.5625°
    exact = sympy.atan(sympy.Rational(3, 2) / 24) * 180 / sympy.pi
    assert taper(taper_per_foot=0.125).half_angle == pytest.approx(float(exact.evalf(20)), rel=1e-14)


@given(st.floats(0.001, 1), st.floats(0.001, 1))
def test_a_fine_feed_moves_across_what_it_promises(division, share):
    angle = fine_feed_angle(division, division * share).angle_to_axis
    slide = division * np.exp(1j * math.radians(angle))  # along the axis and across it
    assert slide.imag == pytest.approx(division * share)
