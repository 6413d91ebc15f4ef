"""Cases as data: a test marked `cases("NAME")` runs once for each row of `data/NAME.csv`, handed in as `case`.

The rows were written down from the reference apart from the tables, so that a slip in one is not repeated in the other.
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
    metafunc.parametrize("case", rows, ids=[" ".join(list(row.values())[:2]) for row in rows])
