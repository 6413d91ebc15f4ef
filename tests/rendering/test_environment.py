"""Templates cannot print a missing value, an unescaped sign, or anything from outside their folder."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from fractions import Fraction
from gettext import GNUTranslations
from pathlib import Path

import jinja2
import pytest
from babel.messages.catalog import Catalog
from babel.messages.mofile import write_mo

from specgen.documents.emergency_call import EmergencyCall
from specgen.documents.parts.wording import Words
from specgen.rendering.assets import templates_folder
from specgen.rendering.environment import environment, fill, style_sheet, translation
from specgen.rendering.failure import RenderError
from specgen.rendering.html import write_html
from specgen.rendering.line_breaks import kept_whole, unbroken
from specgen.units.quantity import CalendarSpan, Quantity

DEFAULT_FILTER = re.compile(r"\|\s*(?:default|d)\b|\bfilter\s+(?:default|d)\b")
TAG = re.compile(r"<[^>]*>")
FOLD = re.compile(r"</?details>\n|</?summary>")
TEMPLATES = sorted(templates_folder().rglob("*.j2"))


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.relative_to(templates_folder()).as_posix())
def test_no_template_uses_the_default_filter(path: Path) -> None:
    assert DEFAULT_FILTER.findall(path.read_text(encoding="utf-8")) == []


@pytest.mark.parametrize("path", TEMPLATES, ids=lambda path: path.relative_to(templates_folder()).as_posix())
def test_every_template_compiles(path: Path) -> None:
    name = path.relative_to(templates_folder()).as_posix()
    assert environment("en").get_template(name).name == name


@pytest.mark.parametrize("text", ["{{ x | default('') }}", "{{ x|d }}", "{% filter default %}{% endfilter %}"])
def test_the_default_filter_is_found_and_refused(text: str) -> None:
    assert len(DEFAULT_FILTER.findall(text)) == 1
    with pytest.raises(jinja2.TemplateAssertionError, match="No filter named 'd"):
        environment("en").from_string(text)


def test_a_missing_value_is_an_error() -> None:
    with pytest.raises(jinja2.UndefinedError, match="'limit' is undefined"):
        environment("en").from_string("at most {{ limit }} µm").render()


def test_values_are_escaped_and_prose_is_not_twice() -> None:
    template = environment("en").from_string("{{ a }}|{{ a | prose }}")
    assert template.render(a="<b> & c") == "&lt;b&gt; &amp; c|<p>&lt;b&gt; &amp; c</p>"


def test_values_inside_a_translation_are_escaped() -> None:
    template = environment("en").from_string("{% trans n %}at {{ n }} places{% endtrans %}")
    assert template.render(n="<3") == "at &lt;3 places"


@pytest.mark.parametrize("name", ["../specgen/__init__.py", "/etc/passwd", "fonts/../../README.md"])
def test_templates_outside_the_folder_are_not_found(name: str) -> None:
    with pytest.raises(jinja2.TemplateNotFound):
        environment("en").get_template(name)


def test_templates_are_sandboxed() -> None:
    with pytest.raises(jinja2.exceptions.SecurityError):
        environment("en").from_string("{{ x.__class__.__mro__ }}").render(x="a")


@pytest.mark.parametrize(
    ("language", "message"),
    [
        ("zz", "no catalogue of messages for the language 'zz'"),
        ("../en", "'../en' is not a language code"),
        ("en-/../x", "'en-/../x' is not a language code"),
    ],
)
def test_a_language_without_catalogue_is_refused(language: str, message: str) -> None:
    with pytest.raises(RenderError, match=re.escape(message)):
        environment(language)


def test_a_catalogue_translates(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    catalogue = Catalog(locale="de")
    catalogue.add("Page %(page)s of %(pages)s", "Seite %(page)s von %(pages)s")
    with (tmp_path / "specgen.mo").open("wb") as file:
        write_mo(file, catalogue)
    asked: list[str] = []

    def found(name: str) -> Path:
        asked.append(name)
        return tmp_path / "specgen.mo"

    monkeypatch.setattr("specgen.rendering.environment.asset", found)
    engine = environment.__wrapped__("de")
    template = engine.from_string("{{ language }}: {% trans page, pages %}Page {{ page }} of {{ pages }}{% endtrans %}")
    assert template.render(page=1, pages=4) == "de: Seite 1 von 4"
    assert asked == ["locale/de/LC_MESSAGES/specgen.mo"]


@pytest.fixture
def german(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[None]:
    """A whole German catalogue with a header, as translators' tools write it."""
    catalogue = Catalog(locale="de", project="specgen")
    catalogue.add("Page", "Seite")
    catalogue.add(("{} month", "{} months"), ("{} Monat", "{} Monate"))
    with (tmp_path / "specgen.mo").open("wb") as file:
        write_mo(file, catalogue)
    monkeypatch.setattr("specgen.rendering.environment.asset", lambda name: tmp_path / "specgen.mo")
    yield
    translation.cache_clear()


def test_an_empty_text_is_empty_in_every_language(german: None, tmp_path: Path) -> None:
    with (tmp_path / "specgen.mo").open("rb") as file:
        assert "Project-Id-Version" in GNUTranslations(file).gettext("")  # what a plain catalogue says
    assert [translation("de")(text) for text in ("", "Page")] == ["", "Seite"]
    engine = environment.__wrapped__("de")
    assert engine.from_string("<{{ _(text) }}|{{ _('Page') }}>").render(text="") == "<|Seite>"


def test_numbers_and_plurals_follow_the_language(german: None) -> None:
    found, spans = (
        translation("de"),
        [CalendarSpan(1, "1 months"), CalendarSpan(24, "2 years"), CalendarSpan(6, "6 months")],
    )
    words = Words(found, {"thickness": "mil"})
    assert words.phrase(Quantity.of("thickness", Fraction(125, 2), "um", "62.5")) == "62,5_µm (2,46_mil)".replace(
        "_", "\N{NO-BREAK SPACE}"
    )
    assert [words.phrase(span) for span in spans] == ["1 Monat", "2 years", "6 Monate"]
    assert words.for_a_sheet().phrase(Quantity.of("volume", Fraction(1, 2), "L", "0.5")) == "0.5\N{NO-BREAK SPACE}L"


def test_fill_tells_what_is_wrong() -> None:
    with pytest.raises(RenderError, match=r"^There is no template parts/none\.html\.j2\."):
        fill("parts/none.html.j2", language="en", medium="print")
    with pytest.raises(RenderError, match=r"^The template base\.html\.j2 cannot be filled: .*masthead"):
        fill("base.html.j2", language="en", medium="print")


def test_style_sheets_come_from_the_style_folder_only() -> None:
    assert "@media print" in style_sheet("screen.css")
    with pytest.raises(RenderError, match="lies outside the templates folder"):
        style_sheet("../../pyproject.toml")


def test_print_and_screen_share_the_body(sample: Callable[..., str]) -> None:
    pages = {medium: sample(medium, draft=False) for medium in ("print", "screen")}
    mains = {medium: page[page.index("<main>") :] for medium, page in pages.items()}
    # on paper a cell is its text alone; roles, labels and inner elements are for screens
    texts = {medium: TAG.sub("", FOLD.sub("", main)).split() for medium, main in mains.items()}
    assert texts["print"] == texts["screen"]
    assert mains["print"] != mains["screen"]
    assert ("page-foot-right" in pages["print"], "page-foot-right" in pages["screen"]) == (True, False)
    assert [sample("screen", draft=draft).count('class="draft-banner"') for draft in (True, False)] == [1, 0]
    assert [sample("print", draft=draft).count("DRAFT") for draft in (True, False)] == [2, 0]


def test_the_contents_of_a_screen_lead_to_each_of_its_sections(sample: Callable[..., str]) -> None:
    page = sample("screen")
    contents = page[page.index('<nav class="contents"') : page.index("</nav>")]
    links = re.findall(r'<a href="#([^"]+)">([^<]+)</a>', contents)
    assert links == re.findall(r'<h2 id="([^"]+)">([^<]+)</h2>', page)
    assert len(links) == 4
    assert "</nav>" not in sample("print")


def test_the_draft_banner_and_the_call_stand_in_landmarks(sample: Callable[..., str]) -> None:
    page = sample("screen", emergency=EmergencyCall(line="In an emergency, call: +00 1", number="+001"))
    assert page.index("<header") < page.index('class="draft-banner"') < page.index("</header>")
    assert '<footer class="call-bar"><a href="tel:+001">In an emergency, call: +00 1</a></footer>' in page
    assert write_html(page)
    unsure = sample("screen", emergency=EmergencyCall(line="Call the gatehouse", number=""))
    assert '<footer class="call-bar">Call the gatehouse</footer>' in unsure
    assert "tel:" not in unsure


def test_a_grade_is_not_broken_and_joined_statements_between_two_alone() -> None:
    nb, zero = "\N{NO-BREAK SPACE}", "\N{ZERO WIDTH SPACE}"
    assert unbroken("Sa 2 1/2, St 3: P305+P351") == f"Sa{nb}2{nb}1/2, St{nb}3: P305+{zero}P351"
    assert unbroken("Sa 25, 1 + 2, P305") == "Sa 25, 1 + 2, P305"


def test_a_figure_stays_with_its_unit_and_a_standard_with_its_number() -> None:
    nb = "\N{NO-BREAK SPACE}"
    told = unbroken('<p title="25 mm">at least 0.4 mm, 55 % RH, EN ISO 374-1, EN 143</p>')
    assert told == f'<p title="25 mm">at least 0.4{nb}mm, 55{nb}% RH, EN ISO{nb}374-1, EN{nb}143</p>'
    assert unbroken("UN 1263: dust at most 2; at least 3 K") == f"UN{nb}1263: dust at most{nb}2; at least 3{nb}K"
    per = f'<td>at most 50<span class="one-line">{nb}mg/m²</span></td><svg><text>5{nb}g/m³</text></svg>'
    assert unbroken(f"<td>at most 50{nb}mg/m²</td><svg><text>5 g/m³</text></svg>") == per
    alike = "2 miles, 3 minutes, 12 cans, coat 2 mild, PEN 3, m 5"
    assert unbroken(alike) == alike


def test_an_id_in_capitals_is_not_broken_at_its_hyphen() -> None:
    told = unbroken('<td title="SIDE-LOW">SIDE-LOW, half-mask</td>')
    assert told == '<td title="SIDE-LOW"><span class="one-line">SIDE-LOW</span>, half-mask</td>'


@pytest.mark.parametrize(
    "text",
    [
        "2026-11-27",
        "2026-11-27 07:00",
        "+00 555 0140",
        "DS-410",
        "ORM-204/2026",
        "F210-07-400",
        "FLAP-FUEL",
        "AX-P3",
        "Sa 2 1/2",
        "ISO 8502-3",
        "0.5 mm",
        "3 %",
    ],
)
def test_on_a_screen_it_stays_in_one_line_as_it_is_written(text: str) -> None:
    page = f'<head><title>{text}</title></head><nav><a>{text}</a></nav><td data-label="{text}">at {text}, done</td><svg>{text}</svg>'
    assert kept_whole(page) == page.replace(f"at {text},", f'at <span class="one-line">{text}</span>,')


@pytest.mark.parametrize(
    "text",
    [
        "desk@works-07.example",
        "2 miles",
        "2026-11",
        "non-ferrous",
        "a half-mask",
        "MS-1-method-statement",
    ],
)
def test_on_a_screen_any_other_text_breaks_as_ever(text: str) -> None:
    assert kept_whole(f"<p>{text}</p>") == f"<p>{text}</p>"


def test_what_stands_lower_at_a_symbol_is_set_lower() -> None:
    engine = environment("en")
    told = engine.from_string("{{ text | lowered }}").render(text="n_LW × L & ρ_nv < A₁: a_1 file_name_2")
    assert told == "n<sub>LW</sub> × L &amp; ρ<sub>nv</sub> &lt; A₁: a_1 file_name_2"
