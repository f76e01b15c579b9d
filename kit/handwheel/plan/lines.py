"""A sheet's lines: records whose values are the very strings that are printed.

A line names one motion of a closed set. Its `values` are text by field name, as a machinist reads them;
the dry run reads the same text back. `MOTIONS` tells which fields each motion must and may have, `FIELDS`
what each field means on paper.

How the strings are to be read:

* Lengths and diameters are in the sheet's units, dial readings in the dial's own marks. A cross-slide or
  compound dial counts up as the tool goes in; the carriage dial counts up towards the headstock.
* `...-set` is what the dial's ring is set to while the slide stands still; `...-turns` and `...-reading` are
  counted from the last time it was set: turns is how often the dial has passed its zero since then.
* `position` is measured along the axis from the face named in `from-face`, into the work.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from attrs import frozen

from handwheel.numbers.faults import HandwheelError

FIELDS: Mapping[str, str] = MappingProxyType(
    {
        "holding": "Held in",  # "chuck" or "chuck and centre"
        "end-out": "End facing the tailstock",  # name of that end as the part calls it
        "grip-on": "Jaws on",  # what the jaws close on, and pads
        "grip-diameter": "Diameter gripped",
        "grip-length": "Length gripped",
        "stick-out": "Jaw face to end of work",
        "saw-length": "Saw to this length",  # overall, from the finished far face to the saw cut
        "tool": "Tool",  # the tool's name in the shop file
        "scale-reads": "Compound scale reads",  # degrees on the lathe's own scale
        "from-axis": "Angle from the lathe axis",
        "way": "Swivel",  # in words: which way feeding in moves the tool
        "speed": "Spindle",  # "360 rev/min"
        "feed": "Feed",  # ".004 in/rev" or "by hand"
        "from-face": "Positions from",  # the face the carriage zero stands on
        "position": "Position",
        "carriage-set": "Set carriage dial to",
        "carriage-turns": "Carriage turns",
        "carriage-reading": "Carriage dial",
        "carriage-more": "and by the indicator",  # what the carriage dial can't show, signed: "+.001", "0"
        "carriage-approach": "Carriage comes from",  # always "the tailstock side"
        "touch-diameter": "Touches on",
        "cross-set": "Set cross-slide dial to",
        "cross-turns": "Cross-slide turns",
        "cross-reading": "Cross-slide dial",
        "cross-approach": "Cross-slide comes from",  # "outside" takes up the backlash, "inside" does not
        "compound-set": "Set compound dial to",
        "compound-turns": "Compound turns",
        "compound-reading": "Compound dial",
        "compound-approach": "Compound comes from",  # "outside" as for the cross-slide
        "zero-diameter": "Dial zero is",  # the diameter at which the dial just set will read zero
        "zero-pass": "Finish at zero number",  # the how-manieth zero after setting is finish size ("3")
        "left-to-go": "Left on the diameter",
        "diameter": "Diameter",  # what the work measures after this line
        "face-out-to": "Face out to",  # diameter to which the shoulder is faced at the end of the cut
        "limits": "Limits",  # "1.3125 / 1.3120"
        "drill": "Centre drill",  # its name in the shop file
        "mouth": "Mouth diameter",
        "depth": "Depth",
        "corner-diameter": "Corner on",
        "size": "Chamfer",  # leg of the 45° chamfer
    }
)
"""Every field a line may have, with its words on paper."""

_CUT = (
    "from-face",
    "position",
    "carriage-turns",
    "carriage-reading",
    "carriage-more",
    "carriage-approach",
    "speed",
    "feed",
)
_CROSS = ("cross-turns", "cross-reading", "cross-approach")
_COMPOUND = ("compound-turns", "compound-reading", "compound-approach")

MOTIONS: Mapping[str, tuple[tuple[str, ...], tuple[str, ...]]] = MappingProxyType(
    {
        # motion: (fields it must have, fields it may have)
        "hold": (("holding", "end-out", "grip-on", "grip-diameter", "grip-length", "stick-out"), ()),
        "saw": (("from-face", "saw-length"), ()),
        "swing": (("scale-reads", "from-axis", "way"), ()),
        "mount": (("tool",), ()),
        # the tool just touches the end of the work: the carriage dial's ring is set
        "touch-face": (("from-face", "carriage-set"), ("position",)),
        # the end is faced from outside to the centre at this carriage reading
        "face": (
            ("carriage-turns", "carriage-reading", "carriage-more", "carriage-approach", "speed", "feed"),
            (),
        ),
        "centre": (("drill", "mouth", "depth", "speed"), ()),
        "support": (("holding",), ()),
        # the tool just touches the outside: the cross-slide dial's ring is set so that zero-diameter reads zero
        "touch": (
            ("touch-diameter", "from-face", "position", "cross-set", "zero-diameter", "zero-pass", "speed"),
            (),
        ),
        # one pass towards the headstock, ending at position; then faced out or withdrawn
        "turn": ((*_CUT, "diameter", "left-to-go"), (*_CROSS, *_COMPOUND, "face-out-to")),
        # the work is measured with the tool left at its last reading; rings may be set so that zero-diameter reads zero
        "measure": (
            ("diameter", "from-face", "position", "limits"),
            ("cross-set", "compound-set", "zero-diameter", "zero-pass"),
        ),
        # the 45° edge touches the corner, the carriage dial is set, then goes on by the chamfer's leg
        "chamfer": (
            (
                "from-face",
                "position",
                "corner-diameter",
                "size",
                "carriage-set",
                "carriage-turns",
                "carriage-reading",
                "carriage-more",
                "carriage-approach",
                "speed",
            ),
            (),
        ),
        # what this sheet does not plan yet, and what stands there meanwhile
        "leave": (("from-face", "position"), ("size",)),
    }
)
"""The closed set of motions: fields each must have and may have."""


@frozen
class Line:
    """One printed line: `number` on the sheet, its motion, the feature it serves, a sentence to follow, the values.

    Raises HandwheelError where a motion is unknown or a field is missing, foreign or empty.
    """

    number: str
    motion: str
    feature: str
    instruction: str
    values: dict[str, str]
    cautions: tuple[str, ...] = ()

    def __attrs_post_init__(self) -> None:
        """Refuse a line its motion does not allow."""
        if self.motion not in MOTIONS:
            raise HandwheelError(f"line {self.number}: {self.motion!r} is no motion; it can be {', '.join(MOTIONS)}")
        must, may = MOTIONS[self.motion]
        for name in must:
            if not self.values.get(name, "").strip():
                raise HandwheelError(f"line {self.number} ({self.motion}): {FIELDS[name]!r} is empty; fill it in")
        for name in self.values:
            if name not in must and name not in may:
                raise HandwheelError(f"line {self.number} ({self.motion}): a field {name!r} has no place here")


@frozen
class Sheet:
    """A bench sheet as printed: its number, the units of its sizes, the lathe it is for, and its lines in order.

    `blank_diameter` and `blank_length` are the bar as it comes from the saw; `far_end` and `datum_end` are what the
    part calls its two ends. All are printed strings.
    """

    number: str
    units: str
    part: str
    lathe: str
    datum_end: str
    far_end: str
    blank_diameter: str
    blank_length: str
    lines: tuple[Line, ...]
