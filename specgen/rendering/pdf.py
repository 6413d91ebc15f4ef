"""HTML to PDF: the only module that knows the typesetter (WeasyPrint), and it imports it only when a page is set.

Called by the commands and by issuing. The typesetter fetches whatever a page names and logs what it cannot do; here
it is given shipped assets, pictures this program prepared, and nothing else, and every warning it logs is a failure.
Equal input gives equal bytes.
What makes a file last is finished in `lasting` before the bytes are written.
"""

from __future__ import annotations

import logging
import re
import threading
from collections.abc import Collection, Iterable, Iterator, Mapping, Sequence
from contextlib import contextmanager
from datetime import datetime
from functools import cache
from typing import Any, Literal, NoReturn
from urllib.parse import unquote

from specgen.pictures.prepared import Prepared
from specgen.rendering.assets import FONT_FAMILY, asset
from specgen.rendering.attachments import Attachment
from specgen.rendering.bounds import check_bounds
from specgen.rendering.failure import RenderError
from specgen.rendering.form import finish_form
from specgen.rendering.lasting import declare_accessible, embed, in_utc
from specgen.rendering.tag_tree import mend_tags

PageSize = Literal["A4", "Letter"]

SCHEME = "asset:"
"""How styles name a shipped file: `url("asset:fonts/<file>")`."""

_MEDIA_TYPES = {".css": "text/css", ".ttf": "font/ttf", ".svg": "image/svg+xml", ".png": "image/png"}
_PAGE_RULES = "@page {{ size: {size} portrait }} @page wide {{ size: {size} landscape }}"
# a sheet of Letter is 18 mm shorter, and takes the same pages
_LETTER = "@page { margin-top: 14mm; margin-bottom: 11mm }"
_NO_GLYPH = re.compile(r"\.notdef glyph rendered .*\(U\+([0-9A-F]+)\)")
_NO_SUBSETTER = "HarfBuzz-Subset"
_VARIANT = "pdf/a-3a"
# what keeps a table a table on a screen whose styles take it apart; a quote within a text of ours or an author's is escaped
_FOR_SCREENS = re.compile(r' (?:role="(?:table|rowgroup|row|columnheader|rowheader|cell)"|data-label="[^"]*")')


def write_pdf(
    html: str,
    *,
    page_size: PageSize,
    author: str = "",
    subject: str = "",
    keywords: Sequence[str] = (),
    identifier: bytes | None = None,
    attachments: Sequence[Attachment] = (),
    dated: datetime | None = None,
    pictures: Collection[Prepared] = (),
    fields: Mapping[str, str] | None = None,
) -> bytes:
    """The tagged PDF of one filled document; `author`, `subject` and `keywords` go into its properties.

    `html` is a whole page with a title and a language. `identifier` becomes the file identifier. The file is fit for the archive
    and for being read aloud. The only date it carries is `dated`; attachments of an undated file carry the day
    `lasting.UNDATED`. `pictures` are those the page may show, by their addresses.
    With `fields` the inputs of the page become a form, which holds these fields besides; a form is not for the archive.
    Raises RenderError when the page is out of bounds, names anything but a shipped asset or one of those, uses a character outside the
    shipped fonts, has headings that skip a level or a drawing without a title, or draws any warning from the typesetter;
    for attachments that share a name and a date without a time zone; and when Pango is not installed.
    """
    if page_size not in ("A4", "Letter"):
        raise RenderError(f"The page size {page_size!r} is unknown. Use A4 or Letter.")
    form = fields is not None
    check_bounds(html, form=form)
    engine = typesetter()
    fetcher = asset_fetcher(pictures)
    with _warnings_caught() as complaints:
        try:
            fonts = engine.fonts.FontConfiguration()
            faces = engine.CSS(url=SCHEME + "style/fonts.css", url_fetcher=fetcher, font_config=fonts)
            sheets = [faces, _print_sheet(), engine.CSS(string=_PAGE_RULES.format(size=page_size))]
            if page_size == "Letter":
                sheets.append(engine.CSS(string=_LETTER))
            page = engine.HTML(string=_FOR_SCREENS.sub("", html), url_fetcher=fetcher, media_type="print")
            document = page.render(font_config=fonts, stylesheets=sheets, pdf_tags=True, pdf_forms=form)
            if not document.metadata.title:
                raise RenderError("The document has no title. Fill the template's title block.")
            document.metadata.authors = [author] if author else []
            document.metadata.description = subject or None
            document.metadata.keywords = list(keywords)
            if dated is not None:
                document.metadata.created = document.metadata.modified = in_utc(dated).strftime("%Y-%m-%dT%H:%M:%SZ")

            def finish(_: object, tree: Any) -> None:
                if fields is not None:
                    finish_form(tree, fields)
                else:
                    declare_accessible(tree)
                mend_tags(tree)
                embed(tree, attachments, dated)

            data: bytes = document.write_pdf(
                pdf_tags=True,
                pdf_variant=None if form else _VARIANT,
                pdf_forms=form,
                pdf_identifier=identifier,
                finisher=finish,
            )
        except engine.FatalURLFetchingError as error:
            raise RenderError(str(error)) from None
        except RecursionError:
            raise RenderError("The document is nested too deeply to be set. Flatten its lists or quotations.") from None
    if fetcher.refusals:
        raise RenderError(fetcher.refusals[0])
    complaints.extend(_foreign_fonts(document.fonts.values()))
    if complaints:
        raise RenderError("The PDF was not written: " + "; ".join(dict.fromkeys(complaints)) + ".")
    return data


@cache
def _print_sheet() -> Any:
    """The style of paper, read once for all documents; it declares no font, which belongs to one of them."""
    return typesetter().CSS(url=SCHEME + "style/print.css", url_fetcher=asset_fetcher())


def asset_fetcher(pictures: Collection[Prepared] = ()) -> Any:
    """What the typesetter fetches with: `asset:<name>` below the templates folder, these pictures, and nothing else at all.

    `fetch` raises FatalURLFetchingError for any other address and keeps the reason in the list `refusals`.
    """
    engine = typesetter()
    shown = {picture.address: picture for picture in pictures}

    class AssetFetcher(engine.URLFetcher):  # type: ignore[misc,name-defined]  # the typesetter ships no types
        def __init__(self) -> None:
            super().__init__()
            # Drawing an SVG swallows even the fatal error, so the reason is kept here as well.
            self.refusals: list[str] = []

        def fetch(self, url: str, headers: object = None) -> Any:
            if url in shown:
                return engine.URLFetcherResponse(url, shown[url].data, {"Content-Type": shown[url].media_type})
            name = unquote(url.removeprefix(SCHEME))
            suffix = name[name.rfind(".") :] if "." in name else ""
            if not url.startswith(SCHEME) or suffix not in _MEDIA_TYPES:
                self._refuse(
                    f"The document names {url[:100]!r}. Only shipped styles, fonts and pictures may be fetched; "
                    "take the reference out."
                )
            try:
                data = asset(name).read_bytes()
            except RenderError as error:
                self._refuse(str(error))
            return engine.URLFetcherResponse(url, data, {"Content-Type": _MEDIA_TYPES[suffix]})

        def _refuse(self, reason: str) -> NoReturn:
            self.refusals.append(reason)
            raise engine.FatalURLFetchingError(reason)

    return AssetFetcher()


class _Typesetter:
    """The names used of WeasyPrint, gathered once so that its import (0.7 s, and Pango) waits for the first page."""

    def __init__(self) -> None:
        import weasyprint.text.ffi  # type: ignore[import-untyped]  # ships no types
        import weasyprint.text.fonts  # type: ignore[import-untyped]  # ships no types
        import weasyprint.urls  # type: ignore[import-untyped]  # ships no types

        self.version: str = weasyprint.__version__
        self.pango: Any = weasyprint.text.ffi.pango
        self.harfbuzz: Any = weasyprint.text.ffi.harfbuzz
        self.HTML: Any = weasyprint.HTML
        self.CSS: Any = weasyprint.CSS
        self.fonts: Any = weasyprint.text.fonts
        self.URLFetcher: Any = weasyprint.urls.URLFetcher
        self.URLFetcherResponse: Any = weasyprint.urls.URLFetcherResponse
        self.FatalURLFetchingError: Any = weasyprint.urls.FatalURLFetchingError


@cache
def typesetter() -> _Typesetter:
    """WeasyPrint, imported. Raises RenderError when Pango is not installed."""
    try:
        return _Typesetter()
    except OSError as error:
        raise RenderError(
            "PDF needs the text library Pango, which was not found. Install it (Debian and Ubuntu: libpango-1.0-0, "
            "libpangoft2-1.0-0 and libharfbuzz-subset0; macOS: pango from Homebrew; Windows: pango from MSYS2, with "
            f"WEASYPRINT_DLL_DIRECTORIES set). Checking, comparing and HTML work without it. The system says: {error}"
        ) from error


@contextmanager
def _warnings_caught() -> Iterator[list[str]]:
    """The lines the typesetter logs at WARNING or above in this thread; none is harmless, for our styles draw none."""
    lines: list[str] = []
    thread = threading.get_ident()

    class Catcher(logging.Handler):
        def emit(self, record: logging.LogRecord) -> None:
            if record.thread == thread:
                lines.append(_in_plain_words(record.getMessage()))

    logger = logging.getLogger("weasyprint")
    catcher, level = Catcher(logging.WARNING), logger.level
    logger.addHandler(catcher)
    logger.setLevel(logging.WARNING)
    try:
        yield lines
    finally:
        logger.removeHandler(catcher)
        logger.setLevel(level)


def _in_plain_words(line: str) -> str:
    if missing := _NO_GLYPH.search(line):
        return _outside_fonts([chr(int(missing[1], 16))])
    if _NO_SUBSETTER in line:
        return "the library that subsets fonts is missing; install it (Debian and Ubuntu: libharfbuzz-subset0)"
    return line.strip().rstrip(".")


def _foreign_fonts(fonts: Iterable[Any]) -> Iterator[str]:
    """The characters set in a font of this machine: another machine would set the same document differently."""
    for font in fonts:
        if font.family != FONT_FAMILY:
            yield _outside_fonts(sorted({sign for text in font.to_unicode.values() for sign in text}))


def _outside_fonts(signs: Sequence[str]) -> str:
    named = ", ".join(f"“{sign}” (U+{ord(sign):04X})" for sign in signs[:8])
    return f"the supplied fonts do not contain {named}; write it another way"
