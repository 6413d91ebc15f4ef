"""The author's Markdown, turned into HTML that is safe to place in a document.

Called by the `prose` filter of `environment`. Raw HTML is shown as typed, never passed on; pictures and link
definitions are not read; a link prints as its text with the address in parentheses, because paper cannot be clicked
and the HTML edition refers to nothing outside itself.
"""

from __future__ import annotations

import re
from typing import Any
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.inlinepatterns import InlineProcessor, LinkInlineProcessor
from markdown.treeprocessors import Treeprocessor
from markdown.util import AtomicString

from specgen.model.prose import DEEPEST_NESTING, prose_fault
from specgen.rendering.failure import ProseError
from specgen.source.characters import REPLACED

# The sign & on its way through the converter, which would otherwise pass on what looks like a character reference. The
# code point is set aside for private use, so no text holds it.
_AMPERSAND = "\ue000"
_IMAGE = r"!(?=\[)"
_AUTOLINK = r"<((?:https?://|mailto:)[^<>\s]+)>"
_PRINTED_SCHEME = re.compile(r"(?:https?://|mailto:)\S", re.IGNORECASE)
_HEADINGS = frozenset(("h1", "h2", "h3", "h4", "h5", "h6"))


def to_html(text: str) -> str:
    """HTML of one text: paragraphs, lists, quotations, emphasis, code; headings become bold paragraphs.

    Every & is printed as typed: a character reference could smuggle in a sign that nobody sees. Raises ProseError for
    what `model.prose` refuses.
    """
    fault = prose_fault(text)
    if fault is not None:
        raise ProseError(f"The text beginning “{_beginning(text)}” {fault.what}. {fault.remedy}")
    reader = Markdown(extensions=["sane_lists", _PrintedProse()], output_format="html")
    printed = str(reader.convert(text.replace(_AMPERSAND, REPLACED).replace("&", _AMPERSAND)))
    return printed.replace(_AMPERSAND, "&amp;")


def _beginning(text: str) -> str:
    return " ".join(text[:60].split())[:40]


class _PrintedLink(LinkInlineProcessor):
    """`[text](address)`: the text, then the address in parentheses if it is one that can be typed in again."""

    def handleMatch(  # type: ignore[override]  # the stubs declare the base class's pattern method, not this one
        self, m: re.Match[str], data: str
    ) -> tuple[Element | None, int | None, int | None]:
        link, start, end = super().handleMatch(m, data)
        if not isinstance(link, Element):
            return None, None, None
        address = self.unescape(link.get("href", ""))
        printed = Element("span", {"class": "link"})
        printed.text = link.text
        if _PRINTED_SCHEME.match(address) and address != link.text:
            target = Element("span", {"class": "address"})
            # Atomic: underscores in an address are not emphasis.
            target.text = AtomicString(f" ({re.sub('^mailto:', '', address, flags=re.IGNORECASE)})")
            printed.append(target)
        return printed, start, end


class _PrintedAddress(InlineProcessor):
    """`<https://...>`: the address as text."""

    def handleMatch(  # type: ignore[override]  # as above
        self, m: re.Match[str], data: str
    ) -> tuple[Element, int, int]:
        printed = Element("span", {"class": "address"})
        printed.text = AtomicString(m[1])
        return printed, m.start(0), m.end(0)


class _DroppedSign(InlineProcessor):
    """The `!` before a picture goes; what remains prints as a link does, by its text."""

    def handleMatch(  # type: ignore[override]  # as above
        self, m: re.Match[str], data: str
    ) -> tuple[str, int, int]:
        return "", m.start(0), m.end(0)


class _Outline(Treeprocessor):
    """Headings become bold paragraphs, so that the document's own outline stays whole.

    Emphasis within emphasis beyond all sense is printed as plain text, for depth is what layout takes its time over.
    """

    def run(self, root: Element) -> None:
        level = list(root)
        for _ in range(2 * DEEPEST_NESTING + 2):  # a list takes two elements a level: the list and its item
            for element in level:
                if element.tag in _HEADINGS:
                    _demote(element)
            level = [child for element in level for child in element]
        for element in level:
            element.text = "".join(element.itertext())
            for child in list(element):
                element.remove(child)


def _demote(heading: Element) -> None:
    strong = Element("strong")
    strong.text = heading.text
    strong.extend(list(heading))
    for child in list(heading):
        heading.remove(child)
    heading.tag = "p"
    heading.set("class", "prose-heading")
    heading.text = None
    heading.append(strong)


class _PrintedProse(Extension):
    """Takes out what would let an author's text reach beyond the page, and puts the printed forms in its place."""

    def extendMarkdown(self, md: Markdown) -> None:
        md.preprocessors.deregister("html_block")
        md.parser.blockprocessors.deregister("reference")
        inline: Any = md.inlinePatterns
        for name in (
            *("reference", "short_reference", "image_link", "image_reference", "short_image_ref"),
            *("link", "autolink", "automail", "html", "entity"),
        ):
            inline.deregister(name)
        inline.register(_DroppedSign(_IMAGE, md), "dropped_sign", 165)
        inline.register(_PrintedLink(r"\[", md), "printed_link", 160)
        inline.register(_PrintedAddress(_AUTOLINK, md), "printed_address", 120)
        # After the inline patterns (20) have run, before the lines are laid out (10).
        md.treeprocessors.register(_Outline(md), "outline", 15)
