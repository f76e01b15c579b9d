"""Run the job's notebooks on the demo job and store their outputs: `python tests/notebooks/refresh.py [name ...]`.

Look at what changed (`git diff notebooks`) before it is committed: a changed number is a changed promise.
"""

from __future__ import annotations

import shutil
import sys
import tempfile
from pathlib import Path

import nbformat
from nbclient import NotebookClient

from handwheel import assets


def refresh(notebook: Path) -> None:
    """Run one notebook in a temporary folder and write its outputs back where it stands."""
    with tempfile.TemporaryDirectory() as scratch:
        copied = Path(shutil.copy(notebook, scratch))
        content = nbformat.read(copied, as_version=4)
        NotebookClient(content, timeout=300, resources={"metadata": {"path": scratch}}).execute()
    for cell in content.cells:
        cell.metadata.pop("execution", None)  # times of the day say nothing
        if cell.cell_type == "code" and "NBVAL_IGNORE_OUTPUT" in cell.source:
            cell.outputs = []  # a panel's address is new each time
    content.metadata.pop("widgets", None)
    content.metadata.language_info = {"name": "python"}
    nbformat.write(content, notebook)


if __name__ == "__main__":
    wanted = sys.argv[1:]
    for path in sorted(assets.template_dir().glob("*.ipynb")):
        if not wanted or path.name in wanted:
            refresh(path)
            print(f"stored the outputs of {path.name}")
