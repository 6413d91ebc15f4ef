"""OLD007 No solvent-borne paint over bitumen at any depth

Checks
    Every existing coat that remains: where one is bitumen or coal tar, which new coat is applied over it. For waterborne paint this is a warning.
Why
    Tar dissolves into the new coat and stains it brown, coat after coat; and the hard new coat cracks over what stays soft.
Passes
    jobs.refit.items.STEP.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um}]
Fails
    jobs.refit.items.STEP.old_coats: [{id: tar, family: bituminous, thickness: 60 um}]    # at jobs.refit.items.STEP.old_coats.tar.family

    jobs.refit.items.DOOR.old_coats: [{id: tar, family: bituminous, thickness: 60 um}, {id: shop, family: epoxy_2k, thickness: 40 um}]    # warning at jobs.refit.items.DOOR.old_coats.tar.family

    Given second good
    jobs.rails.items.LOCKER.old_coats.works: {id: works, family: bituminous, thickness: 2 mil}    # at jobs.rails.items.LOCKER.old_coats.works.family

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: bituminous, thickness: 2 mil}    # at jobs.rails.items.LOCKER.old_coats.later.family
To put right
    Remove the bitumen; or seal it with waterborne paint, proven by a patch test with a written limit.
"""

from specgen.facts.job.stack import NewLayer, stacks
from specgen.facts.pairs.families import binder_family
from specgen.facts.pairs.overcoat import overcoating, table_row, weakest
from specgen.rules.kit import ERROR, WARNING, Citation, Job, Problem, Problems, Spec, cell_citation, date, rule

_BITUMEN = "bituminous"
_WATERBORNE = "acrylic_wb"


@rule("OLD007", on=Job, severity=ERROR, source=table_row("mechanisms", "bleeding"))
def bitumen_bleeds(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        for old in stack.old:
            if old.family != _BITUMEN or stack.first is None:
                continue
            deep = "" if old is stack.top_of_old else ", through the coats between"
            what = f"{stack.item.id}: {stack.first.layer.id} is applied over {old.name} (bitumen), which bleeds into it{deep}"
            weight = WARNING if stack.first.family == _WATERBORNE else None
            yield Problem((*old.path, "family"), what, severity=weight, source=_ground(stack.first), absolute=True)


def _ground(new: NewLayer) -> Citation:
    """The handbook on bleeding; weaker where it is not known that the new paint is a strong solvent."""
    pair = overcoating(new.family, _BITUMEN)
    if pair.refused and pair.citation.basis.confirmed:
        return pair.citation
    bites = cell_citation("binder_families", new.family, "solvent_strength")
    strong = binder_family(new.family)["solvent_strength"] == "strong"
    return weakest(table_row("mechanisms", "bleeding"), bites if strong else pair.citation)
