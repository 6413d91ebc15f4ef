"""AIR005 A product is sprayed only where it may be

Checks
    Each job, for every product that may be sprayed on it: the place of work is one of the places its product states. Where the job states no place, or where the ventilation sentence of a product that lists no places keeps it to a booth and the job is elsewhere, this is a warning. A place that is only described in the scope as outdoors counts as such.
Why
    Mist that is meant for the extraction of a booth reaches everybody near the part when it is sprayed anywhere else.
Passes
    products.base.application.places: [booth, outdoors]

    products.base.hazards.ventilation: Spray only in a booth with forced extraction.

    Given second good
    products.gloss.application.places: [booth]
    products.gloss.application.methods: [brush, roller]

    Given second good
    products.gloss.hazards.ventilation: Spray only in a booth with forced extraction.
    systems.deck.layers.gloss.method: roller

    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: Forced extraction on at all times.}
    jobs.refit.scope: Doors of trucks that stand outdoors, painted in the booth of the depot.
    products.base.hazards.ventilation: Spray only in a booth with forced extraction.
Fails
    products.base.application.places: [workshop]    # at jobs.refit.workplace

    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: Forced extraction on at all times.}
    products.base.application.places: [booth]    # warning at jobs.refit.workplace

    Given second good
    products.touch-up.application.places: [booth, workshop]    # at jobs.lids.workplace

    Given second good
    products.gloss.hazards.ventilation: Spray only in a booth with forced extraction.    # warning at jobs.rails.workplace    # warning at jobs.lids.workplace

    without jobs.refit.workplace
    jobs.refit.ventilation: {statement: Forced extraction on at all times.}
    jobs.refit.scope: The doors hang on two hooks each, outdoors under the lean-to.
    products.base.hazards.ventilation: Spray only in a spray booth.    # warning at jobs.refit.workplace
To put right
    Move the work to a place the product allows and state it, or choose a product for this place.
"""

import re

from specgen.facts.job.sprayed import sprayed_on
from specgen.model.application import Workplace
from specgen.rules.kit import ERROR, LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule

_BOOTH_ONLY = re.compile(r"\bonly in (?:a |the )?(?:spray )?booth\b", re.I)
_OUTDOORS = re.compile(r"\b(?:outdoors|in the open(?: air)?|open air)\b", re.I)
_BOOTH = re.compile(r"\bbooth\b", re.I)


@rule("AIR005", on=Job, severity=ERROR, source=LOGIC)
def place_allowed(job: Job, spec: Spec, on: date) -> Problems:
    place = job.workplace
    if place is None and _OUTDOORS.search(job.scope) and not _BOOTH.search(job.scope):
        place = Workplace.OUTDOORS
    for product in sprayed_on(job, spec):
        stated = product.application.places if product.application is not None else ()
        ventilation = product.hazards.ventilation if product.hazards is not None else None
        booth_only = not stated and ventilation is not None and _BOOTH_ONLY.search(ventilation)
        named = ", ".join(stated) or Workplace.BOOTH
        if (booth_only and place not in {None, Workplace.BOOTH}) or (
            stated and place is not None and place not in stated
        ):
            sure = bool(stated) and job.workplace is not None
            what = f"{job.id} is done {_said(place)}; {product.id} may be sprayed only in: {named}"
            yield Problem(("workplace",), what, severity=None if sure else WARNING)
        elif stated and place is None:
            what = f"{job.id} states no place of work; {product.id} may be sprayed only in: {named}"
            yield Problem(("workplace",), what, severity=WARNING)


def _said(place: Workplace | None) -> str:
    return {Workplace.OUTDOORS: "outdoors", Workplace.ON_SITE: "on site"}.get(place, f"in a {place}") if place else ""
