"""The packet: every file of a job that is printed or kept, written into one folder."""

from __future__ import annotations

import csv
import io
from datetime import datetime
from pathlib import Path

from handwheel.job.road import WholeRoad
from handwheel.job.values import Job
from handwheel.numbers.faults import HandwheelError
from handwheel.part.drawing.side_view import side_view
from handwheel.sheets.bench import Surround, bench_sheet_html, bench_sheet_pdf
from handwheel.sheets.tables import Table, time_table


def write_packet(job: Job, road: WholeRoad, out: Path, when: datetime) -> list[Path]:
    """Write the bench sheet (page and PDF), side view, estimate and the dry run's report; return what was written.

    Raises:
        HandwheelError: the folder can't be written.
    """
    picture = side_view(road.part)
    report = road.report
    page = Surround(picture, road.plan.not_planned, report.verdict(), job.title)
    sheet = road.plan.sheet
    files: dict[str, str | bytes] = {
        "bench-sheet.html": bench_sheet_html(sheet, page),
        "bench-sheet.pdf": bench_sheet_pdf(sheet, when, page),
        "side-view.svg": picture,
        "estimate.txt": f"First estimate: {job.title}\n\n{road.estimate.text()}\n",
        "estimate.csv": _csv(time_table(road.estimate)),
        "dry-run.txt": report.text() + "\n",
    }
    written = []
    try:
        out.mkdir(parents=True, exist_ok=True)
        for name, content in files.items():
            place = out / name
            place.write_bytes(content if isinstance(content, bytes) else content.encode())
            written.append(place)
    except OSError as error:
        raise HandwheelError(
            f"{out}: the packet can't be written there ({error.strerror}); choose another folder"
        ) from error
    return written


def _csv(table: Table) -> str:
    out = io.StringIO()
    writer = csv.DictWriter(out, list(table[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows(table)
    return out.getvalue()
