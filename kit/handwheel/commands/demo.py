"""`handwheel demo`: the main job on the demo shaft, every file of the packet."""

from __future__ import annotations

import hashlib
import json
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
"""The file that says a folder was made by this command: what it wrote, each file with its digest."""


@click.command()
@click.option("--out", type=click.Path(file_okay=False, path_type=Path), default=Path("packet"), show_default=True,
              help="The folder to write.")  # fmt: skip
def command(out: Path) -> None:
    """Plan the demo job (invented), dry-run its sheet and write the packet."""
    now = datetime.now().astimezone()
    _look(out)
    demo = open_job(assets.demo_job_file())
    click.echo(f"{demo.title}: everything in it is invented.")
    click.echo("Planning, dry-running and printing ...")
    road = whole_road(demo)
    _make_room(out)
    folder = out / "job"
    job = new_job(demo, folder, now)
    job = save_job(freeze_sheet(job, road.plan.sheet, now.isoformat(timespec="seconds")), folder, now, before=job)
    _copy_notebooks(folder)
    written = write_packet(job, road, out, now)
    (out / MARK).write_text(json.dumps(_digests(out), indent=1), encoding="utf-8")
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


def _look(out: Path) -> None:
    """See that the folder may be written; make it where there is none.

    Raises:
        HandwheelError: it holds something that this command did not write, or that was changed since.
    """
    try:
        out.mkdir(parents=True, exist_ok=True)
        if not any(out.iterdir()):
            (out / MARK).touch()
            return
        if not (out / MARK).is_file():
            raise HandwheelError(f"{out}: the folder is not empty; name another with --out")
        wrote = (out / MARK).read_text(encoding="utf-8")
        if not wrote:  # the demo before was stopped half-way
            return
        written = json.loads(wrote)
        for name, digest in _digests(out).items():
            if written.get(name) != digest:
                raise HandwheelError(
                    f"{out / name}: it is not as the demo wrote it, and would be lost; name another folder with --out"
                )
    except (OSError, ValueError, AttributeError) as error:
        if isinstance(error, HandwheelError):
            raise
        reason = getattr(error, "strerror", None) or "it is not as the demo wrote it"
        raise HandwheelError(f"{out}: can't be written ({reason}); name another folder with --out") from error


def _digests(out: Path) -> dict[str, str]:
    """Return a digest for every file in the folder but the mark and the job's lock, by its place in it."""
    return {
        place.relative_to(out).as_posix(): hashlib.sha256(place.read_bytes()).hexdigest()
        for place in sorted(out.rglob("*"))
        if place.is_file() and place.name not in (MARK, ".job.lock")
    }


def _make_room(out: Path) -> None:
    """Empty the folder; from here on it is a demo half-way.

    Raises:
        HandwheelError: it can't be written.
    """
    try:
        (out / MARK).write_text("", encoding="utf-8")
        for place in out.iterdir():
            if place.is_dir() and not place.is_symlink():
                shutil.rmtree(place)
            elif place.name != MARK:
                place.unlink()
    except OSError as error:
        raise HandwheelError(
            f"{out}: can't be written ({error.strerror or error}); name another folder with --out"
        ) from error


def _copy_notebooks(folder: Path) -> None:
    try:
        for notebook in sorted(assets.template_dir().glob("*.ipynb")):
            shutil.copyfile(notebook, folder / notebook.name)
    except OSError as error:
        raise HandwheelError(
            f"{folder}: the notebooks can't be written there ({error.strerror or error}); make room, or name another "
            "folder with --out"
        ) from error
