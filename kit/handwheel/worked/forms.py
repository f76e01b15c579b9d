"""Forms: a calculation as a person meets it, read off its signature and its `given` sets.

The command line, the panels and the reference page draw from the same fields, and refuse with the same
sentences. Text, a pint Quantity or a bare number may be given for any field.
"""

from __future__ import annotations

import difflib
import importlib
import inspect
import math
import pkgutil
import typing
from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from numbers import Real
from typing import Any

from handwheel.numbers import reading, units
from handwheel.numbers.faults import HandwheelError, ReadingError
from handwheel.worked.answer import Answer
from handwheel.worked.result import CALCULATIONS, Calculation, Figure, Kind, kind_of, result_kinds

ROOM = "handwheel.calc"
"""Where the calculations are: each module of this package registers its own when the forms are first asked for."""


@dataclass(frozen=True, slots=True)
class Field:
    """One field of a form: its name as typed, its Python name, kind, words, and whether it may stay empty."""

    name: str
    python_name: str
    kind: Kind
    meaning: str
    default: Any
    optional: bool

    def echo(self, value: object, system: str) -> str:
        """Return how a typed value is read, or nothing where it is a word, a list or not readable."""
        words = self.kind.choices or self.kind.name in ("text", "spindle_speeds")
        if words or not isinstance(value, str) or not value.strip():
            return ""
        try:
            return f"{self.name}: {reading.read(self.kind.name, value, system).echo()}"
        except HandwheelError:
            return ""


@dataclass(frozen=True)
class Form:
    """A calculation's form."""

    calculation: Calculation
    fields: tuple[Field, ...]

    @property
    def name(self) -> str:
        """The calculation's name."""
        return self.calculation.name

    @property
    def title(self) -> str:
        """The calculation's title."""
        return self.calculation.title

    def usage(self) -> str:
        """Return the sufficient sets of inputs in words: `large + small + length, or ratio`."""
        return ", or ".join(" + ".join(map(_hyphened, one)) for one in self.calculation.given)

    def answer(self, units: str = "in", **typed: object) -> Answer:
        """Return the answer for typed inputs, bare numbers read in `units`.

        Raises:
            HandwheelError: an input is missing, unknown, too many or makes no sense; one sentence says which.
        """
        if units not in ("in", "mm"):
            raise HandwheelError(f"units: {units!r} is no system; it can be in or mm")
        by_name = {field.python_name: field for field in self.fields}
        given = {key.replace("-", "_"): value for key, value in typed.items() if not _empty(value)}
        for key in given:
            if key not in by_name:
                near = difflib.get_close_matches(key, by_name, 1)
                names = ", ".join(field.name for field in self.fields)
                hint = f"do you mean {by_name[near[0]].name}" if near else f"it takes {names}"
                raise HandwheelError(f"{self.name}: there is no input {key.replace('_', '-')!r}; {hint}")
        plain = {key: _plain(by_name[key], value, units) for key, value in given.items()}
        shown = {by_name[key].name: value for key, value in plain.items()}
        self._check_given(plain)
        figures = self._look_up(plain)
        try:
            result = self.calculation.function(**plain)
        except (OverflowError, ZeroDivisionError) as fault:
            raise HandwheelError(f"{self.name}: these numbers are beyond any shop; check their units") from fault
        echoes = tuple(echo for key, value in given.items() if (echo := by_name[key].echo(value, units)))
        kinds = {field.name: field.kind for field in self.fields}
        return Answer(self.calculation, result, shown, kinds, figures, echoes, units)

    def results(self) -> dict[str, tuple[Kind, str]]:
        """Return each result's kind and words by its name."""
        result = typing.get_type_hints(self.calculation.function)["return"]
        words = self.calculation.meanings
        return {_hyphened(name): (kind, words[name]) for name, kind in result_kinds(result).items()}

    def _look_up(self, plain: dict[str, Any]) -> tuple[Figure, ...]:
        """Put the table's figure in the place of each word given for it; return the figures."""
        figures = []
        for each in self.calculation.look_ups:
            if each.name in plain:
                figures.append(each.find(plain.pop(each.name)))
                plain[each.fills] = figures[-1].value
        return tuple(figures)

    def _check_given(self, plain: Mapping[str, Any]) -> None:
        sets = self.calculation.given
        in_sets = {name for one in sets for name in one}
        there = in_sets & plain.keys()
        for one in sets:
            if there == set(one):
                return
        enough = [one for one in sets if there > set(one)]
        if enough:
            extra = sorted(there - set(enough[0]))
            words = ", ".join(_hyphened(name) for name in extra)
            raise HandwheelError(f"{self.name}: {words} is one too many; give {self.usage()}")
        closest = max(sets, key=lambda one: len(there & set(one)))
        missing = [_hyphened(name) for name in closest if name not in there]
        verb = "is" if len(missing) == 1 else "are"
        raise HandwheelError(f"{self.name}: {', '.join(missing)} {verb} missing; give {self.usage()}")


@cache
def registry() -> Mapping[str, Form]:
    """Return every calculation's form by its name.

    >>> registry()["dial-cut"].usage()
    'reduce + division + per-turn + reads'
    """
    for module in pkgutil.iter_modules(importlib.import_module(ROOM).__path__):
        importlib.import_module(f"{ROOM}.{module.name}")
    return {name: Form(each, _fields(each)) for name, each in sorted(CALCULATIONS.items())}


def form(name: str) -> Form:
    """Return a calculation's form.

    Raises:
        HandwheelError: there is no such calculation; the sentence names the nearest.
    """
    forms = registry()
    if name in forms:
        return forms[name]
    near = difflib.get_close_matches(name, forms, 1)
    hint = f"do you mean {near[0]}" if near else f"there are {', '.join(forms)}"
    raise HandwheelError(f"there is no calculation {name!r}; {hint}")


def _fields(calculation: Calculation) -> tuple[Field, ...]:
    hints = typing.get_type_hints(calculation.function, include_extras=True)
    words = {each.fills: each.name for each in calculation.look_ups}

    def field(name: str, kind: Kind, default: Any) -> Field:
        optional = not all(name in one for one in calculation.given)
        return Field(_hyphened(name), name, kind, calculation.meanings[name], default, optional)

    fields = []
    for name, parameter in inspect.signature(calculation.function).parameters.items():
        if name in words:
            fields.append(field(words[name], Kind("text"), None))
        default = None if parameter.default is inspect.Parameter.empty else parameter.default
        fields.append(field(name, kind_of(hints[name]), default))
    return tuple(fields)


def _hyphened(python_name: str) -> str:
    return python_name.replace("_", "-")


def _empty(value: object) -> bool:
    return value is None or (isinstance(value, str) and not value.strip())


def _plain(field: Field, value: object, system: str) -> Any:
    """Return a given value as the plain value its function takes."""
    kind, name = field.kind, field.name
    if kind.choices:
        return reading.read_choice(str(value), kind.choices, name)
    if kind.name == "text":
        return str(value).strip()
    if kind.name == "spindle_speeds":
        if isinstance(value, str):
            return tuple(each.value for each in reading.read_list("spindle_speed", value, system, name))
        if not isinstance(value, list | tuple):
            value = [value]
        one = Field(name, name, Kind("spindle_speed"), field.meaning, None, optional=True)
        return tuple(_plain(one, each, system) for each in value)
    if isinstance(value, str):
        return reading.read(kind.name, value, system, name).value
    if hasattr(value, "magnitude") and hasattr(value, "to_root_units"):
        return _finite(_from_quantity(typing.cast("Any", value), kind, name), name)
    if isinstance(value, bool) or not isinstance(value, Real | Decimal):
        raise ReadingError(f"{name}: {value!r} is no size; give text, a number or a quantity")
    number = _finite(float(value), name)
    unit = units.bare_unit(kind.name, system)
    return number if unit == "1" else units.to_inside(number, unit, kind.name)


def _finite(number: float, name: str) -> float:
    if not math.isfinite(number):
        raise ReadingError(f"{name}: {number} is no size; give a finite number")
    return number


_TURNING = {"feed": "mm/turn", "spindle_speed": "turn/minute"}


def _from_quantity(value: Any, kind: Kind, name: str) -> float:
    """Return a pint Quantity as an inside value.

    A turn, which pint counts as 2π radians of an angle, is one turn to the trade: a feed or a spindle speed that
    says it is per turn, or in turns, is read so.
    """
    try:
        if kind.name in _TURNING and "radian" in str(value.to_root_units().units):
            return float(value.to(_TURNING[kind.name]).magnitude)
        return units.from_quantity(value, kind.name)
    except HandwheelError as fault:
        raise ReadingError(f"{name}: {fault}") from fault
