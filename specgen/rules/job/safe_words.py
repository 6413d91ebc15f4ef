"""JOB018 A sentence on a dangerous subject says what makes it safe

Checks
    Every instruction in words of jobs, preparations, systems and products that takes one of the decisions of a table (safe_forms): on people in a confined space, masks, fire, pressure and waste; on metals and their tools; on paint that is old, mixed or thinned; on dirt, water, heat and bare metal; on masking; on faults, tests, readings, records and releases. It says one of the forms that make it safe, or that it is forbidden, or leaves it to a permit, a data sheet or a named person. A text of which a practice is told already (JOB015, AIR013) is not read.
Why
    A wrong order can be worded in any number of ways, a sound one on the same subject in few.
Passes
    jobs.refit.scope: Doors and step; rags go into a closed metal bin.

    jobs.refit.scope: Doors and step; hardener is weighed, in the cold no more of it than the ratio.

    preparations.sand-steel.steps.sand.text: Sand with new discs; no filler is sanded wet.
Fails
    jobs.refit.scope: Doors and step; rags lie in a sack until Friday.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; thin spots are discarded.    # at jobs.refit.scope

    products.primer.application.mixing.stir: Add hardener, a third on top when it is cold.    # at products.primer.application.mixing.stir    # also CUR003 at products.primer.application.mixing

    preparations.sand-steel.steps.sand.text: Sand filler under water.    # at preparations.sand-steel.steps.sand.text

    Given second good
    jobs.lids.scope: Lids; the fan may rest while the film dries.    # at jobs.lids.scope
To put right
    Say how it is done safely, or take the sentence out.
"""

from specgen.facts.job.practices import named
from specgen.facts.job.safe_forms import unsafe
from specgen.rules.kit import PRACTICE, WARNING, Node, Problem, Problems, Spec, date, rule


@rule("JOB018", on=Node, severity=WARNING, source=PRACTICE)
def safe_words(record: Node, spec: Spec, on: date) -> Problems:
    for path, words, row in unsafe(record, spec):
        yield Problem(path, f"'{words}' of {named(record, path)} says nothing of {row['lacks']}: {row['why']}")
