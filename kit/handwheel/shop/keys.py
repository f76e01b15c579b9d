"""The keys of a shop file: what each table holds and what kind of text each key takes."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Any

from attrs import frozen

from handwheel.shop.values import (
    Bar,
    CentreDrill,
    Compound,
    Dial,
    Gauge,
    Lathe,
    Rates,
    Shop,
    StockAllowances,
    Tailstock,
    ThreadingDial,
    Tool,
)


@frozen
class Table:
    """One table of the file: the value it makes and its keys, each a kind of text or a table of its own.

    A kind is a name numbers.reading knows, `text`, `count`, `counts` (a list), `yes or no`, `amount` (money, not
    negative), `list of KIND`, or a tuple of the words it can be.
    """

    makes: Any
    keys: Mapping[str, Any]


@frozen
class Rows:
    """A repeated table (`[[tools]]`), of which at least one must be there."""

    table: Table


def _table(makes: Any, **keys: Any) -> Table:
    return Table(makes, MappingProxyType({name.replace("_", "-"): kind for name, kind in keys.items()}))


_DIAL = {"per_turn": "length", "division": "length", "reads": ("travel", "diameter"), "backlash": "length"}

SHOP = _table(
    Shop,
    name="text",
    units=("in", "mm"),
    lathe=_table(
        Lathe,
        name="text",
        swing="length",
        between_centres="length",
        spindle_bore="length",
        power="power",
        efficiency="number",
        spindle_speeds="list of spindle_speed",
        feeds="list of feed",
        leadscrew="pitch",
        gears="counts",
        tool_post=("front", "rear"),
        chuck_jaw_length="length",
        cross_slide=_table(Dial, **_DIAL),
        compound=_table(Compound, **_DIAL, stroke="length", scale_zero=("cross-slide", "axis"), swing="angle"),
        carriage=_table(Dial, **_DIAL),
        tailstock=_table(Tailstock, set_over="length", live_centre="yes or no"),
        threading_dial=_table(ThreadingDial, teeth="count", lines="count"),
    ),
    tools=Rows(
        _table(
            Tool,
            name="text",
            kind=("rough turning", "finish turning", "facing", "chamfering", "grooving", "threading"),
            material=("HSS", "carbide"),
            hand=("right", "left", "neutral"),
            nose_radius="length",
            approach_angle="angle",
            max_depth="length",
        )
    ),
    centre_drills=Rows(_table(CentreDrill, name="text", body="length", point="length")),
    gauges=Rows(_table(Gauge, name="text", least="length", most="length", uncertainty="length")),
    rack=Rows(
        _table(
            Bar,
            name="text",
            material="text",
            diameter="length",
            measured="length",
            length="length",
            condition="text",
            skin="length",
            price="amount",
        )
    ),
    rates=_table(Rates, currency="text", hourly="amount", minimum_charge="amount", material_markup="number"),
    stock=_table(StockAllowances, facing="length", chucking="length", parting="length"),
)
"""The whole file."""

OPTIONAL = {"true-lead": "number"}
"""Keys that a dial may have beside its own: true travel per marked travel."""

MAY_BE_ZERO = frozenset(
    {
        "backlash",
        "skin",
        "nose-radius",
        "least",
        "set-over",
        "price",
        "material-markup",
        "minimum-charge",
        "facing",
    }
)
"""Keys whose number may be 0; every other must be more."""
