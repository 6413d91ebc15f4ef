"""What a page may hold before it is set: keeps layout quick and the output free of active or outside content.

Called by `pdf` and `html` on every document. Layout time grows without measure with one very long word, a huge column
span, deep nesting or a great many elements (seconds to minutes each), so these are refused with a word on what to shorten.
"""

from __future__ import annotations

from collections.abc import Collection
from html.parser import HTMLParser

from specgen.model.prose import BLANKS
from specgen.rendering.failure import RenderError, TooMuchError

MOST_BYTES = 5_000_000
LONGEST_WORD = 200
WIDEST_SPAN = 100
MOST_ELEMENTS = 60_000
DEEPEST_NESTING = 60

_WITHIN_A_WORD = frozenset(
    ["a", "abbr", "b", "code", "em", "i", "q", "s", "small", "span", "strong", "sub", "sup", "time", "u"]
)
_VOID = frozenset(
    ["area", "base", "br", "col", "embed", "hr", "img", "input", "link", "meta", "source", "track", "wbr"]
)
_ACTIVE = frozenset(
    [
        "applet",
        "base",
        "button",
        "embed",
        "form",
        "frame",
        "frameset",
        "iframe",
        "input",
        "object",
        "portal",
        "script",
        "select",
    ]
)
_SPANS = frozenset(("colspan", "rowspan", "span"))


def check_bounds(html: str, *, form: bool = False) -> None:
    """Raises RenderError when the page is too large, holds active elements, or would be slow to lay out. A form may hold inputs."""
    size = len(html.encode("utf-8", "surrogatepass"))
    if size > MOST_BYTES:
        raise TooMuchError(
            f"The document is {size:,} bytes of HTML, more than the {MOST_BYTES:,} that can be set in reasonable time. "
            "Divide it into several documents."
        )
    reader = _BoundsReader(_ACTIVE - {"input"} if form else _ACTIVE)
    reader.feed(html)
    reader.close()
    reader.end_word()


class _BoundsReader(HTMLParser):
    """Walks the tags once and keeps the word and the nesting it stands in."""

    def __init__(self, active: Collection[str]) -> None:
        super().__init__(convert_charrefs=True)
        self._active = active
        self._word = ""
        self._open: list[str] = []
        self._elements = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in self._active:
            raise RenderError(f"The document holds a <{tag}> element. Printed documents hold no active content.")
        self._elements += 1
        if self._elements > MOST_ELEMENTS:
            raise TooMuchError(
                f"The document has more than {MOST_ELEMENTS:,} elements, which cannot be set in reasonable time. "
                "Divide it into several documents."
            )
        if tag not in _WITHIN_A_WORD:
            self.end_word()
        for name, value in attrs:
            if name.startswith("on"):
                raise RenderError(f"The <{tag}> element carries {name}. Printed documents hold no active content.")
            if name in _SPANS:
                self._check_span(tag, name, value or "")
        if tag not in _VOID:
            self._open.append(tag)
            if len(self._open) > DEEPEST_NESTING:
                raise RenderError(
                    f"Elements are nested more than {DEEPEST_NESTING} deep at <{tag}>. Flatten the lists or quotations."
                )

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)
        self.handle_endtag(tag)

    def handle_endtag(self, tag: str) -> None:
        if tag not in _WITHIN_A_WORD:
            self.end_word()
        if tag in self._open:
            # A closing tag also closes what was left open inside it (a <p> or <li> without its end).
            while self._open.pop() != tag:
                pass

    def handle_data(self, data: str) -> None:
        if self._open and self._open[-1] == "style":
            return
        first, *rest = BLANKS.split(data)
        self._word += first
        for part in rest:
            self.end_word()
            self._word = part
        self._check_word()

    def end_word(self) -> None:
        """The word ends here; what follows begins another."""
        self._check_word()
        self._word = ""

    def _check_word(self) -> None:
        if len(self._word) > LONGEST_WORD:
            raise RenderError(
                f"The word beginning “{self._word[:40]}” has more than {LONGEST_WORD} characters without a space "
                "and cannot be broken across lines. Put spaces into it."
            )

    @staticmethod
    def _check_span(tag: str, name: str, value: str) -> None:
        if not (value.isascii() and value.isdigit() and 1 <= int(value[:6]) <= WIDEST_SPAN):
            raise RenderError(
                f"The <{tag}> element has {name}={value[:20]!r}; a table cell spans 1 to {WIDEST_SPAN}. "
                "Put the template right."
            )
