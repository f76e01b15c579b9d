"""The job's folder: opened or refused with a sentence, never overwritten when in doubt, its history kept."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
from datetime import UTC, datetime
from pathlib import Path

import attrs
import pytest
from hypothesis import given
from hypothesis import strategies as st

from handwheel import assets
from handwheel.job import serial
from handwheel.job.folder import history, new_job, open_job, save_job
from handwheel.job.here import open_here
from handwheel.job.quotes import give_quote, quote_today
from handwheel.job.road import freeze_sheet, printed_sheet, run_road, whole_road
from handwheel.job.serial import from_text, to_text
from handwheel.numbers import showing
from handwheel.numbers.faults import HandwheelError

WHEN = datetime(2026, 3, 4, 5, 6, 7, tzinfo=UTC)
SECOND = Path(__file__).parent / "data" / "second-job"


@pytest.fixture
def folder(tmp_path):
    shutil.copytree(assets.demo_job_file().parent, tmp_path / "job")
    return tmp_path / "job"


def test_a_folder_and_its_file_open_alike(folder):
    assert open_job(folder) == open_job(folder / "job.json")
    assert open_job(folder).invented
    assert "invented" in open_job(folder).title


def test_saving_keeps_the_version_before(folder):
    job = open_job(folder)
    first = (folder / "job.json").read_text(encoding="utf-8")
    changed = save_job(attrs.evolve(job, decisions={"bar": "4140 PH 2-1/4 x 36"}), folder, WHEN, before=job)
    assert open_job(folder) == changed
    assert [json.loads(path.read_text(encoding="utf-8")) for path in history(folder)] == [json.loads(first)]
    assert [path.name for path in history(folder)] == ["job-00001-20260304-050607.json"]
    again = save_job(changed, folder, WHEN, before=changed)  # nothing changed: nothing more is kept
    assert again == changed
    assert len(history(folder)) == 1
    save_job(attrs.evolve(changed, decisions={}), folder, WHEN, before=changed)
    assert len(history(folder)) == 2
    assert not [path for path in folder.iterdir() if path.suffix == ".new"]


def test_unknown_keys_are_kept(folder):
    plain = json.loads((folder / "job.json").read_text(encoding="utf-8"))
    plain["customer's dog"] = {"name": "Rex"}
    plain["part"]["finish"] = {"oil": [1, 2.5]}
    plain["part"]["features"][0]["colour"] = "blued"
    plain["readings"][3]["humidity"] = "50 %"
    plain["sheets"] = {"1": {"when": "then", "sheet": {"number": "1"}, "signed": True}}
    plain["quotes"] = [{"when": "then", "price": "1.00 USD", "time": "1 h", "by": "phone"}]
    (folder / "job.json").write_text(json.dumps(plain), encoding="utf-8")
    job = open_job(folder)
    save_job(attrs.evolve(job, decisions={"bar": "x"}), folder, WHEN, before=job)
    assert open_job(folder).readings == job.readings
    after = json.loads((folder / "job.json").read_text(encoding="utf-8"))
    assert after["customer's dog"] == {"name": "Rex"}
    assert after["part"]["finish"] == {"oil": [1, 2.5]}
    assert after["part"]["features"][0]["colour"] == "blued"
    assert after["readings"][3]["humidity"] == "50 %"
    assert after["sheets"]["1"]["signed"] is True
    assert after["quotes"][0]["by"] == "phone"


BROKEN = [
    (lambda text: text[: len(text) // 2], "ends too early"),
    (lambda _: "", "ends too early"),
    (lambda text: text.replace('"format": 1', '"format": 99', 1), "a newer kit wrote it"),
    (lambda text: text.replace('"format": 1', '"format": 0', 1), "none this kit ever wrote"),
    (lambda text: text.replace('"format": 1', '"format": "one"', 1), "does not say its format"),
    (lambda text: text.replace('"title":', '"title" "', 1), "line 3"),
    (lambda text: text.replace('"invented": true', '"invented": NaN', 1), "NaN is no number"),
    (lambda text: text.replace('"readings": [', '"readings": 5, "x": [', 1), "mend the file"),
    (lambda text: text.replace('"units": "in"', '"units": "cubits"', 1), "mend the file"),
    (lambda text: text.replace('"typed": "1.3741"', '"typed": 1.3741', 1), "is not text"),
    (lambda text: text.replace('"invented": true', '"invented": "no"', 1), "neither true nor false"),
    (lambda text: text.replace('"decisions": {}', '"decisions": {}, "decisions": {}', 1), "stands twice"),
    (lambda text: text.replace('"units": "in",', "", 1), "part.units is missing"),
    (lambda text: text.replace('"wanted": "', '"wanted": "\\ud800', 1), "half a character"),
    (lambda text: text.replace('"invented": true', '"invented": true, "dose": 1e999', 1), "endless"),
    (lambda text: text.replace('"format": 1', '"format": 99, "kit": "9.1"', 1), "Handwheel 9.1 wrote it"),
    (lambda _: "[1, 2]", "does not say its format"),
    (lambda _: "[" * 100_000, "broken|nested"),
]


@pytest.mark.parametrize(("damage", "why"), BROKEN)
def test_a_damaged_file_gets_a_sentence_and_is_never_overwritten(folder, damage, why):
    job = open_job(folder)
    place = folder / "job.json"
    damaged = damage(place.read_text(encoding="utf-8"))
    place.write_text(damaged, encoding="utf-8")
    with pytest.raises(HandwheelError, match=why) as refused:
        open_job(folder)
    assert "\n" not in str(refused.value)
    with pytest.raises(HandwheelError):
        save_job(attrs.evolve(job, decisions={"bar": "x"}), folder, WHEN, before=job)
    assert place.read_text(encoding="utf-8") == damaged


def test_a_file_changed_by_someone_else_is_left_alone(folder):
    mine = open_job(folder)
    theirs = save_job(attrs.evolve(mine, decisions={"bar": "theirs"}), folder, WHEN, before=mine)
    with pytest.raises(HandwheelError, match="changed by someone else"):
        save_job(attrs.evolve(mine, decisions={"bar": "mine"}), folder, WHEN, before=mine)
    assert open_job(folder) == theirs


def test_a_new_job_does_not_cover_an_old_one(folder, tmp_path):
    job = open_job(folder)
    with pytest.raises(HandwheelError, match="holds a job already"):
        new_job(job, folder, WHEN)
    new_job(job, tmp_path / "fresh", WHEN)
    assert open_job(tmp_path / "fresh") == job
    assert (tmp_path / "fresh" / "photos").is_dir()


def test_a_missing_or_binary_file_is_said(tmp_path):
    with pytest.raises(HandwheelError, match="there is no job"):
        open_job(tmp_path)
    (tmp_path / "job.json").write_bytes(b"\xff\xfe\x00\x01")
    with pytest.raises(HandwheelError, match="it is no text"):
        open_job(tmp_path)


@pytest.mark.skipif(os.name != "posix", reason="only POSIX systems limit the size of a file")
def test_a_full_disk_leaves_the_job_as_it_was(folder):
    """A limit on file size stands for the full disk: the system itself refuses the write."""
    program = (
        "import resource, signal, sys, attrs; from pathlib import Path; from datetime import datetime, UTC\n"
        "from handwheel.job.folder import open_job, save_job\n"
        "signal.signal(signal.SIGXFSZ, signal.SIG_IGN)\n"
        "folder = Path(sys.argv[1]); job = open_job(folder)\n"
        "resource.setrlimit(resource.RLIMIT_FSIZE, (4000, 4000))\n"
        "try: save_job(attrs.evolve(job, decisions={'bar': 'x'}), folder, datetime.now(UTC), before=job)\n"
        "except ValueError as fault: print(fault)\n"
    )
    before = (folder / "job.json").read_text(encoding="utf-8")
    done = subprocess.run([sys.executable, "-c", program, str(folder)], capture_output=True, text=True, timeout=60)
    assert "was not saved" in done.stdout
    assert (folder / "job.json").read_text(encoding="utf-8") == before
    assert not list(folder.glob(".*.new"))


@pytest.mark.skipif(os.name != "posix", reason="only POSIX systems keep rights this way")
def test_a_folder_that_may_not_be_written_is_said(folder):
    """Someone without rights to the folder saves (root becomes nobody): a sentence, and the file as it was."""
    program = (
        "import os, sys, attrs; from pathlib import Path; from datetime import datetime, UTC\n"
        "from handwheel.job.folder import open_job, save_job\n"
        "folder = Path(sys.argv[1]); job = open_job(folder)\n"
        "os.chdir(folder)\n"
        "if os.geteuid() == 0: os.seteuid(65534)\n"
        "try: save_job(attrs.evolve(job, decisions={'bar': 'x'}), Path(), datetime.now(UTC), before=job)\n"
        "except ValueError as fault: print(fault)\n"
    )
    before = (folder / "job.json").read_text(encoding="utf-8")
    folder.chmod(0o555)
    done = subprocess.run([sys.executable, "-c", program, str(folder)], capture_output=True, text=True, timeout=60)
    folder.chmod(0o755)
    assert "was not saved" in done.stdout, done.stderr
    assert (folder / "job.json").read_text(encoding="utf-8") == before


def test_what_a_killed_save_left_is_cleared_away(folder):
    job = open_job(folder)
    (folder / "history").mkdir()
    for left in (folder / ".job.json-abc.new", folder / "history" / ".job-00001-20260304-050607.json-x.new"):
        left.write_text('{"form', encoding="utf-8")
    assert open_job(folder) == job
    save_job(attrs.evolve(job, decisions={"bar": "x"}), folder, WHEN, before=job)
    assert not list(folder.rglob("*.new"))
    assert len(history(folder)) == 1


def test_history_goes_on_counting_where_old_versions_were_thrown_out(folder):
    job = open_job(folder)
    for turn in range(3):
        job = save_job(attrs.evolve(job, order={"turn": str(turn)}), folder, WHEN, before=job)
    history(folder)[0].unlink()
    save_job(attrs.evolve(job, order={}), folder, WHEN, before=job)
    assert [path.name[:9] for path in history(folder)] == ["job-00002", "job-00003", "job-00004"]


def test_an_older_form_is_brought_up_to_date(monkeypatch):
    """As if a form 0 had called the order's table `customer`."""
    monkeypatch.setitem(serial.MIGRATIONS, 0, lambda old: {"order": old.pop("customer"), **old})
    plain = json.loads(assets.demo_job_file().read_text(encoding="utf-8"))
    old = {**plain, "format": 0, "customer": plain["order"]}
    del old["order"]
    assert from_text(json.dumps(old), "job.json") == open_job(assets.demo_job_file())
    assert json.loads(to_text(from_text(json.dumps(old), "job.json")))["format"] == 1


@pytest.mark.property
@given(st.integers(0, 10**9), st.sampled_from(["cut", "swap", "insert"]), st.text(max_size=4))
def test_no_damage_breaks_the_reader(place, how, junk):
    text = assets.demo_job_file().read_text(encoding="utf-8")
    at = place % len(text)
    damaged = {"cut": text[:at], "swap": text[:at] + junk + text[at + 1 :], "insert": text[:at] + junk + text[at:]}[how]
    try:
        job = from_text(damaged, "job.json")
    except HandwheelError as refused:
        assert "\n" not in str(refused)
        return
    assert from_text(to_text(job), "job.json") == job


def test_a_printed_sheet_is_frozen(folder):
    job = open_job(folder)
    road = whole_road(job)
    frozen = freeze_sheet(job, road.plan.sheet, WHEN.isoformat())
    saved = save_job(frozen, folder, WHEN, before=job)
    assert printed_sheet(open_job(folder).sheets["1"]) == road.plan.sheet
    assert freeze_sheet(saved, road.plan.sheet, "later") == saved
    other = attrs.evolve(road.plan.sheet, part="another")
    with pytest.raises(HandwheelError, match="another sheet was printed under this number"):
        freeze_sheet(saved, other, "later")


def test_the_road_stops_where_it_must_and_says_so(folder):
    job = open_job(folder)
    features = [{**each, "diameter": "x"} if each["name"] == "collar" else each for each in job.part.features]
    road = run_road(attrs.evolve(job, part=attrs.evolve(job.part, features=features)))
    assert road.part is None
    assert "collar" in road.faults[0].sentence()
    with pytest.raises(HandwheelError, match="collar"):
        whole_road(attrs.evolve(job, part=attrs.evolve(job.part, features=features)))
    road = run_road(attrs.evolve(job, part=attrs.evolve(job.part, material="cheese")))
    assert road.choice is None
    assert "no bar of the rack serves" in road.faults[0].sentence()
    road = run_road(attrs.evolve(job, decisions={"bar": "1018 2 x 12", "colour": "blue"}))
    assert road.plan is not None
    said = " ".join(fault.sentence() for fault in road.faults)
    assert "'1018 2 x 12' does not serve (it is 1018, and 4140 PH is asked for; it is 12.000 in long" in said
    assert "nothing to decide under 'colour'" in said
    with pytest.raises(HandwheelError, match="can't be opened"):
        run_road(attrs.evolve(job, shop="no-such-shop.toml"))


def test_a_quote_stands_as_it_was_given(folder):
    job = open_job(folder)
    estimate = whole_road(job).estimate
    given = save_job(give_quote(job, estimate, "2026-03-04"), folder, WHEN, before=job)
    (quote,) = open_job(folder).quotes
    assert given.quotes == [quote]
    assert quote.price == showing.money(estimate.price, estimate.currency)
    assert quote_today(quote, estimate) == ""
    dearer = attrs.evolve(estimate, price=estimate.price + 40)
    assert f"{quote.price} for" in quote_today(quote, dearer)
    assert showing.money(dearer.price, "USD") in quote_today(quote, dearer)


def test_both_jobs_go_the_whole_road():
    for place in (assets.demo_job_file(), SECOND):
        road = whole_road(open_job(place))
        assert road.report.ok
        assert road.estimate.price > 0


def test_a_notebook_alone_opens_a_copy_of_the_demo(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    job, place = open_here()
    assert job == open_job(assets.demo_job_file())
    assert place.resolve() != assets.demo_job_file().parent
    assert not list(tmp_path.iterdir())
