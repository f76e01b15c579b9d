"""A relief groove: a short stretch below both its neighbours. Its stock stands at the smaller neighbour's diameter."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.part.features.base import STRETCH, EntryField, FeatureKind
from handwheel.part.values import PartEntry, Section


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Section:
    """Return the section as read; what stands there is known once its neighbours are."""
    start, end, diameter = read["from"], read["to"], read["diameter"]
    radius = read["radius"].value if "radius" in read else 0.0
    return Section(
        name, "groove", start.nominal.value, end.nominal.value, start, end, diameter, diameter, planned=False,
        corner_radius=radius,
    )  # fmt: skip


FEATURE = FeatureKind(
    "groove",
    (*STRETCH, EntryField("diameter", "limits"), EntryField("radius", "length", required=False)),
    make,
    planned=False,
    stands="its stock stands at the diameter of the smaller neighbour",
)
