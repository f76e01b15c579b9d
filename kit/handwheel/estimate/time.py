"""Time and price of a plan: each operation's short, likely and long case, their sum, and what is asked for it."""

from __future__ import annotations

from attrs import frozen

from handwheel.calc.time_spread import TimeSpread, spread, total
from handwheel.estimate.handling import CUTTING, HANDLING
from handwheel.numbers import showing
from handwheel.plan.setup import Operation
from handwheel.plan.stock import StockChoice
from handwheel.plan.turning import Plan
from handwheel.shop.values import Shop

TOGETHER = 0.5
"""How far the times of one job go long together (common practice, no published source)."""

QUOTED = 0.8
"""The share of jobs that the quoted time is meant to cover."""


@frozen
class Row:
    """One operation's time in minutes: short case (1 in 10), likely (1 in 2), long case (9 in 10)."""

    operation: str
    lines: str
    low: float
    likely: float
    high: float


@frozen
class Estimate:
    """Time in minutes and price in the shop's currency; `quoted` is the time that covers four jobs of five."""

    rows: tuple[Row, ...]
    low: float
    likely: float
    quoted: float
    high: float
    currency: str
    hourly: float
    labour: float
    material: float
    price: float
    minimum_applied: bool
    notes: tuple[str, ...]

    def text(self) -> str:
        """Return the estimate as plain text."""
        money = [
            ("time, one job in ten is shorter", showing.minutes(self.low)),
            ("time, likely", showing.minutes(self.likely)),
            ("time, four jobs of five are done by then", showing.minutes(self.quoted)),
            ("time, one job in ten is longer", showing.minutes(self.high)),
            (
                f"labour at {showing.money(self.hourly, self.currency)} an hour",
                showing.money(self.labour, self.currency),
            ),
            ("material, with the shop's addition", showing.money(self.material, self.currency)),
            (
                "price" + (" (the minimum charge)" if self.minimum_applied else ""),
                showing.money(self.price, self.currency),
            ),
        ]
        width = max(len(words) for words, _ in money)
        return "\n".join([*(f"{words:<{width}}  {shown:>12}" for words, shown in money), *self.notes])


def estimate(plan: Plan, choice: StockChoice, shop: Shop) -> Estimate:
    """Return time and price of a plan by the shop's rates.

    Labour is charged for the time that covers four jobs of five; neither long cases nor likely ones are added.
    """
    timed = [
        _by_hand("reading the drawing and laying out tools"),
        _by_hand("saw", "saw the blank off the bar"),
        *((_words(each), _lines(each), _spread(each)) for each in plan.operations),
        _by_hand("final inspection and cleaning"),
    ]
    whole = total([time for _, _, time in timed], TOGETHER)
    quoted = whole.quantile(QUOTED)
    rates = shop.rates
    labour = quoted / 60 * rates.hourly
    material = choice.cost * (1 + rates.material_markup)
    asked = labour + material
    notes = [
        "Labour is charged for the time that four jobs of five keep to.",
        *(f"Not in this figure: {sentence}" for sentence in plan.not_planned),
    ]
    return Estimate(
        tuple(Row(words, lines, time.quantile(0.1), time.median, time.quantile(0.9)) for words, lines, time in timed),
        whole.quantile(0.1),
        whole.median,
        quoted,
        whole.quantile(0.9),
        rates.currency,
        rates.hourly,
        labour,
        material,
        max(asked, rates.minimum_charge),
        asked < rates.minimum_charge,
        tuple(notes),
    )


def _by_hand(name: str, words: str = "") -> tuple[str, str, TimeSpread]:
    """Return the row of what is done once a job, away from the sheet's lines."""
    return words or name, "", spread(*HANDLING[name])


def _words(operation: Operation) -> str:
    if operation.kind in ("hold", "support", "saw"):
        return {"hold": "hold the work", "support": "bring up the centre", "saw": "saw the stub off"}[operation.kind]
    return f"{operation.kind}: {operation.feature}"


def _lines(operation: Operation) -> str:
    return operation.first_line if operation.first_line == operation.last_line else (
        f"{operation.first_line} to {operation.last_line}"
    )  # fmt: skip


def _spread(operation: Operation) -> TimeSpread:
    """Return an operation's time from its cutting minutes and how often hands are needed."""
    own = {
        "hold": "hold" if operation.holding == "A" else "hold again, trued with an indicator",
        "support": "bring up the centre",
        "centre": "centre drill",
        "saw": "saw",
    }.get(operation.kind)
    counts = {
        "tool change": operation.tool_changes,
        "touch-off": operation.touch_offs,
        "measurement": operation.measurements,
        "pass": operation.passes,
    }
    low, high = (
        operation.cutting_minutes * CUTTING[case]
        + (HANDLING[own][case] if own else 0.0)
        + sum(HANDLING[name][case] * count for name, count in counts.items())
        for case in (0, 1)
    )
    return spread(low, high)
