"""One wrong sheet, and which lines may be named for it."""

from __future__ import annotations

from dataclasses import dataclass

from handwheel.dryrun.report import Finding
from handwheel.plan.lines import Line, Sheet


@dataclass(frozen=True)
class Wrong:
    """One wrong sheet: where it was edited and which lines may be named for it."""

    sheet: Sheet
    edited: str
    lines: frozenset[str]
    may_be_harmless: bool = False
    feature: str = ""

    def rightly_named(self, fault: Finding) -> bool:
        """Whether a fault names a line this may be found at, or the feature that is now missing."""
        return fault.line in self.lines or bool(self.feature and self.feature in fault.what)


def lines_with(sheet: Sheet, *motions: str) -> list[Line]:
    return [line for line in sheet.lines if line.motion in motions]


def after(sheet: Sheet, line: Line) -> frozenset[str]:
    """The line and all that come after it."""
    numbers = [other.number for other in sheet.lines]
    return frozenset(numbers[numbers.index(line.number) :])


def same_feature_or_after(sheet: Sheet, line: Line) -> frozenset[str]:
    """What may be named for a line that is not there or not in its place."""
    near = {other.number for other in sheet.lines if line.feature and other.feature == line.feature}
    return after(sheet, line) | near


def only(line: Line) -> frozenset[str]:
    return frozenset({line.number})
