"""Which bar of the rack, and how long a piece of it."""

from __future__ import annotations

from attrs import frozen

from handwheel.calc.stock import bar_stock
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.showing import length
from handwheel.part.values import Part
from handwheel.shop.values import Bar, Shop
from handwheel.tables.materials import material

CLEANING = 0.5
"""What a bar must have over the greatest section to turn it clean, mm on the diameter
(common practice, no published source)."""


@frozen
class StockChoice:
    """The bar chosen and the blank sawn from it; lengths mm, mass kg, cost in the shop's currency.

    `items` names what the blank's length is made of; `second_try` says what the rest of the bar is good for.
    """

    bar: Bar
    blank_length: float
    items: tuple[tuple[str, float], ...]
    mass: float
    cost: float
    reason: str
    second_try: str
    refused: tuple[tuple[Bar, str], ...]


def choose_bar(part: Part, shop: Shop, wanted: str = "") -> StockChoice:
    """Return the bar to saw the blank from: of those that serve, the one with the least to turn off.

    `wanted` is the name of a bar a person chose; it is taken where it serves.

    Raises:
        HandwheelError: no bar serves; each is named with its reason.
    """
    items = (
        ("the part", part.length.nominal.value),
        (f"facing the {part.entry.far_face}", shop.stock.facing),
        (f"facing the {part.entry.datum_face}", shop.stock.facing),
        ("sawing the chucking stub off", shop.stock.parting),
        ("the chucking stub", shop.stock.chucking),
    )
    blank = sum(amount for _, amount in items)
    refused: list[tuple[Bar, str]] = []
    serve: list[Bar] = []
    for bar in shop.rack:
        why = _why_not(bar, part, blank, shop)
        if why:
            refused.append((bar, why))
        else:
            serve.append(bar)
    if not serve:
        each = " ".join(f"{bar.name}: {why}." for bar, why in refused)
        raise HandwheelError(f"no bar of the rack serves; order one of {part.entry.material}. {each}")
    chosen = min(serve, key=lambda bar: (bar.name != wanted, bar.measured, bar.skin, bar.length))
    for bar in serve:
        if bar is not chosen:
            refused.append((bar, f"it serves, but there is more to turn off than with {chosen.name}"))
    mass = bar_stock(chosen.measured, blank, material(chosen.material).density).mass
    return StockChoice(
        chosen,
        blank,
        items,
        mass,
        chosen.price * blank / chosen.length,
        _reason(chosen, part, shop, chosen.name == wanted),
        _second_try(chosen, blank, shop),
        tuple(refused),
    )


def _why_not(bar: Bar, part: Part, blank: float, shop: Shop) -> str:
    """Return why a bar does not serve, or nothing."""

    def show(mm: float) -> str:
        return f"{length(mm, shop.system, 3)} {shop.system}"

    if _folded(bar.material) != _folded(part.entry.material):
        return f"it is {bar.material}, and {part.entry.material} is asked for"
    sound = bar.measured - 2 * bar.skin
    needed = max(section.stands_as.maximum for section in part.sections) + CLEANING
    if sound < needed:
        return f"{show(sound)} of sound metal leaves no skin to clean: the greatest section wants {show(needed)}"
    if bar.length < blank:
        return f"it is {show(bar.length)} long, and the blank needs {show(blank)}"
    return ""


def _reason(bar: Bar, part: Part, shop: Shop, overruled: bool) -> str:
    greatest = max(section.stands_as.maximum for section in part.sections)
    off = (bar.measured - greatest) / 2
    why = "chosen by hand" if overruled else "the least to turn off of the bars that serve"
    return (
        f"{bar.name}: {why}. It is the {bar.material} asked for, {bar.condition}, and measures "
        f"{length(bar.measured, shop.system, 3)}: {length(off, shop.system, 3)} per side over the greatest section."
    )


def _second_try(bar: Bar, blank: float, shop: Shop) -> str:
    rest = bar.length - blank - shop.stock.parting
    shown = f"{length(max(rest, 0.0), shop.system, 3)} {shop.system}"
    if rest >= blank:
        return f"{shown} of the bar is left: enough for a second try."
    least = blank - shop.stock.chucking + shop.stock.chucking / 2
    if rest >= least:
        return f"{shown} of the bar is left: a second try must make do with a shorter chucking stub."
    return f"{shown} of the bar is left: not enough for a second try; know where the next bar comes from."


def _folded(name: str) -> str:
    return "".join(name.casefold().split())
