"""Making a damaged place good: the strictest of what is stated, the cleanest grade, the paper of the metal."""

from __future__ import annotations

import pytest

from specgen.documents.method_statement.view import MethodStatement
from specgen.facts.job.exposure import severe_service
from specgen.facts.job.repair import harmful_dust, strip_limit, widest
from specgen.facts.pairs.floor import best_step, small_spots
from specgen.facts.pairs.papers import papers_around_repair, papers_on_material
from specgen.model.product import Role
from specgen.model.spec import Spec
from tests.documents.conftest import views_of
from tests.good_spec import good_with, spec_of


def _spec(changes: dict[str, str]) -> Spec:
    return spec_of(good_with(changes))


def _said(changes: dict[str, str]) -> str:
    """Everything the method statement says of repairs."""
    view = views_of(_spec(changes))["method_statement_refit"]
    assert isinstance(view, MethodStatement)
    return repr(view.repair)


def test_dust_harms_where_isocyanate_or_epoxy_is_or_may_be_in_it() -> None:
    spec = _spec({})
    assert [product.id for product in harmful_dust(spec.systems["cab"], spec)] == ["primer", "clear"]
    unknown = _spec({"products.base.binder": "surfacer_2k"})
    assert [product.id for product in harmful_dust(unknown.systems["cab"], unknown)] == ["primer", "base", "clear"]


def test_the_strictest_of_several_items_holds() -> None:
    spec = _spec(
        {
            "jobs.refit.items.DOOR.repair": "{lap: 20 mm, feather: 1 in}",
            "jobs.refit.items.DOOR.strip_limit": "400 um",
            "jobs.refit.items.STEP.repair": "{lap: 1 in}",
            "jobs.refit.items.STEP.strip_limit": "12 mil",
        }
    )
    items = spec.jobs["refit"].items
    assert (str(widest("lap", items)), str(widest("feather", items)), widest("sanded", items)) == ("1 in", "1 in", None)
    assert str(strip_limit(items)) == "12 mil"
    assert strip_limit([]) is None


STEPS = "[{id: blast, do: blast, text: Blast., grade: SP 10}, {id: rest, do: hand-tool, text: Scrape the edges., grade: SP 2}]"


def test_a_repair_is_prepared_to_the_grade_the_primer_stands_on() -> None:
    """The cleanest grade is the one the rules judge, not the one of the last step."""
    changes = {"preparations.sand-steel.steps": STEPS}
    step = best_step(_spec(changes).preparations["sand-steel"])
    assert step is not None
    assert step.grade == "SP 10"
    assert "prepare it to SP 10 as in its surface preparation" in _said(changes)


def test_severe_service_lets_no_spot_off() -> None:
    calm, severe = _spec({}), _spec({"systems.cab.category": "{corrosivity: C5, durability: high}"})
    asked = [
        severe_service(spec.jobs["refit"], spec.jobs["refit"].items[0], spec.systems["cab"]) for spec in (calm, severe)
    ]
    assert asked == [False, True]
    assert [row["grades"] for row in small_spots("epoxy_latent", severe=False)] == ["SP 11 or P Ma"]
    assert small_spots("epoxy_latent", severe=True) == ()
    assert small_spots("epoxy_2k", severe=False) == ()
    blasted = {"preparations.sand-steel.steps": STEPS, "products.primer.binder": "epoxy_latent"}
    assert "Small areas that cannot be blast-cleaned" in _said(blasted)
    worst = blasted | {"systems.cab.category": "{corrosivity: C5, durability: high}"}
    assert "Small areas that cannot be blast-cleaned" not in _said(worst)


@pytest.mark.parametrize(
    ("material", "first", "papers"),
    [
        ("steel_cold_rolled", Role.PRIMER, "bare_metal_key_for_primer"),
        ("steel_blasted", Role.PRIMER, "bare_metal_key_for_primer"),
        ("steel_cold_rolled", Role.BODY_FILLER, "metal_under_filler"),
        ("grp", Role.PRIMER, "grp_gelcoat"),
        ("plastic", Role.PRIMER, "plastic_scuff"),
        # a paper for steel takes the zinc off
        ("galvanized_hot_dip", Role.PRIMER, ""),
    ],
)
def test_the_paper_that_keys_a_material(material: str, first: Role, papers: str) -> None:
    assert papers_on_material(material, first) == papers


def test_no_paper_for_steel_is_printed_for_zinc() -> None:
    steps = "[{id: degrease, do: degrease, text: Wipe.}, {id: sand, do: sand, text: Scuff.}]"
    steel = {"preparations.sand-steel.steps": steps}
    zinc = steel | {
        "jobs.refit.substrate": "{material: galvanized_hot_dip}",
        "jobs.refit.items.DOOR.substrate": "{material: galvanized_hot_dip}",
    }
    window = "'the substrate', 'P80 to P180'"
    assert window in _said(steel)
    assert window not in _said(zinc)


def test_the_coat_around_a_repair_by_the_last_coat() -> None:
    assert papers_around_repair(Role.CLEARCOAT) == "blend_area_clear"
    assert papers_around_repair(Role.TOPCOAT) == "old_finish_before_colour"
