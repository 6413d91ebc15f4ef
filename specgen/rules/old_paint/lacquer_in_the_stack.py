"""OLD006 No polyurethane over lacquer at any depth

Checks
    Every existing coat that remains: where one is nitrocellulose or one-pack acrylic lacquer, no new coat is a polyurethane. The outermost existing coat beneath the first new one has its own rule.
Why
    The solvent of polyurethane penetrates the coats between: on army vehicles it blistered over lacquer even where alkyd lay between. The army lacquer was nitrocellulose; acrylic is assessed by analogy.
Passes
    jobs.refit.items.STEP.old_coats: [{id: first, family: nitrocellulose, thickness: 30 um}, {id: shop, family: oem_finish, thickness: 60 um}]

    Given second good
    products.gloss.binder: acrylic_wb
    jobs.rails.items.LOCKER.old_coats.works.family: nitrocellulose
    without jobs.rails.items.LOCKER.old_coats.works.rub
    products.gloss.hazards.isocyanates: {contained: no}

    jobs.refit.items.STEP.old_coats: [{id: first, family: acrylic_1k, thickness: 30 um}, {id: shop, family: oem_finish, thickness: 60 um}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: first, family: nitrocellulose, thickness: 30 um}, {id: shop, family: oem_finish, thickness: 60 um}]    # warning at jobs.refit.items.DOOR.old_coats.first.family

    Given second good
    jobs.rails.items.LOCKER.old_coats.works: {id: works, family: acrylic_1k, thickness: 2 mil, sound: yes}    # warning at jobs.rails.items.LOCKER.old_coats.works.family

    jobs.refit.items.DOOR.old_coats: [{id: base, family: oem_finish, thickness: 30 um}, {id: first, family: nitrocellulose, thickness: 30 um}, {id: shop, family: oem_finish, thickness: 60 um}]    # warning at jobs.refit.items.DOOR.old_coats.first.family
To put right
    Strip to the metal, or finish with a paint whose solvent is mild.
"""

from specgen.facts.job.stack import OldLayer, Stack, stacks
from specgen.facts.pairs.overcoat import overcoating, weakest
from specgen.facts.pairs.parts import members
from specgen.rules.kit import ERROR, PRACTICE, Job, Problem, Problems, Spec, date, rule

_LACQUERS = {"nitrocellulose", "acrylic_1k"}
_TOLD_OF = "nitrocellulose"


@rule(
    "OLD006",
    on=Job,
    severity=ERROR,
    source=overcoating("pu_2k_aliphatic", _TOLD_OF).citation,
)
def lacquer_in_the_stack(job: Job, spec: Spec, on: date) -> Problems:
    for stack in stacks(job, spec):
        for old in stack.old:
            if old.family in _LACQUERS and not _lifted_at_once(stack, old):
                yield from _under_polyurethane(stack, old)


def _lifted_at_once(stack: Stack, old: OldLayer) -> bool:
    return (
        old is stack.top_of_old and stack.first is not None and overcoating(stack.first.family, str(old.family)).refused
    )


def _under_polyurethane(stack: Stack, old: OldLayer) -> Problems:
    above = next((new for new in stack.new if new.family in members("pu")), None)
    if above is None:
        return
    cited = overcoating(above.family, _TOLD_OF).citation
    if old.family != _TOLD_OF:
        cited = weakest(cited, PRACTICE)
    what = (
        f"{stack.item.id}: the polyurethane {above.layer.id} is applied over {old.name}, a lacquer; its solvent blisters the coating "
        "even with other coats between"
    )
    yield Problem((*old.path, "family"), what, source=cited, absolute=True)
