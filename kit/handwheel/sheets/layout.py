"""Where each printed string of a line goes on paper: one layout for the page on screen and the page in hand.

Nothing here makes or rounds a number; the strings of the sheet's lines are laid out as they are.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from attrs import frozen

from handwheel.plan.lines import FIELDS, Line, Sheet

MOTION_WORDS: Mapping[str, str] = MappingProxyType(
    {
        "hold": "Hold the work",
        "saw": "Saw off",
        "swing": "Swivel the compound",
        "mount": "Change the tool",
        "touch-face": "Touch the face",
        "face": "Face",
        "centre": "Centre drill",
        "support": "Bring up the centre",
        "touch": "Touch the diameter",
        "turn": "Turn",
        "measure": "Measure",
        "chamfer": "Chamfer",
        "leave": "Leave for later",
    }
)
"""The heading of a line by its motion."""

_DIALS = tuple(
    name
    for dial in ("cross-", "compound-", "carriage-")
    for name in FIELDS
    if name.startswith(dial) and not name.endswith("-approach")
)
_WORK = (
    "touch-diameter",
    "zero-diameter",
    "zero-pass",
    "diameter",
    "left-to-go",
    "limits",
    "face-out-to",
    "corner-diameter",
    "size",
)

BOXES: Mapping[str, str] = MappingProxyType({"touch": "Measured at touch-off", "measure": "Measured"})
"""The motions with a box to write in, and what the box is for."""

HOW_TO_READ = (
    "Diameters are diameters; a position is measured along the work from the face named.",
    "Cross-slide and compound dials count up as the tool goes in; the carriage dial counts up towards the headstock.",
    (
        "Turns are how often a dial has passed its zero since its ring was last set; the dial number is what it then "
        "shows."
    ),
    "Come to every number from the side named. After going past, back off more than the backlash and come in again.",
    "At the end of a cut wind the cross-slide out first, then the carriage back to the tailstock side.",
    "Where a measured size differs from the one printed, write it in the box and set the ring by what the line says.",
)
"""How the numbers of a sheet are to be read; printed at its head."""

SAFETY = (
    (
        "Safety glasses on. No gloves, rings or loose sleeves, long hair tied back. Chuck key out before the spindle "
        "turns."
    ),
    "Stop the spindle before measuring, and clear chips with a hook, never by hand.",
    "Check that the carriage clears the jaws at the last position by turning the chuck by hand first.",
    (
        "The machine's manual, the shop's rules and local codes come before this sheet. Whether the shaft is strong "
        "enough for its duty is for the customer and a licensed engineer to say."
    ),
)
"""The usual cautions of the work; printed at the head of every sheet."""


@frozen
class Row:
    """One line as it is laid out: heading, sentence, and labelled strings in three places."""

    number: str
    heading: str
    instruction: str
    particulars: tuple[tuple[str, str], ...]
    dials: tuple[tuple[str, str], ...]
    work: tuple[tuple[str, str], ...]
    box: str
    cautions: tuple[str, ...]
    starts_holding: bool


def rows(sheet: Sheet) -> tuple[Row, ...]:
    """Return the sheet's lines as rows of labelled strings, in order."""
    return tuple(row(line) for line in sheet.lines)


def row(line: Line) -> Row:
    """Return one line as a row of labelled strings."""

    def labelled(names: tuple[str, ...]) -> tuple[tuple[str, str], ...]:
        return tuple((FIELDS[name], line.values[name]) for name in names if line.values.get(name))

    rest = tuple(name for name in FIELDS if name not in _DIALS and name not in _WORK)
    return Row(
        number=line.number,
        heading=f"{MOTION_WORDS[line.motion]}: {line.feature}" if line.feature else MOTION_WORDS[line.motion],
        instruction=line.instruction,
        particulars=labelled(rest),
        dials=labelled(_DIALS),
        work=labelled(_WORK),
        box=BOXES.get(line.motion, ""),
        cautions=line.cautions,
        starts_holding=line.motion == "hold",
    )
