"""The parts that the tests look at."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from handwheel import assets
from handwheel.job.folder import open_job
from handwheel.part.reading_in import read_part

sys.path.insert(0, str(Path(__file__).parent))

SECOND = Path(__file__).parents[1] / "job" / "data" / "second-job"


@pytest.fixture(scope="session")
def demo_entry():
    return open_job(assets.demo_job_file()).part


@pytest.fixture(scope="session")
def demo(demo_entry):
    part, faults = read_part(demo_entry)
    assert not faults
    return part


@pytest.fixture(scope="session")
def second():
    part, faults = read_part(open_job(SECOND).part)
    assert not faults
    return part
