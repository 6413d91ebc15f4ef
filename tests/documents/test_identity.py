"""The maker's logo and colour: fitted, guarded, and ink where there are none."""

from __future__ import annotations

import shutil
from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from specgen.checking import check
from specgen.documents.identity import bar_colour, rule_colour
from specgen.printing.documents import print_documents
from tests.good_spec import GOOD, ON


@pytest.mark.parametrize(
    ("stated", "rule"),
    [
        ("#0b5c6b", "#0b5c6b"),
        ("#f5b800", "#ba8c00"),
        ("#c9ced1", "#919496"),
        ("#ffffff", "#949494"),
        ("#000000", "#000000"),
    ],
)
def test_a_rule_stands_out_from_white_paper(stated: str, rule: str) -> None:
    assert rule_colour(stated) == rule


def test_a_bar_nobody_would_see_is_darkened() -> None:
    assert [bar_colour(stated) for stated in ("#ffffff", "#fefefe", "#f5b800")] == ["#e0e0e0", "#e5e5e5", "#f5b800"]


def _printed(folder: Path) -> dict[str, bytes]:
    return print_documents(check(folder, ON), documents=["order-list"])


def test_logo_and_colour_are_on_every_edition_and_without_them_there_are_none(tmp_path: Path) -> None:
    folder = Path(shutil.copytree(GOOD, tmp_path / "good"))
    plain = _printed(folder)
    file = next(f for f in folder.glob("**/*.yaml") if "\nproject:" in "\n" + f.read_text())
    file.write_text(
        file.read_text().replace("project:\n", 'project:\n  logo: logo.svg\n  brand_colour: "#F5B800"\n', 1)
    )
    (folder / "logo.svg").write_text(
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 38 15"><text x="2" y="9" font-size="9">ZQZ</text></svg>'
    )
    marked = _printed(folder)
    for name, data in marked.items():
        if name.endswith(".html"):
            page = data.decode()
            assert page.count('<img class="logo" src="data:image/svg+xml;base64,') == 1
            assert '<html lang="en" style="--brand: #f5b800; --brand-rule: #ba8c00">' in page
            assert "<img" not in plain[name].decode()
            assert 'style="--brand' not in plain[name].decode()
        if name.endswith(".pdf"):
            first, before = (PdfReader(BytesIO(side)).pages[0] for side in (data, plain[name]))
            assert "ZQZ" in first.extract_text().replace(" ", "")
            assert "ZQZ" not in before.extract_text().replace(" ", "")
            colour = b"0.960784 0.721569 0"
            assert colour in first.get_contents().get_data()
            assert colour not in before.get_contents().get_data()
    assert {name.rpartition(".")[2] for name in marked} >= {"pdf", "html"}
