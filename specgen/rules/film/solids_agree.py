"""FLM015 The solids figures of a product are consistent

Checks
    Volume solids of the can contents and without propellant, of the product and of each variant: neither is zero; for a liquid they are equal; for an aerosol can the figure without propellant is higher. Where the solids are denser than everything that evaporates, volume solids are not above the solids by mass. A composition without solids leaves no volume solids to state.
Why
    Every WFT, coverage and number of cans is calculated from these figures; two that contradict each other invalidate them all.
Passes
    products.base.solids: {in_can: 14 %, sprayed: 25 %}

    products.base.variants.standard.overrides: {solids_in_can: 15 %}

    products.base.solids: {in_can: 14 +- 1 %, sprayed: min 22 %}

    products.barrier.solids: {in_can: 50 +- 2 %, sprayed: 48..52 %}

    products.primer.solids: {in_can: 17.7 %, sprayed: 17.7 %}
    products.primer.composition.gas: {id: gas, name: extender, kind: solvent, mass_share: 30 %, density: 0.65 g/mL}

    products.primer.solids: {in_can: 30 %}
    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 30 %, density: 0.91 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.90 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.90 g/mL}]

    products.primer.solids: {in_can: 30.1 %}
    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 20 %, density: 0.95 g/mL}, {id: light, name: wax, kind: solids, mass_share: 10 %, density: 0.85 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.9 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.9 g/mL}]

    products.primer.solids: {in_can: 30.5 %}
    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 30 %, density: 0.9 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.95 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.85 g/mL}]

    products.primer.solids: {in_can: 30.1 %}
    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 30 %, density: 0.9 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.9 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.9 g/mL}]
Fails
    products.base.solids: {in_can: 23 %, sprayed: 14 %}    # at products.base.solids.sprayed

    products.base.solids: {in_can: 23 +- 2 %, sprayed: 14..20 %}    # at products.base.solids.sprayed

    products.base.solids: {in_can: 20 %, sprayed: 20 %}    # warning at products.base.solids.sprayed

    products.barrier.solids: {in_can: 50 %, sprayed: 60 %}    # at products.barrier.solids.sprayed

    products.base.solids: {in_can: 0 %, sprayed: 23 %}    # at products.base.solids.in_can    # also USE009 at products.base.solids.in_can

    products.primer.solids: {in_can: 35 %, sprayed: 40 %}    # at products.primer.solids.in_can    # also FLM016 at products.primer.solids.in_can    # also FLM016 at products.primer.solids.sprayed

    products.base.variants.standard.overrides: {solids_in_can: 24 %}    # at products.base.variants.standard.overrides.solids_sprayed

    products.base.variants.gold: {id: gold, name: gold, order_number: EX-gold, overrides: {solids_sprayed: 13 %}}    # at products.base.variants.gold.overrides.solids_sprayed
    products.base.variants.white: {id: white, name: white, order_number: EX-white, overrides: {solids_sprayed: 24 %}}

    products.base.solids: {in_can: 14 %, sprayed: 0 %}    # at products.base.solids.sprayed
    products.base.variants.standard.overrides: {solids_sprayed: 20 %}

    Given second good
    products.mastic.variants.buff.overrides: {solids_in_can: 64 %, solids_sprayed: 65 %}    # at products.mastic.variants.buff.overrides.solids_sprayed

    products.primer.solids: {in_can: 30.1 %}    # at products.primer.solids.in_can
    products.primer.composition: [{id: solids, name: resin, kind: solids, mass_share: 20 %, density: 0.91 g/mL}, {id: pigment, name: pigment, kind: solids, mass_share: 10 %, density: 0.91 g/mL}, {id: solvent, name: solvent blend, kind: solvent, mass_share: 40 %, density: 0.90 g/mL}, {id: gas, name: propellant, kind: propellant, mass_share: 30 %, density: 0.90 g/mL}]

    products.base.solids: {in_can: 20 %, sprayed: 20 %}    # warning at products.base.solids.sprayed
    products.base.variants.standard.overrides: {solids_sprayed: 21 %}

    products.primer.solids: {in_can: 14 %, sprayed: 23 %}    # at products.primer.solids.in_can    # at products.primer.solids.sprayed
    products.primer.composition: [{id: solvent, name: solvent blend, kind: solvent, mass_share: 100 %, density: 0.85 g/mL}]

    products.primer.solids: {in_can: 17.7 %, sprayed: 17.7 %}    # at products.primer.solids.sprayed    # also FLM016 at products.primer.solids.sprayed
To put right
    Calculate both figures from mass shares and densities, or measure them.
"""

from collections.abc import Iterator

from specgen.model.product import Ingredient, PackForm
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    WARNING,
    Concern,
    Path,
    Problem,
    Problems,
    Product,
    Quantity,
    Range,
    Spec,
    date,
    rule,
)
from specgen.trade.solids import sum_of_shares
from specgen.units.quantity import as_range, lower, upper

Solids = Quantity | Range | None
Stated = tuple[Path, Solids]


@rule("FLM015", on=Product, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def solids_agree(product: Product, spec: Spec, on: date) -> Problems:
    for in_can, sprayed in _pairs(product):
        for at, share in (in_can, sprayed):
            if share is not None and upper(share).base == 0:
                yield Problem(at, "volume solids are zero; they must be above zero")
        yield from _pair(product, in_can[1], sprayed)
    if product.composition and all(line.kind is not Ingredient.SOLIDS for line in product.composition):
        for in_can, sprayed in _pairs(product):
            for at, share in (in_can, sprayed):
                if share is not None and upper(share).base > 0:
                    yield Problem(at, f"volume solids {share} are stated, but the composition contains no solids")
        return
    by_mass = _most_by_volume(product)
    stated = product.solids.in_can if product.solids is not None else None
    if by_mass is not None and stated is not None and lower(stated) > by_mass:
        what = f"volume solids {stated} are above the solids by mass, although the solids are denser than everything that evaporates"
        yield Problem(("solids", "in_can"), what)


def _pair(product: Product, in_can: Solids, sprayed: Stated) -> Problems:
    path, without = sprayed
    if in_can is None or without is None or upper(in_can).base == 0 or upper(without).base == 0:
        return
    if product.pack.form is PackForm.LIQUID:
        if as_range(in_can) != as_range(without):
            yield Problem(
                path,
                f"a liquid contains no propellant, but volume solids {without} without it and {in_can} with it are stated",
            )
    elif upper(without) < lower(in_can):
        yield Problem(path, f"volume solids without propellant {without} are below those of the can contents, {in_can}")
    elif as_range(without) == as_range(in_can) and not _free_of_propellant(product):
        # Without a composition a can driven by a bag or by air cannot be ruled out.
        weight = None if product.composition else WARNING
        yield Problem(
            path,
            f"volume solids are {without} with and without propellant, as if the can contained none",
            severity=weight,
        )


def _pairs(product: Product) -> Iterator[tuple[Stated, Stated]]:
    own = product.solids
    in_can, sprayed = (own.in_can, own.sprayed) if own is not None else (None, None)
    yield (("solids", "in_can"), in_can), (("solids", "sprayed"), sprayed)
    for variant in product.variants:
        new = variant.overrides
        if new is not None and (new.solids_in_can is not None or new.solids_sprayed is not None):
            path = ("variants", variant.id, "overrides")
            yield (
                ((*path, "solids_in_can"), new.solids_in_can or in_can),
                ((*path, "solids_sprayed"), new.solids_sprayed or sprayed),
            )


def _free_of_propellant(product: Product) -> bool:
    return bool(product.composition) and all(line.kind is not Ingredient.PROPELLANT for line in product.composition)


def _most_by_volume(product: Product) -> Quantity | None:
    """The solids by mass, where volume solids cannot be above them; None where they can, or nothing tells."""
    solids = [line for line in product.composition if line.kind is Ingredient.SOLIDS]
    rest = [line for line in product.composition if line.kind is not Ingredient.SOLIDS]
    if not solids or not rest or min(line.density for line in solids) <= max(line.density for line in rest):
        return None
    return sum_of_shares([line.mass_share for line in solids])[0]
