"""SUB009 Dissimilar metals are insulated and the nobler one is painted

Checks
    Parts with attached metals that are left uncoated: the joint is sealed, and the painted metal is not the less noble of the two. A joint whose sealing is not stated cannot be assessed. Where nobler metal is joined without a seal to a part that is immersed or splashed, or copper or stainless steel to aluminium in the corrosivity C5 or CX, or copper to aluminium or zinc outdoors, it is a warning; otherwise a note.
Why
    Galvanic corrosion: at a scratch in the paint a large bare cathode concentrates the whole attack on one spot of the less noble metal; a brown or white stain, then a hole.
Passes
    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 3 mm, attached_metals: [aluminium], joint_sealed: yes}

    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 3 mm, attached_metals: [steel_hot_rolled]}

    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 3 mm, attached_metals: [aluminium], joint_sealed: yes}
Fails
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm, attached_metals: [copper], joint_sealed: no}    # warning at jobs.refit.items.STEP.substrate.joint_sealed    # note at jobs.refit.items.STEP.substrate.attached_metals
    jobs.refit.items.STEP.environment: {kind: splash, medium: sea-water}

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm, attached_metals: [stainless], joint_sealed: no}    # warning at jobs.refit.items.STEP.substrate.joint_sealed    # note at jobs.refit.items.STEP.substrate.attached_metals
    jobs.refit.items.STEP.environment: {kind: atmosphere, category: C5}

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm, attached_metals: [copper], joint_sealed: no}    # warning at jobs.refit.items.STEP.substrate.joint_sealed    # note at jobs.refit.items.STEP.substrate.attached_metals
    jobs.refit.items.STEP.exposure: exterior    # also LAY008 at jobs.refit.items.STEP.exposure

    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm, attached_metals: [stainless], joint_sealed: no}    # note at jobs.refit.items.STEP.substrate.joint_sealed    # note at jobs.refit.items.STEP.substrate.attached_metals
    jobs.refit.items.STEP.environment: {kind: atmosphere, category: C4}

    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 3 mm, attached_metals: [stainless], joint_sealed: no}    # at jobs.refit.items.STEP.substrate.joint_sealed    # also SUB009 at jobs.refit.items.STEP.substrate.attached_metals

    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 3 mm, attached_metals: [aluminium]}    # at jobs.refit.items.STEP.substrate.joint_sealed

    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 3 mm, attached_metals: [aluminium, stainless], joint_sealed: yes}    # at jobs.refit.items.STEP.substrate.attached_metals

    jobs.refit.substrate.attached_metals: [aluminium]
    jobs.refit.substrate.joint_sealed: no    # at jobs.refit.substrate.joint_sealed
    jobs.refit.items.STEP.substrate: {material: steel_cold_rolled, thickness: 3 mm}
To put right
    Seal or insulate the joint; paint both metals, or at least the nobler one.
"""

from specgen.facts.job.exposure import exposure_of, in_water, severe_service
from specgen.facts.pairs.parts import Part, parts_of
from specgen.model.job import Exposure
from specgen.rules.kit import NOTE, WARNING, Job, Problem, Problems, Spec, date, rule, table

_RULES = table("galvanic_rules")
_BOTH = _RULES.row_citation(_RULES.row("id", "both_members"))


@rule("SUB009", on=Job, severity=WARNING, source=_BOTH)
def unlike_metals(job: Job, spec: Spec, on: date) -> Problems:
    order = {row["material"]: int(row["order"]) for row in table("galvanic_series").rows}
    for part in parts_of(job, spec):
        own = order.get(part.material)
        others = [metal for metal in part.substrate.attached_metals if order.get(metal, own) != own]
        if own is None or not others:
            continue
        owner = ("items", part.item.id) if part.item.substrate is not None else ()
        path, named = (*owner, "substrate"), ", ".join(table("materials").row("id", metal)["name"] for metal in others)
        nobler = [metal for metal in others if order[metal] > own]
        if part.substrate.joint_sealed is None:
            what = f"cannot be assessed: whether the joint of {part.name} to {named} is sealed is not stated"
            yield Problem((*path, "joint_sealed"), what, "write joint_sealed: yes or no", NOTE)
        elif not part.substrate.joint_sealed:
            weight = WARNING if nobler and _attacked(part, nobler) else NOTE
            what = f"the joint of {part.name} to bare {named} is not sealed"
            yield Problem((*path, "joint_sealed"), what, severity=weight)
        if nobler and part.substrate.joint_sealed is not None:
            what = f"only {part.name} is painted; left uncoated in contact with it, and nobler: {named}"
            source = _RULES.row_citation(_RULES.row("id", "not_anode_alone"))
            yield Problem((*path, "attached_metals"), what, severity=NOTE, source=source)


def _attacked(part: Part, nobler: list[str]) -> bool:
    """Whether wet or salt carries the current: in water always, in hard air for the wide pairs alone."""
    if in_water(part.job, part.item):
        return True
    hard, light = severe_service(part.job, part.item, part.system), part.material in {"aluminium", "magnesium"}
    copper, outdoors = "copper" in nobler, exposure_of(part.job, part.item) is Exposure.EXTERIOR
    wide = copper and (light or part.material.startswith("galvanized"))
    return (hard and light and bool({"copper", "stainless"} & {*nobler})) or (wide and (hard or outdoors))
