"""Shipped files are reached by name only, and the fonts hold every sign the documents use."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from specgen.rendering import assets
from specgen.rendering.assets import FONT_FAMILY, asset, templates_folder
from specgen.rendering.failure import RenderError
from tests.rendering.shipped_faces import FACES

ASCII = "".join(map(chr, range(0x20, 0x7F)))
LATIN_1 = "".join(map(chr, range(0xA0, 0x100)))
UPRIGHT = ASCII + LATIN_1 + "µμ°±×≤≥–—‘’“”•…→ΔΩ½²³₀₁₂₃€−≈≠‰√αβγ\u202f"
ITALIC = ASCII + LATIN_1 + "µ°±×≤≥–—‘’“”•…→½²³₀₁₂₃€−≈≠‰√\u202f"


@pytest.mark.parametrize(("file", "weight", "style"), FACES)
def test_faces_cover_what_documents_print(file: str, weight: str, style: str) -> None:
    font = TTFont(asset(file))
    held = font.getBestCmap()
    wanted = ITALIC if style == "italic" else UPRIGHT
    assert [sign for sign in wanted if ord(sign) not in held] == []
    assert "fvar" not in font  # a variable font does not give equal bytes


def test_the_font_style_sheet_declares_exactly_the_shipped_faces() -> None:
    sheet = asset("style/fonts.css").read_text(encoding="utf-8")
    face = re.compile(
        r'font-family: "(.+?)";\s+font-weight: (\d+);\s+font-style: (\w+);\s+src: url\("asset:(.+?)"\);\s+}'
    )
    assert face.findall(sheet) == [(FONT_FAMILY, weight, style, file) for file, weight, style in FACES]
    shipped = {path.name for path in (templates_folder() / "fonts").iterdir()}
    assert shipped == {Path(file).name for file, *_ in FACES} | {"OFL.txt"}
    assert "SIL OPEN FONT LICENSE Version 1.1" in asset("fonts/OFL.txt").read_text(encoding="utf-8")


@pytest.mark.parametrize(
    "name", ["", "/etc/passwd", "../pyproject.toml", "style/../../specgen/__init__.py", "style\\print.css", "a\0b"]
)
def test_names_that_lead_outside_are_refused(name: str) -> None:
    with pytest.raises(RenderError, match="lies outside the templates folder"):
        asset(name)


def test_an_unknown_name_is_refused() -> None:
    with pytest.raises(RenderError, match="'style/none.css' is not among the shipped templates"):
        asset("style/none.css")


def test_a_link_that_leads_outside_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = tmp_path / "templates"
    folder.mkdir()
    (tmp_path / "secret.css").write_text("x", encoding="utf-8")
    (folder / "inside.css").write_text("y", encoding="utf-8")
    (folder / "link.css").symlink_to(tmp_path / "secret.css")
    monkeypatch.setattr(assets, "templates_folder", lambda: folder.resolve())
    assert asset("inside.css") == folder.resolve() / "inside.css"
    with pytest.raises(RenderError, match=r"'link\.css' lies outside"):
        asset("link.css")


def test_the_installed_folder_comes_before_the_one_beside_the_package(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    module = tmp_path / "specgen" / "rendering" / "assets.py"
    places = [tmp_path / "specgen" / "_templates", tmp_path / "templates"]
    monkeypatch.setattr(assets, "__file__", str(module))
    find = templates_folder.__wrapped__
    with pytest.raises(RenderError, match="The templates are missing"):
        find()
    for folder in reversed(places):
        folder.mkdir(parents=True)
        (folder / "base.html.j2").write_text("", encoding="utf-8")
        assert find() == folder.resolve()
