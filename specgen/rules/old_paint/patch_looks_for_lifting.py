"""OLD019 A patch test on paint that may lift looks for lifting

Checks
    A patch test that passed, where the tables require one because the solvents of the first new coat may lift the outermost existing coat: its written limit speaks of lifting, wrinkling, swelling, softening or blistering, or of how the patch looks, and not of adhesion alone.
Why
    Strong solvents swell an old alkyd within the hour: it wrinkles, or it stays soft under a film that passes a cross-cut in the middle of the patch. Where the limit reads adhesion alone, the edge of the patch that lifted is no failure.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, lead: no, chromate: no}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: no lifting in 48 h and class 1 of ISO 2409 after 7 days}

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, rub: softens, lead: no, chromate: no}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: Edge and face unchanged by eye after 24 h; cross-cut class 1 after 7 days}
Fails
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: oil_alkyd, thickness: 60 um, cured: yes, sound: yes, lead: no, chromate: no}]
    jobs.refit.items.DOOR.patch_test: {result: pass, limit: Cross-cut class 1 or better after 7 days}    # at jobs.refit.items.DOOR.patch_test.limit

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: oil_alkyd, thickness: 3 mil, sound: yes, cured: yes, rub: softens, lead: no, chromate: no}
    jobs.rails.items.LOCKER.patch_test: {result: pass, limit: 4B or better by ASTM D3359}    # at jobs.rails.items.LOCKER.patch_test.limit
To put right
    Write into the limit what the edge and the face of the patch may show, as no lifting or wrinkling after 24 to 48 h; look at the patch once more by it, or choose a first coat with milder solvents.
"""

import re

from specgen.facts.pairs.old_paint import MADE_FOR_METAL, citation_of, top_pairs
from specgen.model.job import RubResult
from specgen.rules.kit import WARNING, Job, Problem, Problems, Spec, date, rule

_LIFTS = re.compile(
    r"lift|wrinkl|crinkl|swell|swoll|soft|blister|bubbl|unchanged|intact|defect|visual|by eye|appearance|attack|damage|smooth|stain|bleed|discolou?r|browning",
    re.IGNORECASE,
)


@rule("OLD019", on=Job, severity=WARNING, source=citation_of("patch_test"))
def patch_looks_for_lifting(job: Job, spec: Spec, on: date) -> Problems:
    for pair in top_pairs(job, spec):
        test = pair.stack.item.patch_test
        if pair.verdict.refused or not pair.verdict.patch_test or pair.new.family in MADE_FOR_METAL:
            continue
        if test is None or not pair.proven or _LIFTS.search(test.limit or ""):
            continue
        soft = ", which softens in the solvent rub," if pair.old.coat.rub is RubResult.SOFTENS else ""
        what = f"{pair.sentence()}; the limit of the patch test on {pair.old.name}{soft} reads adhesion alone and not whether it lifts"
        yield Problem(("items", pair.stack.item.id, "patch_test", "limit"), what)
