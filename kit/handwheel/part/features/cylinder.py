"""A cylinder: a stretch of one diameter."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from handwheel.part.features.base import STRETCH, EntryField, FeatureKind
from handwheel.part.values import PartEntry, Section


def make(name: str, read: Mapping[str, Any], entry: PartEntry) -> Section:
    """Return the section as read."""
    start, end, diameter = read["from"], read["to"], read["diameter"]
    return Section(
        name, "cylinder", start.nominal.value, end.nominal.value, start, end, diameter, diameter, planned=True
    )


FEATURE = FeatureKind("cylinder", (*STRETCH, EntryField("diameter", "limits")), make, planned=True)
