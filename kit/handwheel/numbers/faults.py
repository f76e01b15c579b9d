"""What is wrong, said to a person: one base error and one record of a fault."""

from __future__ import annotations

from dataclasses import dataclass


class HandwheelError(ValueError):
    """Something a person typed or asked for cannot be; the text is one sentence saying what would be right."""


class ReadingError(HandwheelError):
    """Typed text is not a number, size or call of the kind that was asked for."""


@dataclass(frozen=True, slots=True)
class Fault:
    """A fault a screen can list: where it is, what is wrong and what would be right.

    >>> Fault("bearing seat", "ends at 3.313 but the collar starts at 3.300", "make them meet").sentence()
    'bearing seat: ends at 3.313 but the collar starts at 3.300; make them meet.'
    """

    place: str
    what: str
    remedy: str

    def sentence(self) -> str:
        """Return the fault as one sentence."""
        return f"{self.place}: {self.what}; {self.remedy}."
