"""JOB019 No sentence leaves out a precaution or makes an excuse

Checks
    Every instruction in words of jobs, preparations, systems and products. It leaves out none of the precautions of a table (precautions: respiratory protection, ventilation, earthing, permits, tests and measurements, abrading, cleaning, waiting times, masking, stripe coats, records and others), whatever the words that deny them (table denials: "no ... is needed", "may be skipped", "without", "only if somebody asks"); and it gives none of the reasons by which people depart from what is specified (table excuses: it does no harm, nobody sees it, it saves time, the next coat seals it). A text of which a practice or an unsafe form is told already (JOB015, AIR013, JOB018) is not read.
Why
    What a specification leaves out in one sentence is left out on every part, and the sentence shows that the rule was known.
Passes
    jobs.refit.scope: Doors and step; no part is sprayed without earthing.

    jobs.refit.scope: Doors and step; small differences in gloss do not matter.

    preparations.sand-steel.steps.sand.text: Sand with P180; no primed place needs sanding within 24 h.

    systems.cab.layers.primer.before_next: Within the interval no abrading is needed.
Fails
    jobs.refit.scope: Doors and step; no earthing is needed for small parts.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; scratches on the back are out of sight.    # at jobs.refit.scope

    preparations.sand-steel.steps.sand.text: Sand where there is time.    # at preparations.sand-steel.steps.sand.text

    products.primer.application.mixing.stir: Stir if there is time.    # at products.primer.application.mixing.stir    # also CUR003 at products.primer.application.mixing

    systems.cab.layers.primer.before_next: A little haze does no harm.    # at systems.cab.layers.primer.before_next

    Given second good
    jobs.lids.scope: Lids; the enclosure can be done without.    # at jobs.lids.scope
To put right
    Take the sentence out, or write the limit within which it holds.
"""

from specgen.facts.job.made_light_of import made_light_of
from specgen.facts.job.practices import named
from specgen.rules.kit import PRACTICE, WARNING, Node, Problem, Problems, Spec, date, rule


@rule("JOB019", on=Node, severity=WARNING, source=PRACTICE)
def nothing_made_light_of(record: Node, spec: Spec, on: date) -> Problems:
    for path, words, row in made_light_of(record, spec):
        yield Problem(path, f"'{words}' of {named(record, path)} {row['does']}: {row['why']}")
