"""Numbers of coats and targets that are stated as a range, in the coat table, and what the rules say of their ends."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from specgen.documents.method_statement.view import method_statement
from specgen.documents.parts.coats import coats
from specgen.facts.job.quantities import quantities
from tests.documents.conftest import context
from tests.good_spec import checked, good, put, spec_of

NB = "\N{NO-BREAK SPACE}"
PRIMER = "systems.cab.layers.primer."


def _coat(changes: Mapping[str, str]) -> tuple[str, str]:
    spec = good()
    for path, value in changes.items():
        put(spec, path, value)
    whole = spec_of(spec)
    assert method_statement(whole.jobs["refit"], context(whole)).builds
    found = quantities(whole.jobs["refit"], whole)
    first = coats([(whole.systems["cab"], ())], whole, found, context(whole).words)[0]
    return first.passes.partition(",")[0], first.wet


def _found(changes: Mapping[str, str]) -> list[str]:
    spec = good()
    for path, value in changes.items():
        put(spec, path, value)
    return [f"{one.severity} {one.id}" for one in checked(spec).report if PRIMER.rstrip(".") in one.path]


def test_the_wet_film_of_a_range_of_cross_coats_runs_from_the_most_to_the_fewest() -> None:
    _, of_four = _coat({PRIMER + "passes": "4"})
    _, of_five = _coat({PRIMER + "passes": "5"})
    passes, wet = _coat({PRIMER + "passes": "4..5"})
    assert passes == "4 to 5 cross coats"
    assert (of_five, of_four) == (f"40{NB}µm (1.6{NB}mil)", f"50{NB}µm (2.0{NB}mil)")
    assert wet == f"40 to 50{NB}µm (1.6 to 2.0{NB}mil)"
    assert _coat({PRIMER + "passes": "min 4"}) == ("at least 4 cross coats", f"at most {of_four}")


def test_a_target_stated_as_a_range_is_printed_as_one() -> None:
    assert _coat({PRIMER + "wet_target": "40..50 um"})[1] == f"40 to 50{NB}µm (1.6 to 2.0{NB}mil)"


@pytest.mark.parametrize(
    ("passes", "found"),
    [
        ("3..4", []),  # of 15 um each: 60 um is within 40 to 80 um
        ("2..3", []),  # two give too little, three do not
        ("1..2", ["warning FLM007"]),
        ("6..7", ["warning FLM007"]),
        ("5..7", []),
        ("min 2", []),
        ("min 6", ["warning FLM007"]),
    ],
)
def test_of_a_range_of_cross_coats_one_that_meets_the_limits_is_enough(passes: str, found: list[str]) -> None:
    assert _found({PRIMER + "passes": passes}) == found


@pytest.mark.parametrize(
    ("coats_", "found"),
    [("1", ["error FLM008"]), ("1..2", ["error FLM008"]), ("1..3", []), ("min 1", []), ("0..3", ["error FLM008"])],
)
def test_film_in_one_coat_goes_by_the_most_coats(coats_: str, found: list[str]) -> None:
    assert _found({PRIMER + "coats": coats_, "products.primer.film.max_single_coat": "30 um"}) == found
