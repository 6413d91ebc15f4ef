"""AIR013 No instruction endangers people or surroundings

Checks
    Every instruction in words of jobs, preparations, systems and products against the table of dangerous practices (practices_in_words): flames on an existing coating, silica sand, chlorinated solvents, dust masks for spraying, thinner on the skin, rags in heaps, waste let into water, cans on a heater, pumps without earth, and in a confined space one permit or test for days, a standby person with another task or who goes in. What a sentence forbids or excuses passes.
Why
    People are hurt by what was written down and nobody questioned.
Passes
    jobs.refit.scope: Doors and step; rags are kept in closed metal bins, hands are never washed with thinner.

    jobs.refit.scope: Doors and step; wash water is kept and treated before it runs into the drain.

    preparations.sand-steel.steps.sand.text: Sand with P180; no torch, no hot-air gun.
Fails
    jobs.refit.scope: Doors and step; paint on the skin is washed off with thinner.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; wash water runs into the drain.    # at jobs.refit.scope

    preparations.sand-steel.steps.sand.text: Burn old paint off with a torch.    # at preparations.sand-steel.steps.sand.text

    products.primer.hazards.disposal: Rags go on a heap with the paper.    # at products.primer.hazards.disposal

    jobs.refit.workplace: confined-space    # at jobs.refit.scope    # also AIR004 at jobs.refit.ventilation    # also AIR006 at jobs.refit.confined_space
    jobs.refit.scope: Doors and step; the draught through the open doors is enough.

    Given second good
    jobs.lids.scope: Lids; cold cans are warmed on the radiator.    # at jobs.lids.scope
To put right
    Write how the work is done safely, or take the instruction out.
"""

from specgen.facts.job.practices import named, practices
from specgen.rules.kit import PRACTICE, WARNING, Node, Problem, Problems, Spec, date, rule


@rule("AIR013", on=Node, severity=WARNING, source=PRACTICE)
def nobody_is_endangered(record: Node, spec: Spec, on: date) -> Problems:
    for path, words, row in practices(record, spec):
        if row["of"] == "safety":
            yield Problem(path, f"{named(record, path)} orders '{words}': {row['why']}")
