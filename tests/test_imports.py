"""Asking the kit one small thing must not wait for libraries it does not need.

Each check runs in a fresh process, for a library once imported stays imported.
"""

from __future__ import annotations

import importlib
import json
import pkgutil
import subprocess
import sys

import pytest

import handwheel.calc

HEAVY = {"pint", "pandas", "matplotlib", "ipywidgets", "nbformat", "nbclient", "jupyterlab"}


def heavy_libraries_after(code: str) -> set[str]:
    """The heavy libraries that a fresh process has imported once `code` has run in it."""
    report = f"\nimport json, sys\nprint(json.dumps(sorted(set(sys.modules) & set({sorted(HEAVY)!r}))))"
    run = subprocess.run([sys.executable, "-c", code + report], capture_output=True, text=True)
    assert run.returncode == 0, run.stderr
    return set(json.loads(run.stdout.splitlines()[-1]))


def calculation_modules() -> list[str]:
    return [f"handwheel.calc.{module.name}" for module in pkgutil.iter_modules(handwheel.calc.__path__)]


@pytest.mark.parametrize(
    "code",
    [
        "import handwheel",
        "import handwheel; dir(handwheel)",
        "import handwheel.cli",
        "\n".join(f"import {module}" for module in calculation_modules()),
    ],
    ids=["the kit", "its list of calculations", "the command line", "every calculation"],
)
def test_an_import_brings_in_nothing_heavy(code):
    assert heavy_libraries_after(code) == set()


@pytest.mark.parametrize(
    "code",
    [
        "from handwheel.calc.dials import dial_cut; dial_cut(3.81, 0.0254, 2.54, 'travel').worked().text()",
        "import handwheel as h; h.dial_cut(reduce='.150', division='.001', per_turn='.100', reads='travel')",
    ],
    ids=["in plain numbers", "as typed"],
)
def test_a_calculation_brings_in_nothing_heavy(code):
    assert heavy_libraries_after(code) == set()


def test_the_check_sees_a_heavy_library():
    assert "pandas" in heavy_libraries_after("import pandas")


def test_every_calculation_is_offered_by_its_python_name():
    from handwheel.worked.forms import registry

    names = {name.replace("-", "_") for name in registry()}
    assert names
    assert names <= set(dir(handwheel))
    assert all(callable(getattr(handwheel, name)) for name in names)


def test_rooms_are_imported_as_rooms_though_calculations_are_offered_by_name():
    run = "from handwheel import assets, cli; print(assets.__name__, cli.__name__)"
    assert subprocess.run([sys.executable, "-c", run], capture_output=True, text=True).stdout.split() == [
        "handwheel.assets",
        "handwheel.cli",
    ]


def test_an_unknown_name_says_where_the_list_is():
    with pytest.raises(AttributeError, match=r"'dial_cutt'; see `handwheel calc --list`"):
        importlib.import_module("handwheel").dial_cutt  # noqa: B018
