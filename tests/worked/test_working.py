"""Every working shows a formula that gives the result it prints, in both unit systems."""

from __future__ import annotations

import dataclasses
import inspect
import re

import pytest

from handwheel.numbers import units
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.reading import read
from handwheel.worked import forms
from handwheel.worked.expression import as_html, as_text, evaluate
from handwheel.worked.result import shown_unit

CASES = {
    "bar-stock": [{"diameter": "1.874", "length": "12.089", "material": "4140 PH"}, {"diameter": "35 mm", "length": "575 mm", "density": "7700 kg/m³"}],
    "dial-cut": [
        {"reduce": ".250", "division": ".001", "per-turn": ".100", "reads": "travel", "start": ".037"},
        {"reduce": ".250", "division": ".001", "per-turn": ".250", "reads": "diameter", "start": ".037"},
        {"reduce": "4.97 mm", "division": "0.02 mm", "per-turn": "4 mm", "reads": "diameter", "true-lead": ".984252"},
        {"reduce": "0", "division": ".001", "per-turn": ".125", "reads": "travel", "start": ".124"},
    ],
    "fit-limits": [{"size": "35 mm", "zone": "k6"}, {"size": "1.3125", "zone": "H7"}],
    "bearing-seat": [{"bearing": "6207", "zone": "k6"}],
    "fine-feed-angle": [{"per-division": ".001", "advance": ".0001"}, {"per-division": ".001", "advance": ".00005"}],
    "size-at-20": [
        {"reading": "1.3782 in", "part-temperature": "45 C", "instrument-temperature": "20 C", "material": "4140 PH"},
        {"reading": "50 mm", "part-temperature": "-5", "expansion": "17.3e-6", "instrument-expansion": "11e-6"},
    ],
    "spindle-speed": [{"cutting-speed": "90 sfm", "diameter": "1.5", "speeds": "45, 70, 240"}, {"cutting-speed": "25 m/min", "diameter": "600 mm"}],
    "surface-finish": [{"feed": ".004 in/rev", "nose-radius": "1/64 in"}, {"feed": "0.2 mm/rev", "nose-radius": "0.8 mm"}],
    "taper": [
        {"large": "1.0625", "small": ".828125", "length": "1-7/8"},
        {"taper-per-foot": ".600"},
        {"ratio": "1:10"},
        {"named": "Morse 3"},
        {"half-angle": "30"},
    ],
    "tailstock-setover": [
        {"taper-per-foot": ".600 in/ft", "centres-distance": "12 in"},
        {"large": "25 mm", "small": "21 mm", "length": "40 mm", "centres-distance": "529 mm"},
    ],
    "taper-compound-feed": [{"half-angle": "3.576334", "reduce": ".015 in"}],
    "taper-advance": [{"half-angle": "3.576334", "reduce": ".015 in"}, {"taper-per-foot": ".6 in/ft", "reduce": ".006 in"}],
    "indicator-rise": [
        {"half-angle": "3.576334", "travel": "1 in", "along": "axis"},
        {"half-angle": "3.576334", "travel": "2 in", "along": "cone"},
    ],
    "tailstock-test": [
        {"near-diameter": "1 in", "far-diameter": "1.0012 in", "collar-distance": "9 in", "centres-distance": "12 in"}
    ],
    "turning-power": [{"kc11": "1700", "mc": ".25", "depth": "2 mm", "feed": "0.2 mm/rev", "cutting-speed": "80 m/min", "approach-angle": "45"}],
}  # fmt: skip


def answers():
    for name, cases in CASES.items():
        for number, case in enumerate(cases):
            for system in ("in", "mm"):
                yield pytest.param(name, case, system, id=f"{name}-{number}-{system}")


def answer(name, case, system):
    typed = {key.replace("-", "_"): text for key, text in case.items()}
    return forms.form(name).answer(system, **typed)


def test_every_calculation_has_a_case():
    assert set(CASES) == set(forms.registry())


def in_system(value, kind, system):
    unit = shown_unit(kind, system)
    return value if unit == "1" else units.from_inside(value, unit, kind)


@pytest.mark.parametrize(("name", "case", "system"), list(answers()))
def test_the_shown_formula_gives_the_result(name, case, system):
    working = answer(name, case, system).worked()
    for step in working.steps:
        numbers = {symbol: in_system(value, kind, working.system) for symbol, (value, kind) in step.values.items()}
        expected = in_system(step.value, step.kind, working.system)
        assert evaluate(step.formula_in(working.system), numbers) == pytest.approx(expected, rel=1e-9, abs=1e-12), step


@pytest.mark.parametrize(("name", "case", "system"), list(answers()))
def test_every_printed_number_reads_back_and_gives_the_printed_result(name, case, system):
    """What a person sees is enough to do the sum again, to the places shown."""
    working = answer(name, case, system).worked()
    for step in working.steps:
        shown = working.shown(step)
        numbers = {symbol: float(text) for symbol, text in shown.items()}
        result = float(working.result(step).split()[0])
        again = evaluate(step.formula_in(working.system), numbers)
        assert again == pytest.approx(result, rel=2e-3, abs=2e-5 * max(1.0, *map(abs, numbers.values()))), step


@pytest.mark.parametrize("name", list(CASES))
def test_text_and_html_hold_formula_source_and_caution(name):
    working = answer(name, CASES[name][0], "in").worked()
    text, page = working.text(), working._repr_mimebundle_()["text/html"]
    assert working.sources
    for source in working.sources:
        assert source in text
        assert "Source:" in page
    assert working.steps[0].meaning in text
    assert as_text(working.steps[0].formula_in(working.system)) in text


def test_a_formula_is_a_closed_form():
    for wrong in ("__import__('os')", "a.b", "[1]", "x if y else z", "lambda: 1", "'a'"):
        with pytest.raises(HandwheelError):
            evaluate(wrong, {"x": 1.0, "y": 1.0, "z": 1.0})
    assert as_text("a - (b - c)") == "a − (b − c)"
    assert as_text("(a + b)*c/(2*d)") == "(a + b) × c / (2 × d)"
    assert "&lt;" in as_html("x", {"x": "<b>"})


@pytest.mark.parametrize("name", list(CASES))
def test_each_docstring_names_every_argument_with_its_unit_and_has_an_example(name):
    function = forms.form(name).calculation.function
    text = inspect.getdoc(function)
    for argument in inspect.signature(function).parameters:
        line = re.search(rf"^\s*{argument}: (.+(?:\n\s{{6,}}.+)*)", text, re.MULTILINE)
        assert line, argument
        assert re.search(
            r"mm|°|degrees|m/min|rev|MPa|kg|1/°C|plain number|'travel'|'axis'|a word without a unit", line[1]
        ), line[0]
    for part in ("Returns:", "Raises:", ">>>"):
        assert part in text


@pytest.mark.parametrize("name", list(CASES))
def test_every_input_and_result_has_its_words(name):
    calculation = forms.form(name).calculation
    results = answer(name, CASES[name][0], "in")
    for field in forms.form(name).fields:
        assert calculation.meanings[field.python_name]
    for result in results.results:
        assert calculation.meanings[result.replace("-", "_")]


def test_a_result_is_frozen():
    result = answer("taper", {"ratio": "1:8"}, "in").result
    with pytest.raises(dataclasses.FrozenInstanceError):
        result.half_angle = 1


def test_typed_text_is_read_by_its_kind():
    assert read("length", "1.0625").value == pytest.approx(26.9875)
