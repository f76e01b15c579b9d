"""The tree a newcomer meets: nothing at the top but what the README explains, no path of one machine."""

from __future__ import annotations

import re
import shutil
import subprocess
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]
TOP = {"README.md", "DEVELOPERS.md", "pyproject.toml", "kit", "notebooks", "tests", "binder"}
# A root folder of one machine or one person, at the start of a word: the paths that mean nothing to a reader.
MACHINE_PATH = re.compile(rb"(?<![\w./~:-])/(?:work|tmp|root|farm|home|Users)/[\w.-]")


@pytest.fixture(scope="module")
def tracked():
    """Every file of the repository as git lists it."""
    if shutil.which("git") is None or not (ROOT / ".git").exists():
        pytest.skip("not a git checkout: the tree can only be judged by what git tracks")
    listing = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, capture_output=True, check=True).stdout
    return [name for name in listing.decode().split("\0") if name and (ROOT / name).is_file()]


def test_the_top_holds_what_the_readme_names_and_no_more(tracked):
    top = {name.split("/")[0] for name in tracked}
    assert {name for name in top if not name.startswith(".")} == TOP


def test_no_tracked_file_holds_a_path_of_one_machine(tracked):
    found = [
        f"{name}: {match.group().decode()}"
        for name in tracked
        if name != "tests/test_tree.py"
        for match in MACHINE_PATH.finditer((ROOT / name).read_bytes())
    ]
    assert not found


def test_the_licence_stands_under_kit(tracked):
    assert "kit/LICENSE" in tracked
    assert "the Handwheel authors" in (ROOT / "kit" / "LICENSE").read_text(encoding="utf-8")
