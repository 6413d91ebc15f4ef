"""PRE011 A profile names how it is measured

Checks
    Each step with a profile names the method.
Why
    Comparator, micrometer, stylus and tape do not give one number on one surface, so a limit without its method is no limit.
Passes
    preparations.sand-steel.steps.sand.profile: 13..20 um
    preparations.sand-steel.steps.sand.profile_method: ISO 8503-5
    systems.cab.layers.primer.film.min: 45 um
    systems.cab.total: {min: 100 um, nominal: 130 um, max: 180 um}
Fails
    preparations.sand-steel.steps.sand.profile: 13..20 um    # at preparations.sand-steel.steps.sand.profile_method
To put right
    Write profile_method, as in ISO 8503-5 (tape) or ASTM D4417-B (micrometer).
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.preparation import Preparation
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.rules.declare import Problem, rule
from specgen.standards.citations import MEMORY


@rule(
    "PRE011",
    on=Preparation,
    severity=Severity.NOTE,
    concern=Concern.ACCEPTANCE,
    source=MEMORY,
)
def profile_method_named(preparation: Preparation, spec: Spec) -> Iterator[Problem]:
    for step in preparation.steps:
        if step.profile is not None and step.profile_method is None:
            what = f"a profile of {step.profile} is asked for, and no method to measure it"
            yield Problem(("steps", step.id, "profile_method"), what)
