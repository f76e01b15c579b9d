"""Numbers are shown as a dial or micrometer shows them, and what is shown reads back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel.numbers import showing
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.reading import read, read_limits


def test_a_limit_from_a_metric_zone_is_rounded_inward():
    # 30 k6 is +.015/+.002 mm: 30.015 mm is 1.181693 in and never shown as 1.1817 (ISO 286-2, k6 over 18 to 30 mm)
    assert showing.limits(read_limits("30 mm +.015 +.002")) == "1.1816 / 1.1812"
    assert showing.limits(read_limits("35 mm +.018 +.002")) == "1.3786 / 1.3781"


def test_no_float_tail_and_no_negative_zero():
    assert showing.length(0.1 + 0.2, "mm", 3) == "0.300"
    assert showing.length(-1e-9) == ".0000"
    assert showing.on_dial(3 * 0.0254, 0.0254) == ".003"
    assert showing.on_dial(19.05 - 0.127, 0.127) == ".745"


@pytest.mark.property
@given(st.floats(-500, 500), st.sampled_from(["in", "mm"]), st.integers(1, 5))
def test_a_shown_length_reads_back_to_its_last_place(value, system, places):
    shown = showing.length(value, system, places)
    unit = 25.4 if system == "in" else 1.0
    assert read("length", shown, system).value == pytest.approx(value, abs=0.5000001 * unit * 10**-places)


@pytest.mark.property
@given(st.decimals("0.5", "90", places=4), st.integers(0, 500), st.integers(0, 500))
def test_shown_limits_never_lie_outside_the_true_ones(size, up, down):
    limits = read_limits(f"{size} mm +{up / 10000:.4f} -{down / 10000:.4f}")
    high, low = (float(each) * 25.4 for each in showing.limits(limits).split(" / "))
    assert high <= limits.maximum + 1e-9
    assert low >= limits.minimum - 1e-9


def test_limits_closer_than_the_places_are_not_turned_about():
    # 30 +.001/0 mm is 1.181102 to 1.181142 in: no tenth lies between
    assert showing.limits(read_limits("30 +.001 +.000 mm")) == "1.18114 / 1.18111"


def test_halves_are_rounded_as_decimals_not_as_binary_tails():
    assert showing.angle(2.675) == "2.68°"
    assert showing.angle(-0.001) == "0.00°"


@pytest.mark.parametrize("show", [showing.number, showing.length, showing.minutes, showing.angle])
@pytest.mark.parametrize("wrong", [float("nan"), float("inf")])
def test_what_is_no_number_is_never_shown(show, wrong):
    with pytest.raises(HandwheelError, match="finite"):
        show(wrong)


@pytest.mark.property
@given(st.integers(10, 2000))
def test_a_shown_time_reads_back(minutes):
    assert read("time", showing.minutes(minutes)).value == minutes
