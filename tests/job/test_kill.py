"""A saving process killed at any moment leaves the job before or the job after, whole."""

from __future__ import annotations

import os
import random
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest

from handwheel import assets
from handwheel.job.folder import history, open_job

SAVING = Path(__file__).with_name("saving.py")


def kill_while_saving(folder: Path, chance: random.Random) -> None:
    """Start a process that saves, kill it a little later, and look at what it left."""
    before = int(open_job(folder).decisions.get("turn", "0"))
    process = subprocess.Popen([sys.executable, str(SAVING), str(folder)], stdout=subprocess.PIPE, text=True)
    assert process.stdout is not None
    process.stdout.readline()  # it saves by now
    time.sleep(chance.uniform(0, 0.05))
    os.kill(process.pid, signal.SIGKILL)
    told, _ = process.communicate()
    last = int((told.split() or [str(before + 1)])[-1])
    job = open_job(folder)  # raises where the file is torn
    turn = int(job.decisions["turn"])
    # what was reported as saved is there; the save under way may or may not be
    assert last <= turn <= last + 1
    assert len(job.decisions["padding"]) == 20_000
    for kept in history(folder)[-3:]:
        assert open_job(kept).title == job.title


def killed(times: int, tmp_path: Path) -> None:
    folder = tmp_path / "job"
    shutil.copytree(assets.demo_job_file().parent, folder)
    chance = random.Random(7)
    for _ in range(times):
        kill_while_saving(folder, chance)
        for kept in history(folder)[:-5]:
            kept.unlink()  # so that the folder stays small


def test_thirty_kills(tmp_path):
    killed(30, tmp_path)


@pytest.mark.deep
def test_a_thousand_kills(tmp_path):
    killed(1000, tmp_path)
