"""The kinds of feature a shaft can have, each in a module of its own."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from handwheel.part.features import (
    centre_hole,
    chamfer,
    cylinder,
    fillet,
    groove,
    keyseat,
    taper,
    thread,
    woodruff_seat,
)
from handwheel.part.features.base import FeatureKind

KINDS: Mapping[str, FeatureKind] = MappingProxyType(
    {
        module.FEATURE.kind: module.FEATURE
        for module in (cylinder, taper, thread, groove, chamfer, fillet, centre_hole, woodruff_seat, keyseat)
    }
)
"""Every kind of feature by the word it is typed with."""
