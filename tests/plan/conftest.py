"""The plans that the tests look at."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from handwheel import assets
from handwheel.job.folder import open_job
from handwheel.job.road import whole_road

sys.path[:0] = [str(Path(__file__).parent), str(Path(__file__).parents[1] / "part")]

SECOND = Path(__file__).parents[1] / "job" / "data" / "second-job"


@pytest.fixture(scope="session")
def demo():
    return whole_road(open_job(assets.demo_job_file()))


@pytest.fixture(scope="session")
def second():
    return whole_road(open_job(SECOND))
