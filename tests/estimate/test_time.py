"""Time and price: statistics beside a reference library and a simulation, and the rules of charging."""

from __future__ import annotations

import attrs
import numpy as np
import pytest
from scipy.stats import lognorm

from handwheel import assets
from handwheel.calc.time_spread import spread, total
from handwheel.estimate.time import estimate
from handwheel.job.folder import open_job
from handwheel.job.road import whole_road
from handwheel.numbers.faults import HandwheelError


@pytest.fixture(scope="module")
def road():
    return whole_road(open_job(assets.demo_job_file()))


# 20/60 minutes: median 34.641, mean 37.974, P80 49.689 (the project's own, cross-checked)
def test_one_time():
    time = spread(20, 60)
    assert (time.median, time.mean, time.quantile(0.8)) == pytest.approx((34.641, 37.974, 49.689), abs=0.001)


@pytest.mark.validation
def test_one_time_beside_scipy():
    time = spread(12, 35)
    reference = lognorm(s=time.log_sd, scale=np.exp(time.log_mean))
    assert reference.ppf([0.1, 0.9]) == pytest.approx([12, 35])
    assert time.mean == pytest.approx(reference.mean())
    assert time.variance == pytest.approx(reference.var())
    assert time.quantile(0.8) == pytest.approx(reference.ppf(0.8))


@pytest.mark.validation
@pytest.mark.parametrize("correlation", [0.0, 0.5, 1.0])
def test_a_sum_beside_a_simulation(correlation):
    """Correlated normals under lognormal margins; the sum's P80 within 2 %, its mean within 1 %."""
    times = [spread(20, 60), spread(10, 25), spread(40, 90), spread(5, 20), spread(15, 30), spread(30, 80)]
    chance = np.random.default_rng(3)
    shared, own = chance.standard_normal((200_000, 1)), chance.standard_normal((200_000, len(times)))
    normal = np.sqrt(correlation) * shared + np.sqrt(1 - correlation) * own
    samples = np.exp([t.log_mean for t in times] + normal * [t.log_sd for t in times]).sum(axis=1)
    whole = total(times, correlation)
    assert whole.mean == pytest.approx(samples.mean(), rel=0.01)
    assert whole.quantile(0.8) == pytest.approx(np.quantile(samples, 0.8), rel=0.02)


def test_neither_long_nor_likely_cases_are_added(road):
    rows = road.estimate.rows
    assert sum(row.low for row in rows) < road.estimate.low
    assert road.estimate.high < sum(row.high for row in rows)
    assert road.estimate.likely > sum(row.likely for row in rows)
    assert road.estimate.low < road.estimate.likely < road.estimate.quoted < road.estimate.high


def test_every_operation_of_the_plan_has_its_row(road):
    once = [row.operation for row in road.estimate.rows if not row.lines]
    assert once == [
        "reading the drawing and laying out tools", "saw the blank off the bar", "final inspection and cleaning",
    ]  # fmt: skip
    assert len(road.estimate.rows) == len(road.plan.operations) + len(once)
    assert all(0 < row.low <= row.likely <= row.high for row in road.estimate.rows)
    lines = {line.number for line in road.plan.sheet.lines if line.motion not in ("leave", "mount", "touch-face")}
    covered = set()
    order = [line.number for line in road.plan.sheet.lines]
    for operation in road.plan.operations:
        covered |= set(order[order.index(operation.first_line) : order.index(operation.last_line) + 1])
    assert lines <= covered


def test_price_is_labour_and_material_and_never_under_the_minimum(road):
    e, rates = road.estimate, road.shop.rates
    assert e.labour == pytest.approx(e.quoted / 60 * rates.hourly)
    # 12.089 of 24 in of a 92.00 bar, 20 % on top: 55.61
    assert e.material == pytest.approx(92.00 * 12.089 / 24 * 1.2, abs=0.01)
    assert e.price == pytest.approx(e.labour + e.material)
    assert not e.minimum_applied
    dear = attrs.evolve(road.shop, rates=attrs.evolve(rates, minimum_charge=1000.0))
    least = estimate(road.plan, road.choice, dear)
    assert least.price == 1000.0
    assert least.minimum_applied
    assert "minimum charge" in least.text()


def test_what_is_not_planned_is_not_priced_and_said(road):
    assert any("hub taper" in note for note in road.estimate.notes)


def test_impossible_times_are_refused():
    for low, high in ((0, 5), (6, 5), (-1, 2)):
        with pytest.raises(HandwheelError):
            spread(low, high)
    with pytest.raises(HandwheelError):
        total([], 0.5)
    with pytest.raises(HandwheelError):
        total([spread(1, 2)], 1.5)
