"""A fillet in the inner corner at a station. Its stock stands as a square block in the corner."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.part.features.base import EntryField, FeatureKind
from handwheel.part.values import Edge, PartEntry


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Edge:
    """Return the fillet as read."""
    return Edge(name, "fillet", read["at"].value, read["size"].value, read["size"].typed, planned=False)


FEATURE = FeatureKind(
    "fillet",
    (EntryField("at", "length"), EntryField("size", "length"), EntryField("note", "text", required=False)),
    make,
    planned=False,
    stands="its stock stands in the corner, square, as wide and as high as its radius",
)
