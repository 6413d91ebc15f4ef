"""VOC of a job from the packs it uses: each variant of a product counts with its own number of packs."""

from __future__ import annotations

from specgen.facts.job.quantities import quantities
from specgen.facts.product.emissions import voc_let_off
from tests.good_spec import good_with, spec_of

TWO_GREYS = {
    "products.primer.variants.red": '{id: red, name: Red oxide, order_number: EX-101, colour: {standard: house card, number: "8"}}',
    "jobs.refit.items.STEP.system": "red",
    "systems.red": "{id: red, title: Red, layers: [{id: primer, role: primer, product: primer, variant: red,"
    " film: {min: 40 um, nominal: 60 um, max: 80 um}, passes: 4}]}",
}


def test_packs_of_two_variants_are_summed() -> None:
    spec = spec_of(good_with(TWO_GREYS))
    job = spec.jobs["refit"]
    packs = quantities(job, spec).packs
    red, grey = packs["primer", "red"], packs["primer", "grey"]
    figures = {entry.id: entry for entry in voc_let_off(job, spec, packs)}
    assert figures["volume.refit.primer"].formula == "n_1 * V_1 + n_2 * V_2"
    fill = spec.products["primer"].pack.fill
    assert fill is not None
    assert figures["volume.refit.primer"].number == (red.number + grey.number) * fill.to("L")
