"""Documents printed in a whole made-up language, from its compiled catalogue to the finished page: every word of ours is in it.

`test_every_word_translated` asks this of the views of the demo; here the templates, the plurals and the decimal sign are in.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from specgen.documents.parts import cautions
from specgen.documents.parts.wording import Words
from specgen.model.project import Language
from specgen.model.spec import Spec
from specgen.printing.documents import print_documents
from specgen.rendering.assets import asset
from specgen.rendering.environment import environment, translation
from specgen.standards.citations import documents
from specgen.standards.tables import Table, table, table_names
from specgen.units.locale import ENGLISH
from tests.good_spec import SECOND_GOOD, checked, good, second_good, spec_of
from tests.languages import LANGUAGE, made_up, write_made_up

WORD = re.compile(r"[A-Za-z]{3,}")
MADE_UP = re.compile(r"[Ａ-ｚ]{3,}")
SYMBOLS = ("DFT", "TSR")
"""Signs of formulas; their names stand beside them."""
SHOWN = ("alt", "aria-label", "content", "title")
OFFICIAL = ("h_statements", "euh_statements", "p_statements")
"""Their wording is the law's and never translated by us; a language that is shipped brings its own."""


@pytest.fixture(scope="module")
def pages(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Mapping[str, str]]:
    """The text of every document of the second good specification, by the name of its file."""
    locale = tmp_path_factory.mktemp("locale")
    write_made_up(locale)
    with pytest.MonkeyPatch.context() as patch:
        own = f"locale/{LANGUAGE}/"
        patch.setattr(
            "specgen.rendering.environment.asset",
            lambda name: locale / name.removeprefix("locale/") if name.startswith(own) else asset(name),
        )
        translation.cache_clear()
        environment.cache_clear()
        held = checked(second_good())
        loaded = replace(held.loaded, spec=_in(LANGUAGE, spec_of(held)))
        files = print_documents(replace(held, loaded=loaded), formats=["html"])
        yield {name: _text(content.decode()) for name, content in files.items()}
    translation.cache_clear()
    environment.cache_clear()


def test_every_word_of_ours_is_in_the_language(pages: Mapping[str, str]) -> None:
    assert {"MS-201-method-statement.html", "DS-mastic-data-sheet.html", "DS-gloss-label-sheet.html"} <= set(pages)
    not_ours = _not_ours()
    english = {name: words for name, page in pages.items() if (words := set(WORD.findall(_ours(page))) - not_ours)}
    assert not english, f"in English; a text of ours goes through the catalogue (DEVELOPERS.md, Wording): {english}"
    few = sorted(name for name, page in pages.items() if len(MADE_UP.findall(page)) < 20)
    assert not few, f"fewer than twenty words of the language on a page, so nothing is shown by it: {few}"


def test_a_word_left_in_english_is_seen_inside_a_sentence() -> None:
    assert WORD.findall(_ours(made_up("at least {n} of the ").format(n=5) + "readings")) == ["readings"]
    assert "readings" not in _not_ours()


def test_a_language_shipped_has_its_own_official_statements() -> None:
    others = [language for language in Language if language is not Language.ENGLISH]
    english = {language: _english_statements(_in(language, spec_of(good()))) for language in others}
    assert not any(english.values()), f"statements whose official wording is given in English: {english}"


def test_official_statements_of_a_language_come_from_its_own_tables(monkeypatch: pytest.MonkeyPatch) -> None:
    """The German wording of H222 is that of CLP, Annex III; the others stand for tables nobody has brought yet."""
    own = {f"{name}_{LANGUAGE}": table(name) for name in OFFICIAL}

    def other(name: str) -> Table:
        if name not in own:
            return table(name)
        rows = tuple(
            {**row, "text": "Extrem entzündbares Aerosol" if row["id"] == "H222" else "…"} for row in own[name].rows
        )
        return Table(name, replace(own[name].content, rows=rows))

    monkeypatch.setattr(cautions, "table", other)
    monkeypatch.setattr(cautions, "table_names", lambda: (*table_names(), *own))
    spec = spec_of(good())
    assert {one.text for one in cautions.statements("h_statements", ["H222"], Words.of(spec.project, ENGLISH))} == {
        "Extremely flammable aerosol"
    }
    german = Words.of(spec.project, replace(ENGLISH, code=LANGUAGE))
    assert [one.text for one in cautions.statements("h_statements", ["H222", "H229"], german)] == [
        "Extrem entzündbares Aerosol",
        "…",
    ]
    swiss = Words.of(spec.project, replace(ENGLISH, code="de-CH"))
    assert [one.text for one in cautions.statements("h_statements", ["H222"], swiss)] == ["Extremely flammable aerosol"]


def test_official_statements_in_english_are_seen() -> None:
    assert "H222" in _english_statements(spec_of(good()))


def test_figures_have_the_decimal_sign_of_the_language(pages: Mapping[str, str]) -> None:
    statement = pages["MS-201-method-statement.html"].replace("\N{NO-BREAK SPACE}", " ")
    assert re.search(r"[0-9],[0-9]", statement)
    # what the author wrote in his own words stands as he wrote it
    assert not re.search(r"[0-9]\.[0-9]+ (µm|m²|m³|kg)", statement)


def _in(language: str, spec: Spec) -> Spec:
    # not a word of the list while nobody ships it
    return replace(spec, project=spec.project.model_copy(update={"language": language}))


def _english_statements(spec: Spec) -> list[str]:
    """The codes whose wording on the label sheets of a specification is that of the English tables."""
    english = {row["id"]: row["text"] for name in OFFICIAL for row in table(name).rows}
    files = print_documents(
        replace(checked(good()), loaded=replace(checked(good()).loaded, spec=spec)),
        documents=["label-sheet"],
        formats=["html"],
    )
    text = " ".join(_text(content.decode()) for content in files.values())
    return sorted(code for code, wording in english.items() if wording in text)


def _ours(page: str) -> str:
    """A page without its citations, whose clauses go by the words of their document, and without the ids of its workings."""
    for title in sorted((document.title for document in documents().values()), key=len, reverse=True):
        page = re.sub(re.escape(title) + r"[^(Ａ-ｚ]*", " ", page)
    return re.sub(r"(W\d+\. [^\n:]*): [^\n]*", r"\1", page)


def _not_ours() -> set[str]:
    """Words of the sources, names of documents and of their publishers, official statements, and the name of the program."""
    texts = [path.read_text("utf-8") for path in SECOND_GOOD.glob("*.yaml")]
    # a method of the author begins a line of the card's records, with a capital
    texts += [method.capitalize() for text in texts for method in re.findall(r"method: ([^,}]+)", text)]
    texts += [document.title for document in documents().values()]
    texts += [row["text"] for name in OFFICIAL for row in table(name).rows]
    return {"specgen", *SYMBOLS} | {word for text in texts for word in WORD.findall(text)}


class _Reader(HTMLParser):
    """What a reader sees or is read aloud."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self.hidden = 0

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.hidden += tag in {"style", "script"}
        if tag != "meta":
            self.texts += [value for name, value in attrs if name in SHOWN and value]

    def handle_endtag(self, tag: str) -> None:
        self.hidden -= tag in {"style", "script"}

    def handle_data(self, data: str) -> None:
        if not self.hidden:
            self.texts.append(data)


def _text(html: str) -> str:
    reader = _Reader()
    reader.feed(html)
    return " ".join(reader.texts)
