"""JOB011 The system is claimed for the environment of the job

Checks
    The corrosivity category a system claims, against the category stated for each item it is used on. A system without a claim, and an item without a category, are not assessed.
Why
    A system specified for a milder environment corrodes before the durability it claims.
Passes
    jobs.refit.environment: {kind: atmosphere, category: C4}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}
    jobs.rails.environment: {kind: atmosphere, category: C4}
Fails
    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}
    jobs.rails.environment: {kind: atmosphere, category: C5}    # at jobs.rails.environment.category

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}
    jobs.rails.environment: {kind: atmosphere, category: C3}
    jobs.lids.items.FRAME.environment: {kind: immersion, category: Im2}    # at jobs.lids.items.FRAME.environment.category
To put right
    Choose a system claimed for that category, or correct the category.
"""

from specgen.facts.job.exposure import environment_of
from specgen.model.system import Corrosivity
from specgen.rules.kit import LOGIC, WARNING, Concern, Job, Path, Problem, Problems, Spec, date, rule

_ORDER = [category.value for category in Corrosivity]


@rule("JOB011", on=Job, severity=WARNING, source=LOGIC, concern=Concern.FILM)
def claim_covers_environment(job: Job, spec: Spec, on: date) -> Problems:
    told: set[tuple[Path, str]] = set()
    for item in job.items:
        system, found = spec.system_of(job, item), environment_of(job, item)
        if system is None or system.category is None or found is None or found.category is None:
            continue
        claimed = system.category.corrosivity.value
        if found.category in _ORDER and _ORDER.index(found.category) <= _ORDER.index(claimed):
            continue
        path: Path = (
            ("environment", "category") if item.environment is None else ("items", item.id, "environment", "category")
        )
        if (path, system.id) not in told:
            told.add((path, system.id))
            yield Problem(
                path, f"the environment of {item.id} is {found.category}; the system {system.id} claims {claimed}"
            )
