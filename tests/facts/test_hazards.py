"""What follows from a product: its category, label, cautions, storage and carriage, and the air of a job."""

from __future__ import annotations

from datetime import date

import pytest

from specgen.checking import check
from specgen.facts.job.air import ProductAir, air_of_job, times_over_explosion, unmeasured_clearance
from specgen.facts.product.emissions import voc_of
from specgen.facts.product.hazards import DerivedHazards, derive, hazards_of
from specgen.model.spec import Spec
from specgen.standards.citations import Basis
from specgen.trade.hazard_class import Element
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.labelling import LabelElements
from specgen.trade.precautions import Precautions
from specgen.trade.working import Working
from tests.good_spec import DEMO_RANGE, good_with, spec_of

ON = date(2026, 5, 1)


def _spec(changes: dict[str, str]) -> Spec:
    return spec_of(good_with(changes))


def _derived(product: str, changes: dict[str, str]) -> DerivedHazards:
    spec = _spec(changes)
    return derive(spec.products[product], spec.project.jurisdictions, ON)


def _contents(burns: str, rest: str) -> str:
    return (
        f"[{{id: gas, name: propane, cas: 74-98-6, kind: propellant, mass_share: {burns}, density: 0.5 g/mL}}, "
        f"{{id: rest, name: water, flammable: no, kind: solvent, mass_share: {rest}, density: 1 g/mL}}]"
    )


def _codes(found: LabelElements | NotKnown) -> tuple[str, list[str], list[str]]:
    assert isinstance(found, LabelElements)
    return found.signal_word.code, [e.code for e in found.statements], [e.code for e in found.pictograms]


def test_a_can_that_becomes_extremely_flammable_moves_as_a_whole() -> None:
    plain = "{id: can, hazard_class: aerosols, category: 3}"
    changes = {
        "products.base.hazards.classification": f"[{plain}]",
        "products.base.composition": _contents("1 %", "99 %"),
    }
    mild = _derived("base", changes)
    assert isinstance(mild.aerosol, NotKnown)
    assert [(e.code, e.note) for e in mild.storage] == [("warmest", "maximum storage temperature: 50 °C")]
    assert _codes(mild.label) == ("Warning", ["H229"], [])
    assert mild.carriage is not None
    assert mild.carriage.code == "2.2"

    changes["products.base.composition"] = _contents("90 %", "10 %")
    severe = _derived("base", changes)
    assert isinstance(severe.aerosol, Classified)
    assert severe.aerosol.category == "1"
    assert _codes(severe.label) == ("Danger", ["H222", "H229"], ["GHS02"])
    assert [e.code for e in severe.storage] == ["warmest", "seveso_p3a_lower"]
    assert severe.carriage is not None
    assert severe.carriage.code == "2.1"
    assert isinstance(severe.precautions, Precautions)
    assert severe.precautions.required == ("P210", "P211", "P251", "P410+P412")
    assert {working.id for working in severe.workings()} >= {"base.aerosol.flammable", "base.aerosol.heat"}
    assert all(working.held_by_maker for working in severe.workings() if working.inputs)


def test_without_classes_nothing_is_made_up() -> None:
    found = _derived("base", {"products.base.hazards.classification": "[]"})
    assert isinstance(found.label, NotKnown)
    assert isinstance(found.precautions, NotKnown)
    assert {gap.what for gap in found.reasons()} == {"aerosol category", "label elements", "precautions"}
    assert (found.storage, found.carriage) == ((), None)


@pytest.mark.parametrize(
    ("stated", "wanted"),
    [
        ("{monomer_at_limit: yes}", "0.1 % or more of free monomeric diisocyanates"),
        ("{monomer: 0.1 %}", "0.1 % or more of free monomeric diisocyanates"),
        (
            "{contained: yes}",
            "the free monomer content is not stated and is taken as 0.1 % or more of free monomeric diisocyanates",
        ),
        ("{monomer: 0.09 %}", None),
        ("{monomer_at_limit: no}", None),
        ("{contained: no}", None),
    ],
)
def test_training(stated: str, wanted: str | None) -> None:
    found = _derived("clear", {"products.clear.hazards.isocyanates": stated}).training
    if wanted is None:
        assert found is None
        return
    assert isinstance(found, Element)
    assert found.reasons == (wanted,)
    assert found.note == "As from 24 August 2023 adequate training is required before industrial or professional use"
    assert found.source.basis is Basis.REGULATION


@pytest.mark.parametrize(("law", "codes"), [("[EU]", ["EUH204"]), ("[GB]", ["EUH204"]), ("[US]", [])])
def test_supplemental_statements_go_by_law(law: str, codes: list[str]) -> None:
    found = _derived("clear", {"project.jurisdictions": law}).supplemental
    assert [entry.code for entry in found if isinstance(entry, Element)] == codes


def test_a_binder_that_leaves_it_open_cannot_be_judged() -> None:
    found = _derived("base", {"products.base.binder": "surfacer_2k"})
    gaps = [entry.what for entry in found.supplemental if isinstance(entry, NotKnown)]
    assert gaps == ["EUH204", "EUH205"]
    assert isinstance(found.training, NotKnown)


def test_classes_of_the_composition_carry_their_working() -> None:
    classes = "[{id: skin, hazard_class: skin_sensitisation, category: 1}]"
    (found,) = _derived("primer", {"products.primer.composition.solids.classes": classes}).mixture
    assert isinstance(found, Classified)
    assert (found.hazard_class, found.category) == ("skin_sensitisation", "1")
    assert found.workings[0].printed() == "30.00\N{NO-BREAK SPACE}%"


def test_voc_counts_the_propellant() -> None:
    spec = _spec({"products.primer.voc.density": "0.883 g/mL"})
    voc = spec.products["primer"].voc
    assert voc is not None
    assert voc.density is not None
    assert voc_of(spec.products["primer"], voc.density).printed() == "618\N{NO-BREAK SPACE}g/L"


AIR = {
    "jobs.refit.items": "[{id: STEP, name: Step, count: 4, area: 0.12 m2, system: chassis}]",
    "jobs.refit.system": "chassis",
    "products.barrier.composition": "[{id: resin, name: resin, kind: solids, mass_share: 70 %, density: 1.4 g/mL}, "
    "{id: acetate, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 30 %, density: 0.88 g/mL}]",
    "jobs.refit.ventilation": "{room: 60 m3, changes: 20, spraying_rate: 1000 g/h, mixing: 3}",
}


def _air(changes: dict[str, str]) -> ProductAir:
    spec = _spec(AIR | changes)
    (found,) = air_of_job(spec.jobs["refit"], spec, ON)
    return found


def test_air_holds_both_dangers_and_the_way_back_in() -> None:
    found = _air({})
    assert isinstance(found.stated, Working)
    assert found.stated.printed() == "1200\N{NO-BREAK SPACE}m3/h".replace("m3", "m³")
    assert not isinstance(found.spraying, NotKnown)
    assert not isinstance(found.shipyard, NotKnown)
    quarter, tenth = found.spraying.explosion, found.shipyard.explosion
    assert isinstance(quarter, Working)
    assert isinstance(tenth, Working)
    # 300 g/h of 116.16 g/mol at 24.06 L/mol is 0.0621 m3/h; over 1.2 % it takes 5.18 m3/h, over a quarter of that 20.7.
    assert round(float(quarter.number), 1) == 20.7
    assert tenth.number / quarter.number == 25 / 10
    assert isinstance(found.spraying.needed, Working)
    assert found.spraying.needed.number > quarter.number
    assert not isinstance(found.re_entry, NotKnown)
    assert isinstance(found.re_entry.longest, Working)
    assert found.re_entry.longest.number > 0


def test_air_without_a_rate_cannot_be_judged() -> None:
    found = _air({"jobs.refit.ventilation": "{room: 60 m3, flow: 1200 m3/h}"})
    assert isinstance(found.spraying, NotKnown)
    assert isinstance(found.re_entry, NotKnown)
    assert found.spraying.missing == ("spraying rate",)


def test_isocyanate_is_never_cleared_by_the_figure() -> None:
    found = _air({"products.barrier.binder": "pu_2k_aliphatic"})
    assert isinstance(found.re_entry, NotKnown)
    assert "posted" in found.re_entry.why
    assert not isinstance(found.spraying, NotKnown)
    assert isinstance(found.spraying.needed, NotKnown)
    assert found.spraying.caution.startswith("Dilution ventilation is not a control for isocyanates")


def test_a_job_that_says_nothing_of_air_has_none() -> None:
    spec = _spec({})
    assert air_of_job(spec.jobs["refit"], spec, ON) == ()


def test_every_product_of_the_demo_is_derived_and_agrees() -> None:
    """Nothing is left unjudged, and what follows is what the product declares: word, statements, pictograms."""
    spec = check(DEMO_RANGE, date(2026, 11, 25)).loaded.spec
    assert spec is not None
    for product in spec.products.values():
        found, stated = hazards_of(spec, product.id, date(2026, 11, 25)), product.hazards
        assert found.reasons() == (), product.id
        assert stated is not None
        assert stated.signal_word is not None
        assert _codes(found.label) == (
            stated.signal_word.value,
            sorted(stated.statements),
            sorted(stated.pictograms),
        ), product.id
        supplemental = {entry.code for entry in found.supplemental if isinstance(entry, Element)}
        assert supplemental <= set(stated.supplemental), product.id


def test_all_vapours_together_take_longer_than_each() -> None:
    """The sum over the limits is what has to come down to 1; with one vapour it is the same as its own time."""
    one = _air({})
    assert isinstance(one.together, Working)
    assert not isinstance(one.re_entry, NotKnown)
    assert isinstance(one.re_entry.longest, Working)
    assert one.together.printed() == one.re_entry.longest.printed()
    two = _air(
        {
            "products.barrier.composition": "[{id: resin, name: resin, kind: solids, mass_share: 40 %, density: 1.4 g/mL}, "
            "{id: acetate, name: n-butyl acetate, cas: 123-86-4, kind: solvent, mass_share: 30 %, density: 0.88 g/mL}, "
            "{id: ester, name: ester, cas: 108-65-6, kind: solvent, mass_share: 30 %, density: 0.96 g/mL}]",
        }
    )
    assert isinstance(two.together, Working)
    # 300 g/h each at 1200 m3/h and a factor of 3: 750 mg/m3; 750/241 + 750/275 = 5.839, and 60*3*60/1200*ln(5.839) = 15.9 min
    assert two.together.printed() == "15.9\N{NO-BREAK SPACE}min"


def test_a_time_to_go_back_in_is_told_only_where_it_is_longer_than_usual() -> None:
    """A few minutes at 20 changes are below the 30 min of an open workshop; at 60 m3/h it takes hours; with isocyanate never."""
    assert unmeasured_clearance() == "30 min"
    assert _air({}).back_in is None
    slow = AIR["jobs.refit.ventilation"].replace("changes: 20", "flow: 60 m3/h")
    told = _air({"jobs.refit.ventilation": slow})
    assert told.back_in == told.together
    assert isinstance(told.back_in, Working)
    assert told.back_in.number > 30
    held = _air({"jobs.refit.ventilation": slow, "products.barrier.binder": "pu_2k_aliphatic"})
    assert (held.isocyanates, held.back_in) == (True, None)


def test_flows_stand_by_limit_and_name_no_solvent() -> None:
    flows = _air({"products.barrier.binder": "pu_2k_aliphatic"}).flows()
    assert [(flow.use, flow.solvent) for flow in flows] == [
        ("explosion", 0),
        ("solvent", 1),
        ("solvent", 1),
        ("vapours", 0),
        ("isocyanate", 0),
        ("isocyanate", 0),
        ("all", 0),
    ]
    shown = [flow.use for flow in flows if flow.shown_limit is not None]
    assert shown == ["isocyanate", "isocyanate"]
    assert _air({"jobs.refit.ventilation": "{room: 60 m3, flow: 2000 m3/h}"}).flows() == ()


def test_the_most_the_lungs_ask_for_is_told() -> None:
    one = _air({})
    times = times_over_explosion([one])
    assert times is not None
    product, most = times
    assert product == one.product
    assert round(float(most.number), 1) == 180.3
    assert times_over_explosion([]) is None
