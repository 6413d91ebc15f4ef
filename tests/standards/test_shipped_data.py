"""Data files that ship with the program are read without looking for faults; here the strict reader looks at every one."""

from __future__ import annotations

from importlib import resources
from typing import Any

import pytest

from specgen.source.reader import read_shipped, read_text
from specgen.source.tree import Mapping, Node, Scalar, Sequence
from specgen.standards.tables import table_names

FILES = ["documents.yaml", *(f"tables/{name}.yaml" for name in table_names())]


def _plain(node: Node | None) -> Any:
    match node:
        case Scalar():
            return node.text
        case Sequence():
            return [_plain(item) for item in node.items]
        case Mapping():
            return {key: _plain(held) for key, held in node.entries.items()}
    raise TypeError(f"{node} is nothing a data file holds")


@pytest.mark.parametrize("name", FILES)
def test_it_is_sound_and_read_alike_both_ways(name: str) -> None:
    raw = resources.files("specgen.standards").joinpath(name).read_bytes()
    source, faults = read_text(raw, name)
    assert faults == []
    assert read_shipped(raw) == _plain(source.root)
