"""A thread: a stretch with a thread call. Turning leaves its blank at the major diameter."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.numbers.faults import HandwheelError
from handwheel.part.features.base import STRETCH, EntryField, FeatureKind
from handwheel.part.values import PartEntry, Section

SAME = 1e-6
"""Sizes are compared with this allowance, mm."""


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Section:
    """Return the section as read; its diameter is the major diameter with its limits.

    Raises:
        HandwheelError: the major diameter is none that the call can have.
    """
    start, end, diameter, call = read["from"], read["to"], read["diameter"], read["call"]
    nominal, pitch = call.diameter.value, call.pitch.value
    if not nominal - pitch <= diameter.minimum <= diameter.maximum <= nominal + SAME:
        raise HandwheelError(
            f"diameter: {diameter.typed} is no major diameter of {call.typed}; it lies at the call's diameter or a "
            "little below"
        )
    return Section(
        name, "thread", start.nominal.value, end.nominal.value, start, end, diameter, diameter,
        planned=False, call=call.typed,
    )  # fmt: skip


FEATURE = FeatureKind(
    "thread",
    (*STRETCH, EntryField("call", "thread"), EntryField("diameter", "limits")),
    make,
    planned=False,
    stands="its blank is turned to the major diameter; no thread is cut",
)
