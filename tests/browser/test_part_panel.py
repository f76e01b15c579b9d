"""A size is typed in JupyterLab in a real browser; the dial number and the sentence for nonsense are read there."""

from __future__ import annotations

import shutil
import sys
from pathlib import Path

import pytest

from handwheel import assets
from handwheel.job.folder import open_job

sys.path.insert(0, str(Path(__file__).parent))
from lab import CHROMIUM, running_lab

pytestmark = [
    pytest.mark.browser,
    pytest.mark.skipif(CHROMIUM is None, reason="no Chromium on this machine; install Debian's chromium"),
]

PATIENCE = 60_000
"""Milliseconds to wait for something to appear; the wait ends when it does."""


def test_a_diameter_typed_changes_the_dial_and_nonsense_gets_a_sentence(tmp_path):
    folder = tmp_path / "served" / "job"
    shutil.copytree(assets.demo_job_file().parent, folder)
    shutil.copy(assets.template_dir() / "01-the-part.ipynb", folder)
    scratch = tmp_path / "scratch"
    scratch.mkdir()
    with running_lab(folder, scratch) as lab:
        page = lab.page
        lab.open_and_run("01-the-part.ipynb")
        collar = page.get_by_label("collar Ø")
        collar.wait_for(timeout=PATIENCE)
        dials = page.locator("table.dial-lines")
        drawing = page.locator(".jp-OutputArea svg.side-view [data-feature=collar]").last

        collar.fill("1.760 ±.005")
        collar.press("Tab")
        # Ø1.874 - 1.760 = .114: .057 of travel, so the ring is set at .100 - .057 = .043
        dials.get_by_text("1.7600").first.wait_for(timeout=PATIENCE)
        assert ".043" in dials.inner_text()
        assert drawing.get_attribute("data-diameter") == "1.7650 / 1.7550"

        collar.fill("1,76")
        collar.press("Tab")
        sentence = page.locator("[role=status]", has_text="comma")
        sentence.wait_for(timeout=PATIENCE)
        assert "collar, diameter: '1,76'" in sentence.inner_text()
        assert ".043" in dials.inner_text()  # the part stays as it was

        collar.fill("1.760 ±.005")
        collar.press("Tab")
        page.get_by_role("button", name="Keep in the job").click()
        page.locator("[role=status]", has_text="As kept in the job").wait_for(timeout=PATIENCE)
        page.screenshot(path=str(tmp_path / "panel.png"), full_page=True)
    kept = {entry["name"]: entry for entry in open_job(folder).part.features}
    assert kept["collar"]["diameter"] == "1.760 ±.005"
