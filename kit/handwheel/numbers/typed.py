"""What people type at the bench, read by kind: one closed grammar, a right value or one sentence.

The caller names the kind; nothing is guessed between kinds. Whatever was typed is kept, with its exact
value and its unit.
"""

from __future__ import annotations

import re
from collections.abc import Iterable
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from handwheel.numbers import units
from handwheel.numbers.faults import ReadingError

LONGEST = 60
"""The longest text read, in characters; no size is longer."""

EXAMPLES = {
    "length": "1-3/8, .8745 or 25 mm", "angle": "2.87", "cutting_speed": "90 sfm or 25 m/min",
    "feed": ".004 in/rev or 0.1 mm/rev", "spindle_speed": "360 rev/min", "temperature": "45 C",
    "force": "120 N or 60 lbf", "stress": "30e6 psi or 1700 MPa", "specific_force": "1700 MPa",
    "power": "2 hp or 1.5 kW",
    "torque": "20 N·m", "mass": "8 lb or 3.6 kg", "density": "7850 kg/m³ or .284 lb/in³",
    "expansion": "11.5e-6", "roughness": "32 µin or 0.8 µm", "time": "25 min", "number": ".25",
    "ratio": "1:10", "taper": "1.5 in/ft or 1:8", "pitch": "16 tpi or 1.5 mm", "diameter": "1.3125 or 35 mm",
}  # fmt: skip
"""Typed text that is right, by kind: what a refusal shows."""

_VULGAR = {
    "½": (1, 2), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8), "⅓": (1, 3),
    "⅔": (2, 3), "⅕": (1, 5), "⅖": (2, 5), "⅗": (3, 5), "⅘": (4, 5), "⅙": (1, 6), "⅚": (5, 6),
}  # fmt: skip
_DECIMAL = r"(?:\d+\.\d*|\.\d+|\d+)(?:[eE][+-]?\d{1,2})?"
_GLYPHS = "".join(_VULGAR)
_HOURS = re.compile(r"(\d+) ?h (\d+) ?min", re.ASCII)
_DECIMAL_COMMA = r"\d+,\d+"
_FRACTION = r"(?:(?P<whole>\d+)(?:-|\s+))?(?P<over>\d+)/(?P<under>\d+)"
_AMOUNT = re.compile(
    rf"(?P<sign>[+-]?)(?:(?P<comma>{_DECIMAL_COMMA})|{_FRACTION}|(?P<decimal>{_DECIMAL}))(?P<unit>.*)", re.ASCII
)


@dataclass(frozen=True, slots=True)
class Typed:
    """A value as typed: its kind, the text, its exact amount and the unit it was typed in."""

    kind: str
    typed: str
    exact: Fraction
    unit: str

    @property
    def value(self) -> float:
        """The value in the kit's inside unit."""
        if self.kind == "pitch" and self.unit == "tpi":
            return float(units.INCH / self.exact)
        return units.to_inside(self.exact, self.unit, self.kind)

    def echo(self) -> str:
        """Return what was read, so that a person sees it: `2-5/8 in = 2.625 in`."""
        unit = "" if self.unit == "1" else f" {self.unit}"
        read = f"{plain_decimal(self.exact)}{unit}"
        typed = " ".join(self.typed.split())
        bare = re.fullmatch(r"[\d.,+/⁄½¼¾⅛⅜⅝⅞⅓⅔⅕⅖⅗⅘⅙⅚ −–‒\-]+", typed)
        said = f"{typed}{unit}" if bare else typed
        return read if _same_words(said, read) else f"{said} = {read}"


def read(kind: str, text: str, system: str = "in", name: str = "") -> Typed:
    """Read typed text as one value of a kind; a bare number has the unit of `system`.

    Raises:
        ReadingError: the text is no such value; one sentence says why and what would be right.

    >>> read("length", "2 5/8 in").echo()
    '2 5/8 in = 2.625 in'
    >>> read("length", "25,4 mm").value
    25.4
    >>> read("taper", "1:8").value
    0.125
    """
    if kind not in EXAMPLES:
        raise ReadingError(f"{place(name)}there is no kind of value {kind!r}; there are {', '.join(EXAMPLES)}")
    cleaned = tidy(kind, text, name)
    if kind in ("ratio", "taper") and ":" in cleaned:
        one, _, other = cleaned.partition(":")
        left, right = (_bare(kind, side, text, name) for side in (one, other))
        if right == 0:
            raise _refusal(kind, text, name, "nothing can be divided by zero")
        return Typed(kind, text, left / right, "1")
    if kind == "taper":
        return _read_taper(text, cleaned, system, name)
    if kind == "time" and (match := _HOURS.fullmatch(cleaned)) and int(match[2]) < 60:
        return Typed(kind, text, Fraction(60 * int(match[1]) + int(match[2])), "min")
    if kind == "pitch" and (match := re.fullmatch(r"(.*?)\s*(?:tpi|TPI)", cleaned)):
        threads = _bare(kind, match[1], text, name)
        if threads <= 0:
            raise _refusal(kind, text, name, "threads per inch must be more than 0")
        return Typed(kind, text, threads, "tpi")
    amount, unit = _amount(kind, cleaned, text, name)
    if kind == "pitch" and amount <= 0:
        raise _refusal(kind, text, name, "a pitch must be more than 0")
    if not unit and kind == "pitch" and system == "in":
        raise _refusal(kind, text, name, "it may be threads to the inch or a length")
    if not unit:
        return Typed(kind, text, amount, units.bare_unit(kind, system))
    found = units.find(kind, unit)
    if found is None or found.symbol == "1":
        known = ", ".join(units.spellings(kind))
        why = f"{clip(unit)!r} is no unit of it" + (f" (known: {known})" if known else "; give a bare number")
        raise _refusal(kind, text, name, why)
    return Typed(kind, text, amount, found.symbol)


def read_list(kind: str, text: str, system: str = "in", name: str = "") -> tuple[Typed, ...]:
    """Read values of one kind with commas between; a list typed with decimal commas is refused.

    >>> [each.value for each in read_list("spindle_speed", "45, 70, 105")]
    [45.0, 70.0, 105.0]
    """
    cleaned = tidy(kind, text, name, longest=20 * LONGEST)
    if re.search(r"\d,\d", cleaned) and re.search(r"[A-Za-zµ°]", cleaned):
        raise _refusal(kind, text, name, "a comma between digits may be a decimal sign; put a space after each comma")
    if units.bare_unit(kind, system) not in ("1", "rev/min") and re.search(r"(?<![\d./])\d+,\d+(?![\d./])", cleaned):
        raise _refusal(kind, text, name, "a comma between digits may be a decimal sign; put a space after each comma")
    items = cleaned.split(",")
    if not all(item.strip() for item in items):
        raise _refusal(kind, text, name, "a list has one value between two commas")
    typed = tuple(read(kind, item.strip(), system, name) for item in items)
    if len({bool(re.search(r"[A-Za-zµ°]", item)) for item in items}) > 1:
        raise _refusal(kind, text, name, "some have a unit and some have none; give each its unit, or none")
    return typed


def read_count(text: str, name: str = "") -> int:
    """Read a whole number, 0 or more.

    >>> read_count(" 24 ")
    24
    """
    stripped = text.strip() if isinstance(text, str) else ""
    if not re.fullmatch(r"[0-9]{1,9}", stripped):
        raise ReadingError(f"{place(name)}{clip(str(text))!r} is no whole number; type one such as 24")
    return int(stripped)


def read_choice(text: str, choices: Iterable[str], name: str = "") -> str:
    """Read one word of a closed list.

    >>> read_choice("Travel", ("travel", "diameter"))
    'travel'
    """
    allowed = tuple(choices)
    for choice in allowed:
        if str(text).strip().casefold() == choice.casefold():
            return choice
    raise ReadingError(f"{place(name)}{clip(str(text))!r} is none of the choices; it can be {', '.join(allowed)}")


def plain_decimal(exact: Fraction) -> str:
    """Return an exact amount as a decimal, to at most ten places where it does not end sooner.

    >>> plain_decimal(Fraction(21, 8)), plain_decimal(Fraction(1, 3)), plain_decimal(Fraction(30_000_000))
    ('2.625', '0.3333333333', '30000000')
    """
    if exact and abs(exact) < Fraction(1, 1000):
        return f"{float(exact):.6g}"
    text = f"{Decimal(exact.numerator) / Decimal(exact.denominator):.10f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def _same_words(said: str, read: str) -> bool:
    return said.replace(" ", "") in (read.replace(" ", ""), read.replace(" ", "").removeprefix("0"))


def _read_taper(text: str, cleaned: str, system: str, name: str) -> Typed:
    """A taper in diameter per length: `1/8 in/ft`; `1.5` alone is inches per foot in the inch system."""
    amount, unit = _amount("taper", cleaned, text, name)
    symbol = unit or units.bare_unit("taper", system)
    found = units.find("taper", symbol) if symbol != "1" else None
    if symbol == "1":
        return Typed("taper", text, amount, "1")
    if found is None:
        raise _refusal("taper", text, name, f"{clip(unit)!r} is no unit of a taper")
    return Typed("taper", text, amount, found.symbol)


def tidy(kind: str, text: str, name: str, longest: int = LONGEST) -> str:
    """Return the text with the trade's signs in one spelling, or refuse it."""
    if not isinstance(text, str):
        raise ReadingError(f"{place(name)}{text!r} is not typed text; type {EXAMPLES.get(kind, 'a value')}")
    if len(text) > longest:
        raise ReadingError(
            f"{place(name)}{clip(text)!r} is longer than {longest} characters; type {EXAMPLES.get(kind, 'a value')}"
        )
    cleaned = re.sub(r"[\u00a0\u2007\u2009\u202f\t ]+", " ", text).strip()
    # A true minus between two figures is a subtraction, not the hyphen of 1-3/8: it stays, and is refused.
    cleaned = re.sub(r"(?<![\d.])−|−(?![\d.])", "-", cleaned, flags=re.ASCII).replace("–", "-").replace("‒", "-")
    for over, under in re.findall(r"(\d+)⁄(\d+)", cleaned, re.ASCII):
        if int(over) >= int(under):  # text copied from 1⅜ may arrive as 13⁄8, which is another number
            raise _refusal(kind, text, name, f"{over}⁄{under} may be a mixed number that lost its space")
    cleaned = cleaned.replace("⁄", "/").replace("×", "x").replace("″", '"').replace("”", '"').replace("′", "'")
    for glyph, (over, under) in _VULGAR.items():
        alone = rf"{glyph}(?![\d.,/{_GLYPHS}])"  # 1½2 is no number
        cleaned = re.sub(rf"(?<=\d)[ -]?{alone}", f"-{over}/{under}", cleaned)
        cleaned = re.sub(rf"(?<![\d.,/]){alone}", f"{over}/{under}", cleaned)
    if not cleaned:
        raise ReadingError(f"{place(name)}nothing is typed; type {EXAMPLES.get(kind, 'a value')}")
    return cleaned


def _bare(kind: str, cleaned: str, text: str, name: str) -> Fraction:
    amount, unit = _amount(kind, cleaned.strip(), text, name)
    if unit:
        raise _refusal(kind, text, name, f"{clip(unit)!r} has no place in it")
    return amount


def _amount(kind: str, cleaned: str, text: str, name: str) -> tuple[Fraction, str]:
    """Split off the number that a text starts with; return it exactly, and the rest as the unit."""
    match = _AMOUNT.fullmatch(cleaned)
    if match is None:
        raise _refusal(kind, text, name, "it is no number")
    unit = match["unit"].strip()
    if "," in match["unit"] or (match["comma"] and not _is_metric(kind, unit)):
        raise _refusal(kind, text, name, "a comma is read as a decimal sign only once and with a metric unit")
    if unit[:1].isdigit() or (unit[:1] in (".", "+", "-", "/") and units.find(kind, unit) is None):
        raise _refusal(kind, text, name, f"{clip(unit)!r} after the number makes no sense")
    sign = -1 if match["sign"] == "-" else 1
    if match["comma"]:
        return sign * Fraction(match["comma"].replace(",", ".")), unit
    if match["under"]:
        over, under, whole = int(match["over"]), int(match["under"]), int(match["whole"] or 0)
        if under == 0:
            raise _refusal(kind, text, name, "nothing can be divided by zero")
        if match["whole"] and over >= under:
            raise _refusal(kind, text, name, f"{over}/{under} is no part of an inch after a whole number")
        return sign * (whole + Fraction(over, under)), unit
    return sign * Fraction(match["decimal"]), unit


def _is_metric(kind: str, unit: str) -> bool:
    found = units.find(kind, unit)
    return found is not None and found.symbol in (
        "mm", "cm", "m", "m/min", "mm/rev", "N", "kN", "MPa", "GPa", "kW", "W", "N·m", "kg", "kg/m³", "g/cm³",
        "µm", "mm/m", "°C",
    )  # fmt: skip


def _refusal(kind: str, text: str, name: str, why: str) -> ReadingError:
    words = kind.replace("_", " ")
    article = "an" if words[0] in "aeiou" else "a"
    return ReadingError(f"{place(name)}{clip(text)!r} can't be read as {article} {words}: {why}; type {EXAMPLES[kind]}")


def place(name: str) -> str:
    """Return the start of a refusal: the field it is about, where it has a name."""
    return f"{name}: " if name else ""


def clip(text: str) -> str:
    """Return typed text, cut short where it is too long to repeat."""
    return text if len(text) <= LONGEST else text[:40] + "…"
