"""Acute toxicity estimates and the generic concentration limits of mixtures."""

from __future__ import annotations

from fractions import Fraction

import pytest

from specgen.standards.citations import Basis
from specgen.standards.tables import table
from specgen.trade.acute_toxicity import Route, Toxicant, acute_classes, acute_toxicity, mixture_estimate
from specgen.trade.hazard_class import Classification
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown
from specgen.trade.mixture import Ingredient, Limit, mixture_classes
from specgen.trade.working import WorkingError
from specgen.units.quantity import Quantity
from specgen.units.rounding import round_half_up

ROUTES: dict[str, Route] = {"oral": "oral", "dermal": "dermal", "inhaled mist": "mist", "inhaled vapour": "vapour"}


def percent(text: str) -> Quantity:
    return Quantity.of("share", Fraction(text), "%")


def ingredients(text: str) -> list[Ingredient]:
    found = []
    for number, part in enumerate(text.split(), start=1):
        amount, hazard_class, *m_factor = part.split(":")
        m = Fraction(m_factor[0]) if m_factor else Fraction(1)
        classes = (Classification(*hazard_class.split("/")),)
        found.append(Ingredient(f"part {number}", percent(amount), classes, m_acute=m, m_chronic=m))
    return found


@pytest.mark.cases("acute_toxicity")
def test_estimate_of_a_mixture(case: dict[str, str]) -> None:
    pairs = zip(case["shares"].split(), case["estimates"].split(), strict=True)
    parts = [Toxicant(f"part {amount}", percent(amount), Fraction(figure)) for amount, figure in pairs]
    if case["unknown"]:
        parts.append(Toxicant("unknown", percent(case["unknown"])))
    parts.append(Toxicant("water", percent("5"), harmless=True))
    route = ROUTES[case["route"]]
    found = mixture_estimate("m", route, parts)
    assert round_half_up(found.number, int(case["places"])) == round_half_up(
        Fraction(case["estimate"]), int(case["places"])
    )
    assert found.source.clause in {"3.1.3", "Annex I, 3.1.3", case["document"].removeprefix("CLP ")}
    judged = acute_toxicity("m", route, parts)
    if case["category"]:
        assert isinstance(judged, Classified)
        assert judged.category == case["category"]
        assert judged.hazard_class == f"acute_{case['route'].split()[0].replace('inhaled', 'inhalation')}"
        assert judged.source.basis is Basis.REGULATION
    else:
        assert judged is None


def test_unknown_below_one_percent_does_not_count() -> None:
    many = [Toxicant(f"trace {n}", percent("0.9")) for n in range(12)]
    found = mixture_estimate("m", "oral", [Toxicant("known", percent("50"), Fraction(500)), *many])
    assert found.number == 1000


def test_nothing_known_cannot_be_judged_and_nothing_toxic_is_no_class() -> None:
    unknown = [Toxicant("additive", percent("20"))]
    assert acute_toxicity("m", "oral", unknown) == NotKnown(
        "acute toxicity, oral", "no ingredient has an acute toxicity estimate", ("estimate of additive",)
    )
    with pytest.raises(WorkingError) as refused:
        mixture_estimate("m", "oral", unknown)
    assert refused.value.what == "no ingredient has an acute toxicity estimate"
    assert acute_toxicity("m", "oral", [Toxicant("water", percent("100"), harmless=True)]) is None


def test_points_stand_within_their_category() -> None:
    for row in table("acute_toxicity").rows:
        assert Fraction(row["point"]) <= Fraction(row["up_to"]), row["id"]


# CLP Annex I, Tables 3.1.1 and 3.1.2: gases go up to 100, 500, 2500 and 20000 ppm by volume.
@pytest.mark.parametrize(
    ("share", "estimate", "category"),
    [("10", "10", "1"), ("20", "100", "2"), ("28", "700", "3"), ("100", "2501", "4"), ("3", "700", None)],
)
def test_gases_have_cut_offs_by_volume(share: str, estimate: str, category: str | None) -> None:
    found = acute_toxicity("m", "gas", [Toxicant("a gas", percent(share), Fraction(estimate))])
    assert (found.category if isinstance(found, Classified) else found) == category


def test_estimates_of_two_forms_do_not_add_up() -> None:
    breathed = (Classification("acute_inhalation", "4"),)
    vapour = Ingredient("solvent", percent("54"), breathed, form="vapour")
    mist = Ingredient("resin", percent("29"), breathed, form="mist")
    assert list(acute_classes("m", [vapour, mist])) == []
    (found,) = acute_classes("m", [vapour._replace(share=percent("55")), mist])
    assert (found.hazard_class, found.category) == ("acute_inhalation", "4")
    assert found.workings[0].printed() == "20.00\N{NO-BREAK SPACE}mg/L"


def test_less_than_counts_is_left_out_of_the_estimate() -> None:
    """Category 4 counts from 1 %, categories 1 to 3 from 0.1 % (CLP Annex I, Table 1.1)."""
    trace = Ingredient("trace", percent("0.09"), (Classification("acute_oral", "1"),))
    assert list(acute_classes("m", [trace])) == []
    (found,) = acute_classes("m", [trace._replace(share=percent("0.1"))])
    # 0.5 mg/kg stands for category 1: 100 / (0.1 / 0.5) = 500
    assert (found.category, found.workings[0].number) == ("4", 500)


@pytest.mark.cases("mixture_classes")
def test_generic_limits(case: dict[str, str]) -> None:
    found = mixture_classes("m", ingredients(case["ingredients"]))
    named = []
    for entry in found:
        assert isinstance(entry, Classified)
        named.append("/".join(part for part in (entry.hazard_class, entry.category, entry.statement) if part))
        assert entry.workings[0].number == Fraction(case["figures"])
        assert entry.source.basis is Basis.REGULATION
    assert named == case["classes"].split()


def test_specific_limit_goes_before_the_generic_one() -> None:
    classes = (Classification("respiratory_sensitisation", "1"),)
    strict = Ingredient(
        "MDI", percent("0.1"), classes, limits=(Limit("respiratory_sensitisation", "1", percent("0.1")),)
    )
    loose = Ingredient(
        "HDI", percent("0.4"), classes, limits=(Limit("respiratory_sensitisation", "1", percent("0.5")),)
    )
    (found,) = mixture_classes("m", [strict])
    assert isinstance(found, Classified)
    assert found.why == "MDI is at or above its specific concentration limit of 0.1 %"
    assert mixture_classes("m", [loose]) == ()
    assert mixture_classes("m", [Ingredient("it", percent("0.4"), classes)]) == ()


def test_gas_has_a_limit_of_its_own() -> None:
    gas = [Ingredient("it", percent("0.2"), (Classification("respiratory_sensitisation", "1"),))]
    assert mixture_classes("m", gas) == ()
    (found,) = mixture_classes("m", gas, gas=True)
    assert isinstance(found, Classified)
    assert found.hazard_class == "respiratory_sensitisation"


def test_aspiration_needs_the_viscosity() -> None:
    solvent = [Ingredient("white spirit", percent("10"), (Classification("aspiration", "1"),))]
    (unknown,) = mixture_classes("m", solvent)
    assert isinstance(unknown, NotKnown)
    assert (unknown.what, unknown.missing) == ("aspiration", ("viscosity",))
    (thin,) = mixture_classes("m", solvent, viscosity=Fraction("20.5"))
    assert isinstance(thin, Classified)
    assert thin.source.basis is Basis.REGULATION
    assert mixture_classes("m", solvent, viscosity=Fraction("20.6")) == ()


def test_working_of_a_weighted_sum_is_written_out() -> None:
    (found,) = mixture_classes("m", ingredients("6:aquatic_chronic/1:10"))
    assert isinstance(found, Classified)
    assert (found.hazard_class, found.category) == ("aquatic_chronic", "1")
    assert found.workings[0].substituted() == "10 × 6"
    assert found.workings[0].printed() == "60.00\N{NO-BREAK SPACE}%"
