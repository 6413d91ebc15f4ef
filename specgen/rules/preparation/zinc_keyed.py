"""PRE027 Zinc is keyed before it is painted

Checks
    Parts of hot-dip galvanised steel whose zinc is stated as new: a step sweeps, grinds or sands it, or converts it, as phosphating or an etching wash do, or the first coat is a wash primer or etch primer. A nylon web alone and washing are for weathered zinc. Other zinc that is not stated as fully weathered is roughened or converted in any way, where its first coat needs a key (table overcoat_matrix); filing off runs is none.
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

    Given zinc that is only degreased

    Given zinc that is only degreased
    products.barrier.binder: acrylic_wb
    jobs.refit.items.STEP.substrate.zinc_state: partly_weathered
Fails
    Given zinc that is only degreased
    jobs.refit.items.STEP.substrate.zinc_state: partly_weathered    # at preparations.zinc.steps
    preparations.zinc.steps.runs: {id: runs, do: power-tool, text: File off runs and spikes without cutting through to steel.}

    Given zinc that is only degreased
    jobs.refit.items.STEP.substrate: {material: galvanized_electro, thickness: 3 mm}    # at preparations.zinc.steps

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
from specgen.facts.pairs.overcoat import overcoating
from specgen.facts.pairs.papers import papers_in
from specgen.facts.pairs.parts import BLASTING, WORKING, Part, is_jetting, prepared_with
from specgen.model.preparation import PreparationStep, StepKind
from specgen.rules.kit import WARNING, Preparation, Problem, Problems, Spec, cell_citation, date, rule

_KEYS = BLASTING | {StepKind.CONVERT, StepKind.POWER_TOOL}
_KEY = {"abrade", "sweep"}
_RUNS = re.compile(r"\b(?:runs?|spikes?|drips?|dross|ash|lumps|tears|high spots)\b", re.I)
_ALL_OVER = re.compile(r"\b(?:all over|whole|entire|roughen|abrad\w*|matt)\b", re.I)
_IN_WORDS = re.compile(r"\betch|\bT.?wash|phosphat|mordant", re.I)


@rule("PRE027", on=Preparation, severity=WARNING, source=cell_citation("substrates", "galvanized_hot_dip", "key"))
def zinc_keyed(preparation: Preparation, spec: Spec, on: date) -> Problems:
    if any(_keys(step) for step in preparation.steps):
        return
    for part in prepared_with(preparation, spec):
        new = part.material == "galvanized_hot_dip" and part.substrate.zinc_state == "new"
        if new and part.is_bare and spec.product_of(part.system.layers[0]).binder not in ETCHING:
            yield Problem(("steps",), f"the zinc of {part.name} is new, and no step of {preparation.id} keys it")
            return
        if _smooth(part, spec):
            first = spec.product_of(part.system.layers[0]).id
            yield Problem(("steps",), f"no step of {preparation.id} roughens or converts {part.name} before {first}")
            return


def _smooth(part: Part, spec: Spec) -> bool:
    """Zinc of another or unknown state that nothing works at all, below a coat that needs a key."""
    if not part.is_zinc or not part.is_bare or part.substrate.zinc_state in {"new", "fully_weathered"}:
        return False
    needs = overcoating(spec.product_of(part.system.layers[0]).binder, part.material).needs
    return any(_KEY & set(choice) for choice in needs) and not any(_roughens(step) for step in part.preparation.steps)


def _roughens(step: PreparationStep) -> bool:
    return (step.do in WORKING and not _only_dresses(step)) or is_jetting(step)


def _only_dresses(step: PreparationStep) -> bool:
    """Filing off the runs of the zinc bath is no key for the paint."""
    tools = step.do in {StepKind.HAND_TOOL, StepKind.POWER_TOOL}
    return tools and _RUNS.search(step.text) is not None and _ALL_OVER.search(step.text) is None


def _keys(step: PreparationStep) -> bool:
    if step.do is StepKind.SAND:
        return bool(papers_in(step.abrasive)) or step.medium != "nylon_web"
    return (step.do in _KEYS and not _only_dresses(step)) or _IN_WORDS.search(step.text) is not None
