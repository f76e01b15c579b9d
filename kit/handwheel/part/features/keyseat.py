"""A square or rectangular keyseat, by its call and the stations between which it lies."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.numbers.faults import HandwheelError
from handwheel.part.features.base import EntryField, FeatureKind
from handwheel.part.values import PartEntry, Seat


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Seat:
    """Return the seat as read.

    Raises:
        HandwheelError: it ends where it starts or before.
    """
    start, end = read["from"].value, read["to"].value
    if end <= start:
        raise HandwheelError("to: a keyseat must end further from the datum face than it starts; change the two")
    return Seat(name, "keyseat", start, end, read["call"], read.get("ends", ""), read.get("angle", ""))


FEATURE = FeatureKind(
    "keyseat",
    (
        EntryField("from", "length"),
        EntryField("to", "length"),
        EntryField("call", "text"),
        EntryField("ends", "text", required=False),
        EntryField("angle", "text", required=False),
    ),
    make,
    planned=False,
    stands="nothing is cut there",
)
