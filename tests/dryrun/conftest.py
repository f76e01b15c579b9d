"""The dry run's tests share hand-written sheets and the harness of wrong sheets, kept beside them."""

from __future__ import annotations

import sys
from pathlib import Path

TESTS = Path(__file__).resolve().parents[1]

for folder in ("dryrun", "part"):
    sys.path.append(str(TESTS / folder))
