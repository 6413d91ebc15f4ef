"""What every test may ask for: `--update-golden`, and the comparison of a text with the file that holds what is expected."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest


def pytest_addoption(parser: pytest.Parser) -> None:
    parser.addoption(
        "--update-golden", action="store_true", help="write the expected texts anew; read the difference like prose"
    )


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
