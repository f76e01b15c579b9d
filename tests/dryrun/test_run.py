"""The virtual lathe on two sheets written with a pencil, and one wrong number at a time."""

from __future__ import annotations

import hand_sheets as hand
import pytest
from attrs import evolve
from hand_shops import INCH_SHOP, METRIC_SHOP

from handwheel.dryrun.run import dry_run
from handwheel.numbers.faults import HandwheelError


def run_inch(sheet):
    return dry_run(sheet, INCH_SHOP, hand.inch_samples(), hand.inch_holes())


def changed(sheet, number, **values):
    lines = tuple(
        evolve(line, values={**line.values, **{name.replace("_", "-"): text for name, text in values.items()}})
        if line.number == number
        else line
        for line in sheet.lines
    )
    assert lines != sheet.lines
    return evolve(sheet, lines=lines)


def without(sheet, number, *fields):
    lines = tuple(
        evolve(line, values={k: v for k, v in line.values.items() if k not in fields})
        if line.number == number
        else line
        for line in sheet.lines
        if fields or line.number != number
    )
    return evolve(sheet, lines=lines)


def first(report):
    assert report.faults, report.text()
    return report.faults[0].line, report.faults[0].what


def test_the_inch_sheet_cuts_its_shaft():
    report = run_inch(hand.inch_sheet())
    assert report.ok, report.text()
    assert {row.feature: row.got for row in report.judged}["journal"].startswith("Ø1.0000")
    assert "33 lines read, no fault, 6 of 6 features within limits" in report.text()


def test_the_metric_sheet_cuts_its_journal_on_dials_that_read_diameter():
    report = dry_run(hand.metric_sheet(), METRIC_SHOP, hand.metric_samples(), [])
    assert report.ok, report.text()


def test_the_report_is_the_same_each_time():
    wrong = changed(hand.inch_sheet(), "A11", cross_reading=".091")
    assert run_inch(wrong).text() == run_inch(wrong).text()


# line changed, fields, line named, a word of the sentence: each by the pencil's arithmetic
WRONG = [
    ("A4", {"carriage_approach": "the headstock side"}, "A4", "backlash"),
    ("A4", {"speed": "250 rev/min"}, "A4", "spindle speed"),
    ("A4", {"feed": ".005 in/rev"}, "A4", "feed"),
    ("A5", {"drill": "No. 9 centre drill"}, "A5", "no centre drill"),
    ("A5", {"mouth": ".300"}, "A5", "mouth"),
    ("A5", {"mouth": ".240"}, "A5", "drilled to a mouth of Ø.2400"),
    ("A7", {"tool": "parting tool"}, "A7", "no tool"),
    ("A7", {"tool": "facing tool"}, "A9", "does not touch"),
    ("A9", {"touch_diameter": "1.5200"}, "A9", "not Ø1.5200"),
    ("A9", {"cross_set": ".050"}, "A9", "zero number 2 is Ø1.2000"),
    ("A9", {"zero_pass": "1"}, "A9", "zero number 1"),
    ("A9", {"cross_set": ".0755"}, "A9", "between two marks"),
    ("A9", {"cross_set": ".175"}, "A9", "no number"),
    ("A9", {"touch_diameter": "1,5"}, "A9", "cannot be read"),
    ("A10", {"cross_approach": "inside"}, "A10", "comes from the inside"),
    ("A10", {"carriage_turns": "4"}, "A10", "carriage stands at 3.3500"),
    ("A10", {"cross_turns": "0"}, "A10", "takes nothing"),
    ("A10", {"cross_turns": "2"}, "A10", "good for"),
    ("A10", {"left_to_go": ".0500"}, "A10", "is left on the diameter"),
    ("A12", {"diameter": "1.2750"}, "A12", "measures Ø1.2700"),
    ("A12", {"limits": "1.245 / 1.235"}, "A12", "outside its limits"),
    ("B1", {"stick_out": ".800"}, "B1", "across a step"),
    ("A1", {"grip_length": "1.100"}, "A1", "jaws are"),
    ("B1", {"grip_diameter": "1.000"}, "B1", "the jaws close"),
    ("B1", {"stick_out": "3.500"}, "B1", "past the end"),
    ("B1", {"end_out": "tail end"}, "B1", "the jaws"),
    ("A14", {"saw_length": "3.950"}, "A14", "too short"),
    ("A14", {"saw_length": "6.000"}, "A14", "cannot be sawn"),
    ("B2", {"scale_reads": "2.87°"}, "B2", "from the axis"),
    ("B2", {"way": "inwards"}, "B2", "which way"),
    ("B5", {"carriage_reading": ".100"}, "B5", "too short"),
    ("B11", {"cross_turns": "2"}, "B11", "good for"),
    ("B15", {"compound_turns": "30"}, "B15", "stroke"),
    ("B18", {"corner_diameter": "1.1000"}, "B18", "corner there"),
    ("B18", {"size": ".062"}, "B18", "goes on by"),
]


@pytest.mark.parametrize("line, fields, named, word", WRONG)
def test_a_wrong_number_is_named(line, fields, named, word):
    where, what = first(run_inch(changed(hand.inch_sheet(), line, **fields)))
    assert (where, word in what) == (named, True), what


def test_a_dial_is_not_believed_before_it_is_set():
    assert first(run_inch(without(hand.inch_sheet(), "B9")))[0] == "B11"
    where, what = first(run_inch(without(hand.inch_sheet(), "A9")))
    assert (where, what) == ("A10", "the cross-slide dial was not set since the tool was changed (line A7)")


def test_coming_from_the_inside_leaves_the_slide_short_by_the_backlash():
    wrong = changed(hand.inch_sheet(), "A13", cross_approach="inside")
    assert any("measures Ø1.2340" in fault.what for fault in run_inch(wrong).faults)  # 1.250 - 2 × .008


def test_a_pass_beyond_a_shoulder_is_found_on_the_bar():
    wrong = changed(hand.inch_sheet(), "B13", position="1.6000", carriage_turns="2", carriage_reading=".100")
    where, what = first(run_inch(wrong))
    assert (where, "body is too small" in what) == ("B13", True)


def test_a_forgotten_centre_is_noticed():
    long_bar = changed(evolve(hand.inch_sheet(), blank_length="9.620"), "A1", stick_out="8.500")
    assert run_inch(long_bar).ok
    where, what = first(run_inch(without(long_bar, "A6")))
    assert (where, "no centre in its end" in what) == ("A10", True)
    where, what = first(run_inch(without(hand.inch_sheet(), "A5")))
    assert (where, "no centre hole" in what) == ("A6", True)


def test_a_feature_never_cut_is_named():
    report = run_inch(without(hand.inch_sheet(), "B18"))
    assert any("drive chamfer is too big" in fault.what for fault in report.faults)
    assert not report.ok


def test_a_sheet_for_another_lathe_cannot_be_read():
    with pytest.raises(HandwheelError, match="is for the lathe"):
        dry_run(hand.inch_sheet(), METRIC_SHOP, [], [])
    with pytest.raises(HandwheelError, match="blank"):
        run_inch(evolve(hand.inch_sheet(), blank_diameter="about 1-1/2"))


# fields whose text is free: what they say is for a person
FREE = {("hold", "grip-on"), ("leave", "size")}


@pytest.mark.parametrize("junk", ["?", "1,25", "nan", "1e999", "-", "12 bananas"])
def test_nonsense_in_any_field_is_a_fault_of_its_line(junk):
    sheet = hand.inch_sheet()
    for line in sheet.lines:
        for name in line.values:
            if (line.motion, name) in FREE:
                continue
            report = run_inch(changed(sheet, line.number, **{name: junk}))
            assert first(report)[0] == line.number, (line.number, name, report.faults[0])


def test_work_too_thick_for_the_spindle_behind_the_jaws_is_found():
    """The inch shaft's body is Ø1.250 behind the jaws of the second holding: a spindle bored 1.000 does not take it."""
    shop = evolve(INCH_SHOP, lathe=evolve(INCH_SHOP.lathe, spindle_bore=25.4))
    sheet = hand.inch_sheet()
    lines = [
        evolve(line, values={**line.values, "stick-out": "2.000"}) if line.number == "B1" else line
        for line in sheet.lines
    ]
    report = dry_run(evolve(sheet, lines=tuple(lines)), shop, hand.inch_samples(), hand.inch_holes())
    assert any("must go into a spindle bored 1.0000" in fault.what for fault in report.faults)
