"""Writes a holding's lines: every number becomes the string that is printed, once, here."""

from __future__ import annotations

from collections.abc import Mapping

from handwheel.calc.dials import on_dial
from handwheel.numbers import showing
from handwheel.part.values import Part
from handwheel.plan.holdings import Holding
from handwheel.plan.lines import Line
from handwheel.shop.values import Shop

INDICATOR = {"in": 0.0254, "mm": 0.01}
"""What a travel indicator is read to, mm."""

FROM_TAILSTOCK = "the tailstock side"
FROM_OUTSIDE = "outside"


class Writer:
    """Collects the lines of one holding; sizes in, printed strings out."""

    def __init__(self, part: Part, shop: Shop, holding: Holding) -> None:
        self.part = part
        self.shop = shop
        self.holding = holding
        self.lines: list[Line] = []

    @property
    def last_number(self) -> str:
        """The number of the line written last."""
        return self.lines[-1].number

    def add(
        self,
        motion: str,
        feature: str,
        instruction: str,
        values: Mapping[str, str],
        cautions: tuple[str, ...] = (),
    ) -> None:
        """Write a line."""
        number = f"{self.holding.letter}{len(self.lines) + 1}"
        self.lines.append(Line(number, motion, feature, instruction, dict(values), cautions))

    def size(self, mm: float) -> str:
        """Return a diameter as a micrometer reads it."""
        return showing.length(mm, self.part.units)

    def place(self, mm: float) -> str:
        """Return a position or length along the work."""
        return showing.length(mm, self.part.units, 3 if self.part.units == "in" else 2)

    def speed(self, rpm: float) -> str:
        """Return a spindle speed."""
        return showing.speed(rpm)

    def feed(self, mm_per_rev: float) -> str:
        """Return a feed."""
        return showing.feed(mm_per_rev, self.shop.system)

    def cross(self, marked: float) -> str:
        """Return a reading of the cross-slide's dial."""
        dial = self.shop.lathe.cross_slide
        return showing.on_dial(marked, dial.division, dial.system)

    def compound(self, marked: float) -> str:
        """Return a reading of the compound's dial."""
        dial = self.shop.lathe.compound.dial
        return showing.on_dial(marked, dial.division, dial.system)

    def on_carriage(self, marked: float) -> str:
        """Return a reading of the carriage's dial."""
        dial = self.shop.lathe.carriage
        return showing.on_dial(marked, dial.division, dial.system)

    def carriage(self, distance: float, position: float | None = None) -> dict[str, str]:
        """Return the fields that bring the carriage to a distance (mm) from the face its ring was zeroed on.

        `position` is where the tool's edge then stands, where that is not the carriage's own travel.
        """
        dial = self.shop.lathe.carriage
        step = INDICATOR[dial.system]
        reached = round(distance / dial.true_lead / step) * step  # finer than the indicator nobody sets
        at = on_dial(reached, dial.division, dial.per_turn, short=True)
        more = at.left_over * dial.true_lead
        shown = self.place(more)
        return {
            "from-face": self.face,
            "position": self.place(reached * dial.true_lead + (0.0 if position is None else position - distance)),
            "carriage-turns": str(at.turns),
            "carriage-reading": self.on_carriage(at.reading),
            "carriage-more": f"+{shown}" if more > step / 2 else shown,
            "carriage-approach": FROM_TAILSTOCK,
        }

    @property
    def face(self) -> str:
        """The face that positions are measured from in this holding."""
        return self.holding.end_name
