"""The catalogue of messages shipped for translators holds every English text of templates and views, and nothing else."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from io import BytesIO
from pathlib import Path

import pytest
import yaml
from babel.messages.catalog import Catalog
from babel.messages.extract import extract_from_dir
from babel.messages.pofile import read_po, write_po

from specgen.standards.citations import Basis
from specgen.standards.tables import table, table_names

ROOT = Path(__file__).parents[2]
CATALOGUE = ROOT / "templates/locale/specgen.pot"
PRINTED_TABLES = yaml.load(
    (ROOT / "templates/locale/printed_tables.yaml").read_text(encoding="utf-8"), Loader=yaml.CSafeLoader
)
# Which arguments of a call are English texts. A view translates by calling its Words: `words("...")`.
KEYWORDS: dict[str, tuple[int, ...]] = {
    **dict.fromkeys(("_", "gettext", "N_", "words", "translate", "language", "phrase", "listed"), (1,)),
    **dict.fromkeys(("ngettext", "plural", "N_n"), (1, 2)),
    # Workings and their inputs are named by the second argument, also through the short ways of a module.
    **dict.fromkeys(("work", "take", "take_cell", "Input", "_metres", "_area", "_round", "_share", "_added"), (2,)),
}


def said_in(module: str) -> Iterator[tuple[int, str | tuple[str, ...]]]:
    """Line and text of every call that is given an English text; the syntax tree, so that no call inside another is lost."""
    for node in ast.walk(ast.parse(module)):
        if not isinstance(node, ast.Call):
            continue
        name = node.func.attr if isinstance(node.func, ast.Attribute) else getattr(node.func, "id", "")
        given = [node.args[at - 1] for at in KEYWORDS.get(name, ()) if at <= len(node.args)]
        texts = tuple(arg.value for arg in given if isinstance(arg, ast.Constant) and isinstance(arg.value, str))
        if texts:
            yield node.lineno, texts if len(texts) > 1 else texts[0]


def extracted() -> Catalog:
    catalog = Catalog(project="specgen", charset="utf-8")
    in_templates = extract_from_dir(
        ROOT / "templates", [("**.j2", "jinja2")], {"**.j2": {"trimmed": "false"}}, keywords=KEYWORDS
    )
    for name, line, message, _, _ in in_templates:
        catalog.add(message, locations=[(f"templates/{name}", line)])
    for path in sorted((ROOT / "specgen").rglob("*.py")):
        for line, message in said_in(path.read_text(encoding="utf-8")):
            catalog.add(message, locations=[(str(path.relative_to(ROOT)), line)])
    for name, columns in PRINTED_TABLES.items():
        for row in table(name).rows:
            cells = [row[column].replace("_", " ") if column == "id" else row[column] for column in columns]
            # A group of binders is named in a sentence without its remark.
            cells += [cell.split(",")[0] for cell in cells if name == "overcoat_groups"]
            for cell in filter(None, cells):
                catalog.add(cell, locations=[(f"specgen/standards/tables/{name}.yaml", 0)])
    for name in table_names():
        catalog.add(table(name).title, locations=[(f"specgen/standards/tables/{name}.yaml", 0)])
    for basis in Basis:
        catalog.add(basis.value)
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
    held = {message.id for message in shipped if message.id}
    missing, left = sorted(map(str, wanted - held)), sorted(map(str, held - wanted))
    assert not missing + left, (
        f"templates/locale/specgen.pot lacks {missing} and holds {left}, which nothing says; pytest --update-golden renews it"
    )
    assert ("Page %(page)s of %(pages)s") in wanted
