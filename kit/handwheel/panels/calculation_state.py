"""What a calculation's panel knows: the typed inputs, and the answer or the sentence. No widgets here."""

from __future__ import annotations

from collections.abc import Mapping

from handwheel.numbers.faults import HandwheelError
from handwheel.worked.answer import Answer
from handwheel.worked.forms import Field, Form, form


class CalculationState:
    """A calculation being typed into: raw text by field name, and what comes of it."""

    def __init__(self, name: str, typed: Mapping[str, str] | None = None, units: str = "in") -> None:
        """Start with an empty form, or with what is typed already."""
        self.form: Form = form(name)
        self.units = units
        self.typed: dict[str, str] = {field.name: "" for field in self.form.fields}
        self.answer: Answer | None = None
        self.sentence = ""
        for field, text in (typed or {}).items():
            self.typed[field] = text
        self._ask()

    def type_in(self, field: str, text: str) -> None:
        """Take what is typed in a field, and answer or say what is wrong."""
        self.typed[field] = text
        self._ask()

    def use_units(self, units: str) -> None:
        """Read bare numbers in, and answer in, another unit system."""
        self.units = units
        self._ask()

    def echo(self, field: Field) -> str:
        """Return how a field's text is read, or nothing where it is empty, a word or not readable."""
        return field.echo(self.typed[field.name], self.units).partition(": ")[2]

    def _ask(self) -> None:
        typed = {name.replace("-", "_"): text for name, text in self.typed.items() if text.strip()}
        if not typed:
            self.answer, self.sentence = None, f"Give {self.form.usage()}."
            return
        try:
            self.answer, self.sentence = self.form.answer(self.units, **typed), ""
        except HandwheelError as fault:
            self.answer, self.sentence = None, str(fault)
