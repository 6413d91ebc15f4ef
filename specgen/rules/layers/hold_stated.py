"""LAY007 Every covered coat states its hold

Checks
    Each layer with another layer over it states how long to wait before it is covered.
Why
    The wait is the first thing asked at the vehicle; where the paper is silent, the next coat goes on by guess.
Passes
    systems.cab.layers.primer.overcoat_interval: 1 h..24 h
Fails
    without systems.cab.layers.primer.overcoat_interval    # at systems.cab.layers.primer.overcoat_interval

    without systems.cab.layers.base.overcoat_interval    # at systems.cab.layers.base.overcoat_interval

    Given second good
    without systems.deck.layers.second.overcoat_interval    # at systems.deck.layers.second.overcoat_interval
To put right
    Write the hold from the overcoat window of the product below, as in 30 min..24 h.
"""

from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("LAY007", on=System, severity=WARNING, source=LOGIC)
def hold_stated(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.overcoat_interval is None:
            yield Problem(
                ("layers", below.id, "overcoat_interval"), f"no wait is stated between {below.id} and {above.id}"
            )
