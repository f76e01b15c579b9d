"""`handwheel dry-run`: replay a job's sheet and say whether it cuts the part."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from handwheel.dryrun.report import Report
from handwheel.job.folder import job_file, open_job
from handwheel.job.road import printed_sheet, replay, run_road
from handwheel.numbers.faults import HandwheelError


@click.command()
@click.argument("job", type=click.Path(path_type=Path))
@click.option("--sheet", "number", default="", help="The printed sheet to replay; the last one where none is named.")
def command(job: Path, number: str) -> None:
    """Read a job's printed sheet back, cut a virtual bar by it, and compare; a job without one is planned first.

    Exit status 0: the sheet cuts the part. 1: it does not, and the line at fault is named. 2: no such job.
    """
    report = _report(job, number)
    click.echo(report.text())
    if not report.ok:
        sys.exit(1)


def _report(path: Path, number: str) -> Report:
    job = open_job(path)
    road = run_road(job, folder=job_file(path).parent)
    if number or job.sheets:
        kept = job.sheets.get(number or list(job.sheets)[-1])
        if kept is None:
            raise HandwheelError(
                f"sheet {number}: this job has printed no such sheet; it has {', '.join(job.sheets) or 'none'}"
            )
        if road.part is None:
            raise HandwheelError(" ".join(fault.sentence() for fault in road.faults))
        return replay(printed_sheet(kept), road)
    if road.report is None:
        raise HandwheelError(" ".join(fault.sentence() for fault in road.faults))
    return road.report
