"""The plan's dial numbers beside pencil and paper: the sum stands above each number."""

from __future__ import annotations

import pytest
from plan_help import dial, lines_of

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
    # .0235 is left for two last cuts of .010 and more, so that they halve on the dial: 1.498 + .024
    assert [each.values["diameter"] for each in passes[:4]] == ["1.6980", "1.6240", "1.5720", "1.5220"]
    assert dial(passes[1]) == (1, ".037")
    # half of it: 36 divisions, .064 + .036 = .100: one turn and .000
    assert dial(passes[0]) == (1, ".000")
    assert passes[1].values["left-to-go"] == ".1260"  # 1.6240 - 1.4980


def test_pencil_seal_journal_last_cuts(demo):
    """From Ø1.522, .0235 over the middle: six divisions (.012) come off, and .0115 is left for the compound.

    At 5.74° one compound division is 2 × .001 × sin 5.74° = .00020003: .0115 is 57.5 of them, 57 nearest on the dial
    (57.49), so zero is Ø1.510 - .0114 = 1.4986 and the ring is set at .100 - .057 = .043.
    """
    *_, semi, last = lines_of(demo.plan, "seal journal", "turn")
    assert (semi.values["diameter"], dial(semi)) == ("1.5100", (0, ".094"))  # set .100 - .012 = .088, .006 in
    measure = lines_of(demo.plan, "seal journal", "measure")[0]
    assert (measure.values["compound-set"], measure.values["zero-pass"]) == (".043", "1")
    assert (last.values["diameter"], dial(last, "compound")) == ("1.4986", (1, ".000"))
    # 6.781 - 1/16 = 6.7185 for the edge; it has walked .057 × cos 5.74° = .0567, so the carriage stands at 6.6618:
    # 8 turns of .750 are 6.000, .660 and .002 more
    carriage = [last.values[f"carriage-{name}"] for name in ("turns", "reading", "more")]
    assert carriage == ["8", ".660", "+.002"]


def test_pencil_third_zero_of_the_bearing_seat(demo):
    """From the bar's 1.874 to 1.3783 is .4957: 248 divisions of .002 (.496); three turns less .052, zero Ø1.3780.

    The first pass takes .108: .052 + .054 = .106, one turn and .006.
    """
    touch = lines_of(demo.plan, "bearing seat", "touch")[0]
    assert (touch.values["cross-set"], touch.values["zero-pass"]) == (".052", "3")
    assert touch.values["zero-diameter"] == "1.3780"
    first = lines_of(demo.plan, "bearing seat", "turn")[0]
    assert (first.values["diameter"], dial(first)) == ("1.7660", (1, ".006"))


def test_pencil_first_zero_of_the_collar(demo):
    """From the bar's 1.874 to 1.750 is .124: 62 divisions, set at .100 - .062 = .038; 52 of them first: .090."""
    touch = lines_of(demo.plan, "collar", "touch")[0]
    assert (touch.values["cross-set"], touch.values["zero-pass"]) == (".038", "1")
    first = lines_of(demo.plan, "collar", "turn")[0]
    assert (first.values["diameter"], dial(first)) == ("1.7700", (0, ".090"))
    # it ends 1.5 mm (.059) past the collar: 10.594 - 3.313 + .059 = 7.340; 9 turns are 6.750, and .590
    assert (first.values["carriage-turns"], first.values["carriage-reading"]) == ("9", ".590")


def test_pencil_spindle_speeds_follow_the_diameter(demo):
    """75 m/min is 246 ft/min: 3.82 × 246 / 1.874 = 502, so 360 of the list; on 1.198, 784: 820 is within 5 %.

    Between, on 1.440, 652 gives 540. The seat's passes of .054 a side keep 360, for at 540 they would take more than
    the motor has: 12 × 540 × .2618 × 1.766 × .010 × .054 = 1.62 in³/min, at 1 hp each 1.6 hp (Machinery's Handbook
    31st ed. p.1147 Table 1b, Kp = 1.00), and the kit's own law counts a little more.
    """
    speeds = [line.values["speed"] for line in lines_of(demo.plan, "hub taper", "turn")]
    assert speeds[:3] == ["540 rev/min", "820 rev/min", "820 rev/min"]
    speeds = [line.values["speed"] for line in lines_of(demo.plan, "bearing seat", "turn")]
    assert speeds == [*["360 rev/min"] * 4, *["540 rev/min"] * 3]


def test_pencil_a_centre_drill_is_high_speed_steel(second):
    """18 m/min at the mouth of 6.7 mm: 18000 / (3.1416 × 6.7) = 855 rev/min, so 800 of the list, not 1250."""
    drilled = lines_of(second.plan, "thread centre", "centre")[0]
    assert drilled.values["speed"] == "800 rev/min"


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
    """Packing journal: from Ø32.52 to 27.974 is 4.546 on a dial that reads diameter: 227 divisions of .02, 4.54.

    One turn is 4.00: set at 4.00 - .54 = 3.46, and the second zero is Ø32.52 - 4.54 = 27.98.
    """
    touch = lines_of(second.plan, "packing journal", "touch")[0]
    assert (touch.values["touch-diameter"], touch.values["zero-diameter"]) == ("32.520", "27.980")
    assert (touch.values["cross-set"], touch.values["zero-pass"]) == ("3.46", "2")
