"""One unit in one sentence, the author's; what was written otherwise stands in brackets behind it."""

from __future__ import annotations

from typing import Any

import pytest

from specgen.model.node import Node
from specgen.rules.one_unit import in_authors_unit
from tests.good_spec import checked, good, put, second_good


def _record(spec: dict[str, Any], kind: str, key: str) -> Node:
    read = checked(spec).loaded.spec
    assert read is not None
    found = getattr(read, kind)[key]
    assert isinstance(found, Node)
    return found


@pytest.mark.parametrize(
    ("said", "told"),
    [
        ("90 um is above 3.5 mil", "90 um is above 88.9 um (3.5 mil)"),
        ("3.5 mil is below 90 µm", "88.9 µm (3.5 mil) is below 90 µm"),
        ("90 um is outside 2..3.5 mil", "90 um is outside 50.8..88.9 um (2..3.5 mil)"),
        ("90 um is outside 2 to 3.5 mil", "90 um is outside 50.8 to 88.9 um (2 to 3.5 mil)"),
        ("25.4 um is above 1 mil", "25.4 um is above 25.4 um (1 mil)"),
        ("5 m2 of the 1,000 ft2", "5 m2 of the 92.9 m2 (1,000 ft2)"),
        # one system only, or no second figure of the kind
        ("90 um is above 0.08 mm", "90 um is above 0.08 mm"),
        ("3.5 mil is thin", "3.5 mil is thin"),
        ("3 mil dry in 4 h and takes 5 L", "3 mil dry in 4 h and takes 5 L"),
        # `in` is a word, ids and addresses are no figures, and what stands in brackets already is left
        ("2 in 3 of the lids are 30 mm wide", "2 in 3 of the lids are 30 mm wide"),
        ("2 in and 30 mm", "2 in and 1.18 in (30 mm)"),
        ("90 um (3.54 mil)", "90 um (3.54 mil)"),
        ("90 um of coat-3 mil", "90 um of coat-3 mil"),
    ],
)
def test_the_unit_of_a_metric_record(said: str, told: str) -> None:
    record = _record(good(), "systems", "cab")
    assert in_authors_unit(said, record, ("layers", "primer", "film", "max")) == told


def test_figures_that_would_read_alike_are_told_finer() -> None:
    record = _record(good(), "systems", "cab")
    assert in_authors_unit("88.9 um is above 3.5001 mil", record, ()) == "88.9 um is above 88.903 um (3.5001 mil)"


def test_a_difference_of_temperatures_is_no_temperature() -> None:
    product = _record(second_good(), "products", "mastic")
    said = "5 degF over the dew point, the limit is 3 K"
    assert in_authors_unit(said, product, ()) == "5 degF over the dew point, the limit is 5.4 degF (3 K)"
    margin, air = ("climate", "dew_point_margin"), ("climate", "air")
    assert in_authors_unit("5 degF, not 3 degC", product, margin) == "5 degF, not 5.4 degF (3 degC)"
    assert in_authors_unit("50 degF, not 3 degC", product, air) == "50 degF, not 37.4 degF (3 degC)"
    # where nothing tells which of the two is meant, nothing is turned
    assert in_authors_unit("50 degF, not 3 degC", product, ("name",)) == "50 degF, not 3 degC"


def test_where_the_record_states_none_the_first_figure_is_the_authors() -> None:
    preparation = _record(good(), "preparations", "sand-steel")
    said = in_authors_unit("5 degF over the dew point, the limit is 3 K", preparation, ())
    assert said == "5 degF over the dew point, the limit is 5.4 degF (3 K)"
    assert in_authors_unit("90 um against 3.5 mil", None, ()) == "90 um against 3.5 mil"


def test_a_rule_speaks_in_the_unit_of_the_record_it_stands_in() -> None:
    spec = second_good()
    put(spec, "systems.deck.layers.first.film.max", "250 um")
    (found,) = (f for f in checked(spec).report if f.id == "FLM003")
    assert found.what == "maximum DFT 250 um is above the maximum of the product mastic, 203 um (8 mil)"
