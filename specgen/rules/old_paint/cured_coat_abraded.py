"""OLD017 A cured existing coating is abraded before the first new coat

Checks
    Each part on which an existing coating stays, a repaired spot included: a step of its preparation takes the gloss off it by sanding, sweeping, power tools or water jetting, or a ring of it is abraded around the repair, or the first new coat is a tie coat. Not judged are coats that are not through-dry, lacquers that their own kind dissolves, and a coat of the first product's own generic type that is stated to be younger than its overcoating interval; an age that is not stated counts as past it. What another rule asks of powder coating, of electrocoat and of a stoved finish is not asked twice.
Why
    A cured film is past its overcoating interval: washed and wiped it is clean, but nothing bites into it, and the new coat peels off in sheets at the first stone or the first frost, also where old and new are the same paint.
Passes
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes, cured: yes, age: 700 days}]

    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes, age: 3 days}]
    jobs.refit.items.STEP.preparation: wipe
    products.barrier.overcoat: [{id: itself, next_coat: itself, interval: 8 h..30 days, air: 15 degC}]
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}

    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes, cured: yes}]
    jobs.refit.items.STEP.preparation: jet
    preparations.jet: {id: jet, title: Jet, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}, {id: jet, do: wash, text: Jet at ultra-high pressure., grade: WJ-2}], coat_within: 4 h}

    Given second good
    preparations.abrade.steps.sand: {id: sand, do: power-tool, text: Abrade., grade: P Ma}
Fails
    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes, cured: yes}]    # at jobs.refit.items.STEP.old_coats.works
    jobs.refit.items.STEP.preparation: wipe
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}

    jobs.refit.items.STEP.old_coats: [{id: works, family: epoxy_2k, thickness: 60 um, sound: yes, age: 31 days}]    # at jobs.refit.items.STEP.old_coats.works
    jobs.refit.items.STEP.preparation: wipe
    products.barrier.overcoat: [{id: itself, next_coat: itself, interval: 8 h..30 days, air: 15 degC}]
    preparations.wipe: {id: wipe, title: Wipe, steps: [{id: degrease, do: degrease, text: Wipe with degreaser., acceptance: A white cloth stays white.}], coat_within: 4 h}

    Given second good
    preparations.abrade.steps.feather: {id: feather, do: degrease, text: Degrease.}
    without jobs.rails.items.LOCKER.repair
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: epoxy_2k, thickness: 3 mil, sound: yes, rub: resistant}
    preparations.abrade.steps.sand: {id: sand, do: test, text: Look., acceptance: No gloss.}    # at jobs.rails.items.LOCKER.old_coats.later
To put right
    Add a step that abrades the existing coating matt all over, or around the repair; or state the age of the coat and the interval its product allows.
"""

from specgen.facts.job.stack import Stack, stacks
from specgen.facts.layer.intervals import windows_for
from specgen.facts.pairs.answers import DULLING, answered_by_preparation
from specgen.facts.pairs.families import binder_family
from specgen.facts.pairs.old_paint import MADE_FOR_METAL, top_pair
from specgen.facts.pairs.parts import is_jetting
from specgen.rules.kit import PRACTICE, WARNING, Concern, Job, Preparation, Problem, Problems, Spec, date, rule

# Stoved finishes are asked to be abraded by rules of their own.
_STOVED = {"powder", "ecoat"}


@rule("OLD017", on=Job, severity=WARNING, concern=Concern.PREPARATION, source=PRACTICE)
def cured_coat_abraded(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        old, new, preparation = stack.top_of_old, stack.first, spec.preparation_of(job, stack.item)
        if old is None or new is None or preparation is None:
            continue
        told = old.fresh or old.family in _STOVED or new.family in MADE_FOR_METAL or _told_of_the_pair(stack)
        if told or _dulled(stack, preparation) or _young(stack, spec):
            continue
        age = f"its age is {old.coat.age}" if old.coat.age is not None else "its age is not stated"
        what = f"{stack.item.id}: {old.name} is not abraded before {new.layer.id}; {age}"
        yield Problem(old.path, what, absolute=True)


def _told_of_the_pair(stack: Stack) -> bool:
    """True where the pair is refused, dissolves into one, or is accepted on no other condition than abrading."""
    pair = top_pair(stack)
    if pair is None:
        return False
    same = pair.old.family == pair.new.family and binder_family(pair.new.family)["cure"] == "physical"
    return same or pair.verdict.refused or ("abrade",) in pair.verdict.needs


def _dulled(stack: Stack, preparation: Preparation) -> bool:
    ring = stack.item.repair.sanded if stack.item.repair is not None else None
    jetted = any(is_jetting(step) for step in preparation.steps)
    tied = stack.first is not None and stack.first.layer.tie_coat is True
    return bool(answered_by_preparation(preparation) & DULLING) or ring is not None or jetted or tied


def _young(stack: Stack, spec: Spec) -> bool:
    """True where the coat is stated to be younger than the interval that the first product states over itself."""
    old, new = stack.top_of_old, stack.first
    if old is None or new is None or old.coat.age is None or old.family != new.family:
        return False
    ends = [window.interval.high for window in windows_for(new.layer, new.layer, spec)]
    return bool(ends) and all(end is None or old.coat.age <= end for end in ends)
