"""The HTML edition: one file that stands alone, to be read on a phone at the job or kept as it is.

Called by the commands and by issuing with the HTML that `environment.fill` made for the medium "screen".
"""

from __future__ import annotations

import re
from base64 import b64encode
from collections.abc import Collection
from html.parser import HTMLParser

from specgen.pictures.prepared import Prepared
from specgen.rendering.bounds import check_bounds
from specgen.rendering.failure import RenderError

_REFERENCES = frozenset(
    [
        "action",
        "background",
        "cite",
        "classid",
        "codebase",
        "data",
        "formaction",
        "href",
        "longdesc",
        "manifest",
        "ping",
    ]
)
_REFERENCES |= frozenset(["poster", "profile", "src", "srcdoc", "srcset", "usemap", "xlink:href", "xml:base"])
_INSIDE = re.compile(r"#[^\s]*|mailto:[^\s]+|tel:[+0-9().-]+")
_STYLE_REACHES_OUT = re.compile(r"url\s*\(\s*(?!['\"]?#)|@import|image-set|src\s*\(|\\", re.IGNORECASE)


def write_html(html: str, pictures: Collection[Prepared] = ()) -> bytes:
    """The bytes (UTF-8) of one self-contained page; `pictures` are those it may show, which are placed in it.

    Raises RenderError when the page is out of bounds (see `bounds`), has no title, language or view port, or refers to
    anything outside itself other than a mail address or telephone number.
    """
    check_bounds(html)
    shown = {picture.address: picture for picture in pictures}
    reader = _SelfContained(frozenset(shown))
    reader.feed(html)
    reader.close()
    missing = [what for what, there in reader.found.items() if not there]
    if missing:
        raise RenderError(f"The HTML page has no {', no '.join(missing)}. Build the template on base.html.j2.")
    for address, picture in shown.items():
        # where a text of an author reads like this, text is what it stays
        html = html.replace(
            f'src="{address}"', f'src="data:{picture.media_type};base64,{b64encode(picture.data).decode()}"'
        )
    return html.encode("utf-8")


class _SelfContained(HTMLParser):
    """Walks the tags once, refusing every reference that leads outside and noting what a page must have."""

    def __init__(self, shown: frozenset[str]) -> None:
        super().__init__(convert_charrefs=True)
        self._shown = shown
        self.found = {"language": False, "title": False, "view port": False}
        self._tag = ""
        self._in_svg = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self._tag = tag
        self._in_svg = self._in_svg or tag == "svg"
        values = {name: value or "" for name, value in attrs}
        for name, value in values.items():
            if tag == "img" and name == "src" and value in self._shown:
                continue
            if name in _REFERENCES and not _INSIDE.fullmatch(value.strip()):
                raise RenderError(
                    f"The <{tag}> element refers to {value[:100]!r} by its {name}. The HTML edition stands alone; "
                    "place the content in the page or take the reference out."
                )
            if _STYLE_REACHES_OUT.search(value) and (name == "style" or self._in_svg):
                raise _style_error(value)
        if tag == "html" and values.get("lang", "").strip():
            self.found["language"] = True
        if tag == "meta":
            if "http-equiv" in values:
                raise RenderError("The page holds a meta element with http-equiv, which can lead the reader elsewhere.")
            self.found["view port"] |= values.get("name") == "viewport"

    def handle_endtag(self, tag: str) -> None:
        self._tag = ""
        if tag == "svg":
            self._in_svg = False

    def handle_data(self, data: str) -> None:
        if self._tag == "style" and _STYLE_REACHES_OUT.search(data):
            raise _style_error(data)
        if self._tag == "title" and not self._in_svg and data.strip():
            self.found["title"] = True


def _style_error(style: str) -> RenderError:
    reach = _STYLE_REACHES_OUT.search(style)
    near = style[reach.start() : reach.start() + 60] if reach else style[:60]
    return RenderError(f"A style of the page refers to something outside it: {near!r}. Take the reference out.")
