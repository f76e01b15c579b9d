"""Wrong sheets by slips at the dials: turns, rings, sides, the compound's scale."""

from __future__ import annotations

from collections.abc import Iterator
from decimal import Decimal

from printed import carriage_to, dials, edited, in_marks, number, per_turn, printed, sheet_units_in
from wrong import Wrong, lines_with, only

from handwheel.plan.lines import Sheet
from handwheel.shop.values import Shop


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
