"""Printed strings read back in the units they are printed in."""

from __future__ import annotations

import hand_sheets as hand
import pytest
from hand_shops import INCH_SHOP, METRIC_SHOP

from handwheel.dryrun.decode import read_line, size
from handwheel.numbers.faults import HandwheelError
from handwheel.plan.lines import Line

INCH = 25.4


def line_of(sheet, number):
    return next(line for line in sheet.lines if line.number == number)


def test_sizes_are_in_the_sheets_units_and_dials_in_their_own():
    read = read_line(line_of(hand.inch_sheet(), "A10"), "in", INCH_SHOP.lathe)
    assert read.sizes["position"].value == pytest.approx(2.6 * INCH)
    assert read.sizes["cross-reading"].value == pytest.approx(0.05 * INCH)
    assert (read.counts["carriage-turns"], read.counts["cross-turns"]) == (3, 1)
    # a metric dial beside an inch sheet: its marks stay millimetres
    values = {"from-face": "free end", "carriage-set": "12.5"}
    read = read_line(Line("A1", "touch-face", "", "", values), "in", METRIC_SHOP.lathe)
    assert read.sizes["carriage-set"].value == pytest.approx(12.5)


def test_a_size_is_as_sure_as_its_last_printed_place():
    assert size("length", "1.2500", "in", "").half_place == pytest.approx(0.00005 * INCH)
    assert size("length", "30.50", "mm", "").half_place == pytest.approx(0.005)
    assert size("length", "1-3/8", "in", "").half_place == 0.0


def test_limits_are_read_whichever_way_round_they_are_printed():
    read = read_line(line_of(hand.inch_sheet(), "B16"), "in", INCH_SHOP.lathe)
    assert read.limits == pytest.approx((0.9998 * INCH, 1.0002 * INCH))


def test_every_string_that_cannot_be_read_is_told():
    values = {"from-face": "tail end", "carriage-set": "a bit"}
    read = read_line(Line("A1", "touch-face", "", "", values), "in", INCH_SHOP.lathe)
    assert [name for name, _ in read.unread] == ["carriage-set"]
    with pytest.raises(HandwheelError, match="Position"):
        size("length", "about 2", "in", "Position")
