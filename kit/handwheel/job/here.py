"""The job a notebook works on: the one in its folder, or a copy of the demo job where it stands alone."""

from __future__ import annotations

import shutil
import tempfile
from pathlib import Path

from handwheel import assets
from handwheel.job.folder import JOB_FILE, open_job
from handwheel.job.values import Job


def open_here(folder: str | Path = ".") -> tuple[Job, Path]:
    """Return the job in a folder with the folder; where there is none, a copy of the demo job (invented).

    The copy is in a temporary folder of its own, so that nothing is written beside the notebook.

    Raises:
        HandwheelError: the job can't be read.

    >>> job, folder = open_here()
    >>> job.title
    'stub shaft of a grain auger (invented)'
    """
    place = Path(folder)
    if not (place / JOB_FILE).exists():
        place = Path(tempfile.mkdtemp(prefix="handwheel-")) / "job"
        shutil.copytree(assets.demo_job_file().parent, place)
    return open_job(place), place
