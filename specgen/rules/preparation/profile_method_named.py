"""PRE011 A surface profile names its method of measurement

Checks
    Each step with a profile names the method of measurement.
Why
    Comparator, micrometer, stylus and tape do not give one value on one surface, so a limit without its method cannot be verified.
Passes
    preparations.sand-steel.steps.sand.profile: 13..20 um
    preparations.sand-steel.steps.sand.profile_method: ISO 8503-5
    systems.cab.layers.primer.film.min: 45 um
    systems.cab.total: {min: 100 um, nominal: 130 um, max: 180 um}
    jobs.refit.inspection.primer-film.criterion.min: 45 um

    Given second good
Fails
    preparations.sand-steel.steps.sand.profile: 13..20 um    # at preparations.sand-steel.steps.sand.profile_method

    Given second good
    without preparations.blast.steps.blast.profile_method    # at preparations.blast.steps.blast.profile_method

    preparations.sand-steel.steps.degrease.profile: 13..20 um    # at preparations.sand-steel.steps.degrease.profile_method
To put right
    Write profile_method, as in ISO 8503-5 (tape) or ASTM D4417-B (micrometer).
"""

from specgen.rules.kit import MEMORY, NOTE, Concern, Preparation, Problem, Problems, Spec, date, rule


@rule(
    "PRE011",
    on=Preparation,
    severity=NOTE,
    concern=Concern.ACCEPTANCE,
    source=MEMORY,
)
def profile_method_named(preparation: Preparation, spec: Spec, on: date) -> Problems:
    for step in preparation.steps:
        if step.profile is not None and step.profile_method is None:
            what = f"a profile of {step.profile} is specified without a method of measurement"
            yield Problem(("steps", step.id, "profile_method"), what)
