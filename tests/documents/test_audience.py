"""No document for a customer, in any format, holds anything that is the maker's.

A marker that stands nowhere else is planted in every leaf of the maker, every kind of document is printed, and the bytes are searched.
Findings of `check` are for the maker and may name such a leaf; documents never do.
"""

from __future__ import annotations

import io
import json
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Any

import pypdf
import pytest
from pypdf.generic import StreamObject

from specgen.checking import Checked, check
from specgen.documents.registry import KINDS
from specgen.model.canonical import canonical
from specgen.model.declaring import Audience
from specgen.model.drying import MoistureCure
from specgen.model.hazards import CombustionHeat, Hazards, Isocyanates
from specgen.model.product import Component, ComponentClass, Product
from specgen.model.walk import declaration, leaves, models
from specgen.printing.documents import DOCUMENTS, FORMATS, print_documents
from specgen.report import as_json
from tests.good_spec import DEMO, DEMO_RANGE, ON, checked, good, put, take_out

# Digits that no other figure of the good specification has; each product's shares add up to 100.
COMPOSITIONS: Mapping[str, list[dict[str, str]]] = {
    "primer": [
        {"id": "mk-alpha", "name": "Quillonite resin", "cas": "990011-51-3", "kind": "solids", "mass_share": "31.41597 %", "density": "1.61803 g/mL"},
        {"id": "mk-beta", "name": "Brindol blend", "cas": "990012-52-7", "kind": "solvent", "mass_share": "27.18281 %", "density": "0.87719 g/mL"},
        {"id": "mk-gamma", "name": "Vaporane gas", "cas": "990013-53-1", "kind": "propellant", "mass_share": "41.40122 %", "density": "0.65537 g/mL"},
    ],
    "base": [
        {"id": "mk-delta", "name": "Ostrelac binder", "cas": "990014-54-5", "kind": "solids", "mass_share": "22.36068 %", "density": "1.73205 g/mL"},
        {"id": "mk-epsilon", "name": "Tremolin thinner", "cas": "990015-55-9", "kind": "solvent", "mass_share": "37.63911 %", "density": "0.81649 g/mL"},
        {"id": "mk-zeta", "name": "Zephyrane gas", "cas": "990016-56-3", "kind": "propellant", "mass_share": "40.00021 %", "density": "0.57735 g/mL"},
    ],
}  # fmt: skip
# One line more, with what is said of a substance by its hazards; the classes are those the product declares anyway.
COMPOSITIONS["primer"][0] |= {"flammable": "no", "adds_up": "no"}
HAZARD_CLASS = {"id": "mk-eta", "hazard_class": "skin_sensitisation", "category": "1", "statement": "H317", "m_factor": "1.20569", "limit": "12.34567 %", "limit_source": "Marulan list"}  # fmt: skip
HEAT = {"heat": "23.60679 kJ/g", "source": "Ferrowen report"}
MONOMER = {"monomer": "0.0577215 %"}
RELEASE = {"cure_release_cas": "990017-57-7", "cure_release_share": "0.0314159 %"}
WATER = {
    "equivalent_weight": "577.21566 g/mol", "hardener_ratio": "1.27323", "one_for_one": "yes", "resin_share": "66.27434 %",
    "dry_density": "1.52399 g/mL", "taken_in_flight": "8.31446 %", "free_water": "137.03599", "can_equivalents": "0.0915965",
    "can_contents": "299.79246 g", "release_allowed": "14.13472 %",
}  # fmt: skip
# Words of the trade, of which a document may hold any without giving away the composition.
NOT_MARKED = {"kind", "flammable", "adds_up", "hazard_class", "category", "statement", "one_for_one"}
MARKERS = sorted(
    {
        re.sub(r" (%|g/mL|kJ/g|g/mol|g)$", "", value)
        for record in (
            *(line for lines in COMPOSITIONS.values() for line in lines),
            HAZARD_CLASS,
            HEAT,
            MONOMER,
            RELEASE,
            WATER,
        )
        for key, value in record.items()
        if key not in NOT_MARKED
    }
)


# What is offered is a product of which every figure is the maker's, for a system no job is painted with: of that the products are open.
OPEN = """{id: open, title: One coat to a requirement, handle_after: 16 h, service_after: 7 days, layers: [{
  id: prime, role: primer, film: {min: 40 um, nominal: 60 um, max: 80 um}, coats: 1,
  required: {generic_type: epoxy_latent, solids: min 35 %, voc: 700 g/L, tests: [{id: salt, test: "ISO 9227, 480 h", limit: no rust}]},
}]}"""
OFFERS = """[{
  id: bid, document: {number: OR-1, title: Offer of one coat, owner: Technical desk}, system: open, supplier: Example Yard Paints, date: 2026-11-20,
  layers: [{id: prime, product: primer, variant: grey, tests: [{id: salt, passed: yes, result: no rust, report: "Example laboratory 12, 2026-03-02"}]}],
}]"""
REPORTS = """[{
  id: lab, number: LAB-1, title: Creep of the primer, laboratory: {name: Example laboratory, address: 3 Example Road},
  dates: {started: 2026-02-02, ended: 2026-03-02, issued: 2026-03-09}, signed_by: A. Example,
  series: [{id: s, panels: 3, substrate: steel_blasted, grade: Sa 2 1/2, coats: [{id: c, product: primer, batch: B1, film: 60 um}], cure: {time: 7 days}}],
  tests: [{id: t, series: s, method: scribe_creep, standard: ISO 4628-8, edition: "2012", details: [{id: scribe, value: 1 mm}, {id: side, value: one side}],
    after: {method: nss, standard: ISO 9227, duration: 480 h}, results: [{id: P1, value: 1.4 mm}, {id: P2, value: 1.1 mm}, {id: P3, value: 1.2 mm}]}],
}]"""


@dataclass(frozen=True)
class Printed:
    checked: Checked
    files: Mapping[str, bytes]


@pytest.fixture(scope="session")
def planted() -> Checked:
    return checked(_planted())


def _planted() -> dict[str, Any]:
    spec = good()
    put(spec, "systems.open", OPEN)
    put(spec, "offers", OFFERS)
    put(spec, "reports", REPORTS)
    put(
        spec,
        "jobs.refit.tests",
        "[{id: creep, method: scribe_creep, details: [{id: sides, value: one-sided}], after: {method: nss, duration: 480 h}, limit: max 2 mm}]",
    )
    # by what the maker says of its water the coat waits longer than the good specification has it
    put(spec, "systems.cab.layers.primer.overcoat_interval", "4 h..24 h")
    for product, lines in COMPOSITIONS.items():
        put(spec, f"products.{product}.composition", json.dumps(lines))
    put(spec, "products.primer.composition.mk-alpha.classes", json.dumps([HAZARD_CLASS]))
    put(spec, "products.primer.hazards.heat_of_combustion", json.dumps(HEAT))
    put(spec, "products.primer.hazards.isocyanates", json.dumps(MONOMER))
    for key, value in RELEASE.items():
        put(spec, f"products.primer.hazards.{key}", value)
    put(spec, "products.primer.moisture_cure", json.dumps(WATER))
    # nothing is measured here, so every figure of the product is worked out from the maker's
    take_out(spec, "products.base.solids")
    # a waiver may address a line of the composition by its id
    waiver = "{id: w, rule: FLM001, path: products.primer.composition.mk-alpha.density, reason: trial, by: QA, until: 2027-01-01}"
    put(spec, "jobs.refit.waivers", f"[{waiver}]")
    return spec


@pytest.fixture(scope="session")
def printed(planted: Checked) -> Printed:
    screen = print_documents(planted, formats=[name for name in FORMATS if name != "pdf"])
    # setting a page takes a second or two, and only these products have leaves of the maker
    paper = print_documents(planted, formats=["pdf"], products=tuple(COMPOSITIONS))
    return Printed(planted, {**screen, **paper})


def test_every_leaf_of_the_maker_is_planted(planted: Checked) -> None:
    declared = {
        (model, name)
        for model in models(Product)
        for name in model.model_fields
        if (said := declaration(model, name)) is not None and said.audience is Audience.MAKER
    }
    # a new leaf of the maker needs a marker of its own
    lines = {key for lines in COMPOSITIONS.values() for line in lines for key in line}
    assert declared == {
        *((Component, key) for key in lines),
        *((ComponentClass, key) for key in HAZARD_CLASS),
        *((CombustionHeat, key) for key in HEAT),
        *((Isocyanates, key) for key in MONOMER),
        *((Hazards, key) for key in RELEASE),
        *((MoistureCure, key) for key in WATER),
    }
    assert planted.loaded.spec is not None
    stated = {
        product.id
        for product in planted.loaded.spec.products.values()
        for _, _, said in leaves(product)
        if said.audience is Audience.MAKER
    }
    assert stated == set(COMPOSITIONS)
    assert len(MARKERS) == 48


def test_every_kind_is_printed_in_every_format(printed: Printed) -> None:
    expected = {(name, ending) for name in DOCUMENTS for ending in KINDS[name].formats}
    found = {(name, file.rpartition(".")[2]) for file in printed.files for name in DOCUMENTS if f"-{name}." in file}
    assert found == expected


def test_figures_from_the_maker_are_printed_with_their_result_alone(printed: Printed) -> None:
    page = printed.files["DS-primer-data-sheet.html"].decode()
    assert page.count("inputs withheld by the manufacturer") == 1  # one group of results


def test_no_document_holds_a_marker(printed: Printed) -> None:
    leaks = [
        (file, where, marker)
        for file, data in printed.files.items()
        for where, text in _texts(file, data).items()
        for marker in MARKERS
        if marker.casefold() in text.casefold()
    ]
    assert leaks == []


def test_the_search_finds_what_is_there(printed: Printed) -> None:
    """The same search finds words that do stand in each document, so that finding none means something."""
    for file, data in printed.files.items():
        if file.endswith(".pdf"):
            texts = _texts(file, data)
            assert "specgen" in texts["pages"]
            assert "Example Coatings" in texts["properties"]
            assert len(texts["streams"]) > len(data)
        else:
            # the rows to type hold ids alone
            assert ("primer-film" if "record-sheets" in file else "Example") in _texts(file, data)["whole"]


def test_the_air_of_a_job_names_no_substance() -> None:
    """It is worked out from the composition; a reason why it cannot be would name what is missing."""
    spec = _planted()
    put(spec, "jobs.refit.ventilation", "{room: 90 m3, flow: 9000 m3/h, spraying_rate: 777 g/h, mixing: 3}")
    files = print_documents(checked(spec), documents=["method-statement"], formats=["html"])
    (page,) = [data.decode() for data in files.values()]
    assert "Ventilation during spraying" in page
    assert [marker for marker in MARKERS if marker.casefold() in page.casefold()] == []


def test_report_holds_only_what_its_author_wrote(planted: Checked) -> None:
    """The waiver that was planted addresses a line of the composition and has nothing to waive; its finding is for the maker.

    The offer that was planted has no report behind it.
    """
    text = as_json.write(planted.report, prefix="", on=ON)
    assert [finding.id for finding in planted.report] == ["WVR001", "REQ007"]
    assert [marker for marker in MARKERS if marker in text] == ["mk-alpha"]


def test_customer_edition_holds_no_marker(planted: Checked) -> None:
    spec = planted.loaded.spec
    assert spec is not None
    maker, customer = canonical(spec), canonical(spec, Audience.CUSTOMER)
    assert [marker for marker in MARKERS if marker not in maker] == []
    assert [marker for marker in MARKERS if marker in customer] == []
    whole: dict[str, Any] = json.loads(maker)
    for product in whole["products"].values():
        product.pop("composition", None)
    # a record of which every leaf is the maker's stays as an empty one
    for record in ("heat_of_combustion", "isocyanates"):
        whole["products"]["primer"]["hazards"][record] = {}
    whole["products"]["primer"]["moisture_cure"] = {}
    for key in RELEASE:
        whole["products"]["primer"]["hazards"].pop(key)
    whole["jobs"]["refit"]["waivers"][0]["path"] = "products.primer.…"
    assert json.loads(customer) == whole


def test_demo_names_no_substance() -> None:
    """In the demo as it stands: its substances by name, for its round shares and densities are figures of other things too."""
    demo = check(DEMO_RANGE, ON)
    assert demo.loaded.spec is not None
    names = {line.name for product in demo.loaded.spec.products.values() for line in product.composition}
    # what the label names is public by law
    names -= {
        name for p in demo.loaded.spec.products.values() if p.hazards is not None for name in p.hazards.named_on_label
    }
    forms = [name for name in FORMATS if name != "pdf"]
    files = {**print_documents(demo, formats=forms), **print_documents(check(DEMO, ON), formats=forms)}
    assert len(names) >= 9
    leaks = [(file, name) for file, data in files.items() for name in names if name in data.decode("utf-8-sig")]
    assert leaks == []


@cache
def _texts(file: str, data: bytes) -> Mapping[str, str]:
    """Every text of a file by where it stands, kept, for taking a PDF apart takes seconds."""
    return dict(_taken_apart(file, data))


def _taken_apart(file: str, data: bytes) -> Iterator[tuple[str, str]]:
    """Of a PDF the pages, the properties, the attachments and all streams unpacked."""
    if not file.endswith(".pdf"):
        yield "whole", data.decode("utf-8-sig")
        return
    reader = pypdf.PdfReader(io.BytesIO(data))
    # a line break of the layout may fall inside a marker
    yield "pages", re.sub(r"\s+", " ", " ".join(page.extract_text() for page in reader.pages))
    yield "properties", " ".join(str(value) for value in (reader.metadata or {}).values())
    xmp = reader.root_object.get("/Metadata")
    yield "extended properties", xmp.get_object().get_data().decode("utf-8", "replace") if xmp is not None else ""
    for name, contents in reader.attachments.items():
        yield f"attachment {name}", name + " ".join(part.decode("utf-8", "replace") for part in contents)
    streams = []
    for number in range(1, int(reader.trailer["/Size"])):
        found = reader.get_object(number)
        if isinstance(found, StreamObject):
            streams.append(found.get_data().decode("latin-1"))
        elif found is not None:
            streams.append(str(found))
    yield "streams", "\n".join(streams)
    yield "bytes", data.decode("latin-1")
