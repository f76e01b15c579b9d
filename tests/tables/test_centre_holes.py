"""The table of 60° centre holes: every row, and the holes of the sample shops."""

from __future__ import annotations

import pytest

from handwheel import assets
from handwheel.numbers.faults import HandwheelError
from handwheel.shop.file import load_shop, sample_shop
from handwheel.tables.centre_holes import centre_hole, centre_hole_for, centre_holes

INCH, METRIC = 10, 7


def test_the_number_of_rows():
    assert len(centre_holes()) == INCH + METRIC


@pytest.mark.parametrize("hole", centre_holes(), ids=lambda hole: hole.name)
def test_every_row_is_a_centre_hole(hole):
    assert 0 < hole.point < hole.body
    assert "from memory" in hole.how_known
    if hole.name.startswith("A"):
        assert hole.name == f"A {hole.point:g} x {hole.mouth:g}"
        assert hole.point < hole.mouth < hole.body
        # form A: the mouth is a fixed multiple of the point, both in steps of the R20 series of ISO 3
        assert hole.mouth / hole.point == pytest.approx(2.12, abs=0.03)
    else:
        assert hole.mouth is None
        assert hole.shaft is None


def test_sizes_rise_and_the_shafts_follow_without_a_gap():
    inch, metric = centre_holes()[:INCH], centre_holes()[INCH:]
    for series in (inch, metric):
        points = [hole.point for hole in series]
        assert points == sorted(set(points))
    for smaller, larger in zip(metric, metric[1:], strict=False):
        assert smaller.shaft[1] == larger.shaft[0]


def test_first_and_last_row_in_the_standards_own_units():
    first, last = centre_hole("no.00"), centre_hole("A 6.3 × 13.2")
    assert (first.body, first.point) == pytest.approx((25.4 / 8, 0.635))
    assert (last.body, last.point, last.mouth, last.shaft) == (16.0, 6.3, 13.2, (80.0, 180.0))


def test_the_sample_shops_have_drills_of_the_table():
    sizes = {(round(hole.body, 4), round(hole.point, 4)) for hole in centre_holes()}
    for shop in (sample_shop(), load_shop(assets.sample_shop_file().with_name("sample-shop-metric.toml"))):
        assert {(round(drill.body, 4), round(drill.point, 4)) for drill in shop.centre_drills} <= sizes


def test_a_hole_for_a_shaft():
    assert centre_hole_for(25).name == "A 2.5 x 5.3"  # up to and including 25
    assert centre_hole_for(25.01).name == "A 3.15 x 6.7"
    with pytest.raises(HandwheelError, match="diameter: 200 mm lies outside the table, which goes from over 0 to 180"):
        centre_hole_for(200)
    with pytest.raises(HandwheelError, match="diameter: 0 mm"):
        centre_hole_for(0)


def test_an_unknown_hole_lists_what_there_is():
    with pytest.raises(HandwheelError, match=r"'No\. 9' is not in the table; it has No\. 00, .*A 6\.3 x 13\.2"):
        centre_hole("No. 9")
