"""Calls that hold more than one number: sizes with limits, and threads."""

from __future__ import annotations

import re
from fractions import Fraction

from handwheel.numbers.faults import ReadingError
from handwheel.numbers.typed import Limits, ThreadCall, clip, place, read, tidy

_DEVIATION = r"[+-]\s?[\d./]+"
_TWO_DEVIATIONS = re.compile(
    rf"(?P<size>.*?[\d.\"'a-z])\s*(?P<first>{_DEVIATION}|(?<=\s)0)(?:\s*/\s*|\s+|\s*,\s+)(?P<second>{_DEVIATION}|0)\s*(?P<unit>mm|in|\")?"
)
_PLUS_MINUS = re.compile(r"(?P<size>.*?)\s*(?:±|\+/-|\+-)\s*(?P<amount>[\d./]+)\s*(?P<unit>mm|in|\")?")
_TWO_LIMITS = re.compile(r"(?P<high>[\d.]+)\s*(?:/|\bto\b)\s*(?P<low>[\d.]+)\s*(?P<unit>mm|in|\")?")

LIMITS_EXAMPLE = "1.000 +.000 -.002, 1.250 ±.003 or 1.3125/1.3120"
THREAD_EXAMPLE = "3/4-16 UNF-2A LH or M20x1.5-6g"


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
        read("length", cleaned, system, name)  # a size alone, or its own refusal
        return _with_text(read_limits(f"{cleaned} {default}", system, None, name), text)
    else:
        if not re.search(r"[+±]|.-", cleaned):
            read("length", cleaned, system, name)  # what is no size at all is refused as that
        raise _refusal(text, name, "no limits are typed with it")
    nominal = read("length", f"{size} {unit}" if unit else size, system, name)
    upper, lower = (read("number", each.replace(" ", ""), system, name).exact for each in (first, second))
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
    return Limits(text, high, Fraction(0), low.exact - high.exact)


def _with_text(limits: Limits, text: str) -> Limits:
    return Limits(text, limits.nominal, limits.upper, limits.lower)


def _refusal(text: str, name: str, why: str) -> ReadingError:
    return ReadingError(f"{place(name)}{clip(text)!r} can't be read as limits: {why}; type {LIMITS_EXAMPLE}")


_THREAD = re.compile(
    r"(?P<metric>M)?(?P<size>[\d./]+(?:-\d+/\d+)?)(?P<sep>-|x)(?P<pitch>[\d./]+)"
    r"(?:\s+(?P<series>UNRC|UNRF|UNEF|UNC|UNF|UNS|UN))?(?:\s*-\s*(?P<grade>\d[A-B]|\d[a-h](?:\d[a-h])?))?"
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
    if match is None or bool(match["metric"]) != (match["sep"] == "x"):
        raise ReadingError(
            f"{place(name)}{clip(text)!r} can't be read as a thread: it needs a diameter and a pitch; "
            f"type {THREAD_EXAMPLE}"
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
        text, diameter, pitch, match["series"] or ("M" if match["metric"] else "UN"), match["grade"] or "",
        match["hand"] == "LH", 1,
    )  # fmt: skip
