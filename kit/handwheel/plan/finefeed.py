"""When a dial is too coarse for a tolerance, and at which angle the compound makes up for it."""

from __future__ import annotations

import math
from collections.abc import Iterable
from fractions import Fraction

from attrs import frozen

from handwheel.calc.dials import fine_feed_angle
from handwheel.numbers import showing
from handwheel.numbers.faults import Fault
from handwheel.numbers.reading import read
from handwheel.part.values import Section
from handwheel.shop.values import Dial, Lathe

SHARE = 5
"""A division may be at most this part of the tolerance: a fifth (common practice, no published source)."""

LADDER = (Fraction(1, 10), Fraction(1, 20))
"""The parts of a compound division a fine feed is swivelled to, the coarser first."""

ALLOWANCE = 1e-6
"""Sizes are compared with this allowance, mm."""


@frozen
class FineFeed:
    """The compound swivelled for fine feed: its angle from the axis (degrees) as printed, and what its scale reads."""

    angle: float
    from_axis: str
    scale_reads: str
    way: str
    on_diameter: float

    @property
    def across(self) -> float:
        """Movement across the lathe for each unit along the compound."""
        return math.sin(math.radians(self.angle))

    @property
    def along(self) -> float:
        """Movement along the lathe for each unit along the compound."""
        return math.cos(math.radians(self.angle))


def on_diameter(dial: Dial) -> float:
    """Return what one division of a cross-slide's dial takes off the diameter, mm."""
    return dial.division * dial.true_lead * (1 if dial.reads == "diameter" else 2)


def is_too_coarse(dial: Dial, section: Section) -> bool:
    """Return whether one division is more than a fifth of a section's tolerance on the diameter."""
    return on_diameter(dial) > section.stands_as.tolerance / SHARE + ALLOWANCE


def fine_feed(sections: Iterable[Section], lathe: Lathe) -> tuple[FineFeed | None, list[Fault]]:
    """Return the one swivel that serves every section of a holding the cross-slide is too coarse for, if any is."""
    tight = [section for section in sections if is_too_coarse(lathe.cross_slide, section)]
    if not tight:
        return None, []
    dial = lathe.compound.dial
    true_division = dial.division * dial.true_lead / (2 if dial.reads == "diameter" else 1)
    tightest = min(tight, key=lambda section: section.stands_as.tolerance)
    for part in LADDER:
        if 2 * true_division * part <= tightest.stands_as.tolerance / SHARE + ALLOWANCE:
            angle = fine_feed_angle(true_division, float(true_division * part)).angle_to_axis
            return _swivelled(angle, lathe, tightest)
    return None, [
        Fault(
            tightest.name,
            f"{showing.length(tightest.stands_as.tolerance, dial.system)} between its limits is finer than any "
            "dial of this "
            "lathe sets, even with the compound as a fine feed",
            "leave it to be ground or polished to size, or widen its limits with the customer's word",
        )
    ]


def _swivelled(angle: float, lathe: Lathe, tightest: Section) -> tuple[FineFeed | None, list[Fault]]:
    dial = lathe.compound.dial
    from_axis = showing.angle(angle)
    printed = read("angle", from_axis).value  # what can be printed is what will be set
    scale = 90 - printed if lathe.compound.scale_zero == "cross-slide" else printed
    if scale > lathe.compound.swing:
        return None, [
            Fault(
                tightest.name,
                f"it wants the compound as a fine feed, {from_axis} from the axis: {showing.angle(scale)} on a scale "
                f"that goes to {showing.angle(lathe.compound.swing)}",
                "leave it to be ground or polished to size, or widen its limits with the customer's word",
            )
        ]
    lead = dial.true_lead * (1 if dial.reads == "diameter" else 2)
    swivelled = FineFeed(
        printed,
        from_axis,
        showing.angle(scale),
        "feeding in moves the tool in and towards the headstock",
        dial.division * lead * math.sin(math.radians(printed)),
    )
    return swivelled, []
