"""The wheel works away from the checkout: it carries the templates, the demo job and the sample shop."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

from handwheel import assets

ROOT = Path(__file__).resolve().parents[1]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    out = tmp_path_factory.mktemp("wheel")
    build = [sys.executable, "-m", "build", "--wheel", "--no-isolation", "--outdir", str(out), str(ROOT)]
    result = subprocess.run(build, capture_output=True, text=True)
    assert result.returncode == 0, result.stdout + result.stderr
    (made,) = out.glob("handwheel-*.whl")
    return made


@pytest.fixture(scope="module")
def installed(wheel, tmp_path_factory):
    """A folder with the wheel's files as an installer would lay them out."""
    folder = tmp_path_factory.mktemp("site")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(folder)
    return folder


def asset_paths(site: Path, cwd: Path) -> list[Path]:
    code = (
        "from handwheel import assets; "
        "print(assets.template_dir(), assets.demo_job_file(), assets.sample_shop_file(), sep='\\n')"
    )
    run = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        cwd=cwd,
        env=os.environ | {"PYTHONPATH": str(site)},
    )
    assert run.returncode == 0, run.stderr
    return [Path(line) for line in run.stdout.splitlines()]


def test_the_installed_kit_finds_its_own_files(installed, tmp_path):
    templates, demo, shop = asset_paths(installed, tmp_path)
    assert all(path.is_relative_to(installed) for path in (templates, demo, shop))
    assert demo.read_bytes() == assets.demo_job_file().read_bytes()
    assert shop.read_bytes() == assets.sample_shop_file().read_bytes()


def test_the_installed_templates_are_the_notebooks_of_the_checkout(installed, tmp_path):
    templates, _, _ = asset_paths(installed, tmp_path)
    stored = {path.name: path.read_bytes() for path in (ROOT / "notebooks" / "job").glob("*.ipynb")}
    assert stored
    assert {path.name: path.read_bytes() for path in templates.glob("*.ipynb")} == stored


def test_the_wheel_is_typed_licensed_and_has_the_command(installed):
    (about,) = installed.glob("handwheel-*.dist-info")
    assert (installed / "handwheel" / "py.typed").is_file()
    assert "handwheel = handwheel.cli:main" in (about / "entry_points.txt").read_text(encoding="utf-8")
    assert (about / "licenses" / "kit" / "LICENSE").is_file()


def test_the_wheel_holds_no_tests_and_no_caches(wheel):
    names = zipfile.ZipFile(wheel).namelist()
    assert {name.split("/")[0].partition("-")[0] for name in names} == {"handwheel"}
    assert not [name for name in names if "__pycache__" in name or ".ipynb_checkpoints" in name]
