"""The whole road in one call: part, stock, plan, dry run, estimate. Each step is a pure function of values."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import attrs
import cattrs
from attrs import frozen

from handwheel import __version__, assets
from handwheel.dryrun.report import Report
from handwheel.dryrun.run import dry_run
from handwheel.estimate.time import Estimate, estimate
from handwheel.job.values import Job, PrintedSheet
from handwheel.numbers.faults import Fault, HandwheelError
from handwheel.part.checks import check_part
from handwheel.part.reading_in import read_part
from handwheel.part.samples import sampled_limits
from handwheel.part.values import Part
from handwheel.plan.lines import Sheet
from handwheel.plan.stock import StockChoice, choose_bar
from handwheel.plan.turning import Plan, plan_turning
from handwheel.shop.file import load_shop
from handwheel.shop.values import Shop

SAMPLE_SHOPS = {"sample": "sample-shop.toml", "sample metric": "sample-shop-metric.toml"}
"""The shops that come with the kit, by the word a job names them with."""

DECISIONS = ("bar", "first end")
"""What a person may decide against the kit's own choice."""


@frozen
class Road:
    """What came out at each step; a step that could not be taken, and those after it, are None."""

    shop: Shop
    part: Part | None
    choice: StockChoice | None
    plan: Plan | None
    report: Report | None
    estimate: Estimate | None
    faults: tuple[Fault, ...]


@frozen
class WholeRoad:
    """A road that was gone to its end: nothing is missing."""

    shop: Shop
    part: Part
    choice: StockChoice
    plan: Plan
    report: Report
    estimate: Estimate


def shop_of(job: Job, folder: Path | None = None) -> Shop:
    """Return the shop a job is for: one that comes with the kit, or a file beside the job.

    Raises:
        HandwheelError: the shop file is not there or can't be read.
    """
    if job.shop in SAMPLE_SHOPS:
        return load_shop(assets.sample_shop_file().with_name(SAMPLE_SHOPS[job.shop]))
    return load_shop((folder or Path()) / job.shop)


def run_road(job: Job, shop: Shop | None = None, folder: Path | None = None) -> Road:
    """Return what comes of a job at each step, as far as it goes; `faults` says what stops it or needs a look.

    Raises:
        HandwheelError: the job's shop can't be read.
    """
    shop = shop or shop_of(job, folder)
    part, faults = read_part(job.part)
    if part is None:
        return Road(shop, None, None, None, None, None, tuple(faults))
    faults = check_part(part)
    if faults:
        return Road(shop, part, None, None, None, None, tuple(faults))
    try:
        choice = choose_bar(part, shop, job.decisions.get("bar", ""))
    except HandwheelError as error:
        what, _, remedy = str(error).partition("; ")
        return Road(shop, part, None, None, None, None, (Fault("stock", what, remedy.rstrip(".")),))
    plan, faults = plan_turning(part, shop, choice, "1", job.decisions)
    faults = [*_decisions(job, choice), *faults]
    if plan is None:
        return Road(shop, part, choice, None, None, None, tuple(faults))
    report = dry_run(plan.sheet, shop, sampled_limits(part), part.centre_holes)
    return Road(shop, part, choice, plan, report, estimate(plan, choice, shop), tuple(faults))


def whole_road(job: Job, folder: Path | None = None) -> WholeRoad:
    """Return what comes of a job, gone to the end.

    Raises:
        HandwheelError: a step could not be taken; the sentences say why.
    """
    road = run_road(job, folder=folder)
    if None in (road.part, road.choice, road.plan, road.report, road.estimate):
        raise HandwheelError(" ".join(fault.sentence() for fault in road.faults))
    return WholeRoad(road.shop, road.part, road.choice, road.plan, road.report, road.estimate)  # type: ignore[arg-type]


def replay(sheet: Sheet, road: Road | WholeRoad) -> Report:
    """Return the dry run's report of another sheet for the same part and shop."""
    assert road.part is not None
    return dry_run(sheet, road.shop, sampled_limits(road.part), road.part.centre_holes)


def _decisions(job: Job, choice: StockChoice) -> list[Fault]:
    """Return which of a person's decisions could not be followed; they are kept in the job all the same."""
    faults = [
        Fault("decisions", f"there is nothing to decide under {name!r}", f"use one of {', '.join(DECISIONS)}")
        for name in job.decisions
        if name not in DECISIONS
    ]
    wanted = job.decisions.get("bar", "")
    if wanted and wanted != choice.bar.name:
        refused = next((why for bar, why in choice.refused if bar.name == wanted), "the rack holds no such bar")
        faults.append(
            Fault(
                "decisions",
                f"the bar {wanted!r} does not serve ({refused}), so {choice.bar.name} is planned",
                "choose another bar, or mend the rack in the shop file",
            )
        )
    return faults


def freeze_sheet(job: Job, sheet: Sheet, when: str) -> Job:
    """Return the job with a sheet kept as it was printed, under its number.

    Raises:
        HandwheelError: another sheet was handed over under that number.
    """
    plain = attrs.asdict(sheet)
    kept = job.sheets.get(sheet.number)
    if kept is not None:
        if printed_sheet(kept) == sheet:
            return job
        raise HandwheelError(
            f"sheet {sheet.number}: another sheet was printed under this number; print it as a new one"
        )
    return attrs.evolve(job, sheets={**job.sheets, sheet.number: PrintedSheet(when, plain, __version__)})


def printed_sheet(kept: PrintedSheet) -> Sheet:
    """Return a sheet as it was printed.

    Raises:
        HandwheelError: what was kept is no sheet.
    """
    plain: dict[str, Any] = kept.sheet
    try:
        return cattrs.structure(plain, Sheet)
    except HandwheelError:
        raise
    except Exception as error:
        raise HandwheelError(
            f"a printed sheet in the job can't be read ({type(error).__name__}); take the job from its history"
        ) from error
