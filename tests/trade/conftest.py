"""Cases as data: a test marked `cases("NAME")` runs once for each row of `data/NAME.csv`, handed in as `case`.

Every row names the document its figure was read in (never an address) and the mark of the reading: SEEN, DERIVED
(worked out from the stated rule), ILLUSTRATIVE (invented input), PRACTICE or MEMORY.
"""

from __future__ import annotations

import csv
from pathlib import Path

import pytest

DATA = Path(__file__).parent / "data"


def pytest_configure(config: pytest.Config) -> None:
    config.addinivalue_line("markers", "cases(name): run once for each row of data/NAME.csv")


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    marker = metafunc.definition.get_closest_marker("cases")
    if marker is None:
        return
    with (DATA / f"{marker.args[0]}.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    metafunc.parametrize("case", rows, ids=[row.get("id") or " ".join(list(row.values())[:2]) for row in rows])
