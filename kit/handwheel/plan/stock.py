"""Which bar of the rack, and how long a piece of it."""

from __future__ import annotations

from attrs import frozen

from handwheel.calc.stock import bar_stock
from handwheel.numbers.faults import HandwheelError
from handwheel.numbers.showing import length
from handwheel.part.values import Part
from handwheel.shop.values import Bar, Shop
from handwheel.tables.materials import material, same_material

CLEANING = 0.5
"""What a bar must have over the greatest section to turn it clean, mm on the diameter
(common practice, no published source)."""

SAME = 1e-6
"""Two sizes this near, mm, are one size typed in two ways."""


@frozen
class StockChoice:
    """The bar chosen and the blank sawn from it; lengths mm, mass kg, cost in the shop's currency.

    `items` names what the blank's length is made of, adding up to it; `second_try` says what the rest of the bar is
    good for; `refused` says of each other bar why it stays in the rack.
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
    against = [(bar, _why_not(bar, part, blank, shop)) for bar in shop.rack]
    serve = [bar for bar, why in against if not why]
    if not serve:
        each = " ".join(f"{bar.name}: {why}." for bar, why in against)
        raise HandwheelError(f"no bar of the rack serves; order one of {part.entry.material}. {each}")
    chosen = min(serve, key=lambda bar: (bar.name != wanted, bar.measured, bar.skin, bar.length))
    refused = [(bar, why) for bar, why in against if why]
    refused += [(bar, _serves_but(bar, chosen, wanted)) for bar in serve if bar is not chosen]
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
    """Return everything that keeps a bar from serving, or nothing."""
    found = []
    if not same_material(bar.material, part.entry.material):
        found.append(f"it is {bar.material}, and {part.entry.material} is asked for")
    sound = bar.measured - 2 * bar.skin
    needed = max(section.stands_as.maximum for section in part.sections) + CLEANING
    if sound < needed - SAME:
        found.append(
            f"{_diameter(sound, shop)} of sound metal leaves no skin to clean: the greatest section wants "
            f"{_diameter(needed, shop)}"
        )
    if bar.length < blank - SAME:
        found.append(f"it is {_length(bar.length, shop)} long, and the blank needs {_length(blank, shop)}")
    return "; ".join(found)


def _serves_but(bar: Bar, chosen: Bar, wanted: str) -> str:
    """Return why a bar that serves stays in the rack."""
    if chosen.name == wanted:
        return f"it serves, but {chosen.name} was chosen by hand"
    if bar.measured > chosen.measured:
        return f"it serves, but there is more to turn off than with {chosen.name}"
    if bar.skin > chosen.skin:
        return f"it serves, but {chosen.name} has the thinner skin"
    if bar.length > chosen.length:
        return f"it serves, but {chosen.name} is the shorter piece, to be used up first"
    return f"it serves as well; {chosen.name} stands before it in the rack"


def _reason(bar: Bar, part: Part, shop: Shop, by_hand: bool) -> str:
    greatest = max(section.stands_as.maximum for section in part.sections)
    off = (bar.measured - greatest) / 2
    why = "chosen by hand" if by_hand else "the least to turn off of the bars that serve"
    return (
        f"{bar.name}: {why}. It is the {bar.material} asked for, {bar.condition}, and measures "
        f"{_diameter(bar.measured, shop)}: {_diameter(off, shop)} per side over the greatest section."
    )


def _second_try(bar: Bar, blank: float, shop: Shop) -> str:
    rest = bar.length - blank - shop.stock.parting
    shown = _length(max(rest, 0.0), shop)
    if rest >= blank - SAME:
        return f"{shown} of the bar is left: enough for a second try."
    if rest >= blank - shop.stock.chucking / 2 - SAME:
        return f"{shown} of the bar is left: a second try must make do with a shorter chucking stub."
    return f"{shown} of the bar is left: not enough for a second try; know where the next bar comes from."


def _diameter(mm: float, shop: Shop) -> str:
    return f"{length(mm, shop.system, 3 if shop.system == 'in' else 2)} {shop.system}"


def _length(mm: float, shop: Shop) -> str:
    return f"{length(mm, shop.system, 3 if shop.system == 'in' else 1)} {shop.system}"
