"""JOB015 No instruction orders what spoils the coat

Checks
    Every instruction in words of jobs, preparations, systems and products against the table of practices that spoil a coat (practices_in_words): fittings that have to stay free of paint, oil and dirt left or brought on the surface, bare metal left to rust, residues of acid, mixing and thinning by feel, paint past its pot life, work in rain, parts wrapped or washed too soon; some where the part is of such a material or the paint of such a kind alone, as full blasting on zinc. What a sentence forbids or excuses passes.
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

    products.primer.application.mixing.stir: Pour both tins together by eye.    # at products.primer.application.mixing.stir    # also CUR003 at products.primer.application.mixing

    systems.cab.layers.primer.before_next: Sand the film while still soft.    # at systems.cab.layers.primer.before_next

    Given second good
    jobs.rails.scope: Rails; they stand blasted overnight.    # at jobs.rails.scope
To put right
    Take the instruction out, or write what is done instead.
"""

from specgen.facts.job.practices import named, practices
from specgen.rules.kit import PRACTICE, WARNING, Node, Problem, Problems, Spec, date, rule


@rule("JOB015", on=Node, severity=WARNING, source=PRACTICE)
def nothing_spoils_the_coat(record: Node, spec: Spec, on: date) -> Problems:
    for path, words, row in practices(record, spec):
        if row["of"] == "work":
            yield Problem(path, f"{named(record, path)} orders '{words}': {row['why']}")
