"""The catalogue: a page for every id and table, every link leading to a page of the folder, every text escaped."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from specgen.commands import main
from specgen.report.explanations import explanations
from specgen.standards.tables import table_names

HREF = re.compile(r'href="([^"#]+)"')


def test_pages_are_written_and_linked(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["explain", "--html", str(tmp_path / "pages")]) == 0
    written = {path.name for path in (tmp_path / "pages").iterdir()}
    wanted = {"index.html"} | {f"{id}.html" for id in explanations()} | {f"table-{name}.html" for name in table_names()}
    assert written == wanted
    assert capsys.readouterr().out.startswith(f"{len(wanted)} pages written; begin with ")
    texts = {name: (tmp_path / "pages" / name).read_text("utf-8") for name in written}
    assert {link for text in texts.values() for link in HREF.findall(text)} <= written
    assert set(HREF.findall(texts["index.html"])) == wanted
    assert "<h1>FLM003 A coat stays within the DFT range of its product</h1>" in texts["FLM003.html"]
    assert "cold-rolled steel sheet" in texts["table-materials.html"]


def test_folder_that_cannot_be_written(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (tmp_path / "file").write_text("")
    assert main(["explain", "--html", str(tmp_path / "file")]) == 2
    assert capsys.readouterr().err.startswith("specgen: ")
