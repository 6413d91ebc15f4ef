"""OLD001 The data on an existing coating are consistent

Checks
    Each existing coat: the solvent rub against the generic type and the cure, the age of a cured coat, soundness against measured adhesion, classes against their scales.
Why
    Two statements that cannot both be true mean that the wrong coat was examined or the wrong name written down; every assessment of the new paint would rest on it.
Passes
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, rub: resistant, cured: yes, age: 12 years, cross_cut: 1, tape: 4B, chalking: 0, sound: yes}]

    Given second good
    jobs.rails.items.LOCKER.old_coats.later: {id: later, family: pu_2k_aliphatic, thickness: 3 mil, sound: yes, rub: softens, cured: no, age: 2 days}

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, cross_cut: 2, chalking: 5, sound: yes}]
Fails
    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, rub: soluble, cured: yes}]    # at jobs.refit.items.DOOR.old_coats.shop.rub

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, cured: yes, age: 0 days}]    # at jobs.refit.items.DOOR.old_coats.shop.age

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, sound: yes, cross_cut: 4}]    # at jobs.refit.items.DOOR.old_coats.shop.sound    # also OLD008 at jobs.refit.items.DOOR.old_coats.shop.cross_cut

    jobs.refit.items.DOOR.old_coats: [{id: shop, family: epoxy_2k, thickness: 60 um, chalking: 7}]    # at jobs.refit.items.DOOR.old_coats.shop.chalking

    Given second good
    jobs.rails.items.LOCKER.old_coats.later.rub: softens
    jobs.rails.items.LOCKER.old_coats.later.cured: yes    # at jobs.rails.items.LOCKER.old_coats.later.rub

    Given second good
    jobs.rails.items.LOCKER.old_coats.later.cross_cut: 6    # at jobs.rails.items.LOCKER.old_coats.later.cross_cut    # at jobs.rails.items.LOCKER.old_coats.later.sound
    jobs.rails.items.LOCKER.old_coats.later.chalking: 6    # at jobs.rails.items.LOCKER.old_coats.later.chalking    # also OLD008 at jobs.rails.items.LOCKER.old_coats.later.cross_cut

    jobs.refit.items.STEP.old_coats: [{id: house, family: acrylic_1k, thickness: 60 um, rub: resistant}]    # at jobs.refit.items.STEP.old_coats.house.rub    # also OLD005 at jobs.refit.items.STEP.old_coats.house

    jobs.refit.items.STEP.old_coats: [{id: factory, family: epoxy_2k, thickness: 60 um, sound: yes, tape: 2B}]    # at jobs.refit.items.STEP.old_coats.factory.sound    # also OLD008 at jobs.refit.items.STEP.old_coats.factory.tape
To put right
    Go back to the part: rub it again with MEK, measure adhesion again, and record what is found; leave out what is unknown.
"""

from specgen.facts.pairs.adhesion import weak_adhesion
from specgen.model.job import WORST_CLASS, OldCoat, RubResult
from specgen.rules.kit import ERROR, LOGIC, Job, Path, Problem, Problems, Spec, cell_citation, date, rule, table


@rule("OLD001", on=Job, severity=ERROR, source=LOGIC)
def old_stack_agrees(job: Job, spec: Spec, on: date) -> Problems:
    for item in job.items:
        for coat in item.old_coats:
            path = ("items", item.id, "old_coats", coat.id)
            yield from _rub(coat, path)
            yield from _scales(coat, path)
            if coat.cured and coat.age is not None and coat.age.base == 0:
                yield Problem(
                    (*path, "age"), f"{_name(item.id, coat)} is stated to be fully cured at an age of {coat.age}"
                )
            weak = weak_adhesion(coat)
            if coat.sound and weak is not None:
                yield Problem(
                    (*path, "sound"),
                    f"{_name(item.id, coat)} is stated to be sound, but its adhesion is poor ({weak.words})",
                )


def _rub(coat: OldCoat, path: Path) -> Problems:
    if coat.family is None or coat.rub is None:
        return
    family = table("binder_families").row("id", coat.family)
    usual = family["cured_rub"]
    pair = {usual, coat.rub.value}
    if pair == {"soluble", "resistant"} or (
        pair == {"softens", "resistant"} and coat.rub is RubResult.SOFTENS and coat.cured
    ):
        what = f"{coat.id} {_shown(coat.rub)}, but is stated to be {family['name']}, which once cured {_shown(RubResult(usual))}"
        yield Problem((*path, "rub"), what, source=cell_citation("binder_families", coat.family, "cured_rub"))


def _name(item: str, coat: OldCoat) -> str:
    return f"the existing coat {coat.id} of {item}"


def _shown(rub: RubResult) -> str:
    return "softens in the solvent rub" if rub is RubResult.SOFTENS else f"is {rub} in the solvent rub"


def _scales(coat: OldCoat, path: Path) -> Problems:
    for name, scale in (("cross_cut", "ISO 2409"), ("chalking", "ISO 4628-6")):
        value = getattr(coat, name)
        if value is not None and value > WORST_CLASS:
            yield Problem(
                (*path, name),
                f"class {value} of {_name(path[1], coat)}: the classes of {scale} run from 0 to {WORST_CLASS}",
            )
