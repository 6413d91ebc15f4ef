"""Plain words are taken a short way through the builder; it comes to the same as the long one, faults and places included."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.source.builder import TreeBuilder
from specgen.source.reader import read_text

ROOT = Path(__file__).resolve().parents[2]
FILES = sorted(
    path for folder in ("tests/bad_sources", "tests/good", "specs_demo") for path in (ROOT / folder).rglob("*.yaml")
)


def _long_way(builder: TreeBuilder, text: str, line: int, column: int, end_column: int) -> None:
    builder.scalar(text, "", (line, column), (line, end_column), has_property=False)


def _alike(raw: bytes) -> None:
    short = read_text(raw, "a.yaml")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(TreeBuilder, "word", _long_way)
        assert read_text(raw, "a.yaml") == short


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.name)
def test_on_files(path: Path) -> None:
    _alike(path.read_bytes())


_PIECES = st.sampled_from(
    ["a", "b:", "c: d", "- ", "e", "? ", "# x", " ", "  ", "\n", "\n  ", "{", "}", "[", "]", ",", "<<", "~", "null", "'q'", "&n ", "!t ", "*n", "f:g"]
)  # fmt: skip


@settings(max_examples=300, deadline=None)
@given(st.lists(_PIECES, max_size=25))
def test_on_whatever(pieces: list[str]) -> None:
    _alike("".join(pieces).encode())
