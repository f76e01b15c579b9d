"""A formula is stated once: what is evaluated, what is read as text and what is typeset are the same sum."""

from __future__ import annotations

import io
import math
import re

import pypdf
import pytest
import sympy
import typst
from hypothesis import assume, given
from hypothesis import strategies as st

import handwheel
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.expression import as_html, as_text, as_typst, evaluate, typst_string

VALUES = {"a": 1.7, "b": 0.6, "c": 3.1, "d": 2.3}

formulas = st.recursive(
    st.sampled_from([*VALUES, "2", "12", "0.5", "pi"]),
    lambda inner: st.one_of(
        st.builds(lambda x, sign, y: f"({x}) {sign} ({y})", inner, st.sampled_from("+-*/"), inner),
        st.builds(lambda x, power: f"({x})**{power}", inner, st.sampled_from(["2", "3", "0.5", "(-1)"])),
        st.builds(lambda x: f"-({x})", inner),
        st.builds(lambda f, x: f"{f}({x})", st.sampled_from(["sin", "cos", "atan"]), inner),
    ),
    max_leaves=8,
)


def read_back(text, trigonometry):
    """Do the sum that a person reads: the printed signs and brackets, by another program."""
    plain = text.replace("×", "*").replace("−", "-").replace("^", "**").replace("π", "pi")
    return complex(
        sympy.sympify(plain, locals={**trigonometry, **{name: sympy.Float(x, 30) for name, x in VALUES.items()}}).evalf(
            20
        )
    )


@pytest.mark.property
@given(formulas)
def test_the_printed_text_is_the_same_sum(formula):
    try:
        value = evaluate(formula, VALUES)
    except HandwheelError:
        return  # a root of a negative number, a division by nothing
    assume(1e-6 < abs(value) < 1e9)
    degrees = {
        "sin": lambda x: sympy.sin(x * sympy.pi / 180),
        "cos": lambda x: sympy.cos(x * sympy.pi / 180),
        "atan": lambda x: sympy.atan(x) * 180 / sympy.pi,
    }
    assert read_back(as_text(formula), degrees) == pytest.approx(value, rel=1e-6, abs=1e-9)


def test_brackets_stand_where_the_sum_needs_them():
    assert as_text("a - (b - c)") == "a − (b − c)"
    assert as_text("a - b - c") == "a − b − c"
    assert as_text("a/(b/c)") == "a / (b / c)"
    assert as_text("(a**b)**c") == "(a^b)^c"
    assert as_text("a**(b**c)") == "a^(b^c)"
    assert as_text("(-a)**2") == "(−a)^2"
    assert as_text("a - b", {"b": "-.5"}) == "a − (-.5)"
    assert as_html("(a + b)**2/c") == "(a + b)<sup>2</sup> / c"
    assert as_typst("(a + b)*c/(d - 1)") == "frac((a + b) times c, d − 1)"


@pytest.mark.parametrize(
    "wrong",
    ["__import__('os')", "a.b", "[1]", "a if b else c", "lambda: 1", "'a'", "a @ b", "+a", "exec(a)", "a <", ""],
)
def test_nothing_outside_the_closed_form_is_evaluated_or_shown(wrong):
    for use in (
        lambda: evaluate(wrong, VALUES),
        lambda: as_text(wrong),
        lambda: as_html(wrong),
        lambda: as_typst(wrong),
    ):
        with pytest.raises(HandwheelError):
            use()


@pytest.mark.parametrize("formula", ["(-a)**0.5", "sqrt(-a)", "asin(a)", "a/(b - b)", "c**(c**c**c)"])
def test_what_has_no_value_is_said(formula):
    with pytest.raises(HandwheelError, match="no value"):
        evaluate(formula, VALUES)


def test_angles_are_degrees():
    assert evaluate("sin(30) + tan(45) + asin(1)", {}) == pytest.approx(0.5 + 1 + 90)
    assert evaluate("mod(a, 1)", {"a": 3.25}) == pytest.approx(0.25)
    assert evaluate("mod(.3, .1)", {}) == pytest.approx(0, abs=1e-12)  # three tenths are three whole tenths
    assert evaluate("sqrt(2)", {}) == math.sqrt(2)


def pdf_words(source):
    pages = pypdf.PdfReader(io.BytesIO(typst.compile(source.encode()))).pages
    return re.sub(r"\s+", " ", " ".join(page.extract_text() for page in pages))


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("turning_power", {"kc11": 1700, "mc": 0.25, "depth": 0.08, "feed": 0.008, "cutting_speed": 260}),
        ("dial_cut", {"reduce": 0.25, "division": 0.001, "per_turn": 0.1, "reads": "travel", "start": 0.037}),
        ("taper", {"large": 1.0625, "small": 0.828125, "length": 1.875}),
        ("size_at_20", {"reading": 1.3782, "part_temperature": 45, "material": "4140 PH"}),
        ("surface_finish", {"feed": 0.004, "nose_radius": 0.015625}),
    ],
)
def test_a_working_as_typst_prints_every_number_it_shows(name, typed):
    working = getattr(handwheel, name)(**typed).worked()
    printed = pdf_words(working.typst())
    assert working.title in printed
    for step in working.steps:
        for shown in (*working.shown(step).values(), working.result(step).split()[0]):
            assert shown in printed, shown


def test_words_are_never_markup():
    nasty = '1/2" #import "x" $ \\ *bold*'
    assert nasty.replace(" ", "") in pdf_words(f"#{typst_string(nasty)}").replace(" ", "").replace("“", '"').replace(
        "”", '"'
    )
