"""JOB009 Requirements are not worded as wishes

Checks
    The texts of steps, acceptance criteria and corrective actions: none says “should” or “ought to”.
Why
    “Should” is advice to the painter and a duty to the customer.
Passes
    preparations.sand-steel.steps.sand.text: Sand until no gloss is left.

    jobs.refit.items.DOOR.name: Door that should open
Fails
    preparations.sand-steel.steps.sand.text: The surface should be sanded.    # at preparations.sand-steel.steps.sand.text

    jobs.refit.inspection.primer-film.if_failed: One ought to sand back.    # at jobs.refit.inspection.primer-film.if_failed

    Given second good
    preparations.sand.steps.sand.text: It SHOULD be matt.    # at preparations.sand.steps.sand.text
    systems.deck.layers.second.before_next: One ought to sand.    # at systems.deck.layers.second.before_next

    Given second good
    jobs.lids.inspection.film.check: Film should be even    # at jobs.lids.inspection.film.check
To put right
    Write it as an instruction, as in: Sand until no gloss is left.
"""

import re

from specgen.facts.texts import texts
from specgen.model.declaring import Polarity
from specgen.rules.kit import PRACTICE, WARNING, Job, Node, Preparation, Problem, Problems, Spec, System, date, rule

_WISH = re.compile(r"\b(should|ought to)\b", re.IGNORECASE)


@rule("JOB009", on=Node, severity=WARNING, source=PRACTICE)
def asked_not_wished(subject: Node, spec: Spec, on: date) -> Problems:
    if not isinstance(subject, Job | Preparation | System):
        return
    for path, value, said in texts(spec, subject):
        if said.polarity is not Polarity.REQUIREMENT_TEXT or path[0] == "waivers":
            continue
        if wish := _WISH.search(value):
            yield Problem(path, f"“{wish[1]}” is not a requirement")
