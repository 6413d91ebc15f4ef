"""Places and sentences of findings on a page go by titles, for its reader has no sources."""

from __future__ import annotations

import pytest

from specgen.checking import check
from specgen.documents.parts.place_words import coats_in_words, place_in_words, products_in_words
from specgen.documents.parts.wording import Words
from specgen.units.locale import ENGLISH
from tests.good_spec import DEMO, ON, given, good_with, spec_of

WORDS = Words(ENGLISH, {})


@pytest.mark.parametrize(
    ("address", "told"),
    [
        ("systems.cab.layers.primer.film.max", "maximum DFT of the coat 1 primer of the system {system}"),
        ("jobs.refit.inspection.look.hold_point", "hold point of the inspection point {look} of the job {job}"),
        ("products.primer.composition", "data held by the manufacturer of the product {product}"),
        ("project.users", "users of the products of the project"),
        ("jobs.nowhere.scope", "scope of the work of the job nowhere"),
    ],
)
def test_places_are_named_by_titles(address: str, told: str) -> None:
    spec = spec_of(good_with())
    job = spec.jobs["refit"]
    named = {
        "system": spec.systems["cab"].title,
        "look": next(point.check for point in job.inspection if point.id == "look"),
        "job": job.document.number,
        "product": spec.products["primer"].name,
    }
    assert place_in_words(address, spec, WORDS) == told.format(**named)


def test_a_sentence_names_system_and_coats_and_leaves_other_words_alone() -> None:
    system = spec_of(good_with()).systems["cab"]
    text = (
        "the system cab states no interval between primer and base; the primer of the cab is red, primer and base-coat"
    )
    told = coats_in_words(text, system, WORDS)
    assert told.startswith(f"the system “{system.title}” states no interval between 1 primer and 2 basecoat; ")
    assert told.endswith("the primer of the cab is red, primer and base-coat")


def test_tests_go_by_what_they_measure() -> None:
    spec = spec_of(given("a claim with its report"))
    told = place_in_words("reports.lab-12.tests.creep", spec, WORDS)
    assert told == f"the test creep from the scribe to ISO 4628-8 of the test report {spec.reports['lab-12'].number}"


def test_products_go_by_their_names_where_an_id_is_no_word() -> None:
    spec = check(DEMO, ON).loaded.spec
    assert spec is not None
    text = "barrier-520 is too thin under topcoat-410; the primer and topcoat-4100 are others"
    told = "Fennholt 520 epoxy barrier primer is too thin under Fennholt 410 polyurethane topcoat; the primer and topcoat-4100 are others"
    assert products_in_words(text, spec) == told
