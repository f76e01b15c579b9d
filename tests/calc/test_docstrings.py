"""Every public function of the calculations says what its arguments are, in which unit, with an example that runs."""

from __future__ import annotations

import importlib
import inspect
import pkgutil
import re

import pytest

import handwheel.calc

UNIT = re.compile(
    r"\bmm\b|µm|°|degrees|m/min|rev|MPa|\bkW\b|\bN\b|kg|minutes|plain|a word without a unit|'travel'|'axis'|spreads"
)
"""A unit of the kit, or words that say there is none."""


def public_functions():
    for module in pkgutil.iter_modules(handwheel.calc.__path__):
        room = importlib.import_module(f"handwheel.calc.{module.name}")
        for name, function in vars(room).items():
            if inspect.isfunction(function) and function.__module__ == room.__name__ and not name.startswith("_"):
                yield pytest.param(function, id=f"{module.name}.{name}")


@pytest.mark.parametrize("function", list(public_functions()))
def test_a_docstring_names_every_argument_with_its_unit_and_has_an_example(function):
    text = inspect.getdoc(function)
    for argument in inspect.signature(function).parameters:
        said = re.search(rf"^    {argument}: (.+(?:\n {{6,}}.+)*)", text, re.MULTILINE)
        assert said, argument
        assert UNIT.search(said[1]), said[0]
    assert ">>> " in text


@pytest.mark.parametrize("function", list(public_functions()))
def test_every_argument_has_a_kind_or_a_plain_word(function):
    hints = inspect.get_annotations(function, eval_str=True)
    assert set(hints) == {*inspect.signature(function).parameters, "return"}
