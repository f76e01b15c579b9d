"""A line's printed strings read back: sizes in mm half of their last printed place, counts, words."""

from __future__ import annotations

import re
from collections.abc import Mapping
from functools import lru_cache
from types import MappingProxyType

from attrs import field, frozen

from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.reading import Typed, read, read_choice, read_count, read_limits
from handwheel.numbers.units import to_inside
from handwheel.plan.lines import FIELDS, Line
from handwheel.shop.values import Dial, Lathe, System

CHOICES: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "holding": ("chuck", "chuck and centre"),
        "cross-approach": ("outside", "inside"),
        "compound-approach": ("outside", "inside"),
        "carriage-approach": ("the tailstock side", "the headstock side"),
    }
)
"""The fields that say one of a few things."""

_COUNTS = frozenset({"cross-turns", "compound-turns", "carriage-turns", "zero-pass"})
_WORDS = frozenset({"end-out", "grip-on", "tool", "way", "from-face", "drill"})
_KINDS = {"scale-reads": "angle", "from-axis": "angle", "speed": "spindle_speed", "feed": "feed"}
_FREE = frozenset({("leave", "size"), ("feed", "by hand")})
_DIAL_PLACES = ("-set", "-reading")
BY_HAND = "by hand"


@frozen
class Size:
    """A printed size: its value (inside unit), half of its last printed place, and the text."""

    value: float
    half_place: float
    text: str


@frozen
class LineRead:
    """A line read back, with a sentence for each string that could not be read."""

    sizes: Mapping[str, Size]
    counts: Mapping[str, int]
    words: Mapping[str, str]
    limits: tuple[float, float] | None
    unread: tuple[tuple[str, str], ...] = field(default=())


@lru_cache(maxsize=4096)  # a sheet prints the same numbers again and again
def size(kind: str, text: str, system: System, name: str) -> Size:
    """Read one printed size of a kind; bare numbers are in `system`.

    Raises HandwheelError where the text is no such size.

    >>> size("length", ".0750", "in", "Position").value
    1.905
    """
    typed = read(kind, text, system, name)
    return Size(typed.value, _half_place(typed), text)


def _half_place(typed: Typed) -> float:
    """Return half of the last printed place, inside unit: a printed size is only that sure."""
    places = re.search(r"[.,](\d+)", typed.typed)
    step = to_inside(0.5 * 10.0 ** -len(places.group(1)), typed.unit, typed.kind) if places else 0.0
    return abs(step)


def dial_of(name: str, lathe: Lathe) -> Dial | None:
    """Return the dial whose marks a field's number is read in, or None for a size on the work."""
    if not name.endswith(_DIAL_PLACES):
        return None
    dials = {"cross": lathe.cross_slide, "compound": lathe.compound.dial, "carriage": lathe.carriage}
    return dials.get(name.partition("-")[0])


def read_line(line: Line, system: System, lathe: Lathe) -> LineRead:
    """Read a line's strings: sizes in the sheet's units, dial numbers in the dial's own marks."""
    sizes: dict[str, Size] = {}
    counts: dict[str, int] = {}
    words: dict[str, str] = {}
    limits: tuple[float, float] | None = None
    unread: list[tuple[str, str]] = []
    for name, text in line.values.items():
        words[name] = text.strip()
        title = FIELDS[name]
        try:
            if name in CHOICES:
                read_choice(text, CHOICES[name], title)
            elif name in _COUNTS:
                counts[name] = read_count(text, title)
            elif name == "limits":
                typed = read_limits(text, system, name=title)
                limits = (typed.minimum, typed.maximum)
            elif name in _WORDS or (line.motion, name) in _FREE or (name, words[name]) in _FREE:
                continue
            else:
                dial = dial_of(name, lathe)
                read_in: System = dial.system if dial else system
                sizes[name] = size(_KINDS.get(name, "length"), text, read_in, title)
                if dial:
                    _on_a_mark(name, sizes[name], dial)
        except HandwheelError as fault:
            unread.append((name, str(fault).rstrip(".")))
    return LineRead(sizes, counts, words, limits, tuple(unread))


def _on_a_mark(name: str, number: Size, dial: Dial) -> None:
    divisions = number.value / dial.division
    if number.value < 0 or number.value >= dial.per_turn * (1 - 1e-9):
        raise HandwheelError(f"{FIELDS[name]}: the dial has no number {number.text}, one turn of it is less")
    if abs(divisions - round(divisions)) > 1e-6:
        raise HandwheelError(f"{FIELDS[name]}: {number.text} lies between two marks of the dial")
