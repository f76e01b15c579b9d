"""What the lines say beside their numbers: how a ring is corrected, what is measured with, where care is due."""

from __future__ import annotations

import attrs
from plan_help import lines_of, shaft

from handwheel.plan.stock import choose_bar
from handwheel.plan.turning import plan_turning


def cautions(plan, holding):
    return " ".join(text for line in plan.sheet.lines if line.number.startswith(holding) for text in line.cautions)


def test_measuring_is_done_with_the_spindle_off(demo, second):
    for road in (demo, second):
        for line in road.plan.sheet.lines:
            if line.motion == "touch":
                assert line.instruction.index("Spindle off") < line.instruction.index("measure")
            if line.motion == "measure":
                assert line.instruction.startswith("Stop the spindle")


def test_a_ring_that_a_correction_may_carry_past_its_zero_says_how_its_zeros_then_count(demo, second):
    """The seat's ring is set at .084 for the second zero: .116 to go. Seventeen tenths less measured leave .099.

    That is the first zero from .001, and counting two would cut a whole turn, .010 on the diameter, too deep.
    """
    seat = lines_of(demo.plan, "bearing seat", "measure")[0]
    assert (seat.values["compound-set"], seat.values["zero-pass"]) == (".084", "2")
    assert "Past .100 it goes on at .000: then one zero fewer." in seat.instruction
    journal = lines_of(demo.plan, "coupling journal", "measure")[0]
    assert (journal.values["compound-set"], journal.values["zero-pass"]) == (".003", "1")
    assert "Less than .000 is counted back from .100: then one zero more." in journal.instruction
    packing = lines_of(second.plan, "packing journal", "measure")[0]
    assert "Less than 0.00 is counted back from 4.00" in packing.instruction
    touch = lines_of(demo.plan, "seal journal", "touch")[0]  # .064 is far from either
    assert "zero more" not in touch.instruction
    assert "zero fewer" not in touch.instruction


def test_a_size_is_measured_with_the_surest_gauge_that_spans_it(demo):
    assert "with the 1-2 in micrometer" in lines_of(demo.plan, "bearing seat", "measure")[-1].instruction
    assert "with the 0-1 in micrometer" in lines_of(demo.plan, "pilot nose", "measure")[-1].instruction
    bare = attrs.evolve(demo.shop, gauges=())
    plan, _ = plan_turning(demo.part, bare, demo.choice)
    assert " with the " not in lines_of(plan, "pilot nose", "measure")[-1].instruction.split(":")[0]


def test_slender_work_is_cautioned_and_stout_work_is_not(demo, second):
    # 393 mm out of the jaws over the body's 26 is 15 diameters; the demo's 10.839 in over 1.750 is 6
    assert "15 times as long as thick" in cautions(second.plan, "B")
    assert "17 times as long as thick" in cautions(second.plan, "A")
    assert "times as long as thick" not in cautions(demo.plan, "A") + cautions(demo.plan, "B")


def test_backlash_is_said_in_the_shops_own_figures(demo, second):
    assert "Backlash: .008 on the cross-slide's dial, .010 on the carriage's" in cautions(demo.plan, "A")
    assert "Its backlash is .005 on the dial" in cautions(demo.plan, "B")
    assert "Backlash: 0.12 on the cross-slide's dial" in cautions(second.plan, "B")


def test_a_shoulder_is_faced_with_the_cross_slide_free_again(demo):
    last = lines_of(demo.plan, "coupling journal", "turn")[-1]
    assert "and locked" in last.instruction
    assert "unlock the cross-slide and face the shoulder" in last.instruction


def test_the_compounds_scale_and_stroke_are_kept_to(demo):
    lathe = demo.shop.lathe
    for change, why in (
        ({"swing": 60.0}, "84.26° on a scale that goes to 60.00°"),
        ({"stroke": 1.0}, "of the compound, which has a stroke of .039"),
    ):
        compound = attrs.evolve(lathe.compound, **change)
        shop = attrs.evolve(demo.shop, lathe=attrs.evolve(lathe, compound=compound))
        plan, faults = plan_turning(demo.part, shop, demo.choice)
        assert plan is None
        assert why in faults[0].sentence()
        assert "ground or polished" in faults[0].sentence()


def test_the_jaws_close_far_enough_out_for_the_spindle(demo):
    """All of Ø1.700, 6 in long, spindle bored 1.500, jaws 1.250: no more than 1.250 goes behind the jaws' face."""
    part = shaft(demo, [("0", "6", "1.700 ±.005")])
    plan, faults = plan_turning(part, demo.shop, choose_bar(part, demo.shop))
    assert not faults
    hold = next(line for line in plan.sheet.lines if line.number == "B1")
    # 6.000 and .060 to face, less 1.250
    assert hold.values["stick-out"] == "4.810"
    through = attrs.evolve(demo.shop, lathe=attrs.evolve(demo.shop.lathe, spindle_bore=60.0))
    plan, _ = plan_turning(part, through, choose_bar(part, through))
    hold = next(line for line in plan.sheet.lines if line.motion == "hold" and line.number.startswith("B"))
    assert float(hold.values["stick-out"]) < 1


def test_where_the_spindle_leaves_no_grip_it_is_said(demo):
    """Ø1.750 with .900 of Ø1.700 at either end: jaws on the middle leave more than their 1.250 of thick work behind.

    3.9 + .9 in less 1.250 is 3.55, .35 short of the middle's end; the ends themselves are too short to grip.
    """
    part = shaft(demo, [("0", ".9", "1.700 ±.005"), (".9", "3.9", "1.750 ±.005"), ("3.9", "4.8", "1.700 ±.005")])
    plan, faults = plan_turning(part, demo.shop, choose_bar(part, demo.shop))
    assert plan is None
    assert "the jaws find no section to close on" in faults[0].sentence()
    assert "spindle's bore of 1.5000" in faults[0].sentence()
    through = attrs.evolve(demo.shop, lathe=attrs.evolve(demo.shop.lathe, spindle_bore=60.0))
    assert plan_turning(part, through, choose_bar(part, through))[1] == []


def test_every_number_a_touch_line_speaks_of_stands_in_its_fields(demo, second):
    for road in (demo, second):
        for line in road.plan.sheet.lines:
            if line.motion == "touch":
                assert all(line.values[name] in line.instruction for name in ("touch-diameter", "zero-diameter"))


def test_every_tool_change_is_counted_for_the_estimate(demo):
    """Facing, roughing, finishing and chamfering in each holding: eight; after roughing's and finishing's a touch."""
    operations = demo.plan.operations
    assert sum(each.tool_changes for each in operations) == 8
    lines = demo.plan.sheet.lines
    assert sum(each.touch_offs for each in operations) == sum(line.motion in ("touch", "touch-face") for line in lines)
    assert sum(each.measurements for each in operations) == sum(line.motion == "measure" for line in lines)
    assert sum(each.passes for each in operations) == sum(line.motion in ("turn", "face", "chamfer") for line in lines)
    covered = [line.number for line in lines if line.motion != "leave"]
    firsts = {each.first_line for each in operations}
    assert firsts <= set(covered)
