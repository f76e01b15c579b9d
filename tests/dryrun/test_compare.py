"""How the finished bar is judged and its limits are shown."""

from __future__ import annotations

import hand_sheets as hand
import pytest

from handwheel.dryrun.bar import Bar
from handwheel.dryrun.compare import compare, compare_length, never_named


def bar_of(radius):
    bar = Bar(100.0, 20.0)
    bar.cut(50.0, 100.0, radius, radius, "A5")
    return bar


def test_limits_from_millimetres_are_shown_in_inches_rounded_inward():
    # 35 k6 is +.018 +.002 (the demo's bearing seat): 35.018 mm = 1.378661 in, 35.002 mm = 1.378031 in
    rows, faults = compare(bar_of(17.505), [hand.sample(75.0, "seat", 35.002, 35.018)], "in", {})
    assert rows[0].limits == "1.3786 / 1.3781"
    assert not faults


@pytest.mark.parametrize(
    "diameter, right", [(35.002, True), (35.018, True), (35.0019, False), (35.0181, False), (35.0180005, True)]
)
def test_a_size_on_its_limit_is_right_and_a_tenth_of_a_micrometre_past_it_is_wrong(diameter, right):
    rows, faults = compare(bar_of(diameter / 2), [hand.sample(75.0, "seat", 35.002, 35.018)], "mm", {})
    assert rows[0].ok == right
    assert [fault.line for fault in faults] == ([] if right else ["A5"])


def test_at_a_step_either_side_may_suit():
    samples = [hand.sample(50.0, "corner", 29.9, 30.1)]
    assert compare(bar_of(15.0), samples, "mm", {})[0][0].ok
    assert not compare(bar_of(14.0), samples, "mm", {})[0][0].ok


def test_a_pass_that_stopped_short_is_named_rather_than_the_stock_beside_it():
    _, faults = compare(bar_of(15.0), [hand.sample(49.0, "seat", 29.9, 30.1)], "mm", {"seat": "A9"})
    assert faults[0].line == "A5"
    _, faults = compare(bar_of(15.0), [hand.sample(20.0, "seat", 29.9, 30.1)], "mm", {"seat": "A9"})
    assert (faults[0].line, "no line has cut there" in faults[0].what) == ("A9", True)


def test_a_length_outside_its_limits_names_the_line_that_faced_it():
    bar = bar_of(15.0)
    bar.faced["far"] = "A2"
    assert compare_length(bar, 99.9, 100.1, "mm") == []
    (short,) = compare_length(bar, 100.2, 100.4, "mm")
    (long,) = compare_length(bar, 99.0, 99.5, "mm")
    assert (short.line, "too short" in short.what, long.line, "too long" in long.what) == ("A2", True, "A2", True)


def test_a_chamfer_no_line_names_is_told_and_a_cylinder_turned_with_its_neighbour_is_not():
    samples = [hand.sample(1.0, "chamfer", 28.0, 29.0), hand.sample(2.0, "chamfer", 29.0, 30.0)]
    samples += [hand.sample(z, "end section", 29.0, 30.0) for z in (5.0, 9.0)]
    assert [fault.what for fault in never_named(samples, {"seat"})] == [
        "no line cuts the chamfer or leaves it for later"
    ]
    assert never_named(samples, {"chamfer"}) == []
