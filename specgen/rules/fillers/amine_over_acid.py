"""FIL005 Epoxy is not applied over acid

Checks
    Each coat whose hardener is used up by acid (epoxy, zinc-rich) applied directly over a wash or etch primer, or over metal with acid left by a conversion step. The sources disagree: army systems apply epoxy over a thin two-pack wash primer, whereas a refinish page warns against it. An overcoating interval that the manufacturer of the primer states for that very product settles it.
Why
    The acid reacts with the amine before the epoxy does: the coat hardens on top, its underside stays soft, and it comes off clean.
Passes
    preparations.sand-steel.steps.dust: {id: dust, do: conversion, text: Phosphate and rinse., unrinsed_acid: no}

    products.primer.binder: wash_primer
    products.primer.overcoat: [{id: base, next_coat: base, interval: 30 min..24 h, air: 15 degC}]
    products.primer.film: {min: 5 um, nominal: 8 um, max: 12 um, per_pass: 8 um}
    products.primer.application.cross_coats: 1
    systems.cab.layers.primer: {id: primer, role: primer, product: primer, variant: grey, film: {min: 5 um, nominal: 8 um, max: 12 um}, passes: 1, overcoat_interval: 30 min..24 h}
    products.base.binder: surfacer_2k
    products.base.hazards.epoxy_up_to_700: no
    products.base.roles: [surfacer]
    systems.cab.layers.base.role: surfacer
    products.clear.roles: [topcoat]
    systems.cab.layers.clear.role: topcoat
    jobs.refit.climate.humidity: 40..65 %
    without systems.cab.total
    products.base.hazards.isocyanates: {contained: no}
    jobs.refit.inspection.primer-film.criterion: {rule: own, min: 5 um, max: 12 um, text: no reading outside the limits}
Fails
    preparations.sand-steel.steps.dust: {id: dust, do: conversion, text: Brush rust converter on., unrinsed_acid: yes}    # at systems.cab.layers.primer    # also FIL005 at systems.chassis.layers.barrier

    preparations.sand-steel.steps.dust: {id: dust, do: conversion, text: Convert the rust.}    # note at systems.cab.layers.primer    # also FIL005 note at systems.chassis.layers.barrier

    Given a wash primer under a primer
    products.barrier.overcoat: [{id: any, next_coat: any, interval: 30 min..24 h, air: 15 degC}]    # at systems.chassis.layers.grey

    products.primer.binder: etch_primer_1k
    products.base.binder: epoxy_2k    # at systems.cab.layers.base    # also FIL001 at systems.cab.layers.primer    # also HAZ023 at products.base.hazards.supplemental
To put right
    Rinse the acid off and state so, keep the wash primer two-pack and thin and overcoat it within its interval, or get a statement from the manufacturer for the pair.
"""

from specgen.facts.pairs.acids import acid_below, stacked
from specgen.facts.pairs.families import BODY_FILLER
from specgen.rules.kit import NOTE, WARNING, Problem, Problems, Row, Spec, System, date, rule, table
from specgen.standards.citations import documents

_MATRIX = table("overcoat_matrix")
_MECHANISMS = table("mechanisms")
_ACID = _MECHANISMS.row_citation(_MECHANISMS.row("part", "under epoxy"))


def _pair() -> Row:
    (found,) = (row for row in _MATRIX.rows if (row["new"], row["old"]) == ("epoxy", "wash_primer"))
    return found


@rule("FIL005", on=System, severity=WARNING, source=_MATRIX.row_citation(_pair()))
def amine_over_acid(system: System, spec: Spec, on: date) -> Problems:
    for below, layer in stacked(system):
        product = spec.product_of(layer)
        family = table("binder_families").row("id", product.binder)
        if family["acid_sensitive_cure"] != "yes" or product.binder == BODY_FILLER:
            continue
        if below is not None and any(entry.next_coat == layer.product for entry in spec.product_of(below).overcoat):
            continue  # the manufacturer of the primer names this very product
        two_pack = below is not None and spec.product_of(below).binder == "wash_primer"
        for acid, known in acid_below(below, system, spec):
            path, over = ("layers", layer.id), f"{family['name']} over {acid}"
            if not known:
                what = f"{over} cannot be assessed: whether the acid is rinsed off is not stated"
                yield Problem(path, what, "state unrinsed_acid: yes or no for the conversion step", NOTE)
            elif two_pack:
                yes, no = (documents()[_pair()[key]].title for key in ("document", "other_document"))
                yield Problem(path, f"{over}: {yes} specifies it, {no} warns against it")
            else:
                yield Problem(path, f"{over}: the acid leaves its underside soft", source=_ACID)
