"""The kinds of feature a shaft can have, each in a module of its own.

How each is typed, a text for every field beside `kind` and `name`; fields in brackets may be left out:

| kind | fields |
| --- | --- |
| cylinder | from, to, diameter |
| taper | from, to, large, small, large-at |
| thread | from, to, call, diameter |
| groove | from, to, diameter, (radius) |
| chamfer | at, size |
| fillet | at, size |
| centre hole | end, body, point, mouth |
| woodruff seat | at, call, (angle) |
| keyseat | from, to, call, (ends), (angle) |

Stations (`from`, `to`, `at`, `large-at`) count from the datum face. `from` and `to` may have limits of their own
(`3.313 ±.005`), else the part's length tolerance holds. `diameter`, `large` and `small` are sizes with limits; of a
thread, its major diameter. `large-at` is the station of a taper's large end, `end` the name of a face. Any feature
may have a `note`.
"""

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
