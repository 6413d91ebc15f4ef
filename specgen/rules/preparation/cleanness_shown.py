"""PRE014 Bare metal has a cleanliness test

Checks
    A preparation of bare metal: one of its steps names a cleanliness test, or a washing, degreasing or testing step states its acceptance criterion.
Why
    Oil and alkali are invisible; without a test they are first noticed as defects in the paint.
Passes
    preparations.sand-steel.steps.degrease: {id: degrease, do: degrease, text: Degrease., cleanliness: water_break}

    preparations.sand-steel.steps.degrease: {id: degrease, do: degrease, text: Degrease.}
    preparations.sand-steel.steps.dust: {id: dust, do: test, text: Wipe with a white cloth., acceptance: It stays white.}
Fails
    without preparations.sand-steel.steps.degrease.acceptance    # at preparations.sand-steel.steps

    Given second good
    without preparations.blast.steps.wash.acceptance
    without preparations.blast.steps.degrease.acceptance
    preparations.blast.steps.blast.acceptance: By the picture.    # at preparations.blast.steps    # also INS014 at preparations.blast.salt_limit

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    without preparations.sand-steel.steps.degrease.acceptance    # at preparations.sand-steel.steps
To put right
    Add cleanliness: water_break, a water film that stays unbroken for a minute, or a wipe with a white cloth as acceptance.
"""

from specgen.facts.pairs.parts import prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import NOTE, Concern, Preparation, Problem, Problems, Spec, date, rule, table

_CLEANING = {StepKind.WASH, StepKind.STEAM, StepKind.DEGREASE, StepKind.TEST}
_TESTS = table("cleanliness_tests")


@rule(
    "PRE014",
    on=Preparation,
    severity=NOTE,
    concern=Concern.ACCEPTANCE,
    source=_TESTS.row_citation(_TESTS.row("id", "water_break")),
)
def cleanness_shown(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if any(_shows(step) for step in preparation.steps):
        return
    if any(part.is_bare_metal for part in prepared_with(preparation, spec)):
        yield Problem(("steps",), "no step states how the bare metal is shown to be free of oil and alkali")


def _shows(step: PreparationStep) -> bool:
    return step.cleanliness is not None or (step.do in _CLEANING and step.acceptance is not None)
