"""Printed strings and dial numbers edited as strings: with as many places and the same tail as before."""

from __future__ import annotations

import re
from decimal import Decimal

from attrs import evolve

from handwheel.plan.lines import Line, Sheet
from handwheel.shop.values import Dial, Shop

INCH = 25.4


def number(text: str) -> Decimal:
    """The number a bare printed string begins with."""
    match = re.match(r"[+−-]?\d*\.?\d+", text.strip())
    assert match, text
    return Decimal(match[0].replace("−", "-"))


def printed(amount: Decimal | float, like: str) -> str:
    """An amount printed as `like` is: as many places, with or without the leading zero, the same tail."""
    match = re.match(r"([+−-]?)(\d*)\.?(\d*)(.*)$", like.strip())
    assert match, like
    places = len(match[3])
    text = f"{Decimal(amount):.{places}f}"
    if not match[2]:
        text = text.replace("0.", ".", 1) if text.lstrip("-").startswith("0.") else text
    if match[1] == "+" and not text.startswith("-"):
        text = "+" + text
    return text + match[4]


def edited(sheet: Sheet, line: Line, **values: str | None) -> Sheet:
    """The sheet with fields of one line printed otherwise, or left out where None."""
    new = {**line.values, **{name.replace("_", "-"): text for name, text in values.items()}}
    kept = evolve(line, values={name: text for name, text in new.items() if text is not None})
    return evolve(sheet, lines=tuple(kept if other is line else other for other in sheet.lines))


def dials(shop: Shop) -> dict[str, Dial]:
    lathe = shop.lathe
    return {"cross": lathe.cross_slide, "compound": lathe.compound.dial, "carriage": lathe.carriage}


def in_marks(dial: Dial, mm: float) -> Decimal:
    """A marked amount (mm) in the dial's own unit, to its nearest mark."""
    unit = INCH if dial.system == "in" else 1.0
    marks = Decimal(round(mm / dial.division))
    return marks * Decimal(str(round(dial.division / unit, 6)))


def per_turn(dial: Dial) -> Decimal:
    return in_marks(dial, dial.per_turn)


def sheet_units_in(dial: Dial, sheet: Sheet) -> Decimal:
    """How many of the dial's units one unit of the sheet is."""
    if dial.system == sheet.units:
        return Decimal(1)
    return Decimal("25.4") if sheet.units == "in" else 1 / Decimal("25.4")


def carriage_to(sheet: Sheet, shop: Shop, line: Line, delta: Decimal) -> dict[str, str]:
    """The line's carriage numbers moved on by whole marks near `delta` (sheet units) inwards."""
    dial = dials(shop)["carriage"]
    turn = per_turn(dial)
    mark = in_marks(dial, dial.division)
    moved = round(delta * sheet_units_in(dial, sheet) / mark) * mark
    total = int(line.values["carriage-turns"]) * turn + number(line.values["carriage-reading"]) + moved
    turns, reading = divmod(total, turn)
    return {
        "carriage_turns": str(int(turns)),
        "carriage_reading": printed(reading, line.values["carriage-reading"]),
        "position": printed(
            number(line.values["position"]) + moved / sheet_units_in(dial, sheet), line.values["position"]
        ),
    }
