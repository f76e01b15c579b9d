"""Whatever sizes are given, a working shows the sum that gives its result, in numbers that read back."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel.numbers import units
from handwheel.numbers.reading import read
from handwheel.worked import forms
from handwheel.worked.expression import evaluate
from handwheel.worked.result import shown_system, shown_unit


def sizes(low, high):
    """Sizes as people type them, with no more than nine places."""
    return st.floats(low, high).map(lambda x: round(x, 9))


GIVEN = {
    "dial-cut": st.fixed_dictionaries(
        {"reduce": sizes(0, 4), "reads": st.sampled_from(["travel", "diameter"])},
        optional={"true_lead": sizes(0.9, 1.1), "start": sizes(0, 0.09)},
    ).map(lambda typed: {**typed, "division": 0.001, "per_turn": 0.1}),
    "fine-feed-angle": st.fixed_dictionaries({"per_division": st.just(0.001), "advance": sizes(1e-5, 1e-3)}),
    "size-at-20": st.fixed_dictionaries(
        {"reading": sizes(0.1, 40), "part_temperature": sizes(-20, 120), "expansion": sizes(1e-6, 3e-5)},
        optional={"instrument_temperature": sizes(-20, 120), "instrument_expansion": sizes(0, 3e-5)},
    ),
    "spindle-speed": st.fixed_dictionaries({"cutting_speed": sizes(5, 1000), "diameter": sizes(0.1, 40)}),
    "surface-finish": st.fixed_dictionaries({"feed": sizes(0.001, 0.02), "nose_radius": sizes(0.0156, 0.125)}),
    "turning-power": st.fixed_dictionaries(
        {"kc11": sizes(500, 4000), "mc": sizes(0, 0.4), "depth": sizes(0.005, 0.2), "feed": sizes(0.001, 0.03),
         "cutting_speed": sizes(10, 900)},
        optional={"approach_angle": sizes(20, 110)},
    ),
    "bar-stock": st.fixed_dictionaries(
        {"diameter": sizes(0.1, 12), "length": sizes(0.1, 240), "density": sizes(0.05, 0.7)}
    ),
    "taper": st.one_of(
        st.fixed_dictionaries({"large": sizes(1, 10), "small": sizes(0, 0.99), "length": sizes(0.1, 40)}),
        st.fixed_dictionaries({"taper_per_foot": sizes(0.01, 12)}),
        st.fixed_dictionaries({"ratio": sizes(0.001, 2)}),
        st.fixed_dictionaries({"half_angle": sizes(0.01, 89)}),
    ),
}  # fmt: skip


@pytest.mark.property
@pytest.mark.parametrize("system", ["in", "mm"])
@pytest.mark.parametrize("name", list(GIVEN))
@given(data=st.data())
def test_the_shown_formula_gives_the_functions_own_result(name, system, data):
    # Given in inches, so that the sizes are a shop's; asked in either system, so that both forms are tried.
    form = forms.form(name)
    typed = {
        key: value if isinstance(value, str) else f"{value:.9f} {_inch_unit(form, key)}".strip()
        for key, value in data.draw(GIVEN[name]).items()
    }
    answer = form.answer(system, **typed)
    working = answer.worked()
    assert working.system == system
    for step in working.steps:
        numbers = {symbol: _shown(value, kind, system) for symbol, (value, kind) in step.values.items()}
        expected = _shown(step.value, step.kind, system)
        # A difference of near sizes keeps the places of the sizes, not of the difference.
        scale = max(1.0, *(abs(number) for number in numbers.values()))
        assert evaluate(step.formula_in(system), numbers) == pytest.approx(expected, rel=1e-9, abs=1e-12 * scale), step
        for symbol, printed in working.shown(step).items():
            kind = step.values[symbol][1]
            again = _read(kind, printed, system)
            assert again == pytest.approx(numbers[symbol], rel=1e-5, abs=5.001e-7), (
                symbol,
                printed,
            )  # half of the sixth place
        again = _read(step.kind, working.result(step), system)
        assert again == pytest.approx(expected, rel=1e-4, abs=5.1e-4), step  # three places or more


def _inch_unit(form, key):
    kind = next(field.kind for field in form.fields if field.python_name == key)
    unit = units.bare_unit(kind.name, "in")
    return "" if unit == "1" or kind.name in ("temperature", "angle", "specific_force", "expansion") else unit


def _shown(value, kind, system):
    unit = shown_unit(kind, system)
    return value if unit == "1" else units.from_inside(value, unit, kind)


def _read(kind, printed, system):
    read_as = "number" if kind == "count" else kind
    return _shown(read(read_as, printed, shown_system(kind, system)).value, kind, system)
