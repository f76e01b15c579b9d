"""An answer: what a calculation was given, what it gives, and its working, in a person's units."""

from __future__ import annotations

import dataclasses
import html
import math
from collections.abc import Mapping
from typing import Any

from handwheel.numbers import showing, units
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import (
    Calculation,
    Figure,
    Kind,
    Working,
    result_kinds,
    shown_system,
    shown_unit,
)


@dataclasses.dataclass(frozen=True)
class Answer:
    """The answer of a calculation in one unit system; each result is an attribute by its Python name.

    `given` holds the plain inputs by name and `kinds` their kinds; `figures` were looked up in tables for them;
    `echoes` say how typed text was read.
    """

    calculation: Calculation
    result: Any
    given: Mapping[str, Any]
    kinds: Mapping[str, Kind]
    figures: tuple[Figure, ...]
    echoes: tuple[str, ...]
    units: str

    @property
    def inputs(self) -> dict[str, Any]:
        """The inputs by name, each a number in its own unit or text."""
        return {name: self._out(value, self.kinds[name]) for name, value in self.given.items()}

    @property
    def results(self) -> dict[str, Any]:
        """The results by name, as in the JSON form."""
        return {
            name.replace("_", "-"): self._out(getattr(self.result, name), kind)
            for name, kind in result_kinds(type(self.result)).items()
        }

    @property
    def sources(self) -> tuple[str, ...]:
        """Where the formula and its figures come from."""
        return self.worked().sources

    @property
    def cautions(self) -> tuple[str, ...]:
        """What to beware of."""
        return self.worked().cautions

    def __getattr__(self, name: str) -> Any:
        """Return one result in the answer's units."""
        kinds = {} if name.startswith("_") else result_kinds(type(self.result))
        if name not in kinds:
            raise AttributeError(f"{self.calculation.name} gives {', '.join(kinds) or 'no such thing'}, not {name!r}")
        shown = self._out(getattr(self.result, name), kinds[name])
        return shown["value"] if isinstance(shown, dict) else shown

    def __dir__(self) -> list[str]:
        return [*super().__dir__(), *result_kinds(type(self.result))]

    def json(self) -> dict[str, Any]:
        """Return the answer as plain values for JSON: numbers with their units, text, true or false."""
        return {
            "name": self.calculation.name,
            "inputs": self.inputs,
            "results": self.results,
            "sources": list(self.sources),
            "cautions": list(self.cautions),
        }

    def worked(self) -> Working:
        """Return the working in the answer's units, with the sources of what was looked up."""
        working: Working = self.result.worked()
        sources = (*working.sources, *(figure.source for figure in self.figures))
        return dataclasses.replace(working, system=self.units, sources=sources)

    def rows(self) -> list[tuple[str, str]]:
        """Return each result's words and its value as shown to a person."""
        return [
            (self.calculation.meanings[name], self._shown(getattr(self.result, name), kind))
            for name, kind in result_kinds(type(self.result)).items()
        ]

    def text(self) -> str:
        """Return the results as plain text, a line each."""
        rows = self.rows()
        width = max(len(words) for words, _ in rows)
        return "\n".join(f"{words:<{width}}  {shown}" for words, shown in rows)

    def _repr_mimebundle_(self, include: Any = None, exclude: Any = None) -> dict[str, str]:
        cells = "".join(
            f"<tr><td>{html.escape(words)}</td><td><b>{html.escape(shown)}</b></td></tr>"
            for words, shown in self.rows()
        )
        return {"text/plain": self.text(), "text/html": f"<table>{cells}</table>"}

    def _shown(self, value: Any, kind: Kind) -> str:
        if isinstance(value, str | int):
            return str(value)
        return " ".join(showing.value(value, kind.name, shown_system(kind.name, self.units))).strip()

    def _out(self, value: Any, kind: Kind) -> Any:
        if isinstance(value, str | int):
            return value
        if isinstance(value, tuple):
            return [self._out(each, Kind("spindle_speed")) for each in value]
        if not math.isfinite(value):
            raise HandwheelError(f"{self.calculation.name}: these numbers are beyond any shop; check their units")
        unit = shown_unit(kind.name, self.units)
        return {"value": value if unit == "1" else units.from_inside(value, unit, kind.name), "unit": unit}
