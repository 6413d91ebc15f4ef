"""DOC010 Words on a coat agree with its figures

Checks
    The instructions in words of each job (its scope, its inspection, what is done between its coats): a time before the next coat lies in the overcoating interval of a coat, coats are laid on one day only where the intervals between them leave that, and wet on wet is said only where the interval begins within an hour; a mixing ratio is that of a product; a wet film gives the DFT of a coat; a DFT named between two coats is within the limits of one of them. A text beside a coat speaks of that coat and the next; another text of the coats it calls primer, intermediate or the like, else of all, and one that bears the figure out is enough. What is said of stripe coats, repairs, other work, another state or another temperature is not read.
Why
    The painter reads the sentence beside the coat: told to recoat after ten minutes, he does not look up the interval in the table.
Passes
    systems.cab.layers.primer.before_next: Recoat after 45 min, within 24 h.

    systems.cab.layers.primer.before_next: Blow off; recoat not before 30 min.

    systems.cab.layers.primer.before_next: Where more than 24 h have passed, abrade before the next coat.

    systems.cab.layers.primer.before_next: A DFT of 60 µm, then the base coat at 20 µm.

    systems.cab.layers.primer.before_next: The base coat follows wet on wet.

    jobs.refit.scope: Doors and steps, the next coat after 20 min.

    Given second good
    jobs.rails.scope: New paint on blasted rails. The primer is mixed 1:1 and the finish 4:1 by volume.

    Given second good
    jobs.rails.scope: New paint on blasted rails. The finish is mixed 4:1 by volume, the cleaner 1:20 with water.

    Given second good
    systems.deck.layers.first.before_next: Wet film 6 mil; overcoat after 6 h, within 3 days, the next morning as a rule.

    Given second good
    systems.deck.layers.first.before_next: One further thin coat where the DFT is below 3 mil.

    jobs.refit.scope: Doors and steps. Both coats are inspected in one shift; all coats are laid within one week.

    systems.cab.layers.primer.before_next: Leave for an hour, then spray the base coat.
Fails
    systems.cab.layers.primer.before_next: Leave for two days, then spray the base coat.    # at systems.cab.layers.primer.before_next

    Given second good
    jobs.rails.scope: New paint on blasted rails; all coats are sprayed in one shift.    # at jobs.rails.scope

    systems.cab.layers.primer.before_next: Recoat after 10 min.    # at systems.cab.layers.primer.before_next

    systems.cab.layers.primer.before_next: The next coat may follow up to two weeks later.    # at systems.cab.layers.primer.before_next

    systems.cab.layers.primer.before_next: Bring the primer to 200 µm.    # at systems.cab.layers.primer.before_next

    jobs.refit.scope: Doors and steps, recoated after 5 min.    # at jobs.refit.scope

    Given second good
    jobs.rails.scope: New paint on blasted rails. The finish is mixed 3:1 by volume.    # at jobs.rails.scope

    Given second good
    jobs.rails.scope: New paint on blasted rails. The primer is mixed 4:1 by volume.    # at jobs.rails.scope

    Given second good
    jobs.rails.scope: New paint on blasted rails. Mix seven parts of base with one part of hardener.    # at jobs.rails.scope

    Given second good
    systems.deck.layers.first.before_next: Wet film 12 mil.    # at systems.deck.layers.first.before_next

    Given second good
    systems.deck.layers.second.before_next: The gloss follows wet on wet.    # at systems.deck.layers.second.before_next
To put right
    Write into the text what the system and the product state, or put these right.
"""

from specgen.facts.job.coats_in_words import contradicted
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("DOC010", on=Job, severity=WARNING, source=LOGIC)
def words_agree_with_coats(job: Job, spec: Spec, on: date) -> Problems:
    for path, what in contradicted(job, spec):
        # a coat of several jobs is told once
        said_of = path[path.index("layers") + 1] if path[0] == "systems" else job.id
        yield Problem(path, f"the words of {said_of} say {what}", absolute=True)
