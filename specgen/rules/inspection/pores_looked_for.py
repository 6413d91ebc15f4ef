"""INS017 A coating under water is tested for pores

Checks
    Each job with a metal part that is immersed in service: an inspection point names pores, holidays or the test for them (high voltage, wet sponge, ISO 29601, ASTM D5162). In sea water, where the standard for ballast tanks of ships is content with the eye, this is a note.
Why
    Under water all attack goes to the one pore, and the steel is eaten through there while the rest stays sound.
Passes
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}
    jobs.rails.inspection.pores: {id: pores, check: Holidays, at: completion, method: high voltage, criterion: {text: none}}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: splash, medium: fresh-water}
Fails
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}    # at jobs.rails.inspection
    jobs.rails.inspection.look.criterion.text: no runs or bare places
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im2, medium: sea-water}    # note at jobs.rails.inspection
    jobs.rails.inspection.look.criterion.text: no runs or bare places
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}
To put right
    Add a point at: completion with the method and the voltage, hold_point: yes, and what is done with a pore.
"""

from specgen.facts.job.exposure import environment_of
from specgen.facts.job.looked_for import PORES, words_of
from specgen.facts.pairs.parts import parts_of
from specgen.model.environment import EnvironmentKind, Medium
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("INS017", on=Job, severity=WARNING, source=PRACTICE)
def pores_looked_for(job: Job, spec: Spec, on: date) -> Problems:
    if any(PORES.search(words_of(point)) for point in job.inspection):
        return
    for part in parts_of(job, spec):
        environment = environment_of(job, part.item)
        if part.kind == "metal" and environment is not None and environment.kind is EnvironmentKind.IMMERSION:
            what = f"{part.item.id} is immersed in service, but no inspection point looks for pores"
            yield Problem(("inspection",), what, severity=NOTE if environment.medium is Medium.SEA_WATER else None)
            return
