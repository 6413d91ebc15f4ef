"""A picture belongs to the source that names it: it is read from the folder alone, and another picture is another value."""

from __future__ import annotations

import os
import shutil
from pathlib import Path

import pytest

from specgen.findings import Severity
from specgen.model.canonical import canonical
from specgen.model.parse import load
from specgen.pictures.prepared import digest
from tests.good_spec import GOOD

SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><rect width="9" height="9" fill="{}"/></svg>'


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    """The good specification with a logo."""
    inside = Path(shutil.copytree(GOOD, tmp_path / "good"))
    (inside / "logo.svg").write_text(SVG.format("#0b5c6b"))
    return inside


def _told(folder: Path, logo: str = "logo.svg") -> list[tuple[str, Severity, str]]:
    file = next(f for f in folder.glob("**/*.yaml") if "\nproject:" in "\n" + f.read_text())
    text = file.read_text()
    if "  logo:" not in text:
        file.write_text(text.replace("project:\n", f"project:\n  logo: '{logo}'\n", 1))
    # a folder of links is told by itself
    found = [one for one in load(folder).findings if one.id != "SRC038"]
    assert all(one.path == "project.logo" and one.place.line > 1 and one.place.file == file.name for one in found)
    return [(one.id, one.severity, one.what) for one in found]


def test_the_digest_of_the_file_is_part_of_the_value(folder: Path) -> None:
    assert _told(folder) == []
    before = load(folder).spec
    assert before is not None
    value = f"logo.svg sha256:{digest((folder / 'logo.svg').read_bytes())}"
    assert before.project.logo == value
    assert before.pictures[value].data.startswith(b"<svg ")
    assert value in canonical(before)
    # who approved a specification did not approve the maker's logo
    assert value not in canonical(before, content=True)
    (folder / "logo.svg").write_text(SVG.format("#111111"))
    after = load(folder).spec
    assert after is not None
    assert canonical(after) != canonical(before)


def test_a_white_logo_is_a_warning(folder: Path) -> None:
    (folder / "logo.svg").write_text(SVG.format("white"))
    assert _told(folder) == [("MOD012", Severity.WARNING, "nothing of logo.svg shows on white paper")]


@pytest.mark.parametrize(
    ("logo", "message"),
    [
        ("lost.svg", "lost.svg: there is no such file in the folder"),
        ("logo.svg/a.svg", "logo.svg/a.svg: there is no such file in the folder"),
        ("linked.svg", "linked.svg: it is reached through a link"),
        ("away/a.svg", "away/a.svg: it is reached through a link"),
        ("pipe.svg", "pipe.svg: it is not an ordinary file"),
        ("folder.svg", "folder.svg: it is not an ordinary file"),
        ("logo.png", "logo.png: the file is no PNG"),
    ],
)
def test_what_cannot_be_used_is_told_where_it_is_named(folder: Path, logo: str, message: str) -> None:
    (folder / "linked.svg").symlink_to(folder / "logo.svg")
    (folder / "away").symlink_to(folder.parent)
    shutil.copy(folder / "logo.svg", folder.parent / "a.svg")
    shutil.copy(folder / "logo.svg", folder / "logo.png")
    (folder / "folder.svg").mkdir()
    os.mkfifo(folder / "pipe.svg")
    assert _told(folder, logo) == [("MOD011", Severity.ERROR, message)]


@pytest.mark.parametrize("logo", ["../a.svg", "/etc/a.svg", "a.gif", "logo"])
def test_a_name_that_leads_out_is_refused(folder: Path, logo: str) -> None:
    assert [id for id, *_ in _told(folder, logo)] == ["MOD003"]


def test_a_digest_is_not_written_by_hand(folder: Path) -> None:
    told = _told(folder, f"logo.svg sha256:{'0' * 64}")
    assert [id for id, *_ in told] == ["MOD011"]
