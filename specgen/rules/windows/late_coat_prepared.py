"""WIN005 A coat past its interval is prepared for the next

Checks
    The action for a missed overcoating interval, of each overcoated coat whose binder cures: it does not have the next coat applied without any preparation, nor after wiping or washing alone where the product orders abrading; zinc-rich paint is washed. What dries physically may be overcoated at any age.
Why
    The next coat does not adhere to a cured film. Overcoated as it is, the system comes off in sheets at this place, often only after the first winter.
Passes
    systems.cab.layers.primer.if_exceeded: Abrade with P400, then continue.

    systems.cab.layers.primer.if_exceeded: Roughen, then continue as on a fresh coat.

    systems.cab.layers.primer.if_exceeded: No limit applies once abraded with P400; then paint straight on.

    systems.cab.layers.primer.if_exceeded: "Do not paint straight on; abrade first."

    systems.cab.layers.base.if_exceeded: No preparation needed.

    products.primer.overcoat.any-warm.if_exceeded: Sand with P400.
    systems.cab.layers.primer.if_exceeded: Wash and abrade.

    products.primer.overcoat.any-warm.if_exceeded: Sand with P400.
    systems.cab.layers.primer.if_exceeded: Wipe with solvent and call the technical service.

    products.primer.overcoat.any-warm.if_exceeded: Sand with P400.
    systems.cab.layers.primer.if_exceeded: Wipe clean and sand with P400, not through to the metal.

    systems.cab.layers.primer.if_exceeded: "Wash and abrade; it need not be stripped."
Fails
    systems.cab.layers.primer.if_exceeded: Coat straight over at any time without keying.    # at systems.cab.layers.primer.if_exceeded

    products.primer.overcoat.any-warm.if_exceeded: Sand with P400.
    systems.cab.layers.primer.if_exceeded: Wipe with solvent and coat; no sanding is needed.    # at systems.cab.layers.primer.if_exceeded

    products.primer.overcoat.any-warm.if_exceeded: Sand with P400.
    systems.cab.layers.primer.if_exceeded: Wipe with solvent and go on.    # at systems.cab.layers.primer.if_exceeded

    systems.cab.layers.primer.if_exceeded: Coat over without any preparation.    # at systems.cab.layers.primer.if_exceeded

    systems.cab.layers.primer.if_exceeded: "Paint straight on, the primer takes the next coat at any age."    # at systems.cab.layers.primer.if_exceeded

    systems.cab.layers.primer.if_exceeded: Coat without further work.    # at systems.cab.layers.primer.if_exceeded

    systems.cab.layers.primer.if_exceeded: "Coat over it as it is; white salts need not come off."    # at systems.cab.layers.primer.if_exceeded

    systems.cab.layers.primer.if_exceeded: It does not need to be abraded.    # at systems.cab.layers.primer.if_exceeded

    Given second good
    systems.deck.layers.first.if_exceeded: Carry on as it is.    # at systems.deck.layers.first.if_exceeded
To put right
    Take the action from the data of the manufacturer: abrade, wash, sweep or strip.
"""

from specgen.facts.layer.late_coats import unprepared
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule


@rule("WIN005", on=System, severity=WARNING, source=PRACTICE)
def late_coat_prepared(system: System, spec: Spec, on: date) -> Problems:
    for layer, what in unprepared(system, spec):
        yield Problem(("layers", layer, "if_exceeded"), what)
