"""The catalogue of messages shipped for translators holds every English text of templates and views, and nothing else."""

from __future__ import annotations

from io import BytesIO
from pathlib import Path

import pytest
from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po, write_po

ROOT = Path(__file__).parents[2]
CATALOGUE = ROOT / "templates/locale/specgen.pot"
# A view translates by calling its Words: `words("...")`.
KEYWORDS = {
    "_": None,
    "gettext": None,
    "ngettext": (1, 2),
    "N_": None,
    "words": None,
    "translate": None,
    "language": None,
    "N_n": (1, 2),
    "plural": (1, 2),
}


def extracted() -> Catalog:
    catalog = Catalog(project="specgen", charset="utf-8")
    for folder, method in (("templates", [("**.j2", "jinja2")]), ("specgen", [("**.py", "python")])):
        options = {"**.j2": {"trimmed": "false"}}
        for name, line, message, _, _ in extract_from_dir(ROOT / folder, method, options, keywords=KEYWORDS):
            catalog.add(message, locations=[(f"{folder}/{name}", line)])
    return catalog


def test_catalogue_is_up_to_date(request: pytest.FixtureRequest) -> None:
    fresh = extracted()
    if request.config.getoption("--update-golden"):
        out = BytesIO()
        write_po(out, fresh, no_location=True, sort_output=True, omit_header=True, width=0)
        CATALOGUE.write_bytes(out.getvalue())
    with CATALOGUE.open("rb") as file:
        shipped = read_po(file)
    wanted = {message.id for message in fresh if message.id}
    assert {message.id for message in shipped if message.id} == wanted
    assert ("Page %(page)s of %(pages)s") in wanted
