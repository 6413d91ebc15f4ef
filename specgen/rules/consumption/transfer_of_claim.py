"""USE003 A coverage claim holds at a usual transfer efficiency

Checks
    The transfer efficiency that a can needs for the area claimed, against the transfer efficiency the claim states; where it states none, against the best that a trained hand usually reaches with a can on a flat panel. Figures that exclude losses are not assessed.
Why
    The rest of the spray misses the part. A claim that requires all of it to reach the part holds in a calculation and nowhere else.
Passes
    products.base.coverage: [{id: can, area_per_pack: 1.8 m2, film: 20 um, losses: included}]

    products.base.coverage: [{id: can, area_per_pack: 1.6 m2, film: 20 um, losses: included, transfer_efficiency: 60 %}]

    products.base.pack.dispensed: 100 %
    products.base.coverage: [{id: can, area_per_pack: 1.96 m2, film: 20 um, losses: included}]

    products.base.pack.dispensed: 100 %
    products.base.coverage: [{id: can, area_per_pack: 1.68 m2, film: 20 um, losses: included, transfer_efficiency: 60 %}]

    products.barrier.coverage: [{id: tin, area_per_pack: 6.25 m2, film: 80 um, losses: included}]

    products.base.coverage: [{id: litre, spreading_rate: 7 m2/L, film: 20 um, losses: included}]

    products.base.pack: {form: aerosol, fill: 187.5 mL, dispensed: 100 %}
    products.base.solids: {in_can: 20 %, sprayed: 23 %}
    products.base.coverage: [{id: can, area_per_pack: 3 m2, film: 11 um, losses: included}]
    products.base.film.min: 10 um

    products.base.pack: {form: aerosol, fill: 187.5 mL, dispensed: 100 %}
    products.base.solids: {in_can: 28 %, sprayed: 30 %}
    products.base.coverage: [{id: can, area_per_pack: 3 m2, film: 11 um, losses: included, transfer_efficiency: 50 %}]
    products.base.film.min: 10 um
Fails
    products.base.coverage: [{id: can, area_per_pack: 2.4 m2, film: 20 um, losses: included}]    # warning at products.base.coverage.can.area_per_pack

    products.base.coverage: [{id: can, area_per_pack: 2.4 m2, film: 20 um, losses: included, transfer_efficiency: 60 %}]    # at products.base.coverage.can.area_per_pack

    products.base.pack: {form: aerosol, fill: 187.5 mL}
    products.base.solids: {in_can: 20 %, sprayed: 23 %}
    products.base.coverage: [{id: dry, area_per_pack: 3 m2, film: 12 um, losses: excluded}, {id: can, area_per_pack: 3 m2, film: 12 um, losses: included}]    # warning at products.base.coverage.can.area_per_pack
    products.base.film.min: 10 um

    products.base.pack: {form: aerosol, fill: 187.5 mL, dispensed: 100 %}
    products.base.solids: {in_can: 28 %, sprayed: 30 %}
    products.base.coverage: [{id: can, area_per_pack: 3 m2, film: 12 um, losses: included, transfer_efficiency: 50 %}]    # at products.base.coverage.can.area_per_pack
    products.base.film.min: 10 um

    products.base.pack: {form: aerosol, fill: 187.5 mL, dispensed: 90 %}
    products.base.solids: {in_can: 20 %, sprayed: 23 %}
    products.base.coverage: [{id: can, area_per_pack: 3 m2, film: 11 um, losses: included}]    # warning at products.base.coverage.can.area_per_pack
    products.base.film.min: 10 um
To put right
    State the transfer efficiency of the claim, as weighed on a panel, or lower the area.
"""

from specgen.facts.product.claims import dry_volume, solids_in_pack
from specgen.model.product import Losses, PackForm
from specgen.rules.kit import (
    ERROR,
    LOGIC,
    WARNING,
    Concern,
    Problem,
    Problems,
    Product,
    Quantity,
    Spec,
    date,
    rule,
    show,
    table,
)
from specgen.trade.cans import usual_transfer
from specgen.trade.known import NotKnown


@rule("USE003", on=Product, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def transfer_of_claim(product: Product, spec: Spec, on: date) -> Problems:
    if product.pack.form is not PackForm.AEROSOL:
        return
    solids = solids_in_pack(product)
    delivered = product.pack.dispensed or Quantity.of("share", 100, "%")
    if isinstance(solids, NotKnown) or solids.number * delivered.base == 0:
        return  # the rules on the solids of a pack say so
    usual = usual_transfer("flat panel, trained hand")[1].quantity
    for claim in product.coverage:
        if claim.area_per_pack is None or claim.film is None or claim.losses is Losses.EXCLUDED:
            continue
        needed = dry_volume(claim.area_per_pack, claim.film) / solids.number / delivered.to("%") * 100 * 100
        share = Quantity.of("share", needed, "%")
        path = ("coverage", claim.id, "area_per_pack")
        what = f"{claim.area_per_pack} at a DFT of {claim.film} requires a transfer efficiency of {show(share)}"
        if claim.transfer_efficiency is not None:
            if share > claim.transfer_efficiency:
                yield Problem(path, f"{what}; the claim states {claim.transfer_efficiency}")
        elif share > usual:
            ground = table("transfer_efficiency_aerosol").citation
            yield Problem(path, f"{what}; a can on a flat panel reaches {usual}", source=ground, severity=WARNING)
