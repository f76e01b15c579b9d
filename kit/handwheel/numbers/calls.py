"""Calls that hold more than one number: sizes with limits, and threads."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction

from handwheel.numbers import units
from handwheel.numbers.faults import ReadingError
from handwheel.numbers.typed import Typed, clip, place, plain_decimal, read, tidy

_FIGURE = r"(?:\d+/\d+|\d+(?:\.\d*|,\d+)?|\.\d+)"
_DEVIATION = rf"[+-]\s?{_FIGURE}"
_UNIT = r"mm|in|\""
_TWO_DEVIATIONS = re.compile(
    rf"(?P<size>.*?[\d.\"'a-z])\s*(?P<first>{_DEVIATION}|(?<=\s)0)"
    rf"(?:\s*/\s*|\s+|\s*,\s+)(?P<second>{_DEVIATION}|0)\s*(?P<unit>{_UNIT})?"
)
_PLUS_MINUS = re.compile(rf"(?P<size>.*?)\s*(?:±|\+/-|\+-)\s*(?P<amount>{_FIGURE})\s*(?P<unit>{_UNIT})?")
_TWO_LIMITS = re.compile(rf"(?P<high>[\d.]+)\s*(?:/|\bto\b)\s*(?P<low>[\d.]+)\s*(?P<unit>{_UNIT})?")
_OWN_UNIT = re.compile(rf"(?<=[\d. ])({_UNIT})$")

LIMITS_EXAMPLE = "1.000 +.000 -.002, 1.250 ±.003 or 1.3125/1.3120"
THREAD_EXAMPLE = "3/4-16 UNF-2A LH or M20x1.5-6g"


@dataclass(frozen=True, slots=True)
class Limits:
    """A size with its limits as typed; the deviations are in the nominal size's unit."""

    typed: str
    nominal: Typed
    upper: Fraction
    lower: Fraction

    @property
    def maximum(self) -> float:
        """The upper limit, mm."""
        return units.to_inside(self.nominal.exact + self.upper, self.nominal.unit, "length")

    @property
    def minimum(self) -> float:
        """The lower limit, mm."""
        return units.to_inside(self.nominal.exact + self.lower, self.nominal.unit, "length")

    @property
    def middle(self) -> float:
        """The middle of the limits, mm."""
        exact = self.nominal.exact + (self.upper + self.lower) / 2
        return units.to_inside(exact, self.nominal.unit, "length")

    @property
    def tolerance(self) -> float:
        """Upper less lower limit, mm."""
        return units.to_inside(self.upper - self.lower, self.nominal.unit, "length")

    def echo(self) -> str:
        """Return what was read: `1.25 in, from 1.247 to 1.253`."""
        low, high = (plain_decimal(self.nominal.exact + each) for each in (self.lower, self.upper))
        return f"{plain_decimal(self.nominal.exact)} {self.nominal.unit}, from {low} to {high}"


@dataclass(frozen=True, slots=True)
class ThreadCall:
    """A thread as called on a drawing; a pitch typed as threads per inch keeps that unit."""

    typed: str
    diameter: Typed
    pitch: Typed
    series: str
    thread_class: str
    left_hand: bool
    starts: int


def read_limits(text: str, system: str = "in", default: str | None = None, name: str = "") -> Limits:
    """Read a size with its limits; a bare size takes the limits of `default`, such as `±.010`.

    Raises:
        ReadingError: no size with limits; one sentence says why and what would be right.

    >>> limits = read_limits("1.000 +.000 -.002")
    >>> float(limits.nominal.exact + limits.upper), float(limits.nominal.exact + limits.lower)
    (1.0, 0.998)
    >>> round(read_limits("35 +.018 +.002 mm").maximum, 3)
    35.018
    """
    cleaned = tidy("length", text, name)
    if match := _PLUS_MINUS.fullmatch(cleaned):
        size, unit = match["size"], match["unit"]
        first, second = "+" + match["amount"], "-" + match["amount"]
    elif match := _TWO_DEVIATIONS.fullmatch(cleaned):
        size, unit = match["size"], match["unit"]
        first, second = match["first"], match["second"]
    elif (match := _TWO_LIMITS.fullmatch(cleaned)) and "." in match["high"] and "." in match["low"]:
        return _from_two_limits(text, match, system, name)
    elif default is not None:
        return _with_default(text, read("length", cleaned, system, name), default, system, name)
    else:
        if not re.search(r"[+±]|.-", cleaned):
            read("length", cleaned, system, name)  # what is no size at all is refused as that
        raise _refusal(text, name, "no limits are typed with it")
    own = _OWN_UNIT.search(size.strip())
    if own and unit and units.find("length", own[1]) == units.find("length", unit):
        unit = None  # the same unit named twice
    nominal = read("length", f"{size} {unit}" if unit else size, system, name)
    upper, lower = (
        read("length", f"{each.replace(' ', '')} {unit or (own[1] if own else '')}".strip(), system, name).exact
        for each in (first, second)
    )
    if upper < lower:
        raise _refusal(text, name, "the upper limit stands first")
    if nominal.exact + lower <= 0:
        raise _refusal(text, name, "a size must stay more than 0")
    return Limits(text, nominal, upper, lower)


def is_zero(text: str, system: str = "in") -> bool:
    """Return whether a length is typed as nothing at all: where a datum face itself stands.

    >>> is_zero("0"), is_zero("0.5")
    (True, False)
    """
    try:
        return read("length", text, system).exact == 0
    except ReadingError:
        return False


def exactly_zero(text: str, system: str = "in") -> Limits:
    """Return a station at the datum face: no size, and no limits to it."""
    return Limits(text, read("length", text, system), Fraction(0), Fraction(0))


def _from_two_limits(text: str, match: re.Match[str], system: str, name: str) -> Limits:
    unit = f" {match['unit']}" if match["unit"] else ""
    high, low = (read("length", match[each] + unit, system, name) for each in ("high", "low"))
    if high.exact < low.exact:
        high, low = low, high
    if low.exact <= 0 or low.exact * 2 < high.exact:
        raise _refusal(text, name, "its two limits lie too far apart to be one size")
    return Limits(text, high, Fraction(0), low.exact - high.exact)


def _with_default(text: str, nominal: Typed, default: str, system: str, name: str) -> Limits:
    """Give a bare size the usual limits of its drawing, which are in the drawing's unit whatever the size's own is."""
    try:
        one = read_limits(f"1000 {default}", system)  # a size that carries any limits a drawing has
    except ReadingError as fault:
        raise _refusal(text, name, f"its usual limits {clip(default)!r} are none themselves") from fault
    here, there = units.find("length", nominal.unit), units.find("length", one.nominal.unit)
    assert here is not None
    assert there is not None
    upper, lower = (deviation * there.factor / here.factor for deviation in (one.upper, one.lower))
    if nominal.exact + lower <= 0:
        raise _refusal(text, name, "a size must stay more than 0")
    return Limits(text, nominal, upper, lower)


def _refusal(text: str, name: str, why: str) -> ReadingError:
    return ReadingError(f"{place(name)}{clip(text)!r} can't be read as limits: {why}; type {LIMITS_EXAMPLE}")


_THREAD = re.compile(
    r"(?P<metric>M)?(?P<size>\d+[ -]\d+/\d+|[\d./]+)(?P<sep>-|[xX])(?P<pitch>[\d./,]+)"
    r"(?:\s+(?P<series>UNRC|UNRF|UNEF|UNC|UNF|UNS|UN))?(?:\s*-\s*(?:(?P<inch>[1-3][AB])|(?P<iso>[3-9](?:[e-h]|[GH])(?:[3-9][e-hGH])?)))?"
    r"(?:\s*-?\s*(?P<hand>LH|RH))?",
)  # fmt: skip


def read_thread(text: str, system: str = "in", name: str = "") -> ThreadCall:
    """Read a thread call: `3/4-16 UNF-2A LH`, `M20x1.5-6g`.

    Raises:
        ReadingError: no thread call; one sentence says why and what would be right.

    >>> call = read_thread("3/4-16 UNF-2A LH")
    >>> call.diameter.value, call.pitch.value, call.series, call.thread_class, call.left_hand
    (19.05, 1.5875, 'UNF', '2A', True)
    """
    cleaned = tidy("length", text, name)
    match = _THREAD.fullmatch(cleaned)
    if match is None or bool(match["metric"]) != (match["sep"] in "xX"):
        raise ReadingError(
            f"{place(name)}{clip(text)!r} can't be read as a thread: it needs a diameter and a pitch; "
            f"type {THREAD_EXAMPLE}"
        )
    if match["inch" if match["metric"] else "iso"]:
        raise ReadingError(
            f"{place(name)}{clip(text)!r} can't be read as a thread: an inch thread has a class such as "
            f"2A, a metric one such as 6g; type {THREAD_EXAMPLE}"
        )
    if match["metric"]:
        diameter = read("length", match["size"] + " mm", system, name)
        pitch = read("pitch", match["pitch"] + " mm", system, name)
    else:
        diameter = read("length", match["size"] + " in", system, name)
        pitch = read("pitch", match["pitch"] + " tpi", system, name)
    if not match["metric"] and re.fullmatch(r"\d|1[0-2]", match["size"]) and pitch.exact >= 24:
        raise ReadingError(
            f"{place(name)}{clip(text)!r} can't be read as a thread: a numbered screw size is typed by its diameter; "
            "type .190-32 UNF"
        )
    if diameter.exact <= 0 or pitch.exact <= 0 or pitch.value >= diameter.value / 2:
        raise ReadingError(
            f"{place(name)}{clip(text)!r} can't be read as a thread: that pitch does not go with that "
            f"diameter; type {THREAD_EXAMPLE}"
        )
    return ThreadCall(
        text, diameter, pitch, match["series"] or ("M" if match["metric"] else "UN"),
        match["inch"] or match["iso"] or "", match["hand"] == "LH", 1,
    )  # fmt: skip
