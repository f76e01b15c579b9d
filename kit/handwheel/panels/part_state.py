"""What the part's panel knows: the typed sizes, and what follows from them. No widgets here."""

from __future__ import annotations

from collections.abc import Mapping
from datetime import datetime
from pathlib import Path

import attrs

from handwheel.job.folder import save_job
from handwheel.job.road import Road, run_road
from handwheel.job.values import Job
from handwheel.numbers.faults import HandwheelError
from handwheel.part.drawing.side_view import side_view
from handwheel.plan.lines import Line
from handwheel.shop.values import Shop

TYPED_FIELDS = ("from", "to", "diameter", "large", "small", "size")
"""The sizes of a feature that can be typed over in the panel, in the order they are shown."""


class PartState:
    """A part being typed over: the last job that could be planned, and the sentence on what could not.

    `road` always belongs to sizes that made sense; a size that makes none leaves it as it was and
    stands in `sentences`.
    """

    def __init__(self, job: Job, folder: Path, shop: Shop | None = None) -> None:
        """Start from a job as it was opened from its folder."""
        self.folder = folder
        self.shop = shop
        self.saved = job
        self.sentences: tuple[str, ...] = ()
        self.feature = ""
        self._take(job)

    @property
    def fields(self) -> dict[tuple[str, str], str]:
        """Typed text by feature name and field, in the order of the part's features."""
        return {
            (entry["name"], name): entry[name]
            for entry in self.job.part.features
            for name in TYPED_FIELDS
            if name in entry
        }

    @property
    def changed(self) -> bool:
        """Whether anything typed is not yet kept in the job's folder."""
        return self.job != self.saved

    def type_over(self, feature: str, field: str, text: str) -> None:
        """Take a typed size: plan the part with it, or keep the part and say what is wrong with the size."""
        self.feature = feature
        entries = [
            {**entry, field: text} if entry["name"] == feature else entry for entry in self.job.part.features
        ]
        try:
            self._take(attrs.evolve(self.job, part=attrs.evolve(self.job.part, features=entries)))
        except HandwheelError as fault:
            self.sentences = (str(fault),)

    def keep(self, when: datetime) -> None:
        """Save the job as it stands, the version before it kept in the history."""
        self.saved = save_job(self.job, self.folder, when)
        self.job = self.saved

    def drawing(self) -> str:
        """Return the side view as SVG text, the feature typed last marked."""
        if self.road.part is None:
            return ""
        return side_view(self.road.part, highlight=self.feature or None)

    def lines(self) -> tuple[Line, ...]:
        """Return the sheet's lines that set or use a dial for the feature typed last."""
        if self.road.plan is None:
            return ()
        return tuple(
            line
            for line in self.road.plan.sheet.lines
            if line.feature == self.feature and line.motion in ("touch", "turn", "measure", "chamfer")
        )

    def _take(self, job: Job) -> None:
        road = run_road(job, self.shop)
        if road.part is None or road.plan is None:
            raise HandwheelError(" ".join(fault.sentence() for fault in road.faults))
        self.job: Job = job
        self.road: Road = road
        self.sentences = tuple(fault.sentence() for fault in road.faults)


def last_dial_number(lines: tuple[Line, ...]) -> Mapping[str, str]:
    """Return the values of the last line that sets a ring for the feature, or nothing."""
    for line in reversed(lines):
        if any(name.endswith("-set") for name in line.values):
            return line.values
    return {}
