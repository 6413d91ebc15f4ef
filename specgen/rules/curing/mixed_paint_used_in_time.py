"""CUR009 No text keeps mixed paint beyond its usable life

Checks
    The instructions in words of each job (its scope, its inspection, what is done between its coats): where a sentence speaks of an activated can, it names no span of time longer than the longest usable life after activation of the job's products; where it speaks of mixed paint, none longer than their longest pot life. A span may be said in figures, in words, by days of the week, as overnight or as over the weekend. What says that it is not kept passes.
Why
    The hardener goes on reacting at night and over the weekend: what is left gels in the can, or is sprayed and never cures to the film that was tested.
Passes
    Given a can with a capsule
    jobs.refit.scope: Doors and step. A can activated in the morning is used up within 36 hours.

    Given a can with a capsule
    jobs.refit.scope: Doors and step. A can activated on Monday is used up on Tuesday.

    jobs.refit.scope: Chassis frame. No mixed paint is kept overnight.

    jobs.refit.scope: Chassis frame. Mixed paint is used within 1 h, the coat is hard the next day.
Fails
    Given a can with a capsule
    jobs.refit.scope: Doors and step. A can activated on Friday is used up on Monday.    # at jobs.refit.scope

    Given a can with a capsule
    jobs.refit.inspection.look.if_failed: Spray again with the same can within 48 hours of its activation.    # at jobs.refit.inspection.look.if_failed

    Given a can with a capsule
    jobs.refit.scope: Doors and step. Activated cans may be used for three days.    # at jobs.refit.scope

    jobs.refit.scope: Chassis frame. Mixed paint left in the pot is used the next morning.    # at jobs.refit.scope    # also JOB018 at jobs.refit.scope
To put right
    State the usable life of the product, and that what is left then is handed in as waste.
"""

import re
from collections.abc import Iterator

from specgen.facts.job.instructions import instructions
from specgen.facts.product.spans_said import spans_said
from specgen.model.product import CuringKind
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Product, Quantity, Range, Spec, date, rule

_CLAUSE = re.compile(r"[;.\n](?!\d)")
_PASSED_OVER = re.compile(
    r"\b(?:not|never|no|nothing|none|nobody|unless|discard\w*|throw\w*|waste|hand(?:ed)? in|dispos\w*|before|until activat\w*|unactivated|unopened|unmixed|shelf)\b",
    re.I,
)
_OF_THE_FILM = re.compile(
    r"\b(?:cur(?:e[sd]?|ing)|dr(?:y|ies|ied|ying)|hard|overcoat\w*|recoat\w*|handl\w*|service|flash\w*|sand(?:ed|ing)?|polish\w*|wait\w*|interval)\b",
    re.I,
)
_ACTIVATED = re.compile(r"\bactivat\w*", re.I)
_MIXED = re.compile(r"\b(?:mixed|mixing|pot life)\b", re.I)


@rule("CUR009", on=Job, severity=WARNING, source=LOGIC)
def mixed_paint_used_in_time(job: Job, spec: Spec, on: date) -> Problems:
    products = list(spec.products_of(job))
    lives = (
        (_ACTIVATED, "once activated its cans are usable for", _longest(_usable(products))),
        (_MIXED, "its longest pot life is", _longest(_pot_lives(products))),
    )
    for path, text in instructions(job, spec):
        for clause in _CLAUSE.split(text):
            if _PASSED_OVER.search(clause):
                continue
            own = _OF_THE_FILM.split(clause)[0]
            for pattern, said_of, life in lives:
                if life is None or not pattern.search(own):
                    continue
                longer = next((said for said, span in spans_said(own) if span is None or span > life), None)
                if longer is not None:
                    what = f"{job.id} speaks of {longer} for paint that is mixed; {said_of} {life}"
                    yield Problem(path, what, absolute=True)


def _usable(products: list[Product]) -> Iterator[Quantity]:
    for product in products:
        activation = product.application.activation if product.application is not None else None
        if (
            product.curing is CuringKind.CAPSULE_AEROSOL
            and activation is not None
            and activation.usable_for is not None
        ):
            yield activation.usable_for


def _pot_lives(products: list[Product]) -> Iterator[Quantity]:
    for product in products:
        if product.pot_life is not None:
            for one in (product.pot_life.time, *(other.time for other in product.pot_life.other_temperatures)):
                end = one.high or one.low if isinstance(one, Range) else one
                if end is not None:
                    yield end


def _longest(times: Iterator[Quantity]) -> Quantity | None:
    return max(times, default=None, key=lambda one: one.base)
