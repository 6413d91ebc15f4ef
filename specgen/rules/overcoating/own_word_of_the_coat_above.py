"""OVR007 The product above may go over the coat below by its own data

Checks
    Each product that states what it may or must not be applied over (may_go_over, not_over), against the generic type of the coat below it, and of the outermost existing coating where it is the first coat. A type that it must not be applied over is an error; where it states what it may be applied over, another type is a warning. A coat of the same product is left out, and so is a product that the one below names in its intervals; where its own data exclude that type, the two contradict each other, which is a warning.
Why
    An interval for any coat is stated by a manufacturer who does not know what will come; whether the next coat holds is known to the one who makes it.
Passes
    products.base.may_go_over: [epoxy_2k, acrylic_1k]
    products.base.not_over: [oil_alkyd]

    products.base.may_go_over: [acrylic_1k]
    products.primer.overcoat.base: {id: base, next_coat: base, interval: 30 min..24 h, air: 15 degC}

    products.primer.not_over: [oil_alkyd]
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]

    Given second good
    products.mastic.may_go_over: [pu_2k_aliphatic]
Fails
    products.base.not_over: [oil_alkyd, epoxy_2k]    # at systems.cab.layers.base.product

    products.base.may_go_over: [acrylic_1k]    # warning at systems.cab.layers.base.product

    products.base.not_over: [epoxy_latent]    # warning at systems.cab.layers.base.product
    products.primer.overcoat.base: {id: base, next_coat: base, interval: 30 min..24 h, air: 15 degC}

    products.primer.not_over: [oem_finish]
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um}]    # at jobs.refit.items.DOOR.old_coats.factory

    Given second good
    products.mastic.may_go_over: [epoxy_2k]    # warning at jobs.rails.items.LOCKER.old_coats.later

    Given second good
    products.gloss.not_over: [epoxy_2k]    # at systems.deck.layers.gloss.product
To put right
    Choose another product, or put a coat between that goes over the one and under the other; correct the product data where they are wrong.
"""

from collections.abc import Iterator

from specgen.facts.job.stack import stacks
from specgen.facts.pairs.families import paint_name
from specgen.facts.pairs.layers import layer_pairs, own_word
from specgen.facts.placing import jobs_painted_with
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    WARNING,
    Path,
    Problem,
    Problems,
    Product,
    Severity,
    Spec,
    System,
    date,
    rule,
)


@rule("OVR007", on=System, severity=ERROR, source=LOGIC)
def own_word_of_the_coat_above(system: System, spec: Spec, on: date) -> Problems:
    for pair in layer_pairs(system, spec):
        if pair.covering.id == pair.covered.id:
            continue
        over = f"{pair.above.id} over {pair.below.id}"
        for weight, what in _told(pair.covering, pair.covered.binder, over, named=pair.stated_by_name):
            yield Problem(("layers", pair.above.id, "product"), what, severity=weight)
    for job in jobs_painted_with(system, spec):
        for stack in stacks(job, spec):
            if stack.system.id != system.id or stack.first is None or stack.top_of_old is None:
                continue
            old = stack.top_of_old
            if old.family is None:
                continue
            path: Path = old.path
            over = f"{stack.first.layer.id} over {old.name} of {stack.item.id}"
            for weight, what in _told(stack.first.product, old.family, over, named=False):
                yield Problem(path, what, severity=weight, absolute=True)


def _told(above: Product, family: str, over: str, *, named: bool) -> Iterator[tuple[Severity, str]]:
    said = own_word(above, family)
    if said is False:
        beside = ", while the coat below names it in its overcoating intervals" if named else ""
        yield (
            WARNING if named else ERROR,
            f"{over}: by its data {above.id} must not go over {paint_name(family)}{beside}",
        )
    elif said is None and above.may_go_over and not named:
        listed = ", ".join(paint_name(one) for one in above.may_go_over)
        yield (
            WARNING,
            f"{over}: by its data {above.id} may go over {listed}, and {paint_name(family)} is not among them",
        )
