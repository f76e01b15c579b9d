"""The invented shops that the hand-written sheets are for: travel dials in inches, diameter dials in mm."""

from __future__ import annotations

from handwheel.shop.values import (
    CentreDrill,
    Compound,
    Dial,
    Lathe,
    Leadscrew,
    Rates,
    Shop,
    StockAllowances,
    Tailstock,
    ThreadingDial,
    Tool,
)

INCH = 25.4


def _shop(name, system, lathe, tools, drills):
    return Shop(
        name=name,
        system=system,
        lathe=lathe,
        tools=tools,
        centre_drills=drills,
        gauges=(),
        rack=(),
        rates=Rates("USD", 60.0, 0.0, 0.0),
        stock=StockAllowances(1.5, 40.0, 3.0),
    )


def _lathe(name, speeds, feeds, cross, compound, carriage, jaws):
    return Lathe(
        name=name,
        swing=350.0,
        between_centres=1000.0,
        spindle_bore=45.0,
        power=1.5,
        efficiency=0.8,
        spindle_speeds=speeds,
        feeds=feeds,
        cross_slide=cross,
        compound=compound,
        carriage=carriage,
        tailstock=Tailstock(12.0, live_centre=True),
        leadscrew=Leadscrew("6 tpi", INCH / 6),
        gears=(),
        threading_dial=ThreadingDial(24, 12),
        tool_post="front",
        chuck_jaw_length=jaws,
    )


def _tools(unit):
    return (
        Tool("right-hand turning tool", "rough turning", "HSS", "right", unit / 32, 90.0, 0.125 * INCH),
        Tool("facing tool", "facing", "HSS", "right", unit / 64, 90.0, 0.1 * INCH),
        Tool("45° chamfering tool", "chamfering", "HSS", "neutral", 0.0, 45.0, 0.1 * INCH),
    )


INCH_SHOP = _shop(
    "bench",
    "in",
    _lathe(
        "12 × 30",
        (70.0, 160.0, 240.0, 360.0, 540.0),
        (0.004 * INCH, 0.008 * INCH),
        Dial("cross-slide", "in", 0.1 * INCH, 0.001 * INCH, "travel", 0.008 * INCH),
        Compound(
            Dial("compound", "in", 0.1 * INCH, 0.001 * INCH, "travel", 0.005 * INCH),
            stroke=2.0 * INCH,
            scale_zero="cross-slide",
            swing=90.0,
        ),
        Dial("carriage", "in", 0.75 * INCH, 0.005 * INCH, "travel", 0.01 * INCH),
        jaws=1.0 * INCH,
    ),
    _tools(INCH),
    (CentreDrill("No. 3 centre drill", 0.25 * INCH, 7 / 64 * INCH),),
)

METRIC_SHOP = _shop(
    "other bench",
    "mm",
    _lathe(
        "300 × 750",
        (80.0, 200.0, 500.0),
        (0.1, 0.2),
        Dial("cross-slide", "mm", 4.0, 0.02, "diameter", 0.12),
        Compound(Dial("compound", "mm", 4.0, 0.02, "diameter", 0.08), stroke=90.0, scale_zero="axis", swing=60.0),
        Dial("carriage", "mm", 20.0, 0.1, "travel", 0.2),
        jaws=30.0,
    ),
    _tools(25.4),
    (CentreDrill("form A 3.15", 6.7, 3.15),),
)
