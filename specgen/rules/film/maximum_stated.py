"""FLM002 A coat with a minimum DFT has a maximum

Checks
    Each coat with a nominal or minimum DFT, its own or that of its product, but with no maximum DFT, neither its own nor that of its product. Where each job with the system accepts the coat by ISO 19840, this is a note: the maximum is then three times the nominal DFT.
Why
    Without a maximum DFT, runs, trapped solvent and cracking from excessive thickness cannot be rejected.
Passes
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}
    without systems.cab.total

    Given a coat with no film limits at all

    Given second good
Fails
    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}    # at systems.cab.layers.primer.film.max
    without products.primer.film.max
    without systems.cab.total

    systems.cab.layers.primer.film: {}    # at systems.cab.layers.primer.film.max
    without products.primer.film.max
    without systems.cab.total

    systems.cab.layers.clear.film: {nominal: 50 um}    # at systems.cab.layers.clear.film.max
    without products.clear.film.max
    without systems.cab.total

    Given second good
    without products.mastic.film.max    # at systems.deck.layers.second.film.max

    systems.cab.layers.primer.film: {min: 40 um, nominal: 60 um}    # note at systems.cab.layers.primer.film.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.max
    without products.primer.film.max
    without systems.cab.total
    jobs.refit.substrate.material: steel_blasted
    jobs.refit.inspection.primer-film.criterion: {rule: ISO-19840, nominal: 60 um, low_readings: fewer-than}
To put right
    Take the maximum DFT from the data sheet of the product and write it beside the minimum.
"""

from specgen.facts.job.counting import most_of_nominal
from specgen.facts.job.film_read import criteria_on
from specgen.facts.layer.film import film_limit
from specgen.model.acceptance import AcceptanceRule
from specgen.rules.kit import (
    NOTE,
    WARNING,
    Layer,
    Problem,
    Problems,
    Quantity,
    Spec,
    System,
    cite,
    date,
    rule,
    show,
)


@rule(
    "FLM002",
    on=System,
    severity=WARNING,
    source=cite("ISO-19840", "acceptance criteria: every reading at or below the specified maximum"),
)
def maximum_stated(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        least, nominal, most = (film_limit(system, layer, spec, limit) for limit in ("min", "nominal", "max"))
        if (least is None and nominal is None) or most is not None:
            continue
        path, what = ("layers", layer.id, "film", "max"), f"the coat {layer.id} has no maximum DFT"
        tripled = _tripled(system, layer, spec)
        if tripled is not None:
            what = f"{what}; by ISO 19840 it is three times the nominal DFT, {show(tripled)}"
        yield Problem(path, what, severity=NOTE if tripled is not None else None)


def _tripled(system: System, layer: Layer, spec: Spec) -> Quantity | None:
    """The lowest maximum by ISO 19840, where each job with the system accepts the coat by it."""
    by_job = [
        [one.nominal for one in criteria if one.rule is AcceptanceRule.ISO_19840 and one.nominal is not None]
        for _, criteria in criteria_on(system, layer, spec)
    ]
    if not by_job or not all(by_job):
        return None
    return min(most_of_nominal(nominal) for nominals in by_job for nominal in nominals)
