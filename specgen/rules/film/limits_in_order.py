"""FLM001 DFT limits are in ascending order

Checks
    Minimum, nominal and maximum dry film thickness (DFT) of every product, coat, total and acceptance criterion: min <= nominal <= max, none of them zero. A limit that a coat does not state is that of its product. The limits of spots and areas of a criterion: spot_min <= area_min <= area_max <= spot_max.
Why
    No film can meet limits that are out of order: every panel would fail, or every reading would be accepted.
Passes
    systems.cab.layers.primer.film: {min: 60 um, nominal: 60 um, max: 60 um}
    systems.cab.total: {min: 115 um, nominal: 130 um, max: 160 um}
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 60 um, max: 60 um, text: no reading outside the limits}

    systems.cab.layers.base.film: {min: 30 um}
    systems.cab.layers.base.passes: 3
    without systems.cab.total

    Given a coat with no film limits at all
Fails
    products.barrier.film.nominal: 50 um    # at products.barrier.film.min

    systems.cab.layers.primer.film: {min: 90 um}    # at systems.cab.layers.primer.film.min    # also FLM007 at systems.cab.layers.primer.passes
    without systems.cab.total    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    systems.cab.layers.primer.film: {max: 30 um}    # at systems.cab.layers.primer.film.max    # also FLM007 at systems.cab.layers.primer.passes
    without systems.cab.total    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    systems.cab.layers.primer.film: {nominal: 81 um}    # at systems.cab.layers.primer.film.nominal
    without systems.cab.total

    jobs.refit.inspection.primer-film.criterion.min: 90 um    # at jobs.refit.inspection.primer-film.criterion.min    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    jobs.refit.inspection.primer-film.criterion.max: 0 um    # at jobs.refit.inspection.primer-film.criterion.max    # at jobs.refit.inspection.primer-film.criterion.min    # also INS013 at jobs.refit.inspection.primer-film.criterion.max

    products.base.film: {min: 31 um, nominal: 30 um, max: 29 um, per_pass: 10 um}    # at products.base.film.min    # at products.base.film.nominal    # also FLM003 at systems.cab.layers.base.film.max    # also FLM003 at systems.cab.layers.base.film.min    # also USU006 at products.base.application.cross_coats

    systems.cab.layers.clear.film: {min: 41 um, nominal: 40 um, max: 70 um}    # at systems.cab.layers.clear.film.min
    without systems.cab.total

    systems.cab.total: {min: 171 um, max: 170 um}    # at systems.cab.total.min

    jobs.refit.inspection.primer-film.criterion: {rule: SSPC-PA-2, edition: "2012", level: 3, min: 40 um, max: 80 um, spot_min: 41 um, area_min: 40 um, area_max: 80 um, spot_max: 79 um, text: by the rule}    # at jobs.refit.inspection.primer-film.criterion.spot_min    # at jobs.refit.inspection.primer-film.criterion.area_max

    Given second good
    jobs.lids.inspection.ground.criterion: {rule: own, min: 2 mil, max: 1.9 mil, text: every reading}    # at jobs.lids.inspection.ground.criterion.min    # also INS013 at jobs.lids.inspection.ground.criterion.max    # also INS013 at jobs.lids.inspection.ground.criterion.min

    Given second good
    systems.deck.layers.gloss.film: {nominal: 3.01 mil}    # at systems.deck.layers.gloss.film.nominal    # also FLM008 at systems.deck.layers.gloss.coats
To put right
    Put minimum, nominal and maximum in ascending order; leave out what is not known instead of repeating a figure.
"""

from collections.abc import Iterator
from itertools import pairwise

from specgen.facts.layer.film import film_limit
from specgen.model.acceptance import Criterion
from specgen.model.film import FilmLimits
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    Job,
    Layer,
    Node,
    Path,
    Problem,
    Problems,
    Product,
    Spec,
    System,
    date,
    rule,
    unless_rounded,
)

_RISING = (("min", "nominal", "max"), ("spot_min", "area_min", "area_max", "spot_max"))


@rule("FLM001", on=Node, severity=ERROR, source=LOGIC)
def limits_in_order(subject: Node, spec: Spec, on: date) -> Problems:
    for path, film in _films(subject):
        for names in _RISING:
            stated = [(name, value) for name in names if (value := getattr(film, name, None)) is not None]
            # The lower of two limits is named, for inspectors read it first.
            for (low_name, low), (high_name, high) in pairwise(stated):
                if low > high:
                    problem = Problem((*path, low_name), f"{low_name} {low} is above {high_name} {high}")
                    yield unless_rounded(problem, low, high)
            for name, value in stated:
                if value.base == 0:
                    yield Problem((*path, name), f"{name} is zero; a DFT must be above zero")
    if isinstance(subject, System):
        for layer in subject.layers:
            yield from _against_product(subject, layer, spec)


def _against_product(system: System, layer: Layer, spec: Spec) -> Problems:
    """A limit the layer states against one it takes from its product; two limits of one record are assessed at that record."""
    films = [film_limit(system, layer, spec, limit) for limit in ("min", "nominal", "max")]
    for low, high in pairwise(film for film in films if film is not None):
        if low.borrowed != high.borrowed and low.value > high.value:
            own, what = (high, "below the minimum") if low.borrowed else (low, "above the maximum")
            lent = low if low.borrowed else high
            problem = Problem(own.path[2:], f"{own.path[-1]} {own.value} is {what} DFT{lent.lender}, {lent.value}")
            yield unless_rounded(problem, own.value, lent.value)


def _films(subject: Node) -> Iterator[tuple[Path, FilmLimits | Criterion]]:
    match subject:
        case Product():
            yield ("film",), subject.film
        case System():
            yield from ((("layers", layer.id, "film"), layer.film) for layer in subject.layers)
            if subject.total is not None:
                yield ("total",), subject.total
        case Job():
            yield from ((("inspection", p.id, "criterion"), p.criterion) for p in subject.inspection)
        case _:
            return
