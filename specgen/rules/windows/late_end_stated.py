"""WIN003 A curing coat has a maximum overcoating interval

Checks
    The overcoating interval of each overcoated coat whose binder cures to a solvent-resistant film: it states a maximum, unless the coat is abraded in any case, as a body filler is. Zinc silicate, which stays porous, needs none.
Why
    The next coat does not adhere to a fully cured cross-linked film; where no maximum is stated, it is not known when to abrade, and the topcoat peels off in sheets.
Passes
    products.primer.overcoat.any-warm.interval: min 30 min
    systems.cab.layers.primer.overcoat_interval: min 30 min
    systems.cab.layers.primer.abraded_with: P400

    Given second good
    products.mastic.overcoat.any-cool.interval: min 8 h

    Given a zinc-rich primer on blasted steel
    products.primer.binder: zinc_inorganic
    products.primer.overcoat.any-warm.interval: min 30 min
    systems.cab.layers.primer.overcoat_interval: min 30 min
Fails
    products.primer.overcoat.any-warm.interval: min 30 min    # at products.primer.overcoat.any-warm.interval

    Given second good
    products.mastic.overcoat.itself-warm.interval: min 3 h    # at products.mastic.overcoat.itself-warm.interval

    Given second good
    without systems.deck.layers.second.abraded_with
    systems.deck.layers.first.abraded_with: P180
    products.mastic.overcoat.any-cool.interval: min 8 h    # at products.mastic.overcoat.any-cool.interval
To put right
    State the maximum from the manufacturer's data, as in 30 min..24 h; or have the coat abraded in any case and state abraded_with, as in P320 to P400.
"""

from specgen.facts.layer.intervals import windows_for
from specgen.facts.pairs.families import binder_family
from specgen.facts.pairs.overcoat import table_row
from specgen.rules.kit import WARNING, Problem, Problems, Role, Spec, System, date, rule

# The next coat keys into its pores at any age, once salts are washed off.
_POROUS = {"zinc_inorganic"}


@rule(
    "WIN003",
    on=System,
    severity=WARNING,
    source=table_row("mechanisms", "delamination"),
)
def late_end_stated(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        product = spec.product_of(below)
        if binder_family(product.binder)["cured_rub"] != "resistant" or product.binder in _POROUS:
            continue
        if below.abraded_with is not None or below.role is Role.BODY_FILLER:
            continue
        for entry in windows_for(below, above, spec):
            if entry.interval.high is None:
                path = ("products", product.id, "overcoat", entry.id, "interval")
                what = f"{product.id} cures to a solvent-resistant film and is overcoated with {above.product}, but its overcoating interval {entry.interval} has no maximum"
                yield Problem(path, what, absolute=True)
