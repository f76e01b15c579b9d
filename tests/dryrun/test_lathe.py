"""Slides, dials and backlash as a machinist knows them."""

from __future__ import annotations

from math import asin, cos, degrees, radians

import pytest
from hand_shops import INCH_SHOP

from handwheel.dryrun.lathe import Slide, VirtualLathe
from handwheel.shop.values import Dial

INCH = 25.4


def travel_dial(**changes):
    values = {
        "name": "cross-slide",
        "system": "in",
        "per_turn": 0.1 * INCH,
        "division": 0.001 * INCH,
        "reads": "travel",
        "backlash": 0.006 * INCH,
    }
    return Dial(**values | changes)


def test_turns_are_counted_from_where_the_ring_was_set():
    # worked by hand: 1.5000 touched at .037, to 1.2500: .125 in is 1 turn and .062
    slide = Slide(travel_dial())
    slide.set_ring(0.037 * INCH)
    slide.go_to(1, 0.062 * INCH, right_side=True)
    assert slide.stands == pytest.approx(0.125 * INCH, abs=1e-9)


def test_a_diameter_dial_moves_the_slide_half_its_marks():
    slide = Slide(travel_dial(reads="diameter", per_turn=0.25 * INCH))
    slide.set_ring(0.037 * INCH)
    slide.go_to(1, 0.037 * INCH, right_side=True)
    assert slide.stands == pytest.approx(0.125 * INCH, abs=1e-9)


def test_a_dial_marked_in_inches_on_a_metric_screw_moves_less():
    # 2.5 mm a turn, marked .100: .09843 true (25.4 mm to the inch by definition)
    slide = Slide(travel_dial(true_lead=2.5 / 2.54))
    slide.set_ring(0.0)
    slide.go_to(1, 0.0, right_side=True)
    assert slide.stands == pytest.approx(2.5, abs=1e-12)


def test_from_the_wrong_side_the_slide_stands_off_by_the_backlash():
    right, wrong = Slide(travel_dial()), Slide(travel_dial())
    for slide, side in ((right, True), (wrong, False)):
        slide.set_ring(0.0)
        slide.go_to(0, 0.060 * INCH, right_side=side)
    assert wrong.stands - right.stands == pytest.approx(0.006 * INCH, abs=1e-12)


@pytest.mark.parametrize("share", [0.1, 0.05])
def test_a_fine_feed_takes_a_tenth_or_a_twentieth_and_walks_along(share):
    angle = degrees(asin(share))
    lathe = VirtualLathe(INCH_SHOP.lathe)
    lathe.out = "far"
    lathe.swing(angle, towards_headstock=True)
    lathe.touch_radius(20.0, 0.0)
    lathe.touch_place(100.0, 0.0)
    lathe.compound.set_ring(0.0)
    lathe.compound.go_to(0, 0.010 * INCH, right_side=True)
    assert 20.0 - lathe.tip_radius == pytest.approx(0.010 * INCH * share, abs=1e-9)
    assert 100.0 - lathe.tip_place == pytest.approx(0.010 * INCH * cos(radians(angle)), abs=1e-9)
    assert lathe.diameter_per(lathe.compound, 0.001 * INCH) == pytest.approx(0.002 * INCH * share, abs=1e-9)
