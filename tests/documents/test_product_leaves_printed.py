"""Every customer leaf of a product is printed in the documents named for it, or has the reason why none prints it.

A product that states every leaf stands in for one of the good specification; a leaf is printed where another value of it changes what
the document says.
"""

from __future__ import annotations

import copy
import dataclasses
from functools import cache
from pathlib import Path
from typing import Any

import pytest
import yaml

from specgen.documents.registry import KINDS
from specgen.model.declaring import Audience
from specgen.model.outline import value_type
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.walk import declaration
from tests.comparison.full_spec import Leaf, at, every_leaf, samples, tree
from tests.documents.conftest import context
from tests.good_spec import good, spec_of

CASES: dict[str, Any] = yaml.load(
    (Path(__file__).parent / "product_leaves_printed.yaml").read_text("utf-8"), Loader=yaml.CSafeLoader
)
LEAVES: dict[str, Leaf] = {
    ".".join(step for step in leaf.steps if step != "first"): leaf
    for leaf in every_leaf()
    if leaf.root == "products"
    and (said := declaration(leaf.model, leaf.name)) is not None
    and said.audience is Audience.CUSTOMER
}
_STANDS_IN_FOR = "primer"


def test_every_leaf_of_a_product_is_printed_or_has_a_reason() -> None:
    told = [
        f"{leaf}: say in product_leaves_printed.yaml what prints it, or why nothing does"
        for leaf in set(LEAVES) - set(CASES)
    ]
    told += [f"{leaf} is no leaf of a product" for leaf in set(CASES) - set(LEAVES)]
    assert not told, "\n".join(sorted(told))


@pytest.mark.parametrize("name", [name for name in CASES if name in LEAVES])
def test_leaf_is_printed_where_it_is_said_to_be(name: str) -> None:
    before, after = _documents(), _printed(_changed(LEAVES[name]))
    changed = {kind for kind in before if before[kind] != after[kind]}
    if isinstance(CASES[name], dict):
        assert CASES[name]["reason"]
        assert changed == set()
    else:
        assert set(CASES[name].split(", ")) <= changed


def _changed(leaf: Leaf) -> dict[str, Any]:
    whole = copy.deepcopy(_whole())
    kind = value_type(leaf.model.model_fields[leaf.name])
    assert kind is not None
    held, name = at(whole, leaf.steps), leaf.steps[-1]
    values = [(text,) if leaf.many else text for text in samples(kind)]
    held[name] = next((value for value in reversed(values) if value != held[name]), values[-1])
    return whole


@cache
def _whole() -> dict[str, Any]:
    whole = tree(Product, "first") | {"id": _STANDS_IN_FOR}
    whole["voc"]["categories"][0]["jurisdiction"] = "US"
    whole["hazards"]["supplemental"] = ("EUH208",)
    whole["direct_to_metal"] = "yes"
    return whole


@cache
def _documents() -> dict[str, Any]:
    return _printed(_whole())


@cache
def _good() -> Spec:
    return spec_of(good())


def _printed(whole: dict[str, Any]) -> dict[str, Any]:
    """What every kind of document says, by the name of the kind."""
    product, rest = Product.model_validate(whole), _good()
    spec = Spec(
        rest.project,
        products={**rest.products, _STANDS_IN_FOR: product},
        preparations=rest.preparations,
        systems=rest.systems,
        jobs=rest.jobs,
    )
    given, job, found = context(spec), spec.jobs["refit"], {}
    subjects = {"product": product, "job": job, "jobs": spec, "folder": spec}
    for kind in KINDS.values():
        if kind.about in subjects:
            subject = subjects[kind.about]
            found[kind.name] = _texts(kind.view(subject, given))
    return found


def _texts(value: Any) -> Any:
    if dataclasses.is_dataclass(value):
        return tuple(_texts(getattr(value, field.name)) for field in dataclasses.fields(value))
    return tuple(map(_texts, value)) if isinstance(value, tuple) else str(value)
