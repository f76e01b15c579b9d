"""What every test shares: how hard the random tests try, the order of the run, and no silent skips."""

from __future__ import annotations

import os

import pytest
from hypothesis import settings

settings.register_profile("ci", max_examples=50, deadline=None, derandomize=True)
settings.register_profile("everyday", max_examples=100, deadline=None)
settings.load_profile("ci" if os.environ.get("CI") == "true" else "everyday")

NO_SKIPS = os.environ.get("HANDWHEEL_NO_SKIPS") == "1"


def pytest_collection_modifyitems(items):
    """Notebooks after the plain tests, the browser last: what fails fast is heard first."""
    items.sort(key=lambda item: [item.get_closest_marker(name) is not None for name in ("browser", "nbval")])


def _refuse_skip(report):
    if NO_SKIPS and report.skipped and not hasattr(report, "wasxfail"):
        reason = report.longrepr[2] if isinstance(report.longrepr, tuple) else report.longrepr
        report.outcome = "failed"
        report.longrepr = f"{report.nodeid} was skipped where nothing may be: {reason}"
    return report


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item, call):
    return _refuse_skip((yield))


@pytest.hookimpl(wrapper=True)
def pytest_make_collect_report(collector):
    return _refuse_skip((yield))
