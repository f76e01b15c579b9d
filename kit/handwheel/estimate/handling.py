"""Minutes that hands take, short case and long case. All of it common practice, no published source."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

HANDLING: Mapping[str, tuple[float, float]] = MappingProxyType(
    {
        "reading the drawing and laying out tools": (10.0, 25.0),
        "hold": (6.0, 15.0),
        "hold again, trued with an indicator": (12.0, 35.0),
        "bring up the centre": (1.0, 3.0),
        "centre drill": (2.0, 5.0),
        "saw": (5.0, 15.0),
        "tool change": (1.5, 4.0),
        "touch-off": (0.7, 2.0),
        "measurement": (0.7, 2.5),
        "pass": (0.4, 1.2),
        "final inspection and cleaning": (8.0, 20.0),
    }
)
"""What each takes, in minutes: one case in ten is shorter than the first figure, one in ten longer than the second."""

CUTTING = (1.0, 1.15)
"""What the feed box's time is multiplied by: it is seldom shorter than reckoned, and a little air is longer."""
