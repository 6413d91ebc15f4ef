"""Every kind of document is found in its folder, has its template, stands in the README, and borrows nothing from another kind."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import pytest

import specgen.documents
from specgen.documents.registry import KINDS
from specgen.printing.documents import DOCUMENTS, print_documents
from tests.good_spec import checked, given, put

ROOT = Path(__file__).parents[2]
FOLDER = Path(specgen.documents.__path__[0])
HERE = "specgen.documents."


def test_a_folder_is_a_kind() -> None:
    """Any folder with a module counts: the registry passes over what lacks its `__init__.py` or its `KIND`."""
    folders = {file.parent.name for file in FOLDER.glob("*/*.py")} - {"parts"}
    kinds = {name.replace("-", "_") for name in KINDS}
    told = [
        f"specgen/documents/{name} has no __init__.py that declares a KIND named {name.replace('_', '-')}"
        for name in folders - kinds
    ]
    told += [
        f"the kind {name} does not stand in a folder of its name, specgen/documents/{name}" for name in kinds - folders
    ]
    assert not told, "\n".join(sorted(told))
    places = sorted(kind.place for kind in KINDS.values())
    assert places == list(range(1, len(places) + 1)), f"the kinds do not take one place each, from 1 on: {places}"


def test_a_kind_that_is_laid_out_has_a_template() -> None:
    laid_out = {kind.template for kind in KINDS.values() if {"pdf", "html"} & set(kind.formats)}
    found = {file.relative_to(ROOT / "templates").as_posix() for file in ROOT.glob("templates/*/document.html.j2")}
    told = [
        f"templates/{name} is missing, which a kind in specgen/documents is laid out by" for name in laid_out - found
    ]
    told += [
        f"templates/{name} belongs to no kind in specgen/documents that comes as PDF or HTML"
        for name in found - laid_out
    ]
    assert not told, "\n".join(sorted(told))
    assert {name for name, kind in KINDS.items() if "csv" in kind.formats} == {
        name for name, kind in KINDS.items() if kind.sheet is not None
    }


def test_readme_lists_every_document() -> None:
    of = {
        "job": "of a job",
        "product": "of a product",
        "folder": "of the folder",
        "jobs": "of the folder",
        "offer": "of an offer",
        "bid": "of a job, or of each offer for it",
        "report": "of a test report",
    }
    told: dict[str, list[str]] = {}
    for name in DOCUMENTS:
        told.setdefault(of[KINDS[name].about], []).append(KINDS[name].title)
    sentence = "; ".join(f"{about}: {', '.join(titles)}" for about, titles in told.items())
    readme = (ROOT / "README.md").read_text("utf-8")
    assert f"prints the documents ({sentence})" in readme, f"README.md has to say: prints the documents ({sentence})"
    missing = [kind.title for kind in KINDS.values() if kind.title not in readme]
    assert not missing, f"README.md does not name the documents: {missing}"


def test_what_is_issued_is_of_a_job_its_records_or_a_product() -> None:
    issued = {name for name, kind in KINDS.items() if kind.issued}
    assert issued == {
        "method-statement",
        "job-card",
        "hazard-card",
        "materials-list",
        "data-sheet",
        "inspection-plan",
        "as-built-record",
    }, "issued: say so here"


def test_a_kind_knows_no_other_and_parts_know_none() -> None:
    wrong = [
        (room, named)
        for room, named in _imports()
        if named.partition(".")[0] not in {"context", "kind", "parts", room.partition(".")[0]}
    ]
    assert wrong == []


def test_parts_are_what_two_kinds_share() -> None:
    needs: dict[str, set[str]] = {}
    for room, named in _imports():
        if room.startswith("parts.") and named.startswith("parts."):
            needs.setdefault(room, set()).add(".".join(named.split(".")[:2]))
    users: dict[str, set[str]] = {}
    for room, named in _imports():
        owner = room.partition(".")[0]
        if named.startswith("parts.") and owner != "parts":
            waiting = [".".join(named.split(".")[:2])]
            while waiting:
                part = waiting.pop()
                if owner not in users.setdefault(part, set()):
                    users[part].add(owner)
                    waiting += needs.get(part, ())
    everyone = users.pop("parts.issue_block")
    assert everyone == {"context"}
    parts = {f"parts.{file.stem}" for file in FOLDER.glob("parts/*.py")} - {"parts.__init__", "parts.issue_block"}
    assert set(users) == parts
    assert {part: owners for part, owners in users.items() if len(owners - {"context", "kind"}) < 2} == {}


def _imports() -> Iterator[tuple[str, str]]:
    """(module, what it takes from the documents), both below `specgen.documents`."""
    for file in FOLDER.rglob("*.py"):
        room = ".".join(file.relative_to(FOLDER).with_suffix("").parts)
        for node in ast.walk(ast.parse(file.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom) and node.module is not None and node.module.startswith(HERE):
                yield from ((room, f"{node.module.removeprefix(HERE)}.{name.name}") for name in node.names)


@pytest.mark.parametrize("name", ["test-report", "qualification-matrix", "offer-review"])
def test_what_is_a_record_and_never_issued_warns_of_no_draft(name: str) -> None:
    """A report of a laboratory is issued by that, and the others say what was found on a day; nobody works to any of them."""
    spec = (
        given("a comparison of two coatings")
        if name != "offer-review"
        else given("an offer for a coat without a product")
    )
    if name == "qualification-matrix":
        put(spec, "jobs.refit.tests", "[{id: pull, method: pull_off, standard: ISO 4624, limit: min 5 MPa}]")
    pages = print_documents(checked(spec), documents=[name], formats=["html"])
    assert pages
    assert not any("DRAFT" in page.decode() for page in pages.values())
