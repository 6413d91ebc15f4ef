"""CLI008 No part exceeds the usual heat limit of its generic type

Checks
    The service temperature of each item, against the general dry heat limits of the generic type (binder family): of existing coats that remain, and of coats whose product states no limit of its own. Where two collections of figures differ, the lower figure gives a warning and both are named.
Why
    Above its limit a film yellows, softens, chars or loses adhesion; the weakest coat governs, also an existing one beneath the new paint.
Passes
    jobs.refit.items.DOOR.service_temperature: 70 degC
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um}]

    Given second good
    products.gloss.service_temperature: {continuous_max: 250 degF}
    jobs.rails.items.LOCKER.service_temperature: 95 degC
Fails
    jobs.refit.items.DOOR.service_temperature: 80 degC    # at jobs.refit.items.DOOR.service_temperature
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: acrylic_1k, thickness: 60 um, rub: resistant}]    # also OLD001 at jobs.refit.items.DOOR.old_coats.shop.rub    # also OLD005 at jobs.refit.items.DOOR.old_coats.shop

    Given second good
    products.gloss.service_temperature: {continuous_max: 250 degF}
    jobs.rails.items.LOCKER.service_temperature: 95.1 degC    # at jobs.rails.items.LOCKER.service_temperature

    Given second good
    products.gloss.service_temperature: {continuous_max: 250 degF}
    jobs.rails.items.LOCKER.old_coats.works.family: pu_2k_aromatic
    jobs.rails.items.LOCKER.service_temperature: 111 degC    # at jobs.rails.items.LOCKER.service_temperature

    jobs.refit.items.STEP.service_temperature: 96 degC    # at jobs.refit.items.STEP.service_temperature    # also CLI003 at jobs.refit.items.STEP.service_temperature

    products.barrier.service_temperature: {short_max: 150 degC}
    jobs.refit.items.STEP.service_temperature: 96 degC    # at jobs.refit.items.STEP.service_temperature    # also CLI003 note at jobs.refit.items.STEP.service_temperature
To put right
    Strip the coat, choose a generic type rated for the heat, or shield the part; ask the manufacturer for the limit of the product.
"""

from specgen.facts.job.stack import Stack, stacks
from specgen.facts.pairs.families import paint_name
from specgen.rules.kit import WARNING, Concern, Job, Problem, Problems, Row, Spec, date, rule, table

_LIMITS = table("dry_heat_limits")


@rule("CLI008", on=Job, severity=WARNING, concern=Concern.PRODUCT, source=_LIMITS.citation)
def heat_of_the_family(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        hottest = stack.item.service_temperature
        if hottest is None:
            continue
        for family, of in _unrated(stack).items():
            rows = [row for row in _LIMITS.rows if _general(row, family)]
            if not rows:
                continue
            lowest = min(rows, key=_degrees)
            if hottest.to("degC") <= _degrees(lowest):
                continue
            figures = "; ".join(f"{row['most_C']} degC ({_LIMITS.row_citation(row)})" for row in rows)
            what = f"{stack.item.id} reaches {hottest} in service; the usual limit of {paint_name(family)} ({', '.join(of)}) is {figures}"
            yield Problem(("items", stack.item.id, "service_temperature"), what, source=_LIMITS.row_citation(lowest))


def _unrated(stack: Stack) -> dict[str, list[str]]:
    """The families of old coats and of layers without a limit of their own, each with where it is found."""
    found: dict[str, list[str]] = {}
    for old in stack.old:
        if old.family is not None:
            found.setdefault(old.family, []).append(f"existing coat {old.coat.id}")
    for new in stack.new:
        rated = new.product.service_temperature
        if rated is None or rated.continuous_max is None:
            found.setdefault(new.family, []).append(f"coat {new.layer.id}")
    return found


def _general(row: Row, family: str) -> bool:
    """A row for the whole family and lasting heat; special grades and short times are the maker's to claim."""
    return row["family"] == family and not row["paint"] and row["duration"] == "continuous"


def _degrees(row: Row) -> int:
    return int(row["most_C"])
