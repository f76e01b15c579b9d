"""The arrows between the rooms hold: pyproject.toml says who may import whom, DEVELOPERS.md says why."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[1]

# One wrong import against each contract: the room, and a line nobody there may write.
WRONG_IMPORTS = [
    ("Each room imports", "numbers", "from handwheel.plan import lines"),
    ("tables import", "tables", "from handwheel.numbers import reading"),
    ("calc imports", "calc", "from handwheel.worked import forms"),
    ("the dry run", "dryrun", "from handwheel import calc"),
    ("the estimate", "estimate", "from handwheel import job"),
    ("the command line", "cli", "from handwheel import panels"),
    ("pint", "job", "import pint"),
]


def lint(kit: Path) -> dict[str, str]:
    """Each contract's name and verdict, KEPT or BROKEN, for the package under `kit`."""
    config = str(ROOT / "pyproject.toml")
    code = (
        "from importlinter.cli import lint_imports; "
        f"lint_imports(config_filename={config!r}, no_cache=True, no_logo=True)"
    )
    run = subprocess.run(
        [sys.executable, "-c", code],
        capture_output=True,
        text=True,
        cwd=kit,
        env=os.environ | {"PYTHONPATH": str(kit), "COLUMNS": "400"},
    )
    verdicts = re.findall(r"^(.+?) (KEPT|BROKEN)\b", run.stdout, flags=re.MULTILINE)
    assert verdicts, run.stdout + run.stderr
    broken_details = run.stdout.partition("Broken contracts")[2]
    return {name: verdict if verdict == "KEPT" else f"BROKEN{broken_details}" for name, verdict in verdicts}


def test_every_arrow_holds():
    contracts = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["importlinter"]
    verdicts = lint(ROOT / "kit")
    assert verdicts == {contract["name"]: "KEPT" for contract in contracts["contracts"]}


@pytest.fixture(scope="module")
def verdicts_on_wrong_imports(tmp_path_factory):
    kit = tmp_path_factory.mktemp("kit")
    shutil.copytree(ROOT / "kit" / "handwheel", kit / "handwheel", ignore=shutil.ignore_patterns("__pycache__"))
    for _, room, line in WRONG_IMPORTS:
        folder = kit / "handwheel" / room
        module = folder / "__init__.py" if folder.is_dir() else folder.with_suffix(".py")
        module.write_text(f"{module.read_text(encoding='utf-8')}\n{line}\n", encoding="utf-8")
    return lint(kit)


@pytest.mark.parametrize("contract", [contract for contract, _, _ in WRONG_IMPORTS])
def test_a_wrong_import_breaks_its_contract(contract, verdicts_on_wrong_imports):
    verdict = next(text for name, text in verdicts_on_wrong_imports.items() if name.startswith(contract))
    assert verdict.startswith("BROKEN")
