"""The turning plan beside pencil and paper, and what must hold for any shaft."""

from __future__ import annotations

import re
from itertools import pairwise

import attrs
import pytest
from random_parts import random_entry

from handwheel import assets
from handwheel.dryrun.run import dry_run
from handwheel.numbers.faults import HandwheelError
from handwheel.part.reading_in import read_part
from handwheel.part.samples import sampled_limits
from handwheel.plan.finefeed import fine_feed, is_too_coarse, on_diameter
from handwheel.plan.lines import MOTIONS, Line
from handwheel.plan.stock import choose_bar
from handwheel.plan.turning import plan_turning
from handwheel.shop.file import load_shop, sample_shop

IN = 25.4
METRIC = assets.sample_shop_file().with_name("sample-shop-metric.toml")


def lines_of(plan, feature, motion):
    return [line for line in plan.sheet.lines if line.feature == feature and line.motion == motion]


def dial(line, name="cross"):
    return int(line.values[f"{name}-turns"]), line.values[f"{name}-reading"]


# Pencil and paper, the demo job on a cross-slide of .100 a turn that reads travel.


def test_pencil_seal_journal_roughing(demo):
    """From Ø1.770 to an aim of 1.4985: .2715 on Ø = .13575 travel, 136 divisions, so zero is Ø1.770 - .272 = 1.4980.

    136 = one turn and 36: set at .100 - .036 = .064, and the second zero is finish size.
    """
    touch, *_ = lines_of(demo.plan, "seal journal", "touch")
    assert (touch.values["touch-diameter"], touch.values["zero-diameter"]) == ("1.7700", "1.4980")
    assert (touch.values["cross-set"], touch.values["zero-pass"]) == (".064", "2")
    passes = lines_of(demo.plan, "seal journal", "turn")
    # stop short of the fillet's stock at 1.4985 + 2 × 1/16 = 1.6235: (1.770 - 1.6235)/.002 = 73 whole divisions, so
    # Ø1.770 - .146 = 1.6240; .064 + .073 = .137: one turn and .037
    assert [each.values["diameter"] for each in passes[:4]] == ["1.6980", "1.6240", "1.5720", "1.5200"]
    assert dial(passes[1]) == (1, ".037")
    # half of it: 36 divisions, .064 + .036 = .100: one turn and .000
    assert dial(passes[0]) == (1, ".000")
    assert passes[1].values["left-to-go"] == ".1260"  # 1.6240 - 1.4980


def test_pencil_carriage_positions(demo):
    """Seal journal's shoulder: 10.594 - 3.813 = 6.781 from the nose; 9 turns of .750 are 6.750, .030 and .001 more."""
    faced = lines_of(demo.plan, "seal journal", "turn")[1]
    assert faced.values["position"] == "6.781"
    assert (faced.values["carriage-turns"], faced.values["carriage-reading"]) == ("9", ".030")
    assert faced.values["carriage-more"] == "+.001"
    # below the block: 6.781 - .0625 - .250 mm (.0098) = 6.7087; the last division before it and .004 on by the indicator
    below = lines_of(demo.plan, "seal journal", "turn")[2]
    assert below.values["position"] == "6.709"
    assert (below.values["carriage-turns"], below.values["carriage-reading"]) == ("8", ".705")
    assert below.values["carriage-more"] == "+.004"


def test_pencil_fine_feed_of_the_bearing_seat(demo):
    """35 k6 is 1.37803 to 1.37866, middle 1.378346: a tolerance of .00063, a fifth of it .000126.

    A cross-slide division is .002 on the diameter: too coarse. At 5.74° a compound division is .0002: still too
    coarse; at 2.87°, asin(1/20), it is 2 × .001 × sin 2.87° = .00010014. The scale has its zero along the
    cross-slide, so it reads 90 - 2.87 = 87.13.
    """
    swing = next(line for line in demo.plan.sheet.lines if line.motion == "swing" and line.number.startswith("B"))
    assert (swing.values["from-axis"], swing.values["scale-reads"]) == ("2.87°", "87.13°")
    measure, last = lines_of(demo.plan, "bearing seat", "measure")
    before = float(measure.values["diameter"])
    divisions = round((before - 1.378346) / 0.00010014)
    ring = (100 - divisions % 100) % 100
    assert measure.values["compound-set"] == f".{ring:03d}"
    assert int(measure.values["zero-pass"]) == (divisions + ring) // 100
    assert float(last.values["diameter"]) == pytest.approx(1.378346, abs=0.00006)
    assert last.values["limits"] == "1.3786 / 1.3781"
    fine = lines_of(demo.plan, "bearing seat", "turn")[-1]
    # the edge walks cos 2.87° × .001 a division: the carriage stays that much short of 3.313 - .030
    walked = divisions * 0.001 * 0.998746
    carriage = (
        int(fine.values["carriage-turns"]) * 0.75
        + float(fine.values["carriage-reading"])
        + float(fine.values["carriage-more"])
    )
    assert carriage == pytest.approx(3.313 - 0.030 - walked, abs=0.0006)
    assert fine.values["position"] == "3.283"
    assert "cross-reading" not in fine.values


def test_pencil_metric_dial_that_reads_diameter(second):
    """Packing journal: from Ø32.50 to 27.974 is 4.526 on a dial that reads diameter: 226 divisions of .02, 4.52.

    One turn is 4.00: set at 4.00 - .52 = 3.48, and the second zero is Ø32.50 - 4.52 = 27.98.
    """
    touch = lines_of(second.plan, "packing journal", "touch")[0]
    assert (touch.values["touch-diameter"], touch.values["zero-diameter"]) == ("32.500", "27.980")
    assert (touch.values["cross-set"], touch.values["zero-pass"]) == ("3.48", "2")


def test_the_second_job_as_its_own_figures_say(second):
    # blank 529 + 2 × 1.5 + 40 + 3 = 575, one part from the 1000 bar; 5.74° along the axis for h9 and h6
    assert second.choice.blank_length == pytest.approx(575)
    assert second.choice.bar.name == "1.4021 QT 35 x 1000"
    assert "not enough for a second try" in second.choice.second_try
    refused = {bar.name: why for bar, why in second.choice.refused}
    assert "1.4021 QT is asked for" in refused["42CrMo4 QT 36 x 550"]
    assert "more to turn off" in refused["1.4021 QT 40 x 700"]
    swings = [line.values["scale-reads"] for line in second.plan.sheet.lines if line.motion == "swing"]
    assert swings == ["5.74°", "5.74°"]
    assert [holding.end_name for holding in second.plan.holdings] == ["thread end", "coupling end"]


def test_the_demos_stock(demo):
    # 10.594 + 2 × .060 + 1.250 + .125 = 12.089
    assert demo.choice.blank_length == pytest.approx(12.089 * IN)
    assert sum(amount for _, amount in demo.choice.items) == pytest.approx(demo.choice.blank_length)
    assert demo.choice.bar.name == "4140 PH 1-7/8 x 24"
    refused = {bar.name: why for bar, why in demo.choice.refused}
    assert "it is 1045" in refused["1045 1-3/4 x 60"]
    assert "it is 1018" in refused["1018 2 x 12"]


def test_no_bar_that_serves_is_said_bar_by_bar(demo):
    part = attrs.evolve(demo.part, entry=attrs.evolve(demo.part.entry, material="C45"))
    with pytest.raises(
        HandwheelError, match=r"no bar of the rack serves; order one of C45\. 4140 PH 1-7/8 x 24: it is"
    ):
        choose_bar(part, demo.shop)
    short = attrs.evolve(demo.shop, rack=tuple(attrs.evolve(bar, length=300.0) for bar in demo.shop.rack))
    with pytest.raises(HandwheelError, match=r"and the blank needs 12\.089 in"):
        choose_bar(demo.part, short)


def test_where_a_division_is_more_than_a_fifth_of_the_tolerance_the_compound_feeds(demo):
    dial_ = demo.shop.lathe.cross_slide
    assert on_diameter(dial_) == pytest.approx(0.002 * IN)
    by_name = {section.name: section for section in demo.part.sections}
    assert is_too_coarse(dial_, by_name["bearing seat"])
    assert is_too_coarse(dial_, by_name["coupling journal"])
    assert not is_too_coarse(dial_, by_name["collar"])  # .010 / 5 = .002: not more
    for name, section in by_name.items():
        last = lines_of(demo.plan, name, "turn")
        if last:
            assert ("compound-reading" in last[-1].values) == is_too_coarse(dial_, section)


def test_a_tolerance_no_dial_can_set_is_said(demo):
    features = [
        {**each, "diameter": "1.750 ±.0001"} if each["name"] == "collar" else each for each in demo.part.entry.features
    ]
    part, _ = read_part(attrs.evolve(demo.part.entry, features=features))
    plan, faults = plan_turning(part, demo.shop, demo.choice)
    assert plan is None
    assert "finer than any dial of this lathe" in faults[0].sentence()


def test_a_neck_a_long_part_and_a_missing_tool_are_said(demo):
    lathe = demo.shop.lathe
    short = attrs.evolve(demo.shop, lathe=attrs.evolve(lathe, between_centres=200.0))
    assert "between centres" in plan_turning(demo.part, short, demo.choice)[1][0].sentence()
    bare = attrs.evolve(demo.shop, tools=tuple(tool for tool in demo.shop.tools if tool.kind != "finish turning"))
    assert "no finish turning tool" in plan_turning(demo.part, bare, demo.choice)[1][0].sentence()
    features = [
        {**each, "diameter": "1.450 ±.003"} if each["name"] == "seal journal" else each
        for each in demo.part.entry.features
    ]
    features = [{**each, "diameter": "1.520 ±.003"} if each["name"] == "middle section" else each for each in features]
    part, _ = read_part(attrs.evolve(demo.part.entry, features=features))
    assert "so it is a neck" in plan_turning(part, demo.shop, demo.choice)[1][0].sentence()


def test_what_is_not_planned_is_said_on_plan_and_sheet(demo):
    for name in ("hub taper", "nut thread", "relief groove", "seal fillet", "hub keyseat", "coupling keyseat"):
        assert any(sentence.startswith(name) for sentence in demo.plan.not_planned)
        assert lines_of(demo.plan, name, "leave")


def test_a_person_may_turn_the_other_end_first(demo):
    plan, faults = plan_turning(demo.part, demo.shop, demo.choice, decisions={"first end": "coupling end"})
    assert not faults
    assert plan.holdings[0].end_name == "coupling end"
    assert "by hand" in plan.holdings[0].reason
    _, faults = plan_turning(demo.part, demo.shop, demo.choice, decisions={"first end": "left"})
    assert "is no end of this part" in faults[0].sentence()


def test_the_sheet_takes_power_and_depth_the_lathe_has(demo):
    """No rough pass takes more than 2 hp at 80 %: by the removal rate and the handbook's power constant.

    Kp = 1.00 hp/(in³/min) for the 4140 group at HB 340-360 (Machinery's Handbook 31st ed. p.1147 Table 1b); a
    quarter is left for the spread between laws.
    """
    previous = {}
    for line in demo.plan.sheet.lines:
        if line.motion in ("touch", "turn") and "feed" in line.values:
            diameter = float(line.values["diameter"])
            depth = (previous.get(line.feature, diameter) - diameter) / 2
            feed = float(line.values["feed"].split()[0])
            speed = float(line.values["speed"].split()[0]) * 3.14159 * (diameter + 2 * depth) / 12
            assert depth <= 0.100 + 1e-9
            assert 12 * speed * feed * depth * 1.00 <= 2 * 0.8 * 1.25
            previous[line.feature] = diameter
        elif line.motion == "touch":
            previous[line.feature] = float(line.values["touch-diameter"])


def plans(count):
    for seed in range(count):
        part, faults = read_part(random_entry(seed))
        assert not faults
        shop = load_shop(METRIC) if seed % 2 else sample_shop()
        plan, faults = plan_turning(part, shop, choose_bar(part, shop))
        assert not faults, (seed, faults)
        yield seed, part, shop, plan


def test_for_any_shaft_passes_go_in_step_by_step_and_end_at_zero():
    for seed, part, shop, plan in plans(40):
        system = shop.lathe.cross_slide.system
        per_turn = shop.lathe.cross_slide.per_turn / (IN if system == "in" else 1)
        for section in part.sections:
            for touch, end in pairwise([*lines_of(plan, section.name, "touch"), None]):
                run = [line for line in plan.sheet.lines if line.feature == section.name and line.motion == "turn"]
                assert all(float(line.values["left-to-go"]) >= 0 for line in run), seed
                del touch, end
            turned = lines_of(plan, section.name, "turn")
            if turned:
                sizes = [float(line.values["diameter"]) for line in turned]
                assert sizes == sorted(sizes, reverse=True), seed
                assert float(turned[-1].values["left-to-go"]) == 0, seed
                name = "compound" if "compound-reading" in turned[-1].values else "cross"
                assert float(turned[-1].values[f"{name}-reading"]) == 0, seed
            for line in turned:
                if "cross-reading" in line.values:
                    assert 0 <= float(line.values["cross-reading"]) < per_turn
        numbers = [line.number for line in plan.sheet.lines]
        assert len(set(numbers)) == len(numbers)


def test_every_line_is_whole_and_every_motion_used_is_known():
    used = {line.motion for _, _, _, plan in plans(12) for line in plan.sheet.lines}
    assert used <= set(MOTIONS)
    assert {"hold", "saw", "mount", "touch-face", "face", "centre", "touch", "turn", "measure", "chamfer"} <= used
    with pytest.raises(HandwheelError, match="is empty"):
        Line("A1", "mount", "", "", {"tool": " "})
    with pytest.raises(HandwheelError, match="is no motion"):
        Line("A1", "dance", "", "", {})
    with pytest.raises(HandwheelError, match="no place here"):
        Line("A1", "mount", "", "", {"tool": "x", "speed": "1"})


def test_a_sheet_has_no_float_tail(demo, second):
    for road in (demo, second):
        for line in road.plan.sheet.lines:
            for text in line.values.values():
                assert not re.search(r"\.\d{6,}|e-\d", text), (line.number, text)


def test_fine_feed_needs_no_swivel_where_the_dial_is_fine_enough(demo):
    collar = next(section for section in demo.part.sections if section.name == "collar")
    assert fine_feed([collar], demo.shop.lathe) == (None, [])


def shaft(demo, sections, units="in", overall=None):
    """The demo's part with other sections: (start, end, diameter as typed)."""
    features = [
        {"kind": "cylinder", "name": f"s{number}", "from": start, "to": end, "diameter": diameter}
        for number, (start, end, diameter) in enumerate(sections, 1)
    ]
    holes = [each for each in demo.part.entry.features if each["kind"] == "centre hole"]
    holes = [
        {key: f"{text} in" if key in ("body", "point", "mouth") else text for key, text in each.items()}
        for each in holes
    ]
    entry = attrs.evolve(
        demo.part.entry, units=units, overall=overall or sections[-1][1], length_tolerance="±.010" if units == "in" else "±0.3",
        features=[*features, *holes],
    )  # fmt: skip
    part, faults = read_part(entry)
    assert not faults
    return part


ODD = {
    "one section": [("0", "4", "1.5 ±.005")],
    "the whole bar": [("0", "4", "1.850 ±.005")],
    "two of one size": [("0", "4", "1.5 ±.005"), ("4", "6", "1.5 ±.005")],
    "a thou apart": [("0", "4", "1.5 ±.005"), ("4", "6", "1.499 ±.005")],
    "a tenth apart": [("0", "4", "1.5000 ±.0003"), ("4", "6", "1.4999 ±.0003")],
    "less than a division apart, and tight": [("0", "4", "1.5000 ±.005"), ("4", "6", "1.4985 ±.0003")],
    "greatest at the far end": [("0", "1", "1.2 ±.0005"), ("1", "6", "1.5 ±.0003")],
    "thin end": [("0", "4", "1.5 ±.005"), ("4", "6", ".4 ±.005")],
}


@pytest.mark.parametrize("name", ODD)
def test_odd_shafts_are_planned_right(demo, name):
    part = shaft(demo, ODD[name])
    plan, faults = plan_turning(part, demo.shop, choose_bar(part, demo.shop))
    assert not faults
    report = dry_run(plan.sheet, demo.shop, sampled_limits(part), part.centre_holes)
    assert report.ok, report.text()


def test_a_metric_part_on_an_inch_lathe(demo):
    part = shaft(demo, [("0", "100", "40 ±0.1"), ("100", "150", "30 ±0.01")], units="mm")
    plan, faults = plan_turning(part, demo.shop, choose_bar(part, demo.shop))
    assert not faults
    report = dry_run(plan.sheet, demo.shop, sampled_limits(part), part.centre_holes)
    assert report.ok, report.text()
    assert any(line.values.get("cross-set", "").startswith(".") for line in plan.sheet.lines)  # the dial's own inches


@pytest.mark.parametrize(
    ("sections", "why"),
    [
        ([("0", "4", "1.5 ±.005"), ("4", "4.010", "1.2 ±.005")], "too short to be turned up to a shoulder"),
        ([("0", ".3", "1.5 ±.005")], "no section is long enough for the jaws"),
    ],
)
def test_what_cannot_be_turned_is_said(demo, sections, why):
    part = shaft(demo, sections)
    plan, faults = plan_turning(part, demo.shop, choose_bar(part, demo.shop))
    assert plan is None
    assert why in faults[0].sentence()


def test_an_end_without_a_centre_hole_is_said(demo):
    entry = attrs.evolve(
        demo.part.entry, features=[each for each in demo.part.entry.features if each["name"] != "nose centre"]
    )
    part, _ = read_part(entry)
    assert "add a centre hole there" in plan_turning(part, demo.shop, demo.choice)[1][0].sentence()
