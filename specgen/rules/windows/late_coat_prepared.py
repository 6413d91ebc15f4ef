"""WIN005 A coat past its interval is prepared for the next

Checks
    The action for a missed overcoating interval, of each overcoated coat whose binder cures: it does not have the next coat applied without any preparation. What dries physically may be overcoated at any age.
Why
    The next coat does not adhere to a cured film. Overcoated as it is, the system comes off in sheets at this place, often only after the first winter.
Passes
    systems.cab.layers.primer.if_exceeded: Abrade with P400, then continue.

    systems.cab.layers.base.if_exceeded: No preparation needed.
Fails
    systems.cab.layers.primer.if_exceeded: Coat over without any preparation.    # at systems.cab.layers.primer.if_exceeded

    systems.cab.layers.primer.if_exceeded: Coat without further work.    # at systems.cab.layers.primer.if_exceeded

    Given second good
    systems.deck.layers.first.if_exceeded: Carry on as it is.    # at systems.deck.layers.first.if_exceeded
To put right
    Take the action from the data of the manufacturer: abrade, wash, sweep or strip.
"""

from specgen.facts.job.goes_on import lets_stand
from specgen.facts.pairs.families import binder_family
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule

_CURES = {"chemical", "moisture", "released by moisture"}


@rule("WIN005", on=System, severity=WARNING, source=PRACTICE)
def late_coat_prepared(system: System, spec: Spec, on: date) -> Problems:
    for below in system.layers[:-1]:
        cure = binder_family(spec.product_of(below).binder)["cure"]
        if cure in _CURES and lets_stand(below.if_exceeded or ""):
            what = f"past its interval {below.id} is overcoated without preparation: {below.if_exceeded}"
            yield Problem(("layers", below.id, "if_exceeded"), what)
