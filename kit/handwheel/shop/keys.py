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

    A kind is a name numbers.reading knows, `text`, `count`, `tooth counts` (a list), `yes or no`, `amount` (money),
    `share` (up to 1), `rising list of KIND`, or a tuple of the words it can be. A number must be more than 0;
    `KIND or 0` may be 0.
    """

    makes: Any
    keys: Mapping[str, Any]


@frozen
class Rows:
    """A repeated table (`[[tools]]`), of which at least one must be there; each row has its own name."""

    table: Table


@frozen
class Optional:
    """A key that may be left out."""

    kind: str


def _table(makes: Any, **keys: Any) -> Table:
    return Table(makes, MappingProxyType({name.replace("_", "-"): kind for name, kind in keys.items()}))


_DIAL: dict[str, Any] = {
    "per_turn": "length",
    "division": "length",
    "reads": ("travel", "diameter"),
    "backlash": "length or 0",
    "true_lead": Optional("number"),  # true travel / marked travel
}

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
        efficiency="share",
        spindle_speeds="rising list of spindle_speed",
        feeds="rising list of feed",
        leadscrew="pitch",
        gears="tooth counts",
        tool_post=("front", "rear"),
        chuck_jaw_length="length",
        cross_slide=_table(Dial, **_DIAL),
        compound=_table(Compound, **_DIAL, stroke="length", scale_zero=("cross-slide", "axis"), swing="angle"),
        carriage=_table(Dial, **_DIAL),
        tailstock=_table(Tailstock, set_over="length or 0", live_centre="yes or no"),
        threading_dial=_table(ThreadingDial, teeth="count", lines="count"),
    ),
    tools=Rows(
        _table(
            Tool,
            name="text",
            kind=("rough turning", "finish turning", "facing", "chamfering", "grooving", "threading"),
            material=("HSS", "carbide"),
            hand=("right", "left", "neutral"),
            nose_radius="length or 0",
            approach_angle="angle",
            max_depth="length",
        )
    ),
    centre_drills=Rows(_table(CentreDrill, name="text", body="length", point="length")),
    gauges=Rows(_table(Gauge, name="text", least="length or 0", most="length", uncertainty="length")),
    rack=Rows(
        _table(
            Bar,
            name="text",
            material="text",
            diameter="length",
            measured="length",
            length="length",
            condition="text",
            skin="length or 0",
            price="amount or 0",
        )
    ),
    rates=_table(Rates, currency="text", hourly="amount", minimum_charge="amount or 0", material_markup="number or 0"),
    stock=_table(StockAllowances, facing="length or 0", chucking="length", parting="length"),
)
"""The whole file."""
