"""Wrong sheets are caught, and the right line is named. `pytest -s tests/dryrun/test_wrong_sheets.py` shows the tables."""

from __future__ import annotations

from pathlib import Path

import hand_sheets as hand
import pytest
from hand_shops import INCH_SHOP, METRIC_SHOP
from second_opinion import part_comes_out
from tallies import all_kinds, check, table
from wrong_sheets import KINDS

from handwheel import assets
from handwheel.job.folder import job_file, open_job
from handwheel.job.road import whole_road
from handwheel.part.samples import sampled_limits

SECOND_JOB = Path(__file__).resolve().parents[1] / "job" / "data" / "second-job"


def road_to(job):
    """A job's planned sheet with all the dry run needs."""
    road = whole_road(open_job(job), folder=job_file(job).parent)
    return road.plan.sheet, road.shop, sampled_limits(road.part), road.part.centre_holes


SHEETS = {
    "inch hand sheet": lambda: (hand.inch_sheet(), INCH_SHOP, hand.inch_samples(), hand.inch_holes()),
    "metric hand sheet": lambda: (hand.metric_sheet(), METRIC_SHOP, hand.metric_samples(), []),
    "demo job": lambda: road_to(assets.demo_job_file()),
    "second job": lambda: road_to(SECOND_JOB),
}
# how many of the kinds can be done to the sheet at all and are caught
CAUGHT = {"inch hand sheet": 24, "metric hand sheet": 19, "demo job": 24, "second job": 24}


@pytest.mark.parametrize("name", SHEETS)
def test_wrong_sheets_are_caught(name):
    tallies = all_kinds(*SHEETS[name]())
    print(f"\n{name}\n{table(tallies)}")
    check(tallies)
    assert sum(t.caught > 0 for t in tallies.values()) == CAUGHT[name]


def test_the_second_opinion_agrees_on_good_sheets_and_can_disagree():
    for name, made in SHEETS.items():
        sheet, shop, samples, _ = made()
        assert part_comes_out(sheet, shop, samples), name
    sheet, shop, samples = hand.inch_sheet(), INCH_SHOP, hand.inch_samples()
    refused = [
        wrong
        for kind in KINDS
        if kind.__name__ in ("chamfer_twice_the_size", "past_the_shoulder", "saw_too_short")
        for wrong in kind(sheet, shop)
        if not part_comes_out(wrong.sheet, shop, samples)
    ]
    assert len(refused) >= 3
