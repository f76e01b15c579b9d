"""What must hold of the sheet for any shaft, counted again from the printed strings."""

from __future__ import annotations

import re
from decimal import Decimal

import pytest
from plan_help import IN, lines_of, plans

from handwheel.numbers.faults import HandwheelError
from handwheel.plan.lines import MOTIONS, Line


def counted(line, ring, slide, per_turn):
    """What a dial counts from its ring to a line's number, in its own marks."""
    turns, reading = int(line.values[f"{slide}-turns"]), Decimal(line.values[f"{slide}-reading"])
    return turns * per_turn + reading - Decimal(ring.values[f"{slide}-set"])


def off_the_diameter(dial, from_axis=None):
    """What one marked unit takes off the diameter: the sine of the printed angle, for the compound."""
    import math

    across = math.sin(math.radians(float(from_axis.rstrip("°")))) if from_axis else 1.0
    return across * dial.true_lead * (1 if dial.reads == "diameter" else 2)


def marked(dial, size):
    return Decimal(str(round(size / (IN if dial.system == "in" else 1), 6)))


def test_for_any_shaft_each_number_takes_off_what_is_printed_beside_it():
    """From the ring last set, turns and reading are the diameter's way to the printed one; sums don't drift."""
    for seed, _, shop, plan in plans(40):
        dials = {"cross": shop.lathe.cross_slide, "compound": shop.lathe.compound.dial}
        ring, on, angle = {}, {}, None
        for line in plan.sheet.lines:
            where = (seed, line.number)
            angle = line.values.get("from-axis", angle)
            for slide, dial in dials.items():
                per_turn, division = marked(dial, dial.per_turn), marked(dial, dial.division)
                per = off_the_diameter(dial, angle if slide == "compound" else None)
                if f"{slide}-set" in line.values:
                    ring[slide] = line
                    on[slide] = float(line.values.get("touch-diameter") or line.values["diameter"])
                    reading = Decimal(line.values[f"{slide}-set"])
                    assert 0 <= reading < per_turn, where
                    assert reading % division == 0, where
                    to_go = int(line.values["zero-pass"]) * per_turn - reading
                    zero = on[slide] - float(to_go) * per
                    assert float(line.values["zero-diameter"]) == pytest.approx(zero, abs=0.00011), where
                if f"{slide}-reading" in line.values:
                    reading = Decimal(line.values[f"{slide}-reading"])
                    assert 0 <= reading < per_turn, where
                    gone = counted(line, ring[slide], slide, per_turn)
                    assert gone > 0, where
                    assert float(line.values["diameter"]) == pytest.approx(on[slide] - float(gone) * per, abs=0.00011)


def test_for_any_shaft_the_stock_comes_off_in_shrinking_steps_that_end_in_the_middle_of_the_limits():
    for seed, part, shop, plan in plans(40):
        unit = IN if part.units == "in" else 1
        tools = {tool.name: tool for tool in shop.tools}
        for section in part.sections:
            steps, present, tool = [], 0.0, None
            for line in plan.sheet.lines:
                if line.motion == "mount":
                    tool = tools[line.values["tool"]]
                elif line.feature == section.name and line.motion == "touch":
                    if steps:  # what is touched is what the rough cuts left
                        assert float(line.values["touch-diameter"]) <= present + 1e-9, seed
                    present = float(line.values["touch-diameter"])
                elif line.feature == section.name and line.motion == "turn":
                    steps.append(present - float(line.values["diameter"]))
                    present = float(line.values["diameter"])
                    assert 0 < steps[-1] / 2 * unit <= tool.max_depth + 1e-6, (seed, line.number)
            turned = lines_of(plan, section.name, "turn")
            if not turned:
                continue
            assert float(turned[-1].values["left-to-go"]) == 0, seed
            assert float(turned[-1].values["diameter"]) * unit == pytest.approx(
                section.stands_as.middle, abs=section.stands_as.tolerance / 10 + 0.00006 * unit
            ), (seed, section.name)
            if len(steps) > 1 and "Last cut but one" in turned[-2].instruction:
                mark = shop.lathe.cross_slide.division * (1 if shop.lathe.cross_slide.reads == "diameter" else 2)
                assert steps[-1] * unit == pytest.approx(steps[-2] * unit, abs=mark + 1e-6), (seed, section.name)
                assert turned[-1].values["speed"] == turned[-2].values["speed"], seed
                assert turned[-1].values["feed"] == turned[-2].values["feed"], seed


def test_for_any_shaft_what_lies_behind_the_jaws_goes_into_the_spindle():
    for seed, part, shop, plan in plans(60):
        held = plan.holdings[1]
        overall = part.length.nominal.value
        face = held.stick_out - held.facing  # from the finished face worked from
        for section in part.sections:
            out = section.start if held.end == "datum" else overall - section.end
            inner = section.end if held.end == "datum" else overall - section.start
            assert out <= inner
            if inner > face + shop.lathe.chuck_jaw_length + 1e-6:
                assert section.diameter.maximum < shop.lathe.spindle_bore, (seed, section.name)


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


def test_lines_are_numbered_once():
    for seed, _, _, plan in plans(12):
        numbers = [line.number for line in plan.sheet.lines]
        assert len(set(numbers)) == len(numbers), seed
