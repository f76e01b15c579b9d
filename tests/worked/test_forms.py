"""The edge: text, quantities or bare numbers in; an answer in the asked units, or one sentence."""

from __future__ import annotations

import json
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

import handwheel
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.units import registry as pint_registry
from handwheel.worked import forms


def test_text_number_and_quantity_mean_the_same():
    inch = pint_registry().inch
    by_text = handwheel.taper(large="1-1/16 in", small=".828125", length="47.625 mm")
    by_number = handwheel.taper(large=1.0625, small=0.828125, length=1.875)
    by_quantity = handwheel.taper(large=1.0625 * inch, small=0.828125 * inch, length=1.875 * inch)
    assert by_text.half_angle == pytest.approx(by_number.half_angle) == pytest.approx(by_quantity.half_angle)


def test_the_json_form():
    answer = handwheel.turning_power(kc11=1700, mc=0.25, depth=2, feed=0.2, cutting_speed=80, units="mm").json()
    assert list(answer) == ["name", "inputs", "results", "sources", "cautions"]
    assert answer["results"]["power"] == {"value": pytest.approx(1.35578, abs=1e-5), "unit": "kW"}
    assert answer["results"]["force"]["unit"] == "N"
    assert answer["inputs"]["mc"] == {"value": 0.25, "unit": "1"}
    taper = handwheel.taper(ratio="1:8", units="mm").json()["results"]
    assert taper["taper-per-foot"] == {"value": pytest.approx(1.5), "unit": "in/ft"}
    assert taper["ratio"] == "1:8"
    cut = handwheel.dial_cut(reduce=5, division=0.02, per_turn=4, reads="diameter", units="mm").json()["results"]
    assert cut["divisions"] == 250
    assert cut["travel"] == {"value": 2.5, "unit": "mm"}
    json.dumps([answer, taper, cut], allow_nan=False)


REFUSALS = [
    ("taper", {"large": "1"}, "small, length are missing"),
    ("taper", {"large": "1", "small": ".5", "length": "2", "ratio": "1:8"}, "ratio is one too many"),
    ("taper", {"large": ".5", "small": "1", "length": "2"}, "the larger diameter"),
    ("taper", {"half-angle": "90"}, "between 0 and 90"),
    ("taper", {"lrage": "1"}, "do you mean large"),
    ("taper", {}, "missing"),
    ("dial-cut", {"reduce": "-.1", "division": ".001", "per-turn": ".1", "reads": "travel"}, "0 or more"),
    ("dial-cut", {"reduce": ".1", "division": ".003", "per-turn": ".1", "reads": "travel"}, "whole number of divisions"),
    ("dial-cut", {"reduce": ".1", "division": ".001", "per-turn": ".1", "reads": "radius"}, "travel, diameter"),
    ("dial-cut", {"reduce": ".1", "division": ".001", "per-turn": ".1", "reads": "travel", "start": ".2"}, "within|between 0"),
    ("spindle-speed", {"cutting-speed": "0", "diameter": "1"}, "more than 0"),
    ("spindle-speed", {"cutting-speed": "90", "diameter": "1", "speeds": "45,,70"}, "one value between"),
    ("size-at-20", {"reading": "1", "part-temperature": "4000", "expansion": "1e-5"}, "no temperature"),
    ("size-at-20", {"reading": "1", "part-temperature": "20", "expansion": "1"}, "100e-6"),
    ("bar-stock", {"diameter": "1", "length": "12", "material": "cheese"}, "it has"),
    ("bar-stock", {"diameter": "1", "length": "12", "material": "1018", "density": ".284"}, "one too many"),
    ("fine-feed-angle", {"per-division": ".001", "advance": ".002"}, "no more than"),
    ("surface-finish", {"feed": ".1", "nose-radius": "1/64"}, "twice the nose radius"),
]  # fmt: skip


@pytest.mark.parametrize(("name", "typed", "why"), REFUSALS)
def test_nonsense_is_refused_in_one_sentence(name, typed, why):
    with pytest.raises(HandwheelError, match=why) as refused:
        forms.form(name).answer(**{key.replace("-", "_"): text for key, text in typed.items()})
    assert "\n" not in str(refused.value)


def test_numbers_that_are_none_are_refused():
    for bad in (math.nan, math.inf, True, [1], object()):
        with pytest.raises(HandwheelError):
            handwheel.taper(half_angle=bad)
    with pytest.raises(HandwheelError, match="no system"):
        handwheel.taper(ratio="1:8", units="cubits")
    with pytest.raises(HandwheelError, match="do you mean taper"):
        forms.form("tapr")


@pytest.mark.property
@given(st.data())
def test_no_typed_input_breaks_a_form(data):
    name = data.draw(st.sampled_from(sorted(forms.registry())))
    form = forms.form(name)
    text = st.one_of(
        st.text(max_size=12), st.sampled_from(["1", "0", "-1", "1e30", ".001", "travel", "1:8", "1018", "90"])
    )
    typed = {field.python_name: data.draw(text) for field in form.fields if data.draw(st.booleans())}
    try:
        answer = form.answer(data.draw(st.sampled_from(["in", "mm"])), **typed)
    except HandwheelError as refused:
        assert str(refused)
        return
    json.dumps(answer.json(), allow_nan=False)
    answer.text()
    answer.worked().text()
