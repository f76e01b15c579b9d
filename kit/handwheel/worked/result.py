"""A result with its working, and the kinds that say what a calculation's numbers are.

A calculation is a plain-float function with annotated arguments that returns a frozen dataclass. Its
signature and its `given` sets are the only declaration: the form on the command line, in a panel or in an
exercise is read off them.
"""

from __future__ import annotations

import dataclasses
import html
import typing
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Annotated, Any, TypeVar

from handwheel.numbers import showing, units
from handwheel.worked.expression import as_html, as_text, as_typst, typst_string


@dataclass(frozen=True, slots=True)
class Kind:
    """What a number is (`length`, `angle`, ...), or the closed list of words a choice allows."""

    name: str
    choices: tuple[str, ...] = ()


Length = Annotated[float, Kind("length")]
Diameter = Annotated[float, Kind("diameter")]
Maximum = Annotated[float, Kind("maximum")]
Minimum = Annotated[float, Kind("minimum")]
Angle = Annotated[float, Kind("angle")]
CuttingSpeed = Annotated[float, Kind("cutting_speed")]
Feed = Annotated[float, Kind("feed")]
SpindleSpeed = Annotated[float, Kind("spindle_speed")]
SpindleSpeeds = Annotated[tuple[float, ...], Kind("spindle_speeds")]
Temperature = Annotated[float, Kind("temperature")]
Force = Annotated[float, Kind("force")]
Stress = Annotated[float, Kind("stress")]
SpecificForce = Annotated[float, Kind("specific_force")]
Power = Annotated[float, Kind("power")]
Mass = Annotated[float, Kind("mass")]
Density = Annotated[float, Kind("density")]
Expansion = Annotated[float, Kind("expansion")]
Roughness = Annotated[float, Kind("roughness")]
TaperPerFoot = Annotated[float, Kind("taper")]
Ratio = Annotated[float, Kind("ratio")]
Number = Annotated[float, Kind("number")]
Time = Annotated[float, Kind("time")]
Text = Annotated[str, Kind("text")]
Count = Annotated[int, Kind("count")]
Reads = Annotated[str, Kind("choice", ("travel", "diameter"))]
Along = Annotated[str, Kind("choice", ("axis", "cone"))]


def kind_of(hint: Any) -> Kind:
    """Return the Kind in an annotation, optional or not."""
    for each in (hint, *typing.get_args(hint)):
        for note in getattr(each, "__metadata__", ()):
            if isinstance(note, Kind):
                return note
    raise TypeError(f"{hint} says no kind")


def result_kinds(result: type) -> dict[str, Kind]:
    """Return the kinds of a result's own fields by Python name; those kept for the working alone are left out."""
    hints = typing.get_type_hints(result, include_extras=True)
    shown = [each.name for each in dataclasses.fields(result) if each.repr and each.name != "cautions"]
    return {name: kind_of(hints[name]) for name in shown}


_ONE_SYSTEM = {"force": "mm", "power": "mm", "taper": "in"}
"""Kinds that come back in one unit whatever the system: newtons, kilowatts, inches per foot."""


def shown_system(kind: str, system: str) -> str:
    """Return the unit system in which a number of a kind is shown to a person who works in `system`."""
    return _ONE_SYSTEM.get(kind, system)


def shown_unit(kind: str, system: str) -> str:
    """Return the unit in which a number of a kind is given back.

    >>> shown_unit("length", "in"), shown_unit("force", "in")
    ('in', 'N')
    """
    return units.bare_unit(kind, shown_system(kind, system))


@dataclass(frozen=True, slots=True)
class Step:
    """One step of a working.

    `formula` is in the closed form of worked.expression; where a unit system needs its own constants it is a
    mapping by system. `values` maps each symbol to its inside value and its kind; `value` is the inside result.
    """

    symbol: str
    meaning: str
    formula: str | Mapping[str, str]
    values: Mapping[str, tuple[float, str]]
    value: float
    kind: str

    def formula_in(self, system: str) -> str:
        """Return the formula as it stands in a unit system."""
        return self.formula if isinstance(self.formula, str) else self.formula[system]


@dataclass(frozen=True)
class Working:
    """A calculation shown step by step: formula, numbers put in, result, source, caution."""

    title: str
    steps: tuple[Step, ...]
    sources: tuple[str, ...] = ()
    cautions: tuple[str, ...] = ()
    system: str = "in"

    def text(self) -> str:
        """Return the working as plain text."""
        lines = [self.title]
        for step in self.steps:
            formula = step.formula_in(self.system)
            lines += [
                f"  {step.meaning}",
                f"    {step.symbol} = {as_text(formula)}",
                f"    {step.symbol} = {as_text(formula, self.shown(step))}",
                f"    {step.symbol} = {self.result(step)}",
            ]
        lines += [f"  Source: {source}" for source in self.sources]
        lines += [f"  Caution: {caution}" for caution in self.cautions]
        return "\n".join(lines)

    def html(self) -> str:
        """Return the working as HTML."""
        rows = [f"<p><b>{html.escape(self.title)}</b></p>", "<dl>"]
        for step in self.steps:
            formula, symbol = step.formula_in(self.system), html.escape(step.symbol)
            rows += [
                f"<dt>{html.escape(step.meaning)}</dt>",
                (
                    f"<dd><i>{symbol}</i> = {as_html(formula)}<br><i>{symbol}</i> = "
                    f"{as_html(formula, self.shown(step))}<br><i>{symbol}</i> = "
                    f"<b>{html.escape(self.result(step))}</b></dd>"
                ),
            ]
        rows.append("</dl>")
        rows += [f"<p>Source: {html.escape(source)}</p>" for source in self.sources]
        rows += [f"<p><b>Caution:</b> {html.escape(caution)}</p>" for caution in self.cautions]
        return "\n".join(rows)

    def typst(self) -> str:
        """Return the working as typst; every word in it stands as a string, never as markup."""
        blocks = [f"#strong({typst_string(self.title)})"]
        for step in self.steps:
            formula, symbol = step.formula_in(self.system), as_typst(step.symbol)
            blocks += [
                f"#{typst_string(step.meaning)}",
                (
                    f"$ {symbol} &= {as_typst(formula)} \\ &= {as_typst(formula, self.shown(step))} \\ "
                    f"&= {typst_string(self.result(step))} $"
                ),
            ]
        blocks += [f"#{typst_string(f'Source: {source}')}" for source in self.sources]
        blocks += [f"#{typst_string(f'Caution: {caution}')}" for caution in self.cautions]
        return "\n\n".join(blocks)

    def _repr_mimebundle_(self, include: Any = None, exclude: Any = None) -> dict[str, str]:
        return {"text/plain": self.text(), "text/html": self.html()}

    def shown(self, step: Step) -> dict[str, str]:
        """Return the numbers put into a step's formula, as they are shown, by symbol."""
        return {
            symbol: showing.put_in(amount, kind, shown_system(kind, self.system))
            for symbol, (amount, kind) in step.values.items()
        }

    def result(self, step: Step) -> str:
        """Return a step's result as it is shown, with its unit."""
        return " ".join(showing.value(step.value, step.kind, shown_system(step.kind, self.system))).strip()


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure found in a table: its inside value, and where the table has it from."""

    value: float
    source: str


@dataclass(frozen=True, slots=True)
class LookUp:
    """A word that a form takes in place of a figure: `material` in place of `density`.

    The function itself takes only the figure; `find` is asked at the edge, and refuses a word it does not know.
    """

    name: str
    fills: str
    find: Callable[[str], Figure]


@dataclass(frozen=True)
class Calculation:
    """A registered calculation: its function and everything a form says about it besides the signature."""

    name: str
    title: str
    function: Callable[..., Any]
    given: tuple[tuple[str, ...], ...]
    meanings: Mapping[str, str]
    sources: tuple[str, ...] = ()
    look_ups: tuple[LookUp, ...] = field(default=())


CALCULATIONS: dict[str, Calculation] = {}
"""Every calculation by its name, filled as the calc modules are imported."""

_Function = TypeVar("_Function", bound=Callable[..., Any])


def calculation(
    name: str,
    title: str,
    *,
    given: tuple[tuple[str, ...], ...],
    meanings: Mapping[str, str],
    sources: tuple[str, ...] = (),
    look_ups: tuple[LookUp, ...] = (),
) -> Callable[[_Function], _Function]:
    """Register a plain-float function as a calculation; the function itself is left as it is.

    `given` lists the sets of inputs of which exactly one must be there; inputs with a default that stand in
    no set may be left out. A look-up adds each set with its word in place of the figure. `meanings` gives the
    words for each input and result by its Python name.
    """
    sets = []
    for one in given:
        by_word = [tuple(each.name if key == each.fills else key for key in one) for each in look_ups]
        sets += [one, *(each for each in by_word if each != one)]

    def register(function: _Function) -> _Function:
        CALCULATIONS[name] = Calculation(name, title, function, tuple(sets), meanings, sources, look_ups)
        return function

    return register


def working(name: str, steps: tuple[Step, ...], cautions: tuple[str, ...] = ()) -> Working:
    """Return a calculation's working from its steps, under the title and with the sources it is registered with."""
    return Working(CALCULATIONS[name].title, steps, CALCULATIONS[name].sources, cautions)
