"""An answer: what a calculation was given, what it gives, and its working, in a person's units."""

from __future__ import annotations

import dataclasses
import html
import math
import typing
from collections.abc import Mapping
from typing import Any

from handwheel.numbers import showing, units
from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import Calculation, Kind, Working

_ALWAYS = {"force": "N", "power": "kW", "taper": "in/ft"}
"""Kinds that come back in one unit whatever the system (force, power and taper per foot)."""


@dataclasses.dataclass(frozen=True)
class Answer:
    """The answer of a calculation in one unit system; each result is an attribute by its Python name."""

    calculation: Calculation
    result: Any
    given: Mapping[str, Any]
    units: str

    @property
    def inputs(self) -> dict[str, Any]:
        """The inputs by name, each a number in its own unit or text."""
        from handwheel.worked.forms import form

        kinds = {field.name: field.kind for field in form(self.calculation.name).fields}
        return {name: self._out(value, kinds[name]) for name, value in self.given.items()}

    @property
    def results(self) -> dict[str, Any]:
        """The results by name, as in the JSON form."""
        return {
            name.replace("_", "-"): self._out(getattr(self.result, name), kind)
            for name, kind in self._result_kinds().items()
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
        if name.startswith("_") or name not in self._result_kinds():
            raise AttributeError(f"{self.calculation.name} gives {', '.join(self._result_kinds())}, not {name!r}")
        shown = self._out(getattr(self.result, name), self._result_kinds()[name])
        return shown["value"] if isinstance(shown, dict) else shown

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
        """Return the working in the answer's units."""
        working: Working = self.result.worked()
        return working if working.system == "mm" else dataclasses.replace(working, system=self.units)

    def rows(self) -> list[tuple[str, str]]:
        """Return each result's words and its value as shown to a person."""
        rows = []
        for name, kind in self._result_kinds().items():
            value = getattr(self.result, name)
            shown = str(value) if isinstance(value, str | int) else " ".join(
                showing.value(value, kind.name, self.units)
            )  # fmt: skip
            rows.append((self.calculation.meanings.get(name, name.replace("_", " ")), shown.strip()))
        return rows

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

    def _result_kinds(self) -> dict[str, Kind]:
        from handwheel.worked.forms import kind_of

        hints = typing.get_type_hints(type(self.result), include_extras=True)
        return {
            each.name: kind_of(hints[each.name])
            for each in dataclasses.fields(self.result)
            if each.repr and each.name not in ("cautions", "steps")
        }

    def _out(self, value: Any, kind: Kind) -> Any:
        if isinstance(value, str | bool | int) and not isinstance(value, float):
            return value
        if isinstance(value, tuple):
            return [self._out(each, Kind("spindle_speed")) for each in value]
        if not math.isfinite(value):
            raise HandwheelError(f"{self.calculation.name}: these numbers are beyond any shop; check their units")
        if kind.name == "ratio":
            return {"value": value, "unit": "1"}
        unit = _ALWAYS.get(kind.name) or units.bare_unit(kind.name, self.units)
        return {"value": units.from_inside(value, unit, kind.name), "unit": unit}
