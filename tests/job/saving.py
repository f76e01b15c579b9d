"""A process that saves a job over and over, to be killed: `python saving.py FOLDER`."""

from __future__ import annotations

import sys
from datetime import datetime
from itertools import count
from pathlib import Path

import attrs

from handwheel.job.folder import open_job, save_job

if __name__ == "__main__":
    folder = Path(sys.argv[1])
    job = open_job(folder)
    start = int(job.decisions.get("turn", "0"))
    for turn in count(start + 1):
        job = save_job(
            attrs.evolve(job, decisions={"turn": str(turn), "padding": "x" * 20_000}),
            folder,
            datetime.now().astimezone(),
            before=job,
        )
        print(turn, flush=True)
