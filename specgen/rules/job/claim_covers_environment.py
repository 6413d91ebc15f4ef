"""JOB011 The system is claimed for the environment of the job

Checks
    The corrosivity and immersion categories a system claims, against the category stated for each item it is used on; a claim for Im4 covers Im2. A system without a claim, and an item without a category, are not assessed.
Why
    A system specified for a milder environment corrodes before the durability it claims.
Passes
    jobs.refit.environment: {kind: atmosphere, category: C4}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}
    jobs.rails.environment: {kind: atmosphere, category: C4}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C5, immersion: Im4, durability: high, evidence: report 7}
    jobs.rails.environment: {kind: splash, category: Im2}
    jobs.lids.items.FRAME.environment: {kind: atmosphere, category: C4}
    preparations.blast.edge_grade: P3
Fails
    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {immersion: Im2, durability: high}    # also FLM012 at systems.deck.category
    jobs.rails.environment: {kind: immersion, category: Im1}    # at jobs.rails.environment.category
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}
    jobs.lids.items.FRAME.environment: {kind: atmosphere, category: C2}    # at jobs.lids.items.FRAME.environment.category

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}
    jobs.rails.environment: {kind: atmosphere, category: C5}    # at jobs.rails.environment.category    # also PRE024 at systems.deck.layers.first.stripe_coat

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}
    jobs.rails.environment: {kind: atmosphere, category: C3}
    jobs.lids.items.FRAME.environment: {kind: immersion, category: Im2}    # at jobs.lids.items.FRAME.environment.category
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}
To put right
    Choose a system claimed for that category, or correct the category.
"""

from specgen.facts.job.exposure import environment_of
from specgen.model.system import CategoryClaim, Corrosivity, Immersion
from specgen.rules.kit import LOGIC, WARNING, Concern, Job, Path, Problem, Problems, Spec, date, rule

_ORDER = [category.value for category in Corrosivity]
# Cathodic protection is asked of the coating on top of the same water.
_ALSO = {Immersion.IM4: (Immersion.IM2,)}


@rule("JOB011", on=Job, severity=WARNING, source=LOGIC, concern=Concern.FILM)
def claim_covers_environment(job: Job, spec: Spec, on: date) -> Problems:
    told: set[tuple[Path, str]] = set()
    for item in job.items:
        system, found = spec.system_of(job, item), environment_of(job, item)
        if system is None or system.category is None or found is None or found.category is None:
            continue
        claim = system.category
        if _covers(claim, found.category):
            continue
        claimed = " and ".join(category for category in (claim.corrosivity, claim.immersion) if category is not None)
        path: Path = (
            ("environment", "category") if item.environment is None else ("items", item.id, "environment", "category")
        )
        if (path, system.id) not in told:
            told.add((path, system.id))
            yield Problem(
                path,
                f"the environment of {item.id} is {found.category}; the system {system.id} claims {claimed or 'none'}",
            )


def _covers(claim: CategoryClaim, category: str) -> bool:
    if category in _ORDER:
        return claim.corrosivity is not None and _ORDER.index(category) <= _ORDER.index(claim.corrosivity)
    return claim.immersion is not None and category in {claim.immersion, *_ALSO.get(claim.immersion, ())}
