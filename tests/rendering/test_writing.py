"""A reader finds the old file or the new one, whole, whatever fails and when."""

from __future__ import annotations

import errno
import os
from pathlib import Path

import pytest

from specgen.model.file_names import LONGEST_NAME
from specgen.rendering.writing import write_all, write_atomically

OLD = {"a.pdf": b"old a", "b.html": b"old b"}
NEW = {"a.pdf": b"new a", "b.html": b"new b", "c.csv": b"new c"}


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    for name, data in OLD.items():
        (tmp_path / name).write_bytes(data)
    return tmp_path


def held(folder: Path) -> dict[str, bytes]:
    return {path.name: path.read_bytes() for path in folder.iterdir()}


def fails_at(monkeypatch: pytest.MonkeyPatch, call: str, turn: int, error: OSError) -> None:
    """The `turn`-th call of `os.<call>` fails; the others do their work."""
    real = getattr(os, call)
    turns = iter(range(1, 1000))

    def failing(*arguments: object, **options: object) -> object:
        if next(turns) == turn:
            raise error
        return real(*arguments, **options)

    monkeypatch.setattr(os, call, failing)


def test_files_are_written(folder: Path) -> None:
    write_all(folder, NEW)
    assert held(folder) == NEW
    write_atomically(folder / "a.pdf", b"")
    assert held(folder) == NEW | {"a.pdf": b""}


def test_short_writes_are_continued(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    real = os.write
    monkeypatch.setattr(os, "write", lambda handle, data: real(handle, data[:2]))
    write_atomically(folder / "a.pdf", b"new content")
    assert held(folder) == OLD | {"a.pdf": b"new content"}


def test_files_are_readable_by_others(folder: Path) -> None:
    before = os.umask(0o022)
    try:
        write_atomically(folder / "c.csv", b"x")
    finally:
        os.umask(before)
    assert (folder / "c.csv").stat().st_mode & 0o777 == 0o644


FULL = OSError(errno.ENOSPC, "No space left on device")
# Of three files: opened and written in turn, each fsynced, then renamed in turn, then the folder opened and fsynced.
BEFORE_RENAMING = [
    *((call, turn) for call in ("open", "write", "fsync", "close") for turn in (1, 2, 3)),
    ("replace", 1),
]


@pytest.mark.parametrize(("call", "turn"), BEFORE_RENAMING)
def test_a_failure_while_preparing_changes_nothing(
    folder: Path, monkeypatch: pytest.MonkeyPatch, call: str, turn: int
) -> None:
    fails_at(monkeypatch, call, turn, FULL)
    with pytest.raises(OSError, match="No space left on device"):
        write_all(folder, NEW)
    monkeypatch.undo()
    assert held(folder) == OLD


@pytest.mark.parametrize(("turn", "renamed"), [(2, ["a.pdf"]), (3, ["a.pdf", "b.html"])])
def test_a_failure_while_renaming_leaves_whole_files(
    folder: Path, monkeypatch: pytest.MonkeyPatch, turn: int, renamed: list[str]
) -> None:
    fails_at(monkeypatch, "replace", turn, FULL)
    with pytest.raises(OSError, match="No space left on device"):
        write_all(folder, NEW)
    assert held(folder) == OLD | {name: NEW[name] for name in renamed}


@pytest.mark.parametrize(("call", "turn"), [("open", 4), ("fsync", 4)])
def test_a_folder_that_cannot_be_confirmed_is_told_and_the_new_files_stand(
    folder: Path, monkeypatch: pytest.MonkeyPatch, call: str, turn: int
) -> None:
    fails_at(monkeypatch, call, turn, OSError(errno.EIO, "Input/output error"))
    with pytest.raises(OSError, match="Input/output error"):
        write_all(folder, NEW)
    monkeypatch.undo()
    assert held(folder) == NEW


def test_a_folder_in_the_way_is_found_before_anything_is_renamed(folder: Path) -> None:
    (folder / "c.csv").mkdir()
    with pytest.raises(IsADirectoryError, match="a folder in it has the name c.csv"):
        write_all(folder, NEW)
    (folder / "c.csv").rmdir()
    assert held(folder) == OLD


def test_an_interruption_leaves_no_temporary_file(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def interrupted(handle: int) -> None:
        raise KeyboardInterrupt

    monkeypatch.setattr(os, "fsync", interrupted)
    with pytest.raises(KeyboardInterrupt):
        write_atomically(folder / "a.pdf", b"new")
    assert held(folder) == OLD


REFUSED = {
    "": "it is empty",
    "  ": "it is empty",
    "..": "begins or ends with a full stop",
    ".hidden": "begins or ends with a full stop",
    "a.": "begins or ends with a full stop",
    "a ": "begins or ends with a full stop or a space",
    "/etc/passwd": "path separator",
    "a/b": "path separator",
    "a\\b": "path separator",
    "c:a": "path separator",
    "a\0": "a control character",
    "a\n": "a control character",
    "con": "reserved for a device",
    "AUX.pdf": "reserved for a device",
    "lpt9.tar.gz": "reserved for a device",
    "é" * 76: f"longer than {LONGEST_NAME} bytes",
}


@pytest.mark.parametrize("name", REFUSED)
def test_names_that_cannot_be_carried_are_refused(folder: Path, name: str) -> None:
    with pytest.raises(ValueError, match=REFUSED[name]):
        write_all(folder, {"c.csv": b"x", name: b"x"})
    assert held(folder) == OLD


def test_the_longest_name_is_written(folder: Path) -> None:
    write_atomically(folder / ("é" * 75), b"x")
    assert held(folder) == OLD | {"é" * 75: b"x"}


def test_names_that_differ_only_in_capitals_are_refused(folder: Path) -> None:
    with pytest.raises(ValueError, match="'c.csv' and 'C.CSV' differ only in capitals"):
        write_all(folder, {"c.csv": b"x", "C.CSV": b"x"})
    assert held(folder) == OLD
