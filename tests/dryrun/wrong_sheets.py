"""Wrong sheets: a good sheet's printed strings, edited the way a hurried hand gets them wrong.

Each kind yields one wrong sheet for every line it can be done to. A wrong sheet says which lines may
rightly be named for it (`lines`), and whether it may turn out harmless: kinds that contradict something
printed or the machine's lists never may.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from decimal import Decimal

from attrs import evolve
from printed import carriage_to, dials, edited, number, per_turn, printed
from wrong import Wrong, after, lines_with, only, same_feature_or_after
from wrong_dials import (
    a_turn_too_few,
    a_turn_too_many,
    carriage_turn_miscounted,
    fine_feed_dropped,
    number_for_the_other_kind_of_dial,
    other_zero_of_the_scale,
    radius_for_diameter,
    ring_on_the_wrong_diameter,
    walk_forgotten,
    wrong_side,
)

from handwheel.plan.lines import Sheet
from handwheel.shop.values import Shop


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
        # no limits are typed for a leg: where the corner's own place may vary by more, twice a small one is within
        yield Wrong(sheet_now, line.number, only(line), may_be_harmless=True)


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
