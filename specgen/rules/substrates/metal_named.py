"""SUB010 The metal of a part is named

Checks
    Each job and each item whose material is stated as a metal that is not named.
Why
    Surface preparation, first coat, profile, gauge and galvanic corrosion are assessed by the metal. Where it is not named none of this is assessed for the part.
Passes
    jobs.refit.substrate.material: steel_hot_rolled
Fails
    jobs.refit.substrate.material: not-named    # at jobs.refit.substrate.material

    Given second good
    jobs.lids.items.FRAME.substrate.material: not-named    # at jobs.lids.items.FRAME.substrate.material
To put right
    Name the metal, or have it found out on the part (magnet, spark test or analysis) before the preparation is chosen.
"""

from specgen.facts.pairs.families import NOT_NAMED
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("SUB010", on=Job, severity=NOTE, source=LOGIC)
def metal_named(job: Job, spec: Spec, on: date) -> Problems:
    stated = [((), job.substrate), *((("items", item.id), item.substrate) for item in job.items)]
    for path, substrate in stated:
        if substrate is not None and substrate.material == NOT_NAMED:
            what = "the metal is not named, so nothing that depends on the metal is assessed for these parts"
            yield Problem((*path, "substrate", "material"), what)
