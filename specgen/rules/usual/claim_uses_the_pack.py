"""USU015 A coverage claim is not far below its own transfer efficiency

Checks
    A claim of coverage with losses that states its transfer efficiency: what the area and the DFT take of the solids in the pack, against half of that share.
Why
    By its own words such a pack covers twice the area. Either the area or the DFT is too small by a slip, and orders based on it are twice what is needed.
Passes
    products.base.coverage: [{id: can, area_per_pack: 0.85 m2, film: 20 um, losses: included, transfer_efficiency: 60 %}]

    products.base.coverage: [{id: can, area_per_pack: 0.3 m2, film: 20 um, losses: included}]
Fails
    products.base.coverage: [{id: can, area_per_pack: 0.8 m2, film: 20 um, losses: included, transfer_efficiency: 60 %}]    # at products.base.coverage.can.area_per_pack
To put right
    Correct the area, the DFT or the transfer efficiency of the claim from a weighed panel.
"""

from specgen.facts.product.claims import dry_volume, solids_in_pack
from specgen.model.product import Losses
from specgen.rules.kit import LOGIC, WARNING, Problem, Problems, Product, Quantity, Spec, date, rule, show
from specgen.trade.known import NotKnown


@rule("USU015", on=Product, severity=WARNING, source=LOGIC)
def claim_uses_the_pack(product: Product, spec: Spec, on: date) -> Problems:
    solids = solids_in_pack(product)
    delivered = product.pack.dispensed or Quantity.of("share", 100, "%")
    if isinstance(solids, NotKnown) or solids.number * delivered.base == 0:
        return
    for claim in product.coverage:
        stated = claim.transfer_efficiency
        if claim.area_per_pack is None or claim.film is None or stated is None or claim.losses is Losses.EXCLUDED:
            continue
        taken = dry_volume(claim.area_per_pack, claim.film) / solids.number / delivered.to("%") * 100 * 100
        share = Quantity.of("share", taken, "%")
        if 2 * share.base < stated.base:
            what = f"{claim.area_per_pack} at a DFT of {claim.film} takes a transfer efficiency of {show(share)}"
            yield Problem(("coverage", claim.id, "area_per_pack"), f"{what}; the claim states {stated}")
