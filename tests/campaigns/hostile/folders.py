"""Folders of sources at the bounds of what is read, each within them file by file. Called by `hostile_files`."""

from __future__ import annotations

import shutil
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

_ROOT = Path(__file__).resolve().parents[3]
_FULL = 1024 * 1024


def _filled(piece: str, before: str = "", after: str = "") -> str:
    number = (_FULL - len((before + after).encode())) // len(piece.encode())
    return before + piece * number + after


def _many_values() -> Iterator[str]:
    yield from ("k:\n" + "- a\n" * 190_000 for _ in range(60))


def _much_text() -> Iterator[str]:
    yield from (_filled("  # " + "x" * 1_900 + "\n") for _ in range(64))


def _much_wide_text() -> Iterator[str]:
    line = "  " + "𝄞" * 1_900 + "\n"
    yield from (_filled(line, "a: |\n") for _ in range(64))


def _quoted() -> Iterator[str]:
    yield from (_filled('"\\u0041\\x41", ', "a: [", "b]\n").replace(", b", ", b") for _ in range(40))


def _deep() -> Iterator[str]:
    yield "a: " + "[" * 500_000
    yield "\n".join(" " * n + "a:" for n in range(1_400))
    yield "a: " + "{a: " * 200_000


def _one_key() -> Iterator[str]:
    yield "k" * (_FULL - 10) + ": a\n"
    yield "? " + "k" * (_FULL - 10) + "\n: a\n"
    yield '"' + "k" * (_FULL - 10) + '": a\n'
    yield "".join("k" * 1_900 + f"{n}: a\n" for n in range(540))


def _one_value() -> Iterator[str]:
    yield from ("products:\n  - id: " + "9" * (_FULL - 40) + "\n" for _ in range(30))


def _aliases() -> Iterator[str]:
    names = "abcdefghij"
    yield "a: &a [x, x]\n" + "".join(f"{to}: &{to} [{', '.join([f'*{of}'] * 9)}]\n" for of, to in pairwise(names))


def _wrong_records() -> Iterator[str]:
    """Findings by the ten thousand: every value is of no type."""
    for _ in range(12):
        yield "products:\n" + "".join(f"  - {{id: {n}, colour: 7, film: {{min: 1, max: x}}}}\n" for n in range(16_000))


def _copies() -> Iterator[str]:
    """Records that are whole and all say the same id."""
    product = (_ROOT / "tests/good/products.yaml").read_text("utf-8")
    body = product.partition("products:\n")[2]
    for _ in range(30):
        yield "products:\n" + body * (60_000 // len(body))


def _many_files() -> Iterator[str]:
    yield from ("preparations: []\n" for _ in range(6_000))


def _anchors_and_tags() -> Iterator[str]:
    yield _filled("- !!binary aGFsbG8=\n")
    yield _filled("- &a1 x\n")
    yield _filled("--- \n")
    yield _filled("%YAML 1.1\n")
    yield _filled("\t- a\n")
    yield _filled("{")


def _one(make: Callable[[], Iterator[str]]) -> Callable[[Path], list[list[str]]]:
    def case(place: Path) -> list[list[str]]:
        specs = Path(shutil.copytree(_ROOT / "tests/good", place / "specs"))
        for number, text in enumerate(make()):
            (specs / f"x{number:04}.yaml").write_text(text, "utf-8")
        return [
            ["check", "specs"],
            ["check", "specs", "--format", "json"],
            ["compare", str(_ROOT / "tests/good"), "specs"],
            ["approve", "MS-001", "--role", "check", "--name", "Bo Reed", "--meaning", "m", "--path", "specs"],
        ]

    return case


CASES = {
    name.__name__.strip("_").replace("_", " "): _one(name)
    for name in (
        _many_values, _much_text, _much_wide_text, _quoted, _deep, _one_key, _one_value, _aliases, _wrong_records, _copies,
        _many_files, _anchors_and_tags,
    )
}  # fmt: skip
