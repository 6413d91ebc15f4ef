"""A folder of sources is read in order, within its bounds, and never outside itself."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from specgen.source import SourceError, find_project, project, read_project


def write(folder: Path, *names: str) -> None:
    for name in names:
        path = folder / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("a: 1\n", encoding="utf-8")


def names(folder: Path) -> list[str]:
    return [source.name for source in read_project(folder).files]


def found(folder: Path) -> list[str]:
    return [f"{f.id} at {f.place}" for f in read_project(folder).findings]


def test_files_in_order_and_nothing_hidden(tmp_path: Path) -> None:
    write(tmp_path, "b.yml", "a.yaml", "sub/deep/c.YAML", "sub/a.yaml", "z.txt", ".x.yaml", ".git/y.yaml", "sub.yaml")
    assert names(tmp_path) == ["a.yaml", "b.yml", "sub.yaml", "sub/a.yaml", "sub/deep/c.YAML"]
    assert read_project(tmp_path).folder == tmp_path
    assert found(tmp_path) == []


def test_findings_name_the_file_below_the_folder(tmp_path: Path) -> None:
    write(tmp_path, "a.yaml")
    (tmp_path / "sub").mkdir()
    (tmp_path / "sub" / "b.yaml").write_text("a: 1\nb: ~\n", encoding="utf-8")
    assert found(tmp_path) == ["SRC019 at sub/b.yaml:2:4"]


def test_links(tmp_path: Path) -> None:
    outside, inside = tmp_path / "outside", tmp_path / "inside"
    write(outside, "o.yaml", "more/p.yaml")
    write(inside, "a.yaml", "sub/b.yaml", "kept.txt")
    (inside / "again.yaml").symlink_to(inside / "sub" / "b.yaml")
    (inside / "other_suffix.yaml").symlink_to(inside / "kept.txt")
    (inside / "out.yaml").symlink_to(outside / "o.yaml")
    (inside / "gone.yaml").symlink_to(outside / "gone.yaml")
    (inside / "loop.yaml").symlink_to(inside / "loop.yaml")
    (inside / "round").symlink_to(inside)
    (inside / "out").symlink_to(outside / "more")
    assert names(inside) == ["a.yaml", "other_suffix.yaml", "sub/b.yaml"]
    assert sorted(found(inside)) == [
        "SRC038 at gone.yaml:1:1",
        "SRC038 at loop.yaml:1:1",
        "SRC038 at out.yaml:1:1",
        "SRC038 at out:1:1",
    ]


def test_a_pipe_is_not_waited_for(tmp_path: Path) -> None:
    os.mkfifo(tmp_path / "pipe.yaml")
    assert found(tmp_path) == ["SRC002 at pipe.yaml:1:1"]


def test_a_name_that_cannot_be_printed(tmp_path: Path) -> None:
    write(tmp_path, "a\x07.yaml")
    (tmp_path / os.fsdecode(b"b\xff.yaml")).write_text("a: 1\n", encoding="utf-8")
    # a line end would begin a finding of the name's own making
    write(tmp_path, "c\nd.yaml:1:1: error FLM001.yaml", "e\r.yaml", "f\tg/h.yaml")
    assert found(tmp_path) == [
        "SRC043 at a\ufffd.yaml:1:1",
        "SRC043 at b\ufffd.yaml:1:1",
        "SRC043 at c\ufffdd.yaml:1:1: error FLM001.yaml:1:1",
        "SRC043 at e\ufffd.yaml:1:1",
        "SRC043 at f\ufffdg/h.yaml:1:1",
    ]
    assert names(tmp_path) == []


def test_too_many_files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, "a.yaml", "b.yaml", "c.yaml")
    monkeypatch.setattr(project, "FILES_LIMIT", 2)
    assert names(tmp_path) == ["a.yaml", "b.yaml"]
    assert found(tmp_path) == ["SRC039 at c.yaml:1:1"]
    monkeypatch.setattr(project, "_VISITS_LIMIT", 1)
    assert found(tmp_path) == ["SRC039 at b.yaml:1:1"]


def test_too_much_together(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, "a.yaml", "b.yaml", "c.yaml")
    monkeypatch.setattr(project, "TOTAL_LIMIT", 12)
    assert names(tmp_path) == ["a.yaml", "b.yaml"]
    assert found(tmp_path) == ["SRC040 at c.yaml:1:1"]


def test_too_many_values_together(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    for name in ("a.yaml", "b.yaml", "c.yaml"):
        # a mapping, its key, its list and three values: six
        (tmp_path / name).write_text("a: [1, 2, 3]\n", "utf-8")
    monkeypatch.setattr(project, "NODES_LIMIT", 12)
    assert names(tmp_path) == ["a.yaml", "b.yaml"]
    assert found(tmp_path) == ["SRC044 at c.yaml:1:1"]


def test_a_closed_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    write(tmp_path, "a.yaml", "shut/b.yaml")
    listing = os.scandir

    # nothing is closed to the superuser, who may be running the tests, so the refusal is played
    def refuse(path: Path) -> object:
        if Path(path).name == "shut":
            raise PermissionError(13, "Permission denied", str(path))
        return listing(path)

    monkeypatch.setattr(os, "scandir", refuse)
    assert found(tmp_path) == ["SRC002 at shut:1:1"]
    assert names(tmp_path) == ["a.yaml"]
    with pytest.raises(SourceError, match=r"shut cannot be opened: Permission denied\."):
        read_project(tmp_path / "shut")


def test_find_project(tmp_path: Path) -> None:
    write(tmp_path, "one/project.yaml", "one/sub/deep/a.yaml", "two/project.yml", "two/b.yaml", "three/c.yaml")
    assert find_project(tmp_path / "three") == tmp_path / "three"
    assert find_project(tmp_path / "one" / "sub" / "deep" / "a.yaml") == tmp_path / "one"
    assert find_project(tmp_path / "one" / "project.yaml") == tmp_path / "one"
    assert find_project(tmp_path / "two" / "b.yaml") == tmp_path / "two"
    assert find_project(tmp_path / "three" / "c.yaml") == tmp_path / "three"


def test_a_missing_path(tmp_path: Path) -> None:
    with pytest.raises(SourceError, match=r"none: there is no such file or folder\.$"):
        find_project(tmp_path / "none")
    with pytest.raises(SourceError, match=r"none: there is no such folder\.$"):
        read_project(tmp_path / "none")
    with pytest.raises(SourceError):
        find_project(Path("a\0b"))
