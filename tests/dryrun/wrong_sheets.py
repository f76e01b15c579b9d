"""Wrong sheets: a good sheet's printed strings, edited the way a hurried hand gets them wrong.

Each kind yields one wrong sheet for every line it can be done to. A wrong sheet says which lines may
rightly be named for it (`lines`), and whether it may turn out harmless: kinds that contradict something
printed or the machine's lists never may.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from decimal import Decimal

from attrs import evolve

from handwheel.dryrun.report import Finding
from handwheel.plan.lines import Line, Sheet
from handwheel.shop.values import Dial, Shop

INCH = 25.4
CUTS = ("turn", "face", "chamfer")


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


# printed strings


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


# the kinds


def radius_for_diameter(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The cross-slide's ring set as if its dial read the other of travel and diameter."""
    dial = dials(shop)["cross"]
    for line in lines_with(sheet, "touch", "measure"):
        if "cross-set" not in line.values:
            continue
        measured = line.values.get("touch-diameter") or line.values["diameter"]
        off = (number(measured) - number(line.values["zero-diameter"])) * sheet_units_in(dial, sheet)
        wrong = off if dial.reads == "travel" else off / 2
        ring = printed((-wrong) % per_turn(dial), line.values["cross-set"])
        if ring != line.values["cross-set"] and number(ring) < per_turn(dial):
            yield Wrong(edited(sheet, line, cross_set=ring), line.number, only(line))


def _turns(sheet: Sheet, name: str, by: int) -> Iterator[Wrong]:
    for line in sheet.lines:
        turns = int(line.values.get(f"{name}-turns", "-1"))
        if turns >= 0 and turns + by >= 0:
            wrong = {f"{name}_turns": str(turns + by)}
            yield Wrong(edited(sheet, line, **wrong), line.number, only(line))


def a_turn_too_many(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """One turn too many of the cross-slide or the compound."""
    yield from _turns(sheet, "cross", 1)
    yield from _turns(sheet, "compound", 1)


def a_turn_too_few(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """One turn too few of the cross-slide or the compound."""
    yield from _turns(sheet, "cross", -1)
    yield from _turns(sheet, "compound", -1)


def carriage_turn_miscounted(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A turn of the carriage handwheel too many or too few."""
    yield from _turns(sheet, "carriage", 1)
    yield from _turns(sheet, "carriage", -1)


def _shoulder(sheet: Sheet, shop: Shop, inches: str) -> Iterator[Wrong]:
    delta = Decimal(inches) * (1 if sheet.units == "in" else Decimal("25.4"))
    for line in lines_with(sheet, "turn"):
        if number(line.values["position"]) + delta > 0:
            sheet_now = edited(sheet, line, **carriage_to(sheet, shop, line, delta))
            yield Wrong(sheet_now, line.number, same_feature_or_after(sheet, line), may_be_harmless=True)


def past_the_shoulder(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The carriage goes .100 past the shoulder, position and dial printed alike."""
    yield from _shoulder(sheet, shop, ".100")


def short_of_the_shoulder(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The carriage stops .100 short of the shoulder, position and dial printed alike."""
    yield from _shoulder(sheet, shop, "-.100")


def wrong_side(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The cross-slide or the compound comes from the inside, the carriage from the headstock side."""
    sides = {"cross": "inside", "compound": "inside", "carriage": "the headstock side"}
    for line in sheet.lines:
        for name, side in sides.items():
            if f"{name}-approach" in line.values:
                yield Wrong(edited(sheet, line, **{f"{name}_approach": side}), line.number, only(line))


def other_zero_of_the_scale(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The compound set by a scale whose zero lies the other way."""
    for line in lines_with(sheet, "swing"):
        scale = printed(90 - number(line.values["scale-reads"]), line.values["scale-reads"])
        yield Wrong(edited(sheet, line, scale_reads=scale), line.number, only(line))


def fine_feed_dropped(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The whole fine feed by the compound left out of a cut."""
    for line in lines_with(sheet, "turn"):
        if "compound-reading" in line.values:
            gone = edited(sheet, line, compound_turns=None, compound_reading=None, compound_approach=None)
            yield Wrong(gone, line.number, only(line))


def walk_forgotten(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The compound's way along the axis not taken off the carriage: the dial goes to the full position."""
    for line in lines_with(sheet, "turn"):
        if "compound-reading" in line.values:
            there = carriage_to(sheet, shop, line, Decimal(0))
            dial = dials(shop)["carriage"]
            total = number(line.values["position"]) * sheet_units_in(dial, sheet)
            mark = in_marks(dial, dial.division)
            turns, reading = divmod(round(total / mark) * mark, per_turn(dial))
            there |= {
                "position": line.values["position"],
                "carriage_turns": str(int(turns)),
                "carriage_reading": printed(reading, line.values["carriage-reading"]),
                "carriage_more": "0",
            }
            yield Wrong(edited(sheet, line, **there), line.number, only(line))


def ring_on_the_wrong_diameter(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The ring set for 1/16 more than the work measures there, all else printed alike."""
    dial = dials(shop)["cross"]
    more = Decimal(".0625") if sheet.units == "in" else Decimal("1.6")
    for line in lines_with(sheet, "touch"):
        marks = more * sheet_units_in(dial, sheet) / (2 if dial.reads == "travel" else 1)
        total = number(line.values["cross-set"]) - round(marks / in_marks(dial, dial.division)) * in_marks(
            dial, dial.division
        )
        passes, ring = divmod(total, per_turn(dial))
        sheet_now = edited(
            sheet,
            line,
            touch_diameter=printed(number(line.values["touch-diameter"]) + more, line.values["touch-diameter"]),
            cross_set=printed(ring, line.values["cross-set"]),
            zero_pass=str(int(line.values["zero-pass"]) - int(passes)),
        )
        yield Wrong(sheet_now, line.number, only(line))


def line_left_out(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """One line left out."""
    for line in sheet.lines:
        gone = evolve(sheet, lines=tuple(other for other in sheet.lines if other is not line))
        near = same_feature_or_after(sheet, line) - only(line)
        yield Wrong(gone, line.number, near, may_be_harmless=True, feature=line.feature)


def lines_swapped(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A line and the next one in each other's place."""
    for place, (one, two) in enumerate(zip(sheet.lines, sheet.lines[1:], strict=False)):
        lines = (*sheet.lines[:place], two, one, *sheet.lines[place + 2 :])
        near = same_feature_or_after(sheet, one) | same_feature_or_after(sheet, two)
        yield Wrong(evolve(sheet, lines=lines), f"{one.number}/{two.number}", near, may_be_harmless=True)


def no_touch_after_a_tool_change(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """Neither face nor outside touched after a tool change: the old dial numbers are believed."""
    for place, mount in enumerate(sheet.lines):
        if mount.motion != "mount":
            continue
        rest = sheet.lines[place + 1 :]
        until = next((at for at, line in enumerate(rest) if line.motion in ("mount", "hold")), len(rest))
        gone = [line for line in rest[:until] if line.motion in ("touch-face", "touch")]
        if gone:
            kept = tuple(line for line in sheet.lines if not any(line is other for other in gone))
            yield Wrong(evolve(sheet, lines=kept), mount.number, after(sheet, mount) - only(mount))


def speed_off_the_list(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A spindle speed the lathe has not got."""
    for line in sheet.lines:
        if "speed" in line.values:
            text = line.values["speed"]
            yield Wrong(edited(sheet, line, speed=printed(number(text) + 7, text)), line.number, only(line))


def feed_off_the_list(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A feed the lathe has not got: a decimal point too far left."""
    for line in sheet.lines:
        text = line.values.get("feed", "by hand")
        if text != "by hand":
            amount = number(text)
            wrong = text.replace(text.split()[0], f"{amount * 10}")
            yield Wrong(edited(sheet, line, feed=wrong), line.number, only(line))


def chamfer_twice_the_size(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A chamfer twice as big, its size and the carriage printed alike."""
    dial = dials(shop)["carriage"]
    for line in lines_with(sheet, "chamfer"):
        size, more = number(line.values["size"]), number(line.values["carriage-more"])
        ring = number(line.values["carriage-set"])
        total = int(line.values["carriage-turns"]) * per_turn(dial) + number(line.values["carriage-reading"])
        turns, reading = divmod(2 * total - ring, per_turn(dial))
        sheet_now = edited(
            sheet,
            line,
            size=printed(2 * size, line.values["size"]),
            carriage_turns=str(int(turns)),
            carriage_reading=printed(reading, line.values["carriage-reading"]),
            carriage_more=printed(2 * more, line.values["carriage-more"]),
        )
        yield Wrong(sheet_now, line.number, only(line))


def stick_out_too_short(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """So little of the work standing out that the longest cut of the holding would end in the jaws."""
    for place, line in enumerate(sheet.lines):
        if line.motion != "hold":
            continue
        rest = sheet.lines[place + 1 :]
        until = next((at for at, later in enumerate(rest) if later.motion == "hold"), len(rest))
        cuts = [number(cut.values["position"]) for cut in rest[:until] if cut.motion == "turn"]
        if not cuts:
            continue  # held short, to face and centre drill
        shorter = edited(sheet, line, stick_out=printed(max(cuts) * Decimal(".9"), line.values["stick-out"]))
        yield Wrong(shorter, line.number, after(sheet, line))


def wrong_end_out(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The work held the other way round."""
    for line in lines_with(sheet, "hold"):
        other = sheet.far_end if line.values["end-out"] == sheet.datum_end else sheet.datum_end
        near = [later for later in sheet.lines if later.number in after(sheet, line)][:12]
        yield Wrong(edited(sheet, line, end_out=other), line.number, frozenset(later.number for later in near))


def saw_too_short(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """The saw cut so short that facing leaves less than the part."""
    less = Decimal(".2") if sheet.units == "in" else Decimal(5)
    for line in lines_with(sheet, "saw"):
        text = line.values["saw-length"]
        sawn = edited(sheet, line, saw_length=printed(number(text) - less, text))
        yield Wrong(sawn, line.number, after(sheet, line))


def number_for_the_other_kind_of_dial(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A cut's cross-slide number counted for a dial that reads the other of diameter and travel."""
    dial = dials(shop)["cross"]
    ring = Decimal(0)
    for line in sheet.lines:
        if "cross-set" in line.values:
            ring = number(line.values["cross-set"])
        if "cross-reading" not in line.values:
            continue
        total = int(line.values["cross-turns"]) * per_turn(dial) + number(line.values["cross-reading"])
        moved = (total - ring) * (2 if dial.reads == "travel" else Decimal("0.5"))
        mark = in_marks(dial, dial.division)
        turns, reading = divmod(ring + round(moved / mark) * mark, per_turn(dial))
        if total != turns * per_turn(dial) + reading:
            wrong = edited(
                sheet,
                line,
                cross_turns=str(int(turns)),
                cross_reading=printed(reading, line.values["cross-reading"]),
            )
            yield Wrong(wrong, line.number, only(line))


def inch_for_millimetre(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """One size of a line printed in the other unit."""
    factor = Decimal("25.4") if sheet.units == "in" else 1 / Decimal("25.4")
    names = (
        "position",
        "diameter",
        "touch-diameter",
        "stick-out",
        "grip-length",
        "saw-length",
        "size",
        "mouth",
    )
    for line in sheet.lines:
        for name in names:
            text = line.values.get(name, "")
            if not text or line.motion == "leave" or abs(number(text)) < Decimal(".02"):
                continue
            if line.motion == "touch-face":
                continue
            other = edited(sheet, line, **{name.replace("-", "_"): printed(number(text) * factor, text)})
            yield Wrong(other, line.number, after(sheet, line), may_be_harmless=name in ("position", "stick-out"))


def half_of_what_is_left(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """What is left to go printed per side where it should be on the diameter."""
    for line in lines_with(sheet, "turn"):
        text = line.values["left-to-go"]
        half = printed(number(text) / 2, text)
        if half != text:
            yield Wrong(edited(sheet, line, left_to_go=half), line.number, only(line))


def wrong_tool(sheet: Sheet, shop: Shop) -> Iterator[Wrong]:
    """A tool of another kind in the post."""
    turning = ("rough turning", "finish turning", "facing")
    kinds = {tool.name: tool.kind for tool in shop.tools}
    for line in lines_with(sheet, "mount"):
        turns = kinds[line.values["tool"]] in turning
        other = next(tool.name for tool in shop.tools if (tool.kind in turning) != turns)
        yield Wrong(edited(sheet, line, tool=other), line.number, after(sheet, line))


KINDS: tuple[Callable[[Sheet, Shop], Iterator[Wrong]], ...] = (
    radius_for_diameter,
    a_turn_too_many,
    a_turn_too_few,
    carriage_turn_miscounted,
    past_the_shoulder,
    short_of_the_shoulder,
    wrong_side,
    other_zero_of_the_scale,
    fine_feed_dropped,
    walk_forgotten,
    ring_on_the_wrong_diameter,
    line_left_out,
    lines_swapped,
    no_touch_after_a_tool_change,
    speed_off_the_list,
    feed_off_the_list,
    chamfer_twice_the_size,
    stick_out_too_short,
    wrong_end_out,
    saw_too_short,
    number_for_the_other_kind_of_dial,
    inch_for_millimetre,
    half_of_what_is_left,
    wrong_tool,
)
"""Every kind of wrong sheet."""
