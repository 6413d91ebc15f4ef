"""PRE024 Edges and welds under water get a stripe coat

Checks
    Each system on metal that is immersed in service: at least one of its coats has a stripe coat.
Why
    Wet paint draws back from edges and welds; under water the first blister and the first rust are there.
Passes
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    systems.deck.layers.second.stripe_coat: {when: before, where: edges and welds}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: atmosphere, category: C3}
Fails
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}    # at systems.deck.layers.first.stripe_coat
To put right
    Write stripe_coat at the first coat, with its extent, as in edges, welds and bolts.
"""

from specgen.facts.job.exposure import environment_of
from specgen.facts.pairs.parts import painted_with
from specgen.model.environment import EnvironmentKind
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule


@rule("PRE024", on=System, severity=WARNING, source=PRACTICE)
def edges_striped(system: System, spec: Spec, on: date) -> Problems:
    if any(layer.stripe_coat is not None for layer in system.layers):
        return
    for part in painted_with(system, spec):
        environment = environment_of(part.job, part.item)
        if part.kind == "metal" and environment is not None and environment.kind is EnvironmentKind.IMMERSION:
            what = f"{part.item.id} is immersed in service, but no coat of {system.id} has a stripe coat"
            yield Problem(("layers", system.layers[0].id, "stripe_coat"), what)
            return
