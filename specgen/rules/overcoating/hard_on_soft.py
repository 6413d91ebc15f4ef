"""OVR006 No hard coat on a flexible one

Checks
    Coats that state whether they are flexible: a coat stated not to be flexible is not applied over one that is.
Why
    The soft coat moves with heat and bending; the hard coat over it cannot follow and cracks in a fine network.
Passes
    systems.cab.layers.primer.flexible: yes
    systems.cab.layers.base.flexible: yes

    systems.cab.layers.base.flexible: no
    systems.cab.layers.clear.flexible: yes
Fails
    systems.cab.layers.primer.flexible: yes    # at systems.cab.layers.base.flexible
    systems.cab.layers.base.flexible: no

    Given second good
    systems.deck.layers.first.flexible: no
    systems.deck.layers.second.flexible: yes
    systems.deck.layers.gloss.flexible: no    # at systems.deck.layers.gloss.flexible
To put right
    Use coats of equal hardness, or grade them from hard beneath to soft on top.
"""

from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import WARNING, Problem, Problems, Spec, System, date, rule


@rule(
    "OVR006",
    on=System,
    severity=WARNING,
    source=table_row("mechanisms", "checking"),
)
def hard_on_soft(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.flexible and above.flexible is False:
            what = f"the hard coat {above.id} is applied over the flexible {below.id}"
            yield Problem(("layers", above.id, "flexible"), what)
