"""AIR013 No instruction endangers people or surroundings

Checks
    The sentences of each job, of its ventilation and confined space and of its preparations against the table of dangerous practices (practices_in_words): flames on an existing coating, silica sand, chlorinated solvents, dust masks for spraying, thinner on the skin, rags in heaps, waste let into water, cans on a heater, pumps without earth, and in a confined space one permit or test for days, a standby person with another task or who goes in. What a sentence forbids or excuses passes.
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

    Given second good
    jobs.lids.scope: Lids; cold cans are warmed on the radiator.    # at jobs.lids.scope
To put right
    Write how the work is done safely, or take the instruction out.
"""

from specgen.facts.job.practices import practices
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("AIR013", on=Job, severity=WARNING, source=PRACTICE)
def nobody_is_endangered(job: Job, spec: Spec, on: date) -> Problems:
    for path, words, row in practices(job, spec):
        if row["of"] == "safety":
            what = f"{path[-2] if path[0] == 'preparations' else job.id} orders '{words}': {row['why']}"
            yield Problem(path, what, absolute=True)
