"""The command line: right answers on standard output, one line and status 2 for nonsense."""

from __future__ import annotations

import json
import shutil
import subprocess
import sys

import attrs
import pytest

from handwheel import assets
from handwheel.cli import COMMANDS
from handwheel.job.folder import open_job
from handwheel.job.serial import to_text
from handwheel.worked import forms


def handwheel(*arguments: str, cwd=None) -> subprocess.CompletedProcess[str]:
    return subprocess.run(
        [sys.executable, "-m", "handwheel", *arguments], capture_output=True, text=True, cwd=cwd, timeout=120
    )


@pytest.fixture(scope="module")
def packet(tmp_path_factory):
    out = tmp_path_factory.mktemp("demo") / "packet"
    done = handwheel("demo", "--out", str(out))
    assert done.returncode == 0, done.stderr
    return out, done.stdout


def test_demo_writes_the_whole_packet(packet):
    out, said = packet
    for name in ("bench-sheet.html", "bench-sheet.pdf", "side-view.svg", "estimate.txt", "dry-run.txt", "job/job.json"):
        assert (out / name).stat().st_size > 200
        assert name in said
    assert "invented" in said
    assert "no fault" in said
    assert sorted(path.name for path in (out / "job").glob("*.ipynb")) == sorted(
        path.name for path in assets.template_dir().glob("*.ipynb")
    )
    assert open_job(out / "job").sheets["1"]


def test_demo_makes_its_own_folder_anew_but_nobody_elses(packet, tmp_path):
    out, _ = packet
    assert handwheel("demo", "--out", str(out)).returncode == 0
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "photo.jpg").write_text("x")
    refused = handwheel("demo", "--out", str(tmp_path / "mine"))
    assert (refused.returncode, refused.stdout) == (2, "")
    assert "not empty" in refused.stderr
    assert (tmp_path / "mine" / "photo.jpg").exists()


def test_dry_run_replays_the_printed_sheet_and_names_the_line_at_fault(packet, tmp_path):
    out, _ = packet
    for place in (out / "job", out / "job" / "job.json"):
        fine = handwheel("dry-run", str(place))
        assert (fine.returncode, fine.stderr) == (0, "")
        assert "no fault" in fine.stdout
    job = open_job(out / "job")
    kept = job.sheets["1"]
    lines = [dict(line) for line in kept.sheet["lines"]]
    place = max(number for number, line in enumerate(lines) if "cross-turns" in line["values"])
    values = dict(lines[place]["values"])
    lines[place]["values"] = {**values, "cross-turns": str(int(values["cross-turns"]) + 1)}
    wrong = attrs.evolve(job, sheets={"1": attrs.evolve(kept, sheet={**kept.sheet, "lines": lines})})
    (tmp_path / "job.json").write_text(to_text(wrong), encoding="utf-8")
    found = handwheel("dry-run", str(tmp_path))
    assert found.returncode == 1
    assert f"line {lines[place]['number']}: " in found.stdout


def test_dry_run_of_what_is_no_job(tmp_path):
    (tmp_path / "torn").mkdir()
    text = assets.demo_job_file().read_text(encoding="utf-8")
    (tmp_path / "torn" / "job.json").write_text(text[:500], encoding="utf-8")
    for place in ("nowhere", "torn"):
        refused = handwheel("dry-run", place, cwd=tmp_path)
        assert (refused.returncode, refused.stdout) == (2, "")
        assert len(refused.stderr.splitlines()) == 1
    shutil.copy(assets.demo_job_file(), tmp_path / "job.json")
    planned = handwheel("dry-run", str(tmp_path))  # nothing printed yet: planned afresh
    assert planned.returncode == 0
    assert handwheel("dry-run", str(tmp_path), "--sheet", "7").returncode == 2


def test_calc_lists_every_calculation_a_line_each():
    lines = handwheel("calc", "--list").stdout.splitlines()
    assert [line.split()[0] for line in lines] == list(forms.registry())


def test_calc_answers_in_words_and_in_json():
    words = handwheel("calc", "dial-cut", "reduce=1/4", "division=.001", "per-turn=.100", "reads=travel", "start=.037")
    assert "125" in words.stdout
    assert "read reduce: 1/4 in = 0.25 in" in words.stdout
    answer = json.loads(handwheel("calc", "taper", "large=1.0625", "small=.828125", "length=1-7/8", "--json").stdout)
    assert answer["results"]["ratio"] == "1:8"
    assert answer["results"]["half-angle"]["value"] == pytest.approx(3.576334, abs=1e-6)
    metric = json.loads(
        handwheel("calc", "bar-stock", "diameter=35", "length=575", "material=1.4021", "--units", "mm", "--json").stdout
    )
    assert metric["results"]["mass"]["unit"] == "kg"
    assert "Source:" in handwheel("calc", "surface-finish", "feed=.004", "nose-radius=1/64", "--working").stdout


NONSENSE = [
    ["calc"],
    ["calc", "tapr", "ratio=1:8"],
    ["calc", "taper"],
    ["calc", "taper", "ratio"],
    ["calc", "taper", "ratio=1:8", "ratio=1:9"],
    ["calc", "taper", "ratio=1:8", "half-angle=3"],
    ["calc", "taper", "ratio=1,8"],
    ["calc", "taper", "units=mm", "ratio=1:8"],
    ["calc", "taper", "half-angle=nan"],
    ["calc", "taper", "ratio=1:8", "--units", "cubits"],
    ["calc", "taper", "ratio=1:8", "--colour"],
    ["mill"],
]


@pytest.mark.parametrize("arguments", NONSENSE, ids=" ".join)
def test_nonsense_is_one_line_on_standard_error_and_status_2(arguments):
    done = handwheel(*arguments)
    assert (done.returncode, done.stdout) == (2, "")
    assert len(done.stderr.strip().splitlines()) == 1
    assert "Traceback" not in done.stderr


def test_every_command_has_its_help():
    for name in COMMANDS:
        done = handwheel(name, "--help")
        assert done.returncode == 0
        assert "Usage" in done.stdout
    assert "handwheel" in handwheel("--version").stdout
