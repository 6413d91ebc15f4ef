"""Which film holds for a layer, on whose word, and what follows from it: sums, the film ordered for, the film old paint is added to."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.documents.method_statement.view import MethodStatement, method_statement
from specgen.facts.job.quantities import quantities
from specgen.facts.layer.film import Limit, expected_film, film_limit, film_of_variant, planned_film
from specgen.facts.layer.sums import film_sum, least_film, nominal_in_the_end, total_film
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from tests.documents.conftest import context
from tests.good_spec import good_with, spec_of

PRIMER = "systems.cab.layers.primer.film"


def _spec(changes: dict[str, str], out: tuple[str, ...] = ()) -> Spec:
    return spec_of(good_with(changes, out))


def _primer(spec: Spec) -> tuple[System, Layer, Spec]:
    system = spec.systems["cab"]
    return system, system.layers[0], spec


@pytest.mark.parametrize(
    ("film", "limit", "held"),
    [
        ("{min: 45 um, nominal: 60 um, max: 70 um}", "min", ("45 um", "systems.cab.layers.primer.film.min", "layer")),
        ("{min: 45 um, nominal: 60 um, max: 70 um}", "max", ("70 um", "systems.cab.layers.primer.film.max", "layer")),
        ("{nominal: 60 um}", "min", ("40 um", "products.primer.film.min", "product")),
        ("{nominal: 60 um}", "max", ("80 um", "products.primer.film.max", "product")),
        ("{nominal: 60 um}", "nominal", ("60 um", "systems.cab.layers.primer.film.nominal", "layer")),
        ("{min: 45 um}", "nominal", None),
    ],
)
def test_own_limit_before_that_of_the_product(film: str, limit: Limit, held: tuple[str, str, str] | None) -> None:
    found = film_limit(*_primer(_spec({PRIMER: film}, ("systems.cab.total",))), limit)
    assert (None if found is None else (str(found.value), found.given.origin, found.stated_by)) == held


def test_no_limit_where_neither_states_one() -> None:
    spec = _spec({PRIMER: "{nominal: 60 um}"}, ("systems.cab.total", "products.primer.film.max"))
    assert film_limit(*_primer(spec), "max") is None
    assert film_sum(spec.systems["cab"], spec, "max") is None


def test_variant_before_product() -> None:
    product = _spec({"products.primer.variants.grey.overrides": "{per_pass: 14 um}"}).products["primer"]
    of_variant, of_product = (film_of_variant(product, one, "per_pass") for one in (product.variants[0], None))
    assert of_variant is not None
    assert of_product is not None
    assert (str(of_variant.value), of_variant.stated_by) == ("14 um", "variant")
    assert of_variant.given.origin == "products.primer.variants.grey.overrides.per_pass"
    assert (str(of_product.value), of_product.stated_by) == ("15 um", "product")
    assert film_of_variant(product, None, "hiding") is None


def test_sums_count_what_is_borrowed_and_name_it() -> None:
    spec = _spec({PRIMER: "{min: 45 um, nominal: 60 um}"}, ("systems.cab.total",))
    least, most = (film_sum(spec.systems["cab"], spec, limit) for limit in ("min", "max"))
    assert least is not None
    assert most is not None
    assert (str(least.value), least.borrowed) == ("100 um", ())
    assert (str(most.value), most.borrowed) == ("180 um", ("primer",))
    assert str(total_film(spec.systems["cab"], spec, "max")) == "180 um"


def test_a_nominal_film_is_not_borrowed() -> None:
    spec = _spec({PRIMER: "{min: 40 um, max: 80 um}"}, ("systems.cab.total",))
    assert film_sum(spec.systems["cab"], spec, "nominal") is None


@pytest.mark.parametrize(
    ("film", "ordered", "expected"),
    [
        ("{min: 40 um, nominal: 60 um}", ("60 um", "systems.cab.layers.primer.film.nominal"), 60),
        # paint for the most film, so that it never runs short, whoever states it
        ("{min: 40 um}", ("80 um", "products.primer.film.max"), 50),
        ("{min: 40 um, max: 70 um}", ("70 um", "systems.cab.layers.primer.film.max"), 55),
        # the 50 um the product is usually laid at would be less than this layer has at least
        ("{min: 60 um}", ("80 um", "products.primer.film.max"), 70),
        ("{max: 46 um}", ("46 um", "systems.cab.layers.primer.film.max"), 43),
        ("{}", ("80 um", "products.primer.film.max"), 50),
    ],
)
def test_film_ordered_for_and_film_expected(film: str, ordered: tuple[str, str], expected: int) -> None:
    spec = _spec({PRIMER: film}, ("systems.cab.total",))
    planned, thick = planned_film(*_primer(spec)), expected_film(*_primer(spec))
    assert planned is not None
    assert thick is not None
    assert (str(planned.value), planned.given.origin) == ordered
    assert thick.to("um") == Fraction(expected)
    packs = quantities(spec.jobs["refit"], spec).layer_packs["cab", "primer"]
    assert ordered[1] in {entry.origin for entry in packs.inputs}


def _statement(film: str) -> MethodStatement:
    spec = _spec({PRIMER: film}, ("systems.cab.total",))
    return method_statement(spec.jobs["refit"], context(spec))


def _total(statement: MethodStatement, row: str) -> list[str]:
    """What the row of the coat table gives as minimum, nominal and maximum of all coats."""
    found = [cells for cells in statement.builds[0].coats.rows if cells[0] == row]
    return [cell.replace("\N{NO-BREAK SPACE}", " ") for cells in found for cell in cells[4:7]]


def test_page_prints_the_limits_of_the_product_as_if_the_layer_stated_them() -> None:
    stated, borrowed = _statement("{min: 40 um, nominal: 60 um, max: 80 um}"), _statement("{nominal: 60 um}")
    assert borrowed.builds[0].coats == stated.builds[0].coats
    assert borrowed.repair == stated.repair
    assert _total(borrowed, "total DFT") == ["95 µm (3.7 mil)", "130 µm (5.1 mil)", "180 µm (7.1 mil)"]


def test_section_draws_a_coat_of_which_only_the_product_says_how_thick() -> None:
    assert "80\N{NO-BREAK SPACE}µm" in _statement("{}").builds[0].section


def test_a_system_without_layers_has_no_sum() -> None:
    spec = _spec({})
    bare = spec.systems["cab"].model_copy(update={"layers": ()})
    assert film_sum(bare, spec, "max") is None


def _printed(changes: dict[str, str]) -> MethodStatement:
    spec = spec_of(good_with(changes))
    return method_statement(spec.jobs["refit"], context(spec))


def test_film_left_is_worked_out_and_printed_where_it_is_not_stated() -> None:
    changes = {
        "systems.cab.layers.primer.film": "{min: 50 um, nominal: 60 um, max: 80 um}",
        "systems.cab.layers.primer.sanding_removes": "10 um",
        "systems.cab.layers.clear.film": "{min: 2 mil, nominal: 2.2 mil, max: 2.7 mil}",
        "systems.cab.layers.clear.polishing_removes": "0.3 mil",
        "project.second_units": "{temperature: degF}",
    }
    printed = _printed(changes)
    steps = [
        step.text.replace("\N{NO-BREAK SPACE}", " ") for entry in printed.builds[0].between for step in entry.steps
    ]
    assert (
        "Sanding may remove at most 10 µm; at least 40 µm of this coat remains (calculated from its minimum)." in steps
    )
    assert (
        "Polishing may remove at most 0.3 mil; at least 1.70 mil of this coat remains (calculated from its minimum)."
        in steps
    )
    spec = spec_of(good_with(changes))
    left = nominal_in_the_end(spec.systems["cab"], spec)
    assert left is not None
    assert left.to("um") == 130 - 10 - 50 + (Fraction("2.2") - Fraction("0.3")) * Fraction("25.4")


def test_nominal_total_is_told_before_and_after_sanding() -> None:
    changes = {"systems.cab.layers.primer.sanding_removes": "12 um", "systems.cab.layers.primer.remaining_min": "25 um"}
    told = _printed(changes)
    assert _total(told, "total DFT") == ["95 µm (3.7 mil)", "130 µm (5.1 mil)", "180 µm (7.1 mil)"]
    assert _total(told, "total DFT after sanding") == ["–", "118 µm (4.6 mil)", "–"]
    assert not _total(_printed({}), "total DFT after sanding")


@pytest.mark.parametrize(
    ("changes", "said"),
    [
        ({"total": "{min: 60 um}"}, ""),
        ({"total": "{min: 60 um}", "sands": "12 um"}, "The minimum total DFT allows for what is sanded off."),
        (
            {"total": "{min: 60 um}", "sands": "12 um", "polishes": "5 um"},
            "The minimum total DFT allows for what sanding and polishing remove.",
        ),
        # the sum of the coats allows for nothing
        ({"total": "{min: 95 um}", "sands": "12 um"}, ""),
    ],
)
def test_a_minimum_total_below_the_sum_of_the_coats_says_what_it_allows_for(changes: dict[str, str], said: str) -> None:
    paths = {
        "total": "systems.cab.total",
        "sands": "systems.cab.layers.primer.sanding_removes",
        "polishes": "systems.cab.layers.clear.polishing_removes",
    }
    view = _printed({paths[key]: value for key, value in changes.items()})
    assert next(build.allows for build in view.builds if len(build.coats.rows) > 3) == said


def test_least_film_counts_what_remains_and_names_what_has_no_minimum() -> None:
    spec = spec_of(
        good_with(
            {"systems.cab.layers.primer.sanding_removes": "12 um", "systems.cab.layers.base.film": "{max: 30 um}"},
            ["products.base.film.min", "systems.cab.total"],
        )
    )
    system = spec.systems["cab"]
    held = least_film(system, system.layers, spec)
    assert held is not None
    assert (str(held.value), held.borrowed, held.lacking) == ("68 um", (), ("base",))
