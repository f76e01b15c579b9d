"""How deep a centre drill goes."""

from __future__ import annotations

import math

from handwheel.numbers.faults import HandwheelError
from handwheel.worked.result import Diameter, Length

CONE = 60.0
"""Included angle of a centre hole's cone, degrees (ISO 6411, ASME B94.11M; from memory)."""


def centre_depth(mouth: Diameter, point: Diameter) -> Length:
    """Return how deep a 60° centre drill goes from the face for a mouth of a given diameter.

    The pilot is taken as long as its own diameter, as plain centre drills are about ground.

    Args:
        mouth: diameter of the cone at the face, mm.
        point: diameter of the drill's point, mm.

    Returns:
        Depth from the face to the drill's tip, mm.

    Raises:
        HandwheelError: the mouth is not larger than the point.

    Examples:
        >>> round(centre_depth(6.35, 3.175) / 25.4, 3)
        0.233
    """
    if not 0 < point < mouth:
        raise HandwheelError("mouth: must be larger than the drill's point")
    return point + (mouth - point) / 2 / math.tan(math.radians(CONE / 2))
