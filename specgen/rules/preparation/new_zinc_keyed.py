"""PRE027 New hot-dip zinc is keyed before it is painted

Checks
    Parts of hot-dip galvanised steel whose zinc is stated as new: a step sweeps, grinds or sands it, or converts it, as phosphating or an etching wash do, or the first coat is a wash primer or etch primer. A nylon web alone and washing are for weathered zinc.
Why
    New zinc is smooth and often passivated. Paint on it looks sound for a season and then comes off in sheets, down to bright metal.
Passes
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm, zinc_state: new}

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm, zinc_state: partly_weathered}
    jobs.refit.items.STEP.preparation: scuff
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: scuff, do: sand, text: Scuff., medium: nylon_web}], coat_within: 4 h}

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm, zinc_state: new}
    jobs.refit.items.STEP.preparation: etch
    preparations.etch: {id: etch, title: Etch, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: etch, do: wash, text: "Brush on an etching wash until the zinc is black, rinse."}], coat_within: 4 h}
Fails
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm, zinc_state: new}
    jobs.refit.items.STEP.preparation: scuff
    preparations.scuff: {id: scuff, title: Scuff, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: scuff, do: sand, text: Scuff., medium: nylon_web}], coat_within: 4 h}    # at preparations.scuff.steps

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm, zinc_state: new}
    jobs.refit.items.STEP.preparation: wipe
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}], coat_within: 4 h}    # at preparations.wipe.steps
To put right
    Sweep-blast with a fine abrasive at low pressure, or use an etching wash or a phosphate treatment; where the manufacturer of the paint asks for neither, waive this with that statement.
"""

import re

from specgen.facts.pairs.families import ETCHING
from specgen.facts.pairs.papers import papers_in
from specgen.facts.pairs.parts import BLASTING, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import WARNING, Preparation, Problem, Problems, Spec, cell_citation, date, rule

_KEYS = BLASTING | {StepKind.CONVERT, StepKind.POWER_TOOL}
_IN_WORDS = re.compile(r"\betch|\bT.?wash|phosphat|mordant", re.I)


@rule("PRE027", on=Preparation, severity=WARNING, source=cell_citation("substrates", "galvanized_hot_dip", "key"))
def new_zinc_keyed(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if any(_keys(step) for step in preparation.steps):
        return
    for part in prepared_with(preparation, spec):
        new = part.material == "galvanized_hot_dip" and part.substrate.zinc_state == "new"
        if new and part.is_bare and spec.product_of(part.system.layers[0]).binder not in ETCHING:
            yield Problem(("steps",), f"the zinc of {part.name} is new, and no step of {preparation.id} keys it")
            return


def _keys(step: PreparationStep) -> bool:
    if step.do is StepKind.SAND:
        return bool(papers_in(step.abrasive)) or step.medium != "nylon_web"
    return step.do in _KEYS or _IN_WORDS.search(step.text) is not None
