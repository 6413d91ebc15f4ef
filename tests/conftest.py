"""What every test may ask for: `--update-golden`, the comparison of a text with the file that holds what is expected, and cases as data.

A test marked `cases("NAME")` runs once for each row of `data/NAME.csv` beside it, handed in as `case`. The rows were written down from
the reference apart from the tables and formulas, so that a slip in one is not repeated in the other. Each names the document its figure
was read in (never an address) or the mark of the reading: SEEN, DERIVED (worked out from the stated rule), ILLUSTRATIVE (invented
input), PRACTICE or MEMORY.
"""

from __future__ import annotations

import csv
import gc
import os
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

# Tests make a great many records and little rubbish, like the program itself (`parse.without_collector`): the collector may wait.
gc.set_threshold(100_000, 20, 50)

# What Python compiled is kept: of the tests, whose assertions are written anew for it, which is a quarter of collecting them, and by
# the programs that a test starts, as it is for their users, or each start would compile it all again.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--update-golden", action="store_true", help="write the expected texts anew; read the difference like prose"
    )


def pytest_configure(config: pytest.Config) -> None:
    config.addinivalue_line("markers", "cases(name): run once for each row of data/NAME.csv")


def pytest_generate_tests(metafunc: pytest.Metafunc) -> None:
    marker = metafunc.definition.get_closest_marker("cases")
    if marker is None:
        return
    with (metafunc.definition.path.parent / "data" / f"{marker.args[0]}.csv").open(
        encoding="utf-8", newline=""
    ) as file:
        rows = list(csv.DictReader(file))
    metafunc.parametrize("case", rows, ids=[row.get("id") or " ".join(list(row.values())[:2]) for row in rows])


def pytest_collection_finish(session: pytest.Session) -> None:
    """What was collected stays to the end: the collector need not go through it again and again."""
    gc.freeze()


@pytest.fixture
def golden(request: pytest.FixtureRequest) -> Callable[[Path, str], None]:
    """Asserts that a text is what the file holds; with --update-golden the file is written instead."""
    update = bool(request.config.getoption("--update-golden"))

    def compare(file: Path, text: str) -> None:
        if update:
            file.parent.mkdir(parents=True, exist_ok=True)
            file.write_text(text, encoding="utf-8", newline="\n")
        expected = file.read_text(encoding="utf-8") if file.exists() else ""
        assert text == expected, (
            f"{file.name} differs; if that is meant: pytest --update-golden, and read the difference"
        )

    return compare


@pytest.fixture
def tree() -> Callable[[Path], dict[str, bytes]]:
    """Every file below a folder with its bytes, hidden ones too."""

    def read(folder: Path) -> dict[str, bytes]:
        return {str(p.relative_to(folder)): p.read_bytes() for p in sorted(folder.rglob("*")) if p.is_file()}

    return read
