"""OLD005 The first coat does not lift the old paint

Checks
    The first new coat over the top old coat: strong solvent over paint that dissolves (lacquer, vinyl, chlorinated rubber, whatever the rag takes off), and solvent over alkyd that is not hard through.
Why
    The solvent swells or dissolves the old coat; it wrinkles and blisters within minutes and no later coat hides it.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, rub: resistant}]
Fails
    jobs.refit.items.STEP.old_coats: [{id: shop, family: vinyl, thickness: 60 um}]    # at jobs.refit.items.STEP.old_coats.shop

    jobs.refit.items.STEP.old_coats: [{id: found, thickness: 60 um, rub: soluble}]    # at jobs.refit.items.STEP.old_coats.found
To put right
    Strip the old coat; or wait until it is hard; or seal it with waterborne paint, proven by a patch test with a written limit.
"""

from __future__ import annotations

from collections.abc import Iterator

from specgen.findings import Severity
from specgen.model.job import Job
from specgen.model.senses import Concern
from specgen.model.spec import Spec
from specgen.plan.overcoat import table_row
from specgen.rules.declare import Problem, rule
from specgen.rules.old_paint.pairs import MADE_FOR_METAL, top_pairs


@rule(
    "OLD005", on=Job, severity=Severity.ERROR, concern=Concern.COMPATIBILITY, source=table_row("mechanisms", "lifting")
)
def top_coat_lifts(job: Job, spec: Spec) -> Iterator[Problem]:
    for pair in top_pairs(job, spec):
        if pair.lifts and pair.new.family not in MADE_FOR_METAL:
            yield Problem(pair.old.path, pair.said(), source=pair.verdict.citation, absolute=True)
