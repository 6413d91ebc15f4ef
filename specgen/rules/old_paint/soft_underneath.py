"""OLD018 A soft existing coat is hardened or removed before it is overcoated

Checks
    Each existing coat that stays and is stated not to be through-dry (cured: no), unless its stated age is within the longest published overcoating interval, as that of a primer laid the day before, or a step or an inspection point speaks of its hardening. A pair that the tables refuse on a fresh coat is told there.
Why
    A coat that is soft underneath still has solvent in it or draws air to harden: shut in beneath new paint it stays soft, and both coats wrinkle, dent and come off together.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: no, age: 96 h}]

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, sound: yes, cured: yes}]

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: no}]
    preparations.sand-steel.steps.strip: {id: strip, do: strip, text: Strip to the metal.}

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: no}]
    preparations.sand-steel.steps.warm: {id: warm, do: test, text: Bake with infrared lamps at 60 degC until a thumbnail leaves no mark., acceptance: No mark.}
Fails
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: no}]    # at jobs.refit.items.DOOR.old_coats.shop.cured

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: no, age: 97 h}]    # at jobs.refit.items.DOOR.old_coats.shop.cured

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: no}, {id: factory, family: oem_finish, thickness: 60 um}]    # at jobs.refit.items.DOOR.old_coats.shop.cured

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: pu_2k_aliphatic, thickness: 3 mil, sound: yes, cured: no}    # at jobs.rails.items.LOCKER.old_coats.later.cured
To put right
    Let the coat harden, warm it, or take it off; say in a step or an inspection point how its hardness is shown, as with a thumbnail.
"""

import re

from specgen.facts.job.stack import OldLayer, Stack, stacks
from specgen.facts.pairs.old_paint import top_pair
from specgen.rules.kit import PRACTICE, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, table

_HARDENS = re.compile(
    r"\b(hard\w*|cure[sd]?|curing|bak\w+|stov\w+|infra-?red|force[- ]dr\w+|thumb\w*)\b", re.IGNORECASE
)


@rule("OLD018", on=Job, severity=WARNING, source=PRACTICE)
def soft_underneath(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        fresh = [old for old in stack.old if old.fresh]
        if not fresh or _hardens(stack, job, spec):
            continue
        for old in fresh:
            if not _lately_laid(old) and not _refused(old, stack):
                what = f"{stack.item.id}: {old.name} is stated not to be through-dry, and it is overcoated as it is"
                yield Problem((*old.path, "cured"), what, absolute=True)


def _lately_laid(old: OldLayer) -> bool:
    longest = max(int(row["most_h"]) for row in table("recoat_windows").rows if row["most_h"])
    return old.coat.age is not None and old.coat.age <= Quantity.of("duration", longest, "h")


def _refused(old: OldLayer, stack: Stack) -> bool:
    pair = top_pair(stack)
    return pair is not None and pair.old is old and pair.verdict.refused


def _hardens(stack: Stack, job: Job, spec: Spec) -> bool:
    preparation = spec.preparation_of(job, stack.item)
    said = [step.text for step in preparation.steps] if preparation is not None else []
    said += [f"{point.check} {point.criterion.text or ''}" for point in job.inspection if point.after is None]
    return any(_HARDENS.search(text) for text in said)
