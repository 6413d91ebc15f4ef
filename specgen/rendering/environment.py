"""The template engine, set so that a missing value, an unescaped sign or a reach outside the templates is impossible.

Called by the commands and by issuing, through `fill`, with a finished view; templates print and do not compute.
"""

from __future__ import annotations

import re
import struct
from collections.abc import Sequence
from functools import cache
from gettext import GNUTranslations, NullTranslations
from typing import Any, Literal, cast

import jinja2
from jinja2.sandbox import SandboxedEnvironment
from jinja2.utils import Namespace
from markupsafe import Markup, escape

from specgen.rendering.assets import asset, templates_folder
from specgen.rendering.failure import RenderError
from specgen.rendering.line_breaks import NO_BREAK, kept_whole, unbroken
from specgen.rendering.markdown import to_html
from specgen.rendering.phone import cell_class, stays_a_table
from specgen.units.locale import ENGLISH, Locale

# What reading a catalogue raises where a byte is missing or another one: it looks at nothing before it follows it.
_DAMAGED = (OSError, ValueError, LookupError, SyntaxError, struct.error)

Medium = Literal["print", "screen"]

_LOWERED = re.compile(r"\b([A-Za-zα-ω]{1,3})_([A-Za-z]{1,3})\b")


@cache
def environment(language: str) -> jinja2.Environment:
    """The environment for one language ("en", "de" ...), the templates folder being all it can read.

    Templates see `language`, `_`/`gettext`/`ngettext`, the filters `prose`, `drawing` and `lowered`, the functions `style_sheet`,
    `stays_a_table`, `cell_class` and `converted`, `issue`, `emergency`, `identity` and `second_signs`. The filter `default` is
    taken out: with it a template would print a limit without its number. Raises RenderError for a language whose catalogue of messages is
    missing or damaged; English is the language of the templates and needs none.
    """
    engine = SandboxedEnvironment(
        loader=jinja2.FileSystemLoader(templates_folder(), followlinks=False),
        autoescape=True,  # not by file name: the usual selection passes over *.html.j2
        undefined=jinja2.StrictUndefined,
        extensions=["jinja2.ext.i18n"],
        trim_blocks=True,
        lstrip_blocks=True,
        keep_trailing_newline=True,
    )
    for forbidden in ("default", "d"):
        del engine.filters[forbidden]
    engine.filters["prose"] = prose
    engine.filters["drawing"] = drawing
    engine.filters["lowered"] = lowered
    engine.globals["language"] = language
    engine.globals["style_sheet"] = style_sheet
    engine.globals["identity"] = None  # a page that is no document of a project bears nobody's logo
    engine.globals["stays_a_table"] = stays_a_table
    engine.globals["cell_class"] = cell_class
    engine.globals["converted"] = converted
    engine.globals["second_signs"] = ()  # of a page without a project
    engine.globals["issue"] = None  # a document is a draft unless whoever issues it says otherwise
    engine.globals["emergency"] = None  # a page of the catalogue has no number to call
    # The i18n extension hangs this method on the environment when it is loaded; its type is unknown.
    cast(Any, engine).install_gettext_translations(_translations(language), newstyle=True)
    return engine


def fill(template: str, *, language: str, medium: Medium, **values: object) -> str:
    """The whole HTML of one document: `template` is its name below the templates folder.

    `medium` says whether the page is for `write_pdf` ("print") or `write_html` ("screen"). Templates see it, and `outline`, in
    which `parts/section.html.j2` notes what the contents list. Raises RenderError, naming template and line where known,
    for a value the view does not hold and for a template that is wrong.
    """
    try:
        page = environment(language).get_template(template).render(medium=medium, outline=new_outline(), **values)
    except jinja2.TemplateSyntaxError as error:
        raise RenderError(f"The template {error.name}, line {error.lineno}, is wrong: {error.message}.") from error
    except jinja2.TemplateNotFound as error:
        raise RenderError(f"There is no template {error.name}. Check how its name is spelt.") from error
    except jinja2.TemplateError as error:
        raise RenderError(f"The template {template} cannot be filled: {error}.") from error
    return unbroken(page) if medium == "print" else kept_whole(page)


def new_outline() -> Namespace:
    """What is noted of one page while it is set: its kind, its sections as pairs of the place to go to and its words, and whether it
    has said what a figure in brackets is.
    """
    return Namespace(kind="", numbered=False, number=0, sections=(), brackets_told=False)


def converted(page: str, signs: Sequence[str]) -> bool:
    """True where a figure stands in brackets with one of these units behind it (see `units.display`)."""
    return any(f"{NO_BREAK}{sign})" in page for sign in signs)


@cache
def translation(language: str) -> Locale:
    """What views are worded in. Raises RenderError for a language without a whole catalogue, or of which no decimal sign is known."""
    found = _translations(language)
    if _is_english(language):
        return ENGLISH
    # Only a document in another language asks for the table of languages, which is large.
    from babel.core import UnknownLocaleError
    from babel.numbers import get_decimal_symbol

    try:
        sign = get_decimal_symbol(language.replace("-", "_"))
    except (UnknownLocaleError, ValueError):
        raise RenderError(f"How numbers are written in the language {language!r} is not known.") from None
    return Locale(found.gettext, found.ngettext, sign, language)


def prose(text: str) -> Markup:
    """The author's Markdown as safe HTML. Raises ProseError (see `markdown.to_html`)."""
    return Markup(to_html(text))  # to_html lets no raw HTML through


def lowered(text: str) -> Markup:
    """A formula or its symbols, n_LW with LW set lower; what has a sign of its own for it, as A₁, stays."""
    return Markup(_LOWERED.sub(r"\1<sub>\2</sub>", str(escape(text))))


def drawing(svg: str) -> Markup:
    """A drawing of `specgen.figures`, as it is. Raises RenderError for anything else."""
    if not svg.startswith("<svg ") or not svg.endswith("</svg>"):
        raise RenderError("Only a drawing made by this program may stand in a document unescaped.")
    return Markup(svg)  # figures escape every text they are given


def style_sheet(name: str) -> Markup:
    """The text of `style/<name>`, to stand inside a style element. Raises RenderError for an unknown name."""
    text = asset(f"style/{name}").read_text(encoding="utf-8")
    if "</" in text:
        raise RenderError(f"The style sheet {name} holds “</”, which would end the style element it is placed in.")
    return Markup(text)  # our own file, checked above


def _translations(language: str) -> NullTranslations:
    # Asked of the loader's folder only, so the name of a language cannot lead to another file.
    if not language.replace("-", "").isalnum():
        raise RenderError(f"The language {language!r} is not a language code. Use one such as “en” or “de”.")
    if _is_english(language):
        return NullTranslations()
    try:
        path = asset(f"locale/{language}/LC_MESSAGES/specgen.mo")
    except RenderError:
        raise RenderError(
            f"There is no catalogue of messages for the language {language!r}. Add it below templates/locale, or use “en”."
        ) from None
    try:
        with path.open("rb") as file:
            return _Catalogue(file)
    except _DAMAGED:
        raise RenderError(
            f"The catalogue of messages for the language {language!r} cannot be read: locale/{language}/LC_MESSAGES/specgen.mo "
            "of the templates is damaged. Compile it again from the specgen.po beside it, or install the package again."
        ) from None


def _is_english(language: str) -> bool:
    return language == "en" or language.startswith("en-")


class _Catalogue(GNUTranslations):
    """A catalogue in which an empty text is empty; its own word for it is the header: who translated, and when."""

    def gettext(self, message: str) -> str:
        return super().gettext(message) if message else ""
