"""Limits by ISO 286 beside published values, a reference library, and the standard's own examples."""

from __future__ import annotations

import csv
import re
from pathlib import Path

import pressfit
import pytest

from handwheel.calc.fits import bearing_seat, fit_limits
from handwheel.numbers import showing
from handwheel.numbers.faults import HandwheelError
from handwheel.tables import iso286
from handwheel.tables.load import load

pytestmark = pytest.mark.validation

PUBLISHED = list(
    csv.DictReader((Path(__file__).parent / "data" / "iso286_published.csv").read_text(encoding="utf-8").splitlines())
)
BANDS = [(float(row["over"]), float(row["to"])) for row in load("iso286_shafts").rows]


def test_all_published_rows_are_there():
    assert len(PUBLISHED) == 75
    assert all(row["source"] for row in PUBLISHED)


@pytest.mark.parametrize("row", PUBLISHED, ids=lambda row: f"{row['quantity']} {row['inputs']}")
def test_published_values(row):
    """Deviations and grades in µm as published (source in each row), at both ends and inside the band of sizes."""
    over, to = map(float, re.search(r"over (\S+) to (\S+) mm", row["inputs"]).groups())
    for size in (over + 0.001, (over + to) / 2, to):
        if row["quantity"].startswith("IT"):
            assert iso286.grade(size, int(row["quantity"][2:])) == float(row["value"])
            continue
        upper, lower = map(float, row["value"].split("/"))
        found = fit_limits(size, row["inputs"].split()[0])
        assert (found.upper * 1000, found.lower * 1000) == pytest.approx((upper, lower))


# The reference library pressfit 0.1.0 over its whole scope: both ends of every band it covers, every letter and grade.
@pytest.mark.parametrize("letter", [letter for letter in pressfit.SHAFT_LETTERS if letter in iso286.SHAFT_LETTERS])
def test_shafts_beside_the_reference_library(letter):
    compared = 0
    for over, to in BANDS:
        for size in (max(over + 0.01, 0.5), to):
            for grade in pressfit.GRADES:
                try:
                    tolerance = pressfit.it_value(size, grade)
                    base = 0 if letter == "js" else pressfit.shaft_deviation(size, letter, grade)
                except (ValueError, NotImplementedError):
                    continue
                if letter == "js":
                    expected = (tolerance / 2, -tolerance / 2)
                elif letter in "cdefgh":
                    expected = (base, base - tolerance)
                else:
                    expected = (base + tolerance, base)
                found = fit_limits(size, f"{letter}{grade}")
                assert (found.upper * 1000, found.lower * 1000) == pytest.approx(expected), (size, letter, grade)
                compared += 1
    assert compared >= 100


# ISO 286-2, holes with the rule for tight grades, from memory: 18-30 mm P7 -14/-35, N7 -7/-28, K7 +6/-15, M7 0/-21;
# 30-50 mm R7 -25/-50 (40-50), K6 +3/-13, N9 0/-62; 250-315 mm M6 -9/-41.
HOLES = [
    (25, "P7", -14, -35),
    (25, "N7", -7, -28),
    (25, "K7", 6, -15),
    (25, "M7", 0, -21),
    (45, "R7", -25, -50),
    (40, "K6", 3, -13),
    (40, "N9", 0, -62),
    (280, "M6", -9, -41),
    (30, "H7", 21, 0),
    (60, "G7", 40, 10),
    (25, "F8", 53, 20),
    (25, "JS7", 10.5, -10.5),
    (2, "N9", -4, -29),
]


@pytest.mark.parametrize(("size", "zone", "upper", "lower"), HOLES)
def test_holes_with_the_rule_for_tight_grades(size, zone, upper, lower):
    found = fit_limits(size, zone)
    assert (found.upper * 1000, found.lower * 1000) == pytest.approx((upper, lower))


def test_hole_basis_and_shaft_basis_fit_alike():
    """H7/p6 and P7/h6 have the same tightest and loosest fit: what the rule for tight grades is for (ISO 286-1)."""
    for size in (5, 25, 45, 90, 300):
        for letter in "knprs":
            hole, shaft = fit_limits(size, "H7"), fit_limits(size, f"{letter}6")
            other_hole, other_shaft = fit_limits(size, f"{letter.upper()}7"), fit_limits(size, "h6")
            assert shaft.max - hole.min == pytest.approx(other_shaft.max - other_hole.min)
            assert shaft.min - hole.max == pytest.approx(other_shaft.min - other_hole.max)


def test_a_size_on_the_edge_of_two_bands_belongs_to_the_lower():
    assert fit_limits(30, "k6").upper == pytest.approx(0.015)
    assert fit_limits(30.001, "k6").upper == pytest.approx(0.018)


def test_limits_in_inches_are_shown_rounded_inward():
    limits = fit_limits(30, "k6")
    assert showing.value(limits.max, "maximum")[0] == "1.1816"  # 1.181693, never 1.1817
    assert showing.value(limits.min, "minimum")[0] == "1.1812"  # 1.181181, never 1.1811


# Normal-class bores on h6 and j5 over 18 to 30 mm: greatest clearance 13, greatest interference 10 µm for h6; 4 and 15
# for j5 (ISO 492, secondary copy; the check values' own rows).
@pytest.mark.parametrize(("zone", "clearance", "interference"), [("h6", 13, 10), ("j5", 4, 15)])
def test_bearing_fits(zone, clearance, interference):
    seat = bearing_seat("6205", zone)
    assert seat.bore == 25
    assert seat.tightest * 1000 == pytest.approx(interference)
    assert -seat.loosest * 1000 == pytest.approx(clearance)


# ISO 15, series 10, 02, 03: bores by number (check values; 6200, 6300 seen, the others from memory).
@pytest.mark.parametrize(
    ("number", "bore"),
    [
        ("6003", 17),
        ("6007", 35),
        ("6014", 70),
        ("6200", 10),
        ("6201", 12),
        ("6204", 20),
        ("6207-2RS", 35),
        ("6300", 10),
        ("6314", 70),
    ],
)
def test_bores_by_number(number, bore):
    assert bearing_seat(number, "k6").bore == bore


@pytest.mark.parametrize(
    ("size", "zone"),
    [
        (0, "k6"),
        (501, "k6"),
        (35, "k"),
        (35, "q6"),
        (35, "k4"),
        (35, "j7"),
        (35, "J7"),
        (35, "K5"),
        (-1, "h6"),
        (35, ""),
    ],
)
def test_what_the_table_does_not_hold_is_refused(size, zone):
    with pytest.raises(HandwheelError):
        fit_limits(size, zone)


@pytest.mark.parametrize(
    ("bearing", "zone"), [("22207", "k6"), ("6207", "H7"), ("x", "k6"), ("6207", "k"), ("6299", "k6")]
)
def test_what_is_no_bearing_or_no_seat_is_refused(bearing, zone):
    with pytest.raises(HandwheelError):
        bearing_seat(bearing, zone)
