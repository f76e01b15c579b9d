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
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

from handwheel.numbers import reading, units
from handwheel.numbers.faults import HandwheelError, ReadingError
from handwheel.worked.answer import Answer
from handwheel.worked.result import CALCULATIONS, Calculation, Kind

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
        shown = {by_name[key].name: plain[key] for key in plain}
        self._check_given(plain)
        try:
            result = self.calculation.function(**plain)
        except (OverflowError, ZeroDivisionError) as fault:
            raise HandwheelError(f"{self.name}: these numbers are beyond any shop; check their units") from fault
        return Answer(self.calculation, result, shown, units)

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


def edge(name: str) -> Callable[..., Answer]:
    """Return a calculation's edge function: text, Quantities or bare numbers in, an Answer out."""
    asked = form(name)

    def ask(units: str = "in", **typed: object) -> Answer:
        return asked.answer(units, **typed)

    ask.__name__ = name.replace("-", "_")
    ask.__doc__ = f"{asked.title}. Give {asked.usage()}."
    return ask


def _fields(calculation: Calculation) -> tuple[Field, ...]:
    hints = typing.get_type_hints(calculation.function, include_extras=True)
    fields = []
    for name, parameter in inspect.signature(calculation.function).parameters.items():
        kind = kind_of(hints[name])
        in_all = all(name in one for one in calculation.given)
        default = None if parameter.default is inspect.Parameter.empty else parameter.default
        fields.append(
            Field(name.replace("_", "-"), name, kind, calculation.meanings[name], default, optional=not in_all)
        )
    return tuple(fields)


def kind_of(hint: Any) -> Kind:
    """Return the Kind in an annotation, optional or not."""
    for each in (hint, *typing.get_args(hint)):
        for note in getattr(each, "__metadata__", ()):
            if isinstance(note, Kind):
                return note
    raise TypeError(f"{hint} says no kind")


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
    if isinstance(value, bool) or not isinstance(value, int | float):
        if hasattr(value, "magnitude") and hasattr(value, "is_compatible_with"):
            try:
                return units.from_quantity(typing.cast("Any", value), kind.name)
            except HandwheelError as fault:
                raise ReadingError(f"{name}: {fault}") from fault
        raise ReadingError(f"{name}: {value!r} is no size; give text, a number or a quantity")
    if not math.isfinite(value):
        raise ReadingError(f"{name}: {value} is no size; give a finite number")
    if kind.name in ("ratio",):
        return float(value)
    return units.to_inside(value, units.bare_unit(kind.name, system), kind.name)
