"""What a shop has: the lathe and its dials, cutters, gauges, the bar rack and the rates.

Sizes are floats in the kit's inside units (mm, rev/min, mm/rev, kW); each value read from the shop
file was typed with its unit, and a dial keeps the unit it is marked in.
"""

from __future__ import annotations

from typing import Literal

from attrs import frozen

System = Literal["in", "mm"]


@frozen
class Dial:
    """A graduated dial as marked: `per_turn` and `division` are marked mm, in diameter units on a diameter dial.

    `system` is the unit the dial is marked in, `reads` says whether its marks count slide travel or the
    diameter removed, `true_lead` is true travel per marked travel, `backlash` is marked mm.
    """

    name: str
    system: System
    per_turn: float
    division: float
    reads: Literal["travel", "diameter"]
    backlash: float
    true_lead: float = 1.0


@frozen
class Compound:
    """The compound slide: its dial, true stroke (mm), where its angle scale reads zero and how far it swings."""

    dial: Dial
    stroke: float
    scale_zero: Literal["cross-slide", "axis"]
    swing: float


@frozen
class Leadscrew:
    """The leadscrew's pitch (mm) as typed (`6 tpi`, `3 mm`)."""

    typed: str
    pitch: float


@frozen
class ThreadingDial:
    """The threading dial: teeth of its gear and lines on its face."""

    teeth: int
    lines: int


@frozen
class Tailstock:
    """The tailstock: largest set-over (mm) and whether its quill takes a live centre."""

    set_over: float
    live_centre: bool


@frozen
class Lathe:
    """A manual lathe. Lengths mm, power kW, speeds rev/min, feeds mm/rev."""

    name: str
    swing: float
    between_centres: float
    spindle_bore: float
    power: float
    efficiency: float
    spindle_speeds: tuple[float, ...]
    feeds: tuple[float, ...]
    cross_slide: Dial
    compound: Compound
    carriage: Dial
    tailstock: Tailstock
    leadscrew: Leadscrew
    gears: tuple[int, ...]
    threading_dial: ThreadingDial
    tool_post: Literal["front", "rear"]
    chuck_jaw_length: float


@frozen
class Tool:
    """A turning tool. `kind` is what it is ground for; lengths mm; `approach_angle` degrees to the axis.

    `max_depth` is the deepest cut (mm per side) the shop takes with it, `material` is 'HSS' or 'carbide'.
    """

    name: str
    kind: Literal["rough turning", "finish turning", "facing", "chamfering", "grooving", "threading"]
    material: Literal["HSS", "carbide"]
    hand: Literal["right", "left", "neutral"]
    nose_radius: float
    approach_angle: float
    max_depth: float


@frozen
class CentreDrill:
    """A combined drill and countersink: `body` and `point` diameters mm."""

    name: str
    body: float
    point: float


@frozen
class Gauge:
    """A measuring instrument: range and uncertainty in mm."""

    name: str
    least: float
    most: float
    uncertainty: float


@frozen
class Bar:
    """A bar in the rack: nominal diameter and length as typed, the measured size, condition and price.

    `diameter`, `measured` and `length` mm; `skin` is the depth per side (mm) to take off before sound metal
    (0 for cold-finished bar); `price` is for the whole bar, in the shop's currency.
    """

    name: str
    material: str
    diameter: float
    measured: float
    length: float
    condition: str
    skin: float
    price: float


@frozen
class Rates:
    """Money and allowances: `hourly` and `minimum_charge` in `currency`; material marked up by `material_markup`."""

    currency: str
    hourly: float
    minimum_charge: float
    material_markup: float


@frozen
class StockAllowances:
    """What a blank needs beyond the part, in mm: a facing cut each end, the chucking length, parting."""

    facing: float
    chucking: float
    parting: float


@frozen
class Shop:
    """One shop, read from one TOML file."""

    name: str
    system: System
    lathe: Lathe
    tools: tuple[Tool, ...]
    centre_drills: tuple[CentreDrill, ...]
    gauges: tuple[Gauge, ...]
    rack: tuple[Bar, ...]
    rates: Rates
    stock: StockAllowances
