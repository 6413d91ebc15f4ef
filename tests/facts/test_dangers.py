"""What of a product can hurt: by its statements, by its binder and curing, and where nothing tells."""

from __future__ import annotations

import pytest

from specgen.facts.product.dangers import dangers_of, traits_of
from specgen.model.product import Product
from tests.good_spec import good_with, spec_of


def _product(id: str, changes: dict[str, str], without: tuple[str, ...] = ()) -> Product:
    return spec_of(good_with(changes, without)).products[id]


def _hazards(id: str, statements: str, supplemental: str = "[]") -> dict[str, str]:
    return {
        f"products.{id}.hazards.statements": statements,
        f"products.{id}.hazards.supplemental": supplemental,
    }


@pytest.mark.parametrize(
    ("statements", "supplemental", "burns"),
    [
        ("[H222, H229]", "[]", True),
        ("[H229]", "[]", False),
        # as sold it does not burn, in use it does
        ("[H229]", "[EUH018]", True),
        ("[H229]", "[EUH209]", True),
        ("[]", "[]", False),
    ],
)
def test_what_burns_says_so_in_its_statements(statements: str, supplemental: str, burns: bool) -> None:
    product = _product("base", _hazards("base", statements, supplemental))
    assert ("burns" in traits_of(product)) is burns
    assert ("burns" in dangers_of([product])) is burns


def test_what_is_not_known_counts_as_held() -> None:
    silent = _product("base", {"products.base.binder": "surfacer_2k"}, ("products.base.hazards",))
    assert traits_of(silent) == {"aerosol", "burns", "isocyanate", "epoxy"}


def test_traits_of_the_good_products() -> None:
    products = spec_of(good_with()).products
    assert traits_of(products["primer"]) == {"aerosol", "burns", "epoxy", "single-use-filter"}
    assert traits_of(products["barrier"]) == {"burns", "epoxy", "two-pack", "single-use-filter"}
    # the European list notes diisocyanates for the skin
    assert traits_of(products["clear"]) == {"absorbed", "aerosol", "burns", "isocyanate"}


def test_dangers_stand_the_gravest_first_with_what_is_declared() -> None:
    changes = _hazards("base", "[H412, H319, H229, H222]") | {"products.base.curing": "oxidative"}
    found = dangers_of([_product("base", changes)])
    assert list(found.items()) == [
        ("burns", ("H222",)),
        ("bursts", ("H229",)),
        ("eyes", ("H319",)),
        ("self-heating", ()),
        ("water", ("H412",)),
    ]


def test_isocyanate_is_a_danger_where_the_law_knows_no_statement_of_it() -> None:
    """EUH204 is of the EU and Great Britain; in the United States the clear may bring asthma all the same."""
    found = dangers_of([_product("clear", _hazards("clear", "[H222, H229, H317]"))])
    assert next(iter(found)) == "isocyanate"
    assert found["isocyanate"] == ()
