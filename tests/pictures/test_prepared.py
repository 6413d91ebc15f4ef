"""Pictures of the author: what is taken is clean, what is refused is told, and the same file gives the same bytes."""

from __future__ import annotations

import re
from io import BytesIO
from typing import Any

import pytest
from PIL import Image, PngImagePlugin

from specgen.pictures.prepared import prepared
from specgen.pictures.refused import NotAPicture

SVG = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:x="http://www.w3.org/1999/xlink" xmlns:e="urn:editor" viewBox="0 0 40 20">{}</svg>'


def _file(image: Image.Image, kind: str, **said: Any) -> bytes:
    out = BytesIO()
    image.save(out, kind, **said)
    return out.getvalue()


def test_a_photograph_is_turned_upright_and_says_nothing_of_place_and_camera() -> None:
    image = Image.new("RGB", (60, 20), "white")
    image.paste("red", (0, 0, 10, 20))
    about = Image.Exif()
    about[0x0112] = 6  # the top of what was seen is at the right: to be turned by 90 degrees
    about[0x010F] = "Camera of somebody"
    about.get_ifd(0x8825)[1] = "N"
    data = _file(image, "JPEG", exif=about, comment=b"a remark", quality=95)
    assert b"Camera of somebody" in data
    found = prepared("door.jpg", data)
    assert (found.media_type, found.width, found.height) == ("image/jpeg", 20, 60)
    assert all(word not in found.data for word in (b"Exif", b"Camera", b"remark"))
    shown = Image.open(BytesIO(found.data))
    red, green, _ = shown.getpixel((10, 3))
    assert red > 200 > 80 > green
    assert min(shown.getpixel((10, 50))) > 200
    assert prepared("door.JPG", data) == found


def test_a_png_loses_its_texts_and_stands_on_white() -> None:
    about = PngImagePlugin.PngInfo()
    about.add_text("Author", "somebody")
    image = Image.new("RGBA", (30, 10), (0, 0, 0, 0))
    image.paste((0, 0, 255, 255), (0, 0, 5, 10))
    found = prepared("a.png", _file(image, "PNG", pnginfo=about))
    assert (found.media_type, found.white) == ("image/png", False)
    assert b"somebody" not in found.data
    shown = Image.open(BytesIO(found.data))
    assert [shown.getpixel(at) for at in ((2, 5), (20, 5))] == [(0, 0, 255), (255, 255, 255)]


@pytest.mark.parametrize("mode", ["1", "L", "LA", "P", "RGB", "RGBA", "I;16"])
def test_every_kind_of_png_is_read_and_no_side_is_longer_than_paper_shows(mode: str) -> None:
    found = prepared("a.png", _file(Image.new(mode, (4000, 1000)), "PNG"))
    assert (found.width, found.height) == (1800, 450)


def test_all_white_is_seen() -> None:
    for mode, colour, white in (("RGBA", (255, 255, 255, 255), True), ("RGBA", (0, 0, 0, 0), True), ("L", 200, False)):
        assert prepared("a.png", _file(Image.new(mode, (20, 20), colour), "PNG")).white is white  # type: ignore[arg-type]
    drawn = {
        '<rect width="9" height="9" fill="#FFF"/>': True,
        '<g fill="white"><path d="M0 0 L9 9"/><text>A</text></g>': True,
        '<rect width="9" height="9" style="fill: white; stroke: #000"/>': False,
        '<rect width="9" height="9"/>': False,
        '<rect width="9" height="9" fill="#fefefe"/>': True,
        '<rect width="9" height="9" fill="#f0f0f0"/>': False,
        '<text x="1" y="5"> </text>': True,
        '<text x="1" y="5">A</text>': False,
        '<path d=""/><rect width="0" height="9"/><circle r="0"/>': True,
        '<g display="none"><rect width="9" height="9"/></g>': True,
        '<defs><rect width="9" height="9"/></defs>': True,
        "": True,
        '<g fill="#ffffff"><rect width="9" height="9"/><rect fill="#0b5c6b" width="2" height="2"/></g>': False,
    }
    assert {body: prepared("a.svg", SVG.format(body).encode()).white for body in drawn} == drawn


DOT = _file(Image.new("L", (9, 9)), "PNG")
REFUSED = {
    "another ending": ("a.jpg", DOT, "a PNG under another ending"),
    "no picture": ("a.png", b"GIF89a", "the file is no PNG"),
    "empty": ("a.jpeg", b"", "the file is no JPEG"),
    "damaged": ("a.png", DOT[:40], "damaged"),
    "half": ("a.jpg", _file(Image.effect_noise((90, 90), 90), "JPEG")[:2000], "damaged"),
    "a picture as drawing": ("a.svg", DOT, "a PNG under another ending"),
    "no drawing": ("a.svg", b"hello", "cannot be read from line 1"),
    "page": ("a.svg", b"<html/>", "the element html"),
    "entity": ("a.svg", b'<!DOCTYPE svg [<!ENTITY a "b">]>' + SVG.format("<text>&a;</text>").encode(), "a document type"),
    "instruction": ("a.svg", b'<?xml-stylesheet href="a.css"?>' + SVG.format("").encode(), "an instruction"),
    "no size": ("a.svg", b'<svg xmlns="http://www.w3.org/2000/svg"/>', "no size"),
    "size": ("a.svg", SVG.replace("0 0 40 20", "0 0 nan 20").format("").encode(), "no size"),
    "large": ("a.svg", SVG.format(" " * 1_100_000).encode(), "larger than 1024 KiB"),
    "many": ("a.svg", SVG.format("<g/>" * 5_000).encode(), "more than 5,000 elements"),
    "deep": ("a.svg", SVG.format("<g>" * 40 + "</g>" * 40).encode(), "nested more than 30 deep"),
}  # fmt: skip
REFUSED |= {
    body: ("a.svg", SVG.format(body).encode(), message)
    for body, message in {
        "<script>alert(1)</script>": "the element script",
        "<foreignObject/>": "the element foreignObject",
        '<image x:href="a.png"/>': "the element image",
        '<use x:href="#a"/>': "the element use",
        "<style>a{}</style>": "the element style",
        "<animate/>": "the element animate",
        "<svg/>": "the element svg",
        '<a x:href="https://example.org"/>': "the element a",
        '<rect x:href="#a"/>': "a reference",
        '<rect href="#a"/>': "href",
        '<rect onclick="a()"/>': "onclick",
        '<rect fill="url(https://example.org/#a)"/>': "fill with a value",
        '<rect style="stroke:url(//a#b)"/>': "stroke with a value",
        '<rect width="url(#a)"/>': "width with a value",
        '<rect filter="url(#a)"/>': "filter",
        '<rect opacity="0.5"/>': "opacity",
        '<rect style="mix-blend-mode: multiply"/>': "mix-blend-mode",
    }.items()
}


@pytest.mark.parametrize("case", REFUSED, ids=[name[:40] for name in REFUSED])
def test_what_is_not_taken_is_told(case: str) -> None:
    name, data, message = REFUSED[case]
    with pytest.raises(NotAPicture, match=re.escape(message)) as refused:
        prepared(name, data)
    assert refused.value.remedy


def test_a_picture_with_too_many_pixels_is_not_taken() -> None:
    with pytest.raises(NotAPicture, match="at most 12,000 a side") as refused:
        prepared("a.png", _file(Image.new("1", (20_000, 20_000)), "PNG"))
    assert refused.value.remedy


def test_what_editors_leave_for_themselves_stays_behind() -> None:
    """A drawing as drawing programs save it is a sound one."""
    body = (
        '<title>by somebody</title><metadata><e:rdf x:href="https://example.org">secret</e:rdf></metadata>'
        '<e:view zoom="2"/><defs><linearGradient id="g1" x1="0" x2="1"><stop offset="0" style="stop-color:#fff;stop-opacity:1"/>'
        '<stop offset="1" stop-color="#000"/></linearGradient></defs>'
        '<g e:label="Layer 1" id="layer1" class="a" transform="translate(-1.5,2e-1)" opacity="1">'
        '<path style="fill:url(#g1);stroke:#0b5c6b;stroke-width:1.5;-e-font:x;filter:none" d="m 1,1 c 2,2 3,3 4,4 z" onfocus="none"/>'
        '<text x="1" y="2" font-family="Whatever"><tspan>A &amp; B</tspan></text></g>'
    )
    found = prepared("a.svg", SVG.format(body).encode())
    text = found.data.decode()
    assert (found.width, found.height) == (40, 20)
    assert 'fill="url(#g1)"' in text
    assert 'stroke-width="1.5"' in text
    assert "<tspan>A &amp; B</tspan>" in text
    assert not re.search(r"somebody|secret|Layer 1|Whatever|href|urn:editor|onfocus|class", text)
    assert prepared("b.svg", found.data).data == found.data
