"""What the part's panel knows: the typed sizes, and what follows from them. No widgets here."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import datetime
from pathlib import Path

import attrs

from handwheel.job.folder import save_job
from handwheel.job.road import Road, run_road
from handwheel.job.values import Job
from handwheel.numbers.faults import HandwheelError
from handwheel.part.drawing.side_view import side_view
from handwheel.part.typing_over import typed_over
from handwheel.plan.lines import Line
from handwheel.shop.values import Shop

SIZES = ("to", "diameter", "large", "small", "size")
"""The sizes of a feature that can be typed over in the panel, in the order they are shown."""

DIAL_MOTIONS = ("touch", "turn", "measure", "chamfer")


class PartState:
    """A part being typed over: the job as it can be planned, and the sentences on what could not be.

    `road` always belongs to sizes that make sense; a size that makes none leaves job and road as they were.
    """

    def __init__(self, job: Job, folder: Path, shop: Shop | None = None) -> None:
        """Start from a job as it was opened from its folder.

        Raises:
            HandwheelError: the job as saved can't be planned.
        """
        self.folder = folder
        self.shop = shop
        self.saved = job
        self.feature = next((entry["name"] for entry in job.part.features if entry.get("kind") == "cylinder"), "")
        self.sentences: tuple[str, ...] = ()
        self._take(job)

    @property
    def fields(self) -> dict[tuple[str, str], str]:
        """Typed text by feature name and field, in the order of the part's features."""
        return {
            (entry["name"], name): entry[name] for entry in self.job.part.features for name in SIZES if name in entry
        }

    @property
    def changed(self) -> bool:
        """Whether something typed is not yet kept in the job's folder."""
        return self.job != self.saved

    def type_over(self, feature: str, field: str, text: str) -> None:
        """Take a typed size: plan the part with it, or keep the part and say what is wrong with the size."""
        self.feature = feature
        try:
            self._take(attrs.evolve(self.job, part=typed_over(self.job.part, feature, field, text)))
        except HandwheelError as fault:
            self.sentences = (str(fault),)

    def keep(self, when: datetime) -> None:
        """Save the job as it stands, the version before it kept in the history.

        Raises:
            HandwheelError: it was not saved; the sentence says why.
        """
        self.saved = save_job(self.job, self.folder, when, before=self.saved)

    def drawing(self) -> str:
        """Return the side view as SVG text, the feature in hand marked."""
        assert self.road.part is not None
        return side_view(self.road.part, highlight=self.feature)

    def lines(self) -> Sequence[Line]:
        """Return the sheet's lines that set or use a dial for the feature in hand."""
        assert self.road.plan is not None
        return [
            line for line in self.road.plan.sheet.lines if line.feature == self.feature and line.motion in DIAL_MOTIONS
        ]

    def _take(self, job: Job) -> None:
        road = run_road(job, self.shop, self.folder)
        if road.plan is None:
            raise HandwheelError(" ".join(fault.sentence() for fault in road.faults))
        self.job: Job = job
        self.road: Road = road
        self.sentences = tuple(fault.sentence() for fault in road.faults)
