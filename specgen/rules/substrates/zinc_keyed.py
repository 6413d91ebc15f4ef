"""SUB014 Zinc is roughened or converted before its first coat

Checks
    Bare galvanised steel whose first coat needs a key (table overcoat_matrix): a step sweep-blasts, abrades, tools or converts the zinc, and more than its runs and spikes, unless it is stated to be fully weathered. A wash primer, and a waterborne acrylic made for zinc, need none.
Why
    New zinc is smooth and slightly oily: a coat that is put on degreased zinc alone comes off in sheets after the first winter.
Passes
    Given second good
    jobs.lids.items.FRAME.substrate: {material: galvanized_hot_dip, thickness: 3 mm}
    jobs.lids.items.FRAME.preparation: sand

    Given zinc that is only degreased
    jobs.refit.items.STEP.substrate.zinc_state: fully_weathered

    Given zinc that is only degreased
    preparations.zinc.steps.etch: {id: etch, do: conversion, text: Convert with T-wash until the zinc turns black; rinse., unrinsed_acid: no}
Fails
    Given zinc that is only degreased
    jobs.refit.items.STEP.substrate.zinc_state: new    # at preparations.zinc.steps

    Given zinc that is only degreased
    jobs.refit.items.STEP.substrate.zinc_state: partly_weathered    # at preparations.zinc.steps
    preparations.zinc.steps.runs: {id: runs, do: power-tool, text: File off runs and spikes without cutting through to steel.}
To put right
    Add a step: sweep-blast with fine non-metallic abrasive (SSPC-SP 16), abrade all over, or convert (T-wash); or begin with a wash primer.
"""

import re

from specgen.facts.pairs.overcoat import overcoating
from specgen.facts.pairs.parts import WORKING, is_jetting, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import WARNING, Preparation, Problem, Problems, Spec, date, rule, table

_MATRIX = table("overcoat_matrix")
_SOURCE = _MATRIX.row_citation(next(row for row in _MATRIX.rows if (row["new"], row["old"]) == ("epoxy", "galvanized")))
# Filing off the runs of the zinc bath is no key for the paint.
_TOOLS = {StepKind.HAND_TOOL, StepKind.POWER_TOOL}
_DRESSES = re.compile(r"\b(?:runs?|spikes?|drips?|dross|ash|lumps|tears|high spots)\b", re.I)
_ALL_OVER = re.compile(r"\b(?:all over|whole|entire|roughen|abrad\w*|matt)\b", re.I)
_KEY = {"abrade", "sweep"}


@rule("SUB014", on=Preparation, severity=WARNING, source=_SOURCE)
def zinc_keyed(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if any(_keys(step) for step in preparation.steps):
        return
    for part in prepared_with(preparation, spec):
        product = spec.product_of(part.system.layers[0])
        if not (part.is_zinc and part.is_bare_metal) or part.substrate.zinc_state == "fully_weathered":
            continue
        asked = overcoating(product.binder, part.material)
        if any(_KEY & set(choice) for choice in asked.needs):
            what = f"no step roughens or converts {part.name} before {product.id}"
            yield Problem(("steps",), what, source=asked.citation)


def _keys(step: PreparationStep) -> bool:
    if step.do in _TOOLS and _DRESSES.search(step.text) and not _ALL_OVER.search(step.text):
        return False
    return step.do in WORKING or step.do is StepKind.CONVERT or is_jetting(step)
