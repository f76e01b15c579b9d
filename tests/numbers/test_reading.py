"""What people type is read exactly, or refused in one sentence; never another number."""

from __future__ import annotations

import re
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel.numbers import reading
from handwheel.numbers.faults import ReadingError
from handwheel.numbers.reading import read, read_limits, read_list, read_thread

RIGHT = [
    ("length", "1-3/8", Fraction(11, 8), "in", "1-3/8 in = 1.375 in"),
    ("length", '1 3/8"', Fraction(11, 8), "in", '1 3/8" = 1.375 in'),
    ("length", "2 5/8 in", Fraction(21, 8), "in", "2 5/8 in = 2.625 in"),
    ("length", "2 5/8 inch", Fraction(21, 8), "in", "2 5/8 inch = 2.625 in"),
    ("length", ".8745", Fraction(8745, 10000), "in", "0.8745 in"),
    ("length", "25 mm", Fraction(25), "mm", "25 mm"),
    ("length", "25,4 mm", Fraction(254, 10), "mm", "25,4 mm = 25.4 mm"),
    ("length", "1⅜", Fraction(11, 8), "in", "1⅜ in = 1.375 in"),
    ("length", "½ in", Fraction(1, 2), "in", "½ in = 0.5 in"),
    ("length", "−.5", Fraction(-1, 2), "in", "−.5 in = -0.5 in"),
    ("ratio", "1:10", Fraction(1, 10), "1", "1:10 = 0.1"),
    ("taper", "1/8 in/ft", Fraction(1, 8), "in/ft", "1/8 in/ft = 0.125 in/ft"),
    ("taper", "1:8", Fraction(1, 8), "1", "1:8 = 0.125"),
    ("cutting_speed", "90 sfm", Fraction(90), "sfm", "90 sfm"),
    ("cutting_speed", "25 m/min", Fraction(25), "m/min", "25 m/min"),
    ("feed", ".004 in/rev", Fraction(4, 1000), "in/rev", "0.004 in/rev"),
    ("stress", "30e6 psi", Fraction(30_000_000), "psi", "30e6 psi = 30000000 psi"),
    ("temperature", "45 C", Fraction(45), "°C", "45 C = 45 °C"),
    ("expansion", "11.7e-6", Fraction(117, 10_000_000), "/°C", "11.7e-6 = 1.17e-05 /°C"),
    ("pitch", "16 tpi", Fraction(16), "tpi", "16 tpi"),
    ("force", "120 N", Fraction(120), "N", "120 N"),
    ("length", "-½", Fraction(-1, 2), "in", "-½ in = -0.5 in"),
    ("length", "25 MM", Fraction(25), "mm", "25 MM = 25 mm"),
    ("length", "1 3⁄8", Fraction(11, 8), "in", "1 3⁄8 in = 1.375 in"),
    ("torque", "20 in-lb", Fraction(20), "lbf·in", "20 in-lb = 20 lbf·in"),
    ("torque", "20 lb·in", Fraction(20), "lbf·in", "20 lb·in = 20 lbf·in"),
    ("time", "1 h 25 min", Fraction(85), "min", "1 h 25 min = 85 min"),
]


@pytest.mark.parametrize(("kind", "text", "exact", "unit", "echo"), RIGHT)
def test_right_text_is_read_exactly_and_echoed(kind, text, exact, unit, echo):
    typed = read(kind, text)
    assert (typed.exact, typed.unit, typed.typed) == (exact, unit, text)
    assert typed.echo() == echo


WRONG = [
    ("length", "25,4", "comma"),
    ("length", "1,25 in", "comma"),
    ("length", "1,234.5 mm", "comma"),
    ("length", "5/8-11", "-11"),
    ("length", "1-9/8", "9/8"),
    ("length", "1 - 3/8", "makes no sense"),
    ("length", "3/0", "zero"),
    ("length", "--1", "no number"),
    ("length", "1.2.3", "makes no sense"),
    ("length", "1e400", "makes no sense"),
    ("length", "nan", "no number"),
    ("length", "inf", "no number"),
    ("length", "1_000", "no unit"),
    ("length", "٣", "no number"),
    ("length", "½½", "no number"),
    ("length", "25 kg", "no unit"),
    ("length", "1½2", "no unit"),
    ("length", "½2", "no number"),
    ("length", "1−3/8", "no unit"),
    ("length", "13⁄8", "lost its space"),
    ("pitch", "-1 mm", "more than 0"),
    ("time", "1 h 60 min", "no unit"),
    ("stress", "350 mPa", "no unit"),
    ("length", "", "nothing is typed"),
    ("length", "9**9**7", "no unit"),
    ("length", "1" * 61, "longer than"),
    ("length", "1.000 -.002", "makes no sense"),
    ("taper", "1:0", "zero"),
    ("pitch", "0 tpi", "more than 0"),
]


@pytest.mark.parametrize(("kind", "text", "why"), WRONG)
def test_wrong_text_gets_one_sentence_with_the_field_the_reason_and_what_would_be_right(kind, text, why):
    with pytest.raises(ReadingError) as refused:
        read(kind, text, name="diameter")
    sentence = str(refused.value)
    assert sentence.startswith("diameter: ")
    assert why in sentence
    assert "; type " in sentence
    assert "\n" not in sentence


LIMITS = [
    ("1.000 +.000 -.002", "in", "1.000", "0.998"),
    ("1.250 ±.003", "in", "1.253", "1.247"),
    ("1.250 +/- .003", "in", "1.253", "1.247"),
    ("1.3125/1.3120", "in", "1.3125", "1.3120"),
    (".7485 +.0000/-.0094", "in", "0.7485", "0.7391"),
    ("35 +.018 +.002 mm", "mm", "35.018", "35.002"),
    ("35 mm +.018 +.002", "mm", "35.018", "35.002"),
    ("1 3/8 +.001 -.001", "in", "1.376", "1.374"),
    ("17.6 0 -0.2 mm", "mm", "17.6", "17.4"),
    ("35,0 +0,018 +0,002 mm", "mm", "35.018", "35.002"),
    ("1.000 in +.000 -.002 in", "in", "1.000", "0.998"),
]


@pytest.mark.parametrize(("text", "unit", "high", "low"), LIMITS)
def test_limits(text, unit, high, low):
    limits = read_limits(text)
    assert limits.nominal.unit == unit
    assert limits.nominal.exact + limits.upper == Fraction(high)
    assert limits.nominal.exact + limits.lower == Fraction(low)


@pytest.mark.parametrize(
    "text", ["10.594", "1.25 -.001 +.001", "1.000 -.002", "1.0 +.1", "3 1/2", ".001 -.002 -.003", "12.5/3.7", "1.0/0.0"]
)
def test_a_size_without_its_two_limits_is_refused(text):
    with pytest.raises(ReadingError, match="can't be read as limits"):
        read_limits(text)


def test_a_bare_size_takes_the_default_limits():
    limits = read_limits("10.594", default="±.010")
    assert limits.nominal.exact + limits.lower == Fraction("10.584")


@pytest.mark.parametrize(
    ("size", "system", "default", "high"),
    [("25 mm", "in", "±.010", "25.254"), ("1 in", "mm", "±0.254", "1.01"), ("1", "in", "±0.254 mm", "1.01")],
)
def test_usual_limits_keep_the_drawings_unit_whatever_unit_the_size_has(size, system, default, high):
    # the international inch is 25.4 mm exactly (from memory: the yard and pound agreement of 1959)
    limits = read_limits(size, system, default)
    assert limits.nominal.exact + limits.upper == Fraction(high)


@pytest.mark.parametrize("text", ["3/4-16 UNF-6g", "M20x1.5-2A"])
def test_a_thread_class_of_the_other_system_is_refused(text):
    with pytest.raises(ReadingError, match="class"):
        read_thread(text)


def test_threads_in_their_other_spellings():
    assert read_thread("1 1/2-6 UNC-2A").diameter.exact == Fraction(3, 2)
    assert read_thread("M20X1,5-6H").pitch.exact == Fraction(3, 2)
    assert read_thread("M20x1.5-6H").thread_class == "6H"


@pytest.mark.parametrize(("text", "system"), [("25,4", "mm"), ("1,25", "in")])
def test_a_bare_list_that_may_be_one_number_is_refused(text, system):
    with pytest.raises(ReadingError, match="decimal sign"):
        read_list("length", text, system)
    assert len(read_list("length", "1,1.25,1-1/2", "in")) == 3


def test_thread_calls():
    call = read_thread("3/4-16 UNF-2A LH")
    assert (call.diameter.exact, call.pitch.exact, call.pitch.unit) == (Fraction(3, 4), 16, "tpi")
    assert (call.series, call.thread_class, call.left_hand) == ("UNF", "2A", True)
    metric = read_thread("M20×1.5-6g")
    assert (metric.diameter.value, metric.pitch.value, metric.thread_class) == (20.0, 1.5, "6g")
    for wrong in ("3/4", "M20", "3/4x16", "M20-1.5", "1/4-0"):
        with pytest.raises(ReadingError, match="can't be read as a"):
            read_thread(wrong)


def test_a_list_never_splits_a_decimal_comma_silently():
    assert [each.value for each in read_list("spindle_speed", "45, 70,105")] == [45, 70, 105]
    for text in ("25,4 mm, ,30 mm", "25,4 mm, 30 mm", "1,5 mm", ".004,.005 mm/rev", "1, 2 mm", "", "1,,2"):
        with pytest.raises(ReadingError):
            read_list("length" if "rev" not in text else "feed", text)


def test_a_screw_number_is_not_taken_for_inches():
    for wrong in ("10-32 UNF", "12-24 UNC", "8-32"):
        with pytest.raises(ReadingError, match="by its diameter"):
            read_thread(wrong)
    assert read_thread("1-8 UNC").diameter.value == 25.4
    assert read_thread("2-4.5 UNC").pitch.exact == Fraction("4.5")


def test_a_bare_pitch_in_inches_is_not_guessed():
    with pytest.raises(ReadingError, match="threads to the inch or a length"):
        read("pitch", "16")
    assert read("pitch", "1.5", "mm").value == 1.5


def test_what_is_not_text_or_no_kind_is_refused_alike():
    for ask in (
        lambda: read("length", None),
        lambda: read("speed", "1"),
        lambda: read_list("length", None),
        lambda: reading.read_count(None),
        lambda: reading.read_choice(None, ("a",)),
    ):
        with pytest.raises(ReadingError):
            ask()


# Any number, in any of the spellings a person uses, with the value known beforehand.

_WHOLE = st.integers(0, 9999)
_SPACE = st.sampled_from(["", " ", "\u00a0"])


@st.composite
def spelled(draw):
    """A spelled length and its exact value, by another way than the reader's."""
    unit = draw(st.sampled_from(["in", "mm", '"', ""]))
    whole = draw(_WHOLE)
    form = draw(st.sampled_from(["whole", "decimal", "fraction", "mixed", "glyph", "comma"]))
    sign, minus = draw(st.sampled_from([("", 1), ("-", -1), ("−", -1)]))
    if form == "whole":
        return f"{sign}{whole}{draw(_SPACE)}{unit}", minus * Fraction(whole)
    if form == "decimal":
        digits = draw(st.text("0123456789", min_size=1, max_size=5))
        lead = draw(st.sampled_from([str(whole), ""]))
        value = Fraction(int(lead or 0)) + Fraction(int(digits), 10 ** len(digits))
        return f"{sign}{lead}.{digits}{draw(_SPACE)}{unit}", minus * value
    if form == "comma":
        digits = draw(st.text("0123456789", min_size=1, max_size=5))
        return f"{sign}{whole},{digits} mm", minus * (whole + Fraction(int(digits), 10 ** len(digits)))
    under = draw(st.sampled_from([2, 4, 8, 16, 32, 64, 3, 10]))
    over = draw(st.integers(1, under - 1))
    if form == "fraction":
        return f"{sign}{over}/{under}{draw(_SPACE)}{unit}", minus * Fraction(over, under)
    if form == "glyph":
        glyph, value = draw(st.sampled_from([("½", Fraction(1, 2)), ("⅜", Fraction(3, 8)), ("¾", Fraction(3, 4))]))
        return f"{sign}{whole}{glyph}{draw(_SPACE)}{unit}", minus * (whole + value)
    joint = draw(st.sampled_from(["-", " "]))
    return f"{sign}{whole}{joint}{over}/{under}{draw(_SPACE)}{unit}", minus * (whole + Fraction(over, under))


@pytest.mark.property
@given(spelled())
def test_any_spelling_of_a_length_gives_its_exact_value(case):
    text, value = case
    assert read("length", text).exact == value


# The other side: whatever is typed, the answer is right by an independent reading, or it is a refusal.

_ODD = st.text("0123456789./-+ ,:×xeE±½⅜−\"'inm%()*_ ", max_size=14)


def independent(text: str) -> Fraction | None:
    """What a careful person would take plain ASCII text for; None where two people might differ."""
    plain = text.replace("−", "-").replace("\u00a0", " ").strip()
    match = re.fullmatch(r'([+-]?)(?:(\d+)[- ])?\s*(\d+)/(\d+)\s*(in|mm|cm|m|ft|"|\'|inch|)', plain, re.ASCII)
    if match and int(match[4]):
        part = Fraction(int(match[3]), int(match[4]))
        return (-1 if match[1] == "-" else 1) * (int(match[2] or 0) + part)
    match = re.fullmatch(r"([+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?)\s*(?:in|mm|cm|m|ft|\"|'|inch|)", plain, re.ASCII)
    return Fraction(match[1]) if match else None


@pytest.mark.property
@given(
    st.one_of(
        _ODD, st.text(max_size=20), spelled().map(lambda case: case[0] + "x"), spelled().map(lambda case: case[0][::-1])
    )
)
def test_whatever_is_typed_is_right_or_refused(text):
    try:
        typed = read("length", text)
    except ReadingError as refused:
        assert "\n" not in str(refused)
        return
    value = independent(text)
    if value is not None:
        assert typed.exact == value
    else:  # only the forms that no plain reading covers: glyphs, thin spaces, the metric comma
        assert re.search(r"[½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚⁄,\u2007\u2009\u202f–‒″”′]|\s{2}", text) or "''" in text, (text, typed)


@pytest.mark.property
@given(st.text(max_size=70), st.sampled_from(sorted(reading.EXAMPLES)))
def test_no_text_of_any_kind_breaks_the_reader(text, kind):
    try:
        typed = read(kind, text, "mm")
    except ReadingError:
        return
    assert typed.value == typed.value  # a number, not NaN
    assert typed.echo()


@pytest.mark.property
@given(st.text("0123456789.+-±/ inm,", max_size=24))
def test_limits_are_ordered_or_refused(text):
    try:
        limits = read_limits(text)
    except ReadingError:
        return
    assert limits.maximum >= limits.minimum > 0
