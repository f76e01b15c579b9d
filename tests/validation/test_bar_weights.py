"""Weights of round bar beside published tables, whose figures follow from their own density of steel."""

from __future__ import annotations

import math

import pytest

from handwheel.calc.stock import bar_stock

pytestmark = pytest.mark.validation

POUND = 0.45359237
FOOT = 304.8
INCH = 25.4

# ASTM A615, nominal weights of bars (seen in several secondary copies): diameter in, lb/ft, mass kg/m. A nominal bar
# is the plain round of the same weight. Misprint: one copy has 7.970 kg/m for the 1.410 bar; 5.313 lb/ft is 7.907.
ASTM_A615 = [
    (0.375, 0.376, 0.560), (0.500, 0.668, 0.994), (0.625, 1.043, 1.552), (0.750, 1.502, 2.235), (0.875, 2.044, 3.042),
    (1.000, 2.670, 3.973), (1.128, 3.400, 5.060), (1.270, 4.303, 6.404), (1.410, 5.313, 7.907), (1.693, 7.65, 11.38),
    (2.257, 13.60, 20.24),
]  # fmt: skip


@pytest.mark.parametrize(("diameter", "per_foot", "per_metre"), ASTM_A615)
def test_astm_a615(diameter, per_foot, per_metre):
    """At 3.4 lb/ft a square inch, weight tables' usual figure (489.6 lb/ft³, .2833 lb/in³; from memory).

    Within half a unit in the weight's last place and the diameter's rounding (1.270 is off by .0006: the bar took
    the weight of a 1-1/8 square).
    """
    density = 489.6 * POUND / 0.3048**3
    within = 0.0006 / diameter * 2 + 0.0005 / per_foot + (0.005 / per_foot if per_foot > 6 else 0)
    assert bar_stock(diameter * INCH, FOOT, density).mass / POUND == pytest.approx(per_foot, rel=within)
    assert bar_stock(diameter * INCH, 1000, density).mass == pytest.approx(per_metre, rel=within + 0.0005)


@pytest.mark.parametrize(
    ("diameter", "feet", "pounds"),
    # a trade article's worked examples at .2833 lb/in³ (seen in secondary copies): 1 in × 12 ft, 3/4 in × 4 ft
    [(1.0, 12, 32.04), (0.75, 4, 6.00)],
)
def test_worked_examples(diameter, feet, pounds):
    density = 0.2833 * POUND / 0.0254**3
    assert bar_stock(diameter * INCH, feet * FOOT, density).mass / POUND == pytest.approx(pounds, abs=0.01)


@pytest.mark.parametrize(
    ("diameter", "per_metre"),
    # EN 10060 (DIN 1013) hot-rolled round bars at 7.85 kg/dm³, kg/m: from memory
    [(8, 0.395), (12, 0.888), (20, 2.47), (25, 3.85), (30, 5.55), (35, 7.55), (40, 9.86), (50, 15.4), (100, 61.7)],
)
def test_en_10060(diameter, per_metre):
    # half a unit in the third figure
    last = 0.5 * 10 ** (math.floor(math.log10(per_metre)) - 2)
    assert bar_stock(diameter, 1000, 7850).mass == pytest.approx(per_metre, abs=last * 1.001)
