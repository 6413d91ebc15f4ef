"""LAY007 Every overcoated coat states its overcoating interval

Checks
    Each coat with another coat over it states its overcoating interval.
Why
    The interval is the first thing a painter asks; where it is not stated, the next coat is applied by guesswork.
Passes
    systems.cab.layers.primer.overcoat_interval: 1 h..24 h
Fails
    without systems.cab.layers.primer.overcoat_interval    # at systems.cab.layers.primer.overcoat_interval

    without systems.cab.layers.base.overcoat_interval    # at systems.cab.layers.base.overcoat_interval

    Given second good
    without systems.deck.layers.second.overcoat_interval    # at systems.deck.layers.second.overcoat_interval
To put right
    Write overcoat_interval from the overcoating interval of the product beneath, as in 30 min..24 h.
"""

from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Spec, System, date, rule


@rule("LAY007", on=System, severity=WARNING, source=LOGIC)
def interval_stated(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        if below.overcoat_interval is None and below.product is not None:
            yield Problem(
                ("layers", below.id, "overcoat_interval"),
                f"no overcoating interval is stated between {below.id} and {above.id}",
            )
