"""Whether a value that is claimed or asked, or one that was measured, is unusual for its method and generic type. Called by `evidence`
and by the rule that tells the author.

A doubt keeps a claim from being printed until a person has confirmed the value against the report; what an instrument cannot show
nobody can confirm.
"""

from __future__ import annotations

from collections.abc import Sequence

from specgen.facts.tests.fit import Tested
from specgen.facts.tests.outcome import limit_of, results_of
from specgen.facts.tests.plausible import Doubt, plausible
from specgen.model.product import Claim, Product
from specgen.model.test_required import AskedTest, Detail
from specgen.model.test_value import Measured
from specgen.standards.tables import table

_METAL = "metal"


def doubt_of(asked: AskedTest, family: str) -> Doubt | None:
    """Why a limit that is asked or claimed is unusual; None where it is usual, in words, or a rating."""
    limit = limit_of(asked)
    values = [value for value in limit.stated if isinstance(value, Measured)] if limit is not None else []
    if not values or asked.method is None:
        return None
    substrate = asked.condition.substrate if asked.condition is not None else None
    return plausible(asked.method, values, family, _where(substrate, asked.details))


def doubt_of_claim(claim: Claim, product: Product) -> Doubt | None:
    """Why the value claimed is unusual for the product, and nobody has confirmed it."""
    return _unconfirmed(doubt_of(claim.test, product.binder) if claim.test is not None else None, claim)


def doubt_of_results(claim: Claim, product: Product, tested: Tested) -> Doubt | None:
    """Why the results behind a claim are unusual for the product, and nobody has confirmed them."""
    results = results_of(tested.done)
    if results.mean is None:
        return None
    where = _where(tested.series.substrate, tested.done.details)
    return _unconfirmed(plausible(tested.done.method, [results.mean], product.binder, where), claim)


def _unconfirmed(doubt: Doubt | None, claim: Claim) -> Doubt | None:
    if doubt is not None and (doubt.ceiling or claim.confirmed_by is None):
        return doubt
    return None


def _where(substrate: str | None, details: Sequence[Detail]) -> dict[str, str]:
    """What the rows of usual values ask for: metal or not, and the angle of a gloss meter."""
    stated = {detail.id: detail.value.split()[0] for detail in details}
    if substrate is not None:
        stated["substrate"] = _METAL if table("materials").row("id", substrate)["kind"] == _METAL else substrate
    return stated
