"""A 45° chamfer on the outer corner at a station."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.part.features.base import EntryField, FeatureKind
from handwheel.part.values import Edge, PartEntry


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Edge:
    """Return the chamfer as read."""
    return Edge(name, "chamfer", read["at"].value, read["size"].value, read["size"].typed, planned=True)


FEATURE = FeatureKind(
    "chamfer",
    (EntryField("at", "length"), EntryField("size", "length")),
    make,
    planned=True,
    stands="its corner is not there until what lies beside it is cut",
)
