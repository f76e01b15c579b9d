"""`handwheel demo`: the main job on the demo shaft, every file of the packet."""

from __future__ import annotations

import shutil
from datetime import datetime
from pathlib import Path

import click

from handwheel import assets
from handwheel.job.folder import JOB_FILE, new_job, open_job, save_job
from handwheel.job.road import freeze_sheet, whole_road
from handwheel.numbers import showing
from handwheel.numbers.faults import HandwheelError
from handwheel.sheets.packet import write_packet

MARK = ".handwheel-demo"
"""The file that says a folder was made by this command, and may be made anew."""


@click.command()
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), default=Path("packet"), show_default=True,
              help="The folder to write.")  # fmt: skip
def command(out: Path) -> None:
    """Plan the demo job (invented), dry-run its sheet and write the packet."""
    now = datetime.now().astimezone()
    _make_room(out)
    demo = open_job(assets.demo_job_file())
    click.echo(f"{demo.title}: everything in it is invented.")
    click.echo("Planning, dry-running and printing ...")
    road = whole_road(demo)
    folder = out / "job"
    job = new_job(demo, folder, now)
    job = save_job(freeze_sheet(job, road.plan.sheet, now.isoformat(timespec="seconds")), folder, now, before=job)
    for notebook in sorted(assets.template_dir().glob("*.ipynb")):
        shutil.copy(notebook, folder)
    written = write_packet(job, road, out, now)
    units = road.part.units
    click.echo(f"Bar: {road.choice.bar.name}, sawn {showing.length(road.choice.blank_length, units, 3)} {units} long.")
    click.echo(f"Sheet: {len(road.plan.sheet.lines)} lines in {len(road.plan.holdings)} holdings.")
    click.echo(f"Dry run: {road.report.verdict()}")
    click.echo(
        f"Time: likely {showing.minutes(road.estimate.likely)}, charged {showing.minutes(road.estimate.quoted)}; "
        f"price {showing.money(road.estimate.price, road.estimate.currency)}."
    )
    for sentence in road.plan.not_planned:
        click.echo(f"Not yet: {sentence}")
    click.echo("Written:")
    for place in [folder / JOB_FILE, *written]:
        click.echo(f"  {place}")


def _make_room(out: Path) -> None:
    """Make the folder, or empty it where this command made it before.

    Raises:
        HandwheelError: it holds something else.
    """
    try:
        if out.exists() and any(out.iterdir()):
            if not (out / MARK).exists():
                raise HandwheelError(f"{out}: the folder is not empty; name another with --out")
            shutil.rmtree(out)
        out.mkdir(parents=True, exist_ok=True)
        (out / MARK).touch()
    except OSError as error:
        raise HandwheelError(f"{out}: can't be written ({error.strerror}); name another folder with --out") from error
