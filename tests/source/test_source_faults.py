"""Every broken file in `tests/bad_sources` gives exactly the findings its table lists."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import yaml

from specgen.findings import Severity
from specgen.source import FAULTS, read_file, reader

FOLDER = Path(__file__).parent.parent / "bad_sources"
_ENTRY = re.compile(r"\[(SRC[0-9]{3}) at ([0-9]+:[0-9]+-[0-9]+)\]")
# the parser written in Python meets these a few signs later than the one in C
LATER_IN_PYTHON = {"yaml_features_damaged_tag.yaml"}


def table() -> dict[str, tuple[list[str], bool]]:
    rows: dict[str, tuple[list[str], bool]] = {}
    for line in (FOLDER / "expected.txt").read_text(encoding="utf-8").splitlines():
        if line and not line.startswith("#"):
            name, _, rest = line.partition(" ")
            assert name not in rows, f"{name} stands in the table twice"
            left = _ENTRY.sub("", rest).split()
            assert left in ([], ["tree"]), f"{name}: {left} cannot be read"
            rows[name] = ([f"{id} at {at}" for id, at in _ENTRY.findall(rest)], left == ["tree"])
    return rows


TABLE = table()


def found(name: str) -> tuple[list[str], bool]:
    source, findings = read_file(FOLDER / name, name)
    listed = [f"{f.id} at {f.place.line}:{f.place.column}-{f.place.end_column}" for f in findings]
    assert [f.place.file for f in findings] == [name] * len(findings)
    return listed, source.root is not None


def test_the_table_and_the_folder_list_the_same_files() -> None:
    assert sorted(TABLE) == sorted(path.name for path in FOLDER.glob("*.yaml"))


@pytest.mark.parametrize("name", TABLE)
def test_findings_of_a_broken_file(name: str) -> None:
    assert found(name) == TABLE[name]


@pytest.mark.parametrize("name", [name for name in TABLE if name not in LATER_IN_PYTHON])
def test_the_parser_written_in_python_gives_the_same(name: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(reader, "_LOADER", yaml.SafeLoader)
    assert found(name) == TABLE[name]


def test_every_fault_of_a_file_has_a_broken_file() -> None:
    shown = {entry.split()[0] for entries, _ in TABLE.values() for entry in entries}
    # too large to keep, or faults of a folder: made in the tests of the reader and of the project
    elsewhere = {"SRC001", "SRC002", "SRC021", "SRC036", "SRC037", "SRC038", "SRC039", "SRC040", "SRC043", "SRC044"}
    assert set(FAULTS) - shown == elsewhere


def test_every_fault_is_explained() -> None:
    for id, entry in FAULTS.items():
        assert id == entry.id
        assert all(len(text) > 3 for text in (entry.title, entry.why, entry.remedy, entry.example))
        assert entry.why.endswith(".")
        assert entry.remedy.endswith(".")
    assert list(FAULTS) == [f"SRC{number:03}" for number in range(1, len(FAULTS) + 1)]
    assert [id for id, entry in FAULTS.items() if entry.severity is not Severity.ERROR] == ["SRC011", "SRC023"]
