"""A calculation's panel: its form as fields, the answer and its working under them."""

from __future__ import annotations

import html
from collections.abc import Mapping
from typing import Any

import ipywidgets as widgets

from handwheel.panels.calculation_state import CalculationState
from handwheel.worked.forms import Field

_FIELD = {"style": {"description_width": "12em"}, "layout": {"width": "26em"}}


class CalculationPanel(widgets.VBox):
    """A thin view over a CalculationState; every number comes from the state."""

    def __init__(self, state: CalculationState) -> None:
        """Lay out the form's fields in their order."""
        self.state = state
        self._echoes: dict[str, Any] = {}
        self._answer = widgets.HTML()
        units = widgets.ToggleButtons(
            options=[("inches", "in"), ("millimetres", "mm")],
            value=state.units,
            description="Bare numbers",
            **_FIELD,
        )
        units.observe(lambda change: self._units(change["new"]), "value")
        title = widgets.HTML(f"<b>{html.escape(state.form.title)}</b>")
        super().__init__([title, units, *(self._row(field) for field in state.form.fields), self._answer])
        self._show()

    def _row(self, field: Field) -> Any:
        label = field.name.replace("-", " ")
        typed = self.state.typed[field.name]
        if field.kind.choices:
            entry: Any = widgets.Dropdown(
                options=[("", ""), *((choice, choice) for choice in field.kind.choices)],
                value=typed,
                description=label,
                **_FIELD,
            )
        else:
            hint = f"{field.meaning}{' (may stay empty)' if field.optional else ''}"
            entry = widgets.Text(
                value=typed,
                description=label,
                placeholder=hint,
                tooltip=hint,
                continuous_update=False,
                **_FIELD,
            )
        entry.observe(lambda change: self._typed(field.name, change["new"]), "value")
        self._echoes[field.name] = widgets.HTML()
        return widgets.HBox([entry, self._echoes[field.name]])

    def _typed(self, field: str, text: str) -> None:
        self.state.type_in(field, text)
        self._show()

    def _units(self, units: str) -> None:
        self.state.use_units(units)
        self._show()

    def _show(self) -> None:
        for field in self.state.form.fields:
            self._echoes[field.name].value = html.escape(self.state.echo(field))
        answer = self.state.answer
        if answer is None:
            self._answer.value = f'<p role="status"><b>{html.escape(self.state.sentence)}</b></p>'
            return
        table = answer._repr_mimebundle_()["text/html"]
        self._answer.value = (
            f'<div role="status">{table}</div><details><summary>Working</summary>{answer.worked().html()}</details>'
        )


def for_calculation(name: str, typed: Mapping[str, str] | None = None, units: str = "in") -> CalculationPanel:
    """Return a panel for a calculation, empty or with what is typed already.

    Raises:
        HandwheelError: there is no such calculation.
    """
    return CalculationPanel(CalculationState(name, typed, units))
