"""JOB015 No instruction orders what spoils the coat

Checks
    The sentences of each job and of its preparations against the table of practices that spoil a coat (practices_in_words): fittings that have to stay free of paint, oil and dirt left or brought on the surface, bare metal left to rust, residues of acid, mixing and thinning by feel, paint past its pot life, work in rain, parts wrapped or washed too soon. What a sentence forbids or excuses passes.
Why
    The crew does what the sentence says; every figure beside it may be right, and the coat is lost.
Passes
    jobs.refit.scope: Doors and step; threads and seals are masked and not coated.

    jobs.refit.scope: Doors and step; nothing is mixed by eye.

    preparations.sand-steel.steps.degrease.text: Wash with a phosphoric acid cleaner and rinse with plenty of water.
Fails
    jobs.refit.scope: Doors and step; threads are coated with the doors.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; part packs are mixed by eye.    # at jobs.refit.scope

    preparations.sand-steel.steps.degrease.text: Wipe with diesel.    # at preparations.sand-steel.steps.degrease.text

    Given second good
    jobs.rails.scope: Rails; they stand blasted overnight.    # at jobs.rails.scope
To put right
    Take the instruction out, or write what is done instead.
"""

from specgen.facts.job.practices import practices
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("JOB015", on=Job, severity=WARNING, source=PRACTICE)
def nothing_spoils_the_coat(job: Job, spec: Spec, on: date) -> Problems:
    for path, words, row in practices(job, spec):
        if row["of"] == "work":
            what = f"{path[-2] if path[0] == 'preparations' else job.id} orders '{words}': {row['why']}"
            yield Problem(path, what, absolute=True)
