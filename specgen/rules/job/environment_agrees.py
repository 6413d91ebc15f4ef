"""JOB010 The environment agrees with itself

Checks
    Category, medium and sunlight against the kind of environment they are stated for: Im1 is immersion in fresh water, Im2 and Im4 in sea or brackish water, Im3 is soil, C1 to CX are atmospheres; what is immersed, buried or inside a cavity is not in the sun, and neither is what is indoors.
Why
    Preparation, minimum DFT and UV resistance are assessed by the environment: where two statements contradict each other, one of them gives the wrong coating.
Passes
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1, medium: fresh-water}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}

    jobs.refit.environment: {kind: splash, category: Im4, medium: sea-water, sun: no}
    preparations.sand-steel.salt_limit: 50 mg/m2
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}
    jobs.refit.items.DOOR.environment: {kind: buried, category: Im3}

    jobs.refit.environment: {kind: cavity, category: C3, sun: no}
    jobs.refit.items.STEP.environment: {kind: splash, medium: fuel}
Fails
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: C3}    # at jobs.rails.items.RAIL.environment.category
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}

    jobs.refit.items.STEP.environment: {kind: splash, category: Im2, medium: fresh-water}    # at jobs.refit.items.STEP.environment.medium
    preparations.sand-steel.salt_limit: 50 mg/m2
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    jobs.refit.environment: {kind: atmosphere, category: Im3}    # at jobs.refit.environment.category
    jobs.refit.items.STEP.environment: {kind: buried, medium: fuel}    # at jobs.refit.items.STEP.environment.medium

    jobs.refit.environment: {kind: cavity, sun: yes}    # at jobs.refit.environment.sun    # also LAY008 at jobs.refit.environment.sun

    jobs.refit.exposure: interior
    jobs.refit.environment: {kind: atmosphere, sun: yes}    # at jobs.refit.environment.sun    # also LAY008 at jobs.refit.environment.sun
To put right
    Correct the kind, the category, the medium or the sunlight.
"""

from collections.abc import Iterator

from specgen.model.environment import Environment, EnvironmentKind
from specgen.model.job import Exposure
from specgen.rules.kit import WARNING, Job, Path, Problem, Problems, Spec, date, rule, table

_CATEGORIES = table("exposure_categories")
_DARK = {EnvironmentKind.IMMERSION, EnvironmentKind.BURIED, EnvironmentKind.CAVITY}
_DRY = {EnvironmentKind.ATMOSPHERE, EnvironmentKind.BURIED}


@rule("JOB010", on=Job, severity=WARNING, source=_CATEGORIES.citation)
def environment_agrees(job: Job, spec: Spec, on: date) -> Problems:
    stated: list[tuple[Path, Environment | None, Exposure | None]] = [((), job.environment, job.exposure)]
    stated += [(("items", item.id), item.environment, item.exposure) for item in job.items]
    for path, found, exposure in stated:
        if found is not None:
            for key, what in _faults(found, exposure):
                yield Problem((*path, "environment", key), what)


def _faults(found: Environment, exposure: Exposure | None) -> Iterator[tuple[str, str]]:
    row = _CATEGORIES.row("id", found.category) if found.category is not None else None
    if row is not None and found.kind.value not in row["kinds"].split("; "):
        yield "category", f"category {found.category} ({row['name']}) is not a category of the environment {found.kind}"
    if found.medium is not None and found.kind in _DRY:
        yield "medium", f"the medium {found.medium} is stated for the environment {found.kind}"
    elif found.medium is not None and row is not None and row["media"] and found.medium.value != row["media"]:
        yield "medium", f"category {found.category} is {row['name']}; the medium stated is {found.medium}"
    if found.sun and found.kind in _DARK:
        yield "sun", f"the environment {found.kind} is stated to be in the sun"
    elif found.sun and exposure is Exposure.INTERIOR:
        yield "sun", "the part is stated to be indoors and in the sun"
