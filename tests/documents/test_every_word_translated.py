"""A language in which every translated text stands in brackets: what a document asks for is in the catalogue, and what stands
outside the brackets is its author's, a sign, or in the list below with the reason.

The catalogue is what translators get. A table text or the name of a working that is not in it is printed in English for ever.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from babel.messages.pofile import read_po

from specgen import check
from specgen.standards.citations import documents
from specgen.standards.tables import table
from specgen.units.locale import Locale
from tests.documents.conftest import views_of
from tests.good_spec import DEMO, DEMOS, ON, spec_of

ROOT = Path(__file__).parents[2]
WORD = re.compile(r"[A-Za-z]{3,}")

# Where English of ours stands outside the brackets, by the place in the view, with the reason.
REMAINS = {
    r"\.level$|^HazardCard\.size$|^JobCard\.(vehicles|builds\.type)$": "the name of a style, which no reader sees",
    r"\.(pictures|sketches)\.address$|^RecordSheets\.state$": "a digest, by which a page finds a picture or a form its job",
    r"\.workings\.(about|of)$": "the id of a working: the same in every language, so that a check and a page name it alike",
    r"\.air\.tables\.rows$|\.workings\.name$": "a limit of exposure goes by the name its law gave it, as in IOELV",
}
FORM_FIELD = re.compile(r"\br\d+(to\d+)?_[a-z_]+\b|\b[a-z]+_\d+\b")
"""The name of a field to fill, as in `r3to86_serial` and `net_12`: it stands in the file and on no page, the same in every language."""
SYMBOLS = {"DFT", "TSR"}
"""Symbols of formulas; their names stand beside them, translated."""


class Brackets:
    """A language of one's own: `⟦text⟧`. `unknown` are the texts that were asked for and are not in the catalogue."""

    def __init__(self) -> None:
        with (ROOT / "templates/locale/specgen.pot").open("rb") as file:
            ids = [message.id for message in read_po(file) if message.id]
        self.known = {text for id in ids for text in ((id,) if isinstance(id, str) else id)}
        self.unknown: set[str] = set()

    def gettext(self, text: str) -> str:
        if text not in self.known:
            self.unknown.add(text)
        return f"⟦{text}⟧"

    def ngettext(self, one: str, many: str, number: int) -> str:
        return self.gettext(one if number == 1 else many)

    def locale(self) -> Locale:
        return Locale(self.gettext, self.ngettext, ",")


@pytest.fixture(scope="module")
def bracketed() -> tuple[Brackets, dict[str, Any]]:
    language = Brackets()
    return language, views_of(spec_of(check(DEMO, on=ON)), language.locale())


def test_every_text_a_document_asks_for_is_in_the_catalogue(bracketed: tuple[Brackets, dict[str, Any]]) -> None:
    language, _ = bracketed
    assert language.unknown == set()


def test_what_is_not_translated_is_the_authors_or_has_a_reason(bracketed: tuple[Brackets, dict[str, Any]]) -> None:
    _, views = bracketed
    not_ours = _words_not_ours()
    left: dict[str, set[str]] = {}
    for view in views.values():
        for place, text in _texts(view, type(view).__name__):
            if found := set(WORD.findall(FORM_FIELD.sub(" ", _outside(text)))) - not_ours:
                left.setdefault(place, set()).update(found)
    reasons = {pattern for pattern in REMAINS for place in left if re.search(pattern, place)}
    assert {place: words for place, words in left.items() if not any(re.search(p, place) for p in REMAINS)} == {}
    assert set(REMAINS) - reasons == set(), "a reason nothing needs any more"


def test_text_that_is_not_translated_is_noticed() -> None:
    assert _outside("⟦at least ⟦5⟧⟧ left in English") == " left in English"
    assert not {"translated", "catalogue"} & _words_not_ours()


def _words_not_ours() -> set[str]:
    """Words of the sources, and those of publishers and of the law: names of documents, and the official statements."""
    texts = [path.read_text(encoding="utf-8") for path in DEMOS.rglob("*.yaml")]
    texts += [document.title for document in documents().values()]
    texts += [row["text"] for name in ("h_statements", "euh_statements", "p_statements") for row in table(name).rows]
    return SYMBOLS | {word for text in texts for word in WORD.findall(text)}


def _outside(text: str) -> str:
    """What stands outside all brackets; they nest, for a sentence is filled in with translated parts."""
    kept, depth = [], 0
    for letter in text:
        depth += (letter == "⟦") - (letter == "⟧")
        if depth == 0 and letter != "⟧":
            kept.append(letter)
    return "".join(kept)


def _texts(value: object, place: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, str):
        # of a drawing what a reader sees: its title and its texts
        yield place, re.sub(r"<style>.*?</style>|<[^>]*>", " ", value) if value.startswith("<svg ") else value
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _texts(getattr(value, field.name), f"{place}.{field.name}")
    elif isinstance(value, tuple | list):
        for part in value:
            yield from _texts(part, place)
