"""USE002 The solids in a pack are enough for the coverage claimed

Checks
    The area claimed for one pack, times its DFT, against the volume of dry solids in the pack: 1 mL of solids on 1 m2 is 1 um. No loss at all is deducted.
Why
    No more film can be applied than the pack has solids; an order based on such a figure runs out before the part is coated.
Passes
    products.base.coverage: [{id: can, area_per_pack: 2.8 m2, film: 20 um, losses: excluded}]

    products.base.pack: {form: aerosol, fill: 187.5 mL, dispensed: 97 %}
    products.base.coverage: [{id: can, area_per_pack: 3 m2, film: 11 um, losses: excluded}]
Fails
    products.base.coverage: [{id: can, area_per_pack: 4 m2, film: 20 um, losses: excluded}]    # at products.base.coverage.can.area_per_pack

    products.barrier.coverage: [{id: tin, area_per_pack: 5 m2, film: 80 um, losses: included}]    # note at products.barrier.coverage.tin.area_per_pack
    without products.barrier.pack.fill    # also USE009 at products.barrier.pack.fill

    products.base.pack: {form: aerosol, fill: 187.5 mL, dispensed: 97 %}
    products.base.coverage: [{id: litre, spreading_rate: 7 m2/L, film: 20 um, losses: excluded}, {id: can, area_per_pack: 3 m2, film: 12 um, losses: excluded}]    # at products.base.coverage.can.area_per_pack

    without products.barrier.pack.fill
    products.barrier.coverage: [{id: tin, area_per_pack: 5 m2, film: 80 um, losses: included}, {id: old, area_per_pack: 5 m2, film: 70 um, losses: included}]    # note at products.barrier.coverage.tin.area_per_pack    # note at products.barrier.coverage.old.area_per_pack    # also USE009 at products.barrier.pack.fill
To put right
    The area is the solids in mL, times the dispensed share, times the transfer efficiency, over the DFT in um.
"""

from specgen.facts.product.claims import dry_volume, solids_in_pack
from specgen.rules.kit import ERROR, LOGIC, NOTE, Concern, Problem, Problems, Product, Spec, date, rule
from specgen.trade.known import NotKnown


@rule("USE002", on=Product, severity=ERROR, concern=Concern.PRODUCT, source=LOGIC)
def solids_cover_claim(product: Product, spec: Spec, on: date) -> Problems:
    for claim in product.coverage:
        if claim.area_per_pack is None or claim.film is None:
            continue
        path = ("coverage", claim.id, "area_per_pack")
        solids = solids_in_pack(product)
        if isinstance(solids, NotKnown):
            what = f"the coverage of {product.id} cannot be assessed: contents or solids of a pack are not known"
            yield Problem(path, what, "write pack.fill and solids.in_can", severity=NOTE)
        elif dry_volume(claim.area_per_pack, claim.film) > solids.number:
            what = f"{claim.area_per_pack} at a DFT of {claim.film} requires more than the {solids.printed()} of solids in a pack"
            yield Problem(path, what)
