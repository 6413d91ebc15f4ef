"""OVR006 No hard coat on a flexible one

Checks
    Layers that state whether they are flexible: a layer said not to be flexible does not lie on one that is.
Why
    The soft coat moves with heat and bending, the hard one on it cannot follow and cracks in a fine net.
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
    Lay coats of one hardness, or grade them from hard below to soft on top.
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
            what = f"the hard coat {above.id} lies on the flexible {below.id}"
            yield Problem(("layers", above.id, "flexible"), what)
