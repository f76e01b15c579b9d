"""A Woodruff keyseat, by the key's number and the station of its middle."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.part.features.base import EntryField, FeatureKind
from handwheel.part.values import PartEntry, Seat


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Seat:
    """Return the seat as read."""
    at = read["at"].value
    return Seat(name, "woodruff seat", at, at, read["call"], angle=read.get("angle", ""))


FEATURE = FeatureKind(
    "woodruff seat",
    (
        EntryField("at", "length"),
        EntryField("call", "text"),
        EntryField("angle", "text", required=False),
    ),
    make,
    planned=False,
    stands="nothing is cut there",
)
