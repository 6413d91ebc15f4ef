"""What holds of every mixture: more of a substance never takes a class away, and a ladder of limits goes one way."""

from __future__ import annotations

from datetime import date
from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from specgen.facts.product.harmonised import classes_of, limits_of
from specgen.standards.tables import table
from specgen.trade.hazard_class import Classification, severity_rank
from specgen.trade.judged import Classified
from specgen.trade.mixture import Ingredient, Limit, mixture_classes
from specgen.units.quantity import Quantity

ROWS = [row for row in table("harmonised_classes").rows if row["classes"] and row["cas"]]
SHARES = st.integers(1, 50_000).map(lambda ppm: Quantity.of("share", Fraction(ppm, 10_000), "%"))


@st.composite
def _substances(draw: st.DrawFn) -> Ingredient:
    row = draw(st.sampled_from(ROWS))
    factors = [Fraction(factor) for factor in row["m_factors"].split()] or [Fraction(1)]
    additive = draw(st.sampled_from([True, True, True, False]))
    return Ingredient(row["name"], draw(SHARES), classes_of(row), factors[0], factors[-1], limits_of(row), additive)


def _worst(mixture: list[Ingredient]) -> dict[tuple[str, str], int]:
    found = [entry for entry in mixture_classes("m", mixture, viscosity=Fraction(10)) if isinstance(entry, Classified)]
    return {(e.hazard_class, e.statement): severity_rank(Classification(e.hazard_class, e.category)) for e in found}


@settings(max_examples=150, deadline=None)
@given(st.lists(_substances(), min_size=1, max_size=4), st.integers(2, 40))
def test_more_of_a_substance_never_takes_a_class_away(mixture: list[Ingredient], tenths: int) -> None:
    first = mixture[0]
    share = first.share
    assert isinstance(share, Quantity)
    more = first._replace(share=Quantity.of("share", share.to("%") * (1 + Fraction(tenths, 10)), "%"))
    before, after = _worst(mixture), _worst([more, *mixture[1:]])
    for kind, rank in before.items():
        assert kind in after, kind
        assert after[kind] <= rank, kind


@settings(max_examples=100, deadline=None)
@given(st.lists(_substances(), min_size=1, max_size=3), _substances())
def test_another_substance_never_takes_a_class_away(mixture: list[Ingredient], other: Ingredient) -> None:
    before, after = _worst(mixture), _worst([*mixture, other])
    for kind, rank in before.items():
        assert after.get(kind, 99) <= rank, kind


@settings(max_examples=60, deadline=None)
@given(st.integers(1, 60), st.integers(0, 60), st.integers(1, 99))
def test_a_ladder_goes_one_way(low: int, between: int, share: int) -> None:
    """Below the lower step nothing, between the two the milder category, above the upper one the worse."""

    def percent(figure: int) -> Quantity:
        return Quantity.of("share", Fraction(figure), "%")

    steps = (Limit("stot_single", "1", percent(low + between)), Limit("stot_single", "2", percent(low)))
    one = Ingredient("it", percent(share), (Classification("stot_single", "1"),), limits=steps)
    reached = [entry.category for entry in mixture_classes("m", [one]) if isinstance(entry, Classified)]
    assert reached == (["1"] if share >= low + between else ["2"] if share >= low else [])


def test_every_ladder_of_the_law_falls_with_the_category() -> None:
    for row in ROWS:
        by_class: dict[tuple[str, str], list[Limit]] = {}
        for limit in limits_of(row):
            by_class.setdefault((limit.hazard_class, limit.statement * (limit.category == "3")), []).append(limit)
        for steps in by_class.values():
            ranked = sorted(steps, key=lambda s: severity_rank(Classification(s.hazard_class, s.category)))
            shares = [step.least for step in ranked]
            assert shares == sorted(shares, reverse=True), row["name"]
            assert len({share.to("%") for share in shares}) == len(shares), row["name"]


def test_days_of_the_entries_do_not_overlap() -> None:
    by_number: dict[str, list[tuple[date, date]]] = {}
    for row in ROWS:
        until = date.fromisoformat(row["until"]) if row["until"] else date.max
        by_number.setdefault(row["cas"], []).append((date.fromisoformat(row["from"]), until))
    for number, spans in by_number.items():
        spans.sort()
        assert all(first[1] <= then[0] for first, then in pairwise(spans)), number
