"""What this plan leaves alone: said on the sheet, so that nobody looks for it in the numbers."""

from __future__ import annotations

from handwheel.part.features import KINDS
from handwheel.part.values import Part
from handwheel.plan.setup import Setup


def unplanned(part: Part) -> tuple[tuple[str, str, float], ...]:
    """Return the features not planned yet: name, kind, and station (mm from the datum face)."""
    found = [(each.name, each.kind, each.start) for each in part.sections if not each.planned]
    found += [(each.name, each.kind, each.at) for each in part.edges if not each.planned]
    found += [(each.name, each.kind, each.start) for each in part.seats]
    return tuple(sorted(found, key=lambda each: each[2]))


def sentence(name: str, kind: str) -> str:
    """Return what is said of a feature that is not planned yet."""
    return f"{name} ({kind}): not planned on this sheet; {KINDS[kind].stands}."


def leave(setup: Setup, name: str, kind: str, z: float) -> None:
    """Write the line that says what stands at a station (mm from the datum face) for a feature."""
    writer = setup.writer
    writer.add(
        "leave",
        name,
        sentence(name, kind)[0].upper() + sentence(name, kind)[1:],
        {"from-face": writer.face, "position": writer.place(setup.distance(z))},
    )
