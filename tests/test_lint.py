"""The style rules and the type checker, so that one command tests everything."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]


def run(*arguments: str) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, "-m", *arguments], cwd=ROOT, capture_output=True, text=True)


def test_ruff_finds_nothing():
    result = run("ruff", "check", "--output-format=concise", "--no-cache", "kit", "tests")
    assert result.returncode == 0, result.stdout + result.stderr


def test_mypy_finds_nothing():
    result = run("mypy", "--no-error-summary")
    assert result.returncode == 0, result.stdout + result.stderr
