"""A thread: a stretch with a thread call. Turning leaves its blank at the major diameter."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.part.features.base import STRETCH, EntryField, FeatureKind
from handwheel.part.values import PartEntry, Section


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Section:
    """Return the section as read; its diameter is the major diameter with its limits."""
    start, end, diameter = read["from"], read["to"], read["diameter"]
    return Section(
        name, "thread", start.nominal.value, end.nominal.value, start, end, diameter, diameter,
        planned=False, call=read["call"].typed,
    )  # fmt: skip


FEATURE = FeatureKind(
    "thread",
    (*STRETCH, EntryField("call", "thread"), EntryField("diameter", "limits")),
    make,
    planned=False,
    stands="its blank is turned to the major diameter; no thread is cut",
)
