"""The folder `every_word` uses every word and form a source may use that the other specifications leave out: none is refused, all are on paper."""

from __future__ import annotations

import re
from enum import StrEnum
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.checking import Checked, check_loaded
from specgen.documents.parts.wording import WORDS
from specgen.findings import Severity
from specgen.model.acceptance import SampledUnit
from specgen.model.application import Method, Workplace
from specgen.model.drying import DryingStage, Sanding
from specgen.model.environment import EnvironmentKind, Medium
from specgen.model.parse import load
from specgen.model.preparation import StepKind
from specgen.model.product import CuringKind, Role
from specgen.model.system import Durability, Immersion
from specgen.printing.documents import print_documents
from specgen.standards.tables import table
from tests.good_spec import ON
from tests.page_text import running_text

FOLDER = Path(__file__).parent / "every_word"

# what cans alone have, and what the other specifications do
ELSEWHERE: set[StrEnum] = {
    Method.AEROSOL,
    CuringKind.CAPSULE_AEROSOL,
    CuringKind.BLOCKED_AEROSOL,
    *(set(StepKind) - {StepKind.DRILL, StepKind.CUT, StepKind.STEAM, StepKind.JET, StepKind.MASK, StepKind.SEAL}),
}
WORDS_USED = [
    word
    for words in (
        Role, EnvironmentKind, Medium, Method, StepKind, Workplace, Durability, SampledUnit, CuringKind, DryingStage, Sanding,
    )
    for word in words
    if word not in ELSEWHERE
]  # fmt: skip
FAMILIES = [
    "fluoropolymer", "pu_wb", "polyaspartic", "polyurea", "polysiloxane", "epoxy_wb", "epoxy_phenolic", "coal_tar_epoxy", "alkyd_wb",
    "polyester", "stoving_enamel", "zinc_pu", "antifouling", "wax", "bituminous", "not-named",
]  # fmt: skip
CATEGORIES = [row["id"] for row in table("exposure_categories").rows]

# as a source states it, as paper says it; every blank of paper is a plain one here
FORMS = [
    ("may_go_over: [epoxy_2k, fluoropolymer]", "two-pack epoxy, two-pack fluoropolymer (fluoropolyurethane)"),
    ("not_over: [antifouling, wax]", "antifouling, wax"),
    ("63 +- 2 %", "61 to 65 %"),
    ("time: max 30 min, air: min 20 degC", "at most 30 min"),
    ("air: 15..25 degC", "15 to 25 °C (59 to 77 °F)"),
    ("time: 2..3 h, air: 20 degC", "2 to 3 h at 20 °C (68 °F), 5 L (1.3 US gal) mixed; 90 min at 25 to 30 °C (77 to 86 °F); at most 45 min at 35 °C (95 °F) or above"),
    ("{id: wet, sanding: wet, time: 24..36 h, air: max 20 degC}", "20 °C (68 °F) or below"),
    ("surface: 160..180 degC, time: 20..30 min", "20 to 30 min at a surface temperature of 160 to 180 °C (320 to 356 °F) or 12 min at a surface temperature of 190 °C (374 °F) or above"),
    ("lamp: UV-A LED 395 nm", "UV-A LED 395 nm, 3 to 5 min, 20 to 25 cm"),
    ("profile: 50 +- 10 um", "40 to 60 µm"),
    ("coats: 1..2", "1 to 2"),
    ("coats: min 1", "at least 1"),
    ("{corrosivity: CX, immersion: Im4, durability: high", "corrosivity category CX, immersion category Im4 (sea or brackish water, with cathodic protection), durability high"),
    ("{count: 5, first_area: 10 m2, each_area: 10 m2}", "measurements or tests: 5, in the first 10 m² (108 ft²), then in each further 10 m² (108 ft²)"),
    ("{count: 3..5, each_area: 100 m2, per: coat}", "measurements or tests: 3 to 5, in each 100 m² (1076 ft²), on each coat"),
    ("{every: 4 h, per: shift}", "every 4 h, each shift"),
    ("age: 3 years", "3 years"),
    ("hand: left-and-right", "1 left, 1 right"),
    ("hand: left,", "2 left × SILL Sill"),
    ("hand: right", "2 right × RACK Rack"),
    ("stripe_coat: {when: before", "before it a stripe coat on edges, welds and bolts"),
    ("stripe_coat: {when: after", "after it a stripe coat on edges"),
    ("material: not-named", "metal that is not named"),
    ("shelf_life: 2 years", "2 years"),
]  # fmt: skip


@cache
def _checked() -> Checked:
    return check_loaded(load(FOLDER), ON)


@cache
def _paper() -> str:
    pages = print_documents(_checked(), formats=("html",)).values()
    joined = running_text(" ".join(page.decode() for page in pages))
    text = re.sub(r"<[^>]+>", " ", joined)
    return re.sub(r"\s+", " ", text.replace("\N{NO-BREAK SPACE}", " ").replace("&nbsp;", " ").replace("&#39;", "'"))


@cache
def _sources() -> str:
    return "\n".join(file.read_text("utf-8") for file in sorted(FOLDER.glob("*.yaml")))


def _values(tree: Any) -> set[str]:
    if isinstance(tree, dict):
        return set().union(*map(_values, tree.values()))
    return set().union(*map(_values, tree)) if isinstance(tree, list) else {str(tree)}


@cache
def _stated() -> set[str]:
    return set().union(
        *(_values(yaml.load(file.read_text("utf-8"), yaml.CBaseLoader)) for file in FOLDER.glob("*.yaml"))
    )


def test_nothing_is_refused() -> None:
    told = [str(finding) for finding in _checked().report if finding.severity is Severity.ERROR]
    assert told == []


@pytest.mark.parametrize("word", WORDS_USED, ids=lambda word: f"{type(word).__name__}.{word}")
def test_every_word_is_stated_and_on_paper(word: StrEnum) -> None:
    assert word.value in _stated()
    assert WORDS[type(word), word].lower() in _paper().lower()


@pytest.mark.parametrize("family", FAMILIES)
def test_every_family_is_stated_and_on_paper(family: str) -> None:
    assert family in _stated()
    assert table("binder_families").row("id", family)["name"] in _paper()


@pytest.mark.parametrize("category", CATEGORIES)
def test_every_category_of_the_environment_is_stated_and_on_paper(category: str) -> None:
    assert category in _stated()
    assert f"{category} ({table('exposure_categories').row('id', category)['name']})" in _paper()


@pytest.mark.parametrize("category", [Immersion.IM1, Immersion.IM3, Immersion.IM4])
def test_immersion_is_claimed(category: Immersion) -> None:
    assert f"immersion category {category}" in _paper()


@pytest.mark.parametrize(("stated", "printed"), FORMS, ids=[stated for stated, _ in FORMS])
def test_every_form_is_stated_and_on_paper(stated: str, printed: str) -> None:
    assert stated in _sources()
    assert printed in _paper()
