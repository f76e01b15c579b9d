"""The job's notebooks run and show what is stored in them: each alone on the demo job, and in order on one job."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from pathlib import Path

import pytest

from handwheel import assets

TEMPLATES = assets.template_dir()
NOTEBOOKS = sorted(TEMPLATES.glob("*.ipynb"))

pytestmark = pytest.mark.nbval


def run_and_compare(folder: Path) -> subprocess.CompletedProcess[str]:
    """Run the folder's notebooks under nbval in one process, each output compared in full."""
    command = [
        sys.executable, "-m", "pytest", "--nbval", "-q", "-p", "no:cacheprovider",
        "-c", str(folder / "none.ini"), f"--rootdir={folder}", *sorted(map(str, folder.glob("*.ipynb"))),
    ]  # fmt: skip
    (folder / "none.ini").write_text("[pytest]\n")
    environment = {name: value for name, value in os.environ.items() if name != "PYTEST_ADDOPTS"}
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True, timeout=1200)


def copy_notebooks(folder: Path) -> None:
    for notebook in NOTEBOOKS:
        shutil.copy(notebook, folder)


def test_each_notebook_runs_alone_on_the_demo_job(tmp_path: Path) -> None:
    copy_notebooks(tmp_path)
    done = run_and_compare(tmp_path)
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]
    assert not (tmp_path / "job.json").exists(), "a notebook without a job left one behind"


def test_the_notebooks_run_in_order_on_one_job(tmp_path: Path) -> None:
    shutil.copytree(assets.demo_job_file().parent, tmp_path, dirs_exist_ok=True)
    copy_notebooks(tmp_path)
    done = run_and_compare(tmp_path)
    assert done.returncode == 0, done.stdout[-6000:] + done.stderr[-2000:]


@pytest.mark.parametrize("notebook", NOTEBOOKS, ids=lambda path: path.name)
def test_a_notebook_is_fit_to_be_a_template(notebook: Path) -> None:
    cells = json.loads(notebook.read_text(encoding="utf-8"))["cells"]
    code = [cell for cell in cells if cell["cell_type"] == "code"]
    assert "parameters" in code[0]["metadata"].get("tags", [])
    assert any(cell["outputs"] for cell in code), "nothing stored to compare with"
    ignored = [cell for cell in code if "NBVAL_IGNORE_OUTPUT" in "".join(cell["source"])]
    assert all("panels." in "".join(cell["source"]) for cell in ignored), "only a panel's cell may be ignored"
    assert cells[0]["cell_type"] == "markdown"
