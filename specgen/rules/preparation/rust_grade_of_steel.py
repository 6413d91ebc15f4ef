"""PRE025 Rust grades are stated for carbon steel

Checks
    Each part whose substrate states a rust grade: it is carbon steel or cast iron. On aluminium, copper, magnesium, stainless steel and materials that are no metal it is an error; on galvanised steel, whose zinc may be used up, a warning.
Why
    Rust grades describe the mill scale and rust of uncoated carbon steel. On another metal the inspector has nothing to compare it with, and the wrong preparation follows from it.
Passes
    jobs.refit.substrate.rust_grade: B

    jobs.refit.items.STEP.substrate: {material: cast_iron, thickness: 3 mm, rust_grade: C}
Fails
    jobs.refit.items.STEP.substrate: {material: aluminium, thickness: 3 mm, rust_grade: B}    # at jobs.refit.items.STEP.substrate.rust_grade

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm, rust_grade: C}    # warning at jobs.refit.items.STEP.substrate.rust_grade

    jobs.refit.substrate: {material: stainless, thickness: 3 mm, rust_grade: A}    # at jobs.refit.substrate.rust_grade
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
To put right
    Leave the rust grade out and describe the surface in words under condition; or correct the material.
"""

from specgen.facts.pairs.parts import members, parts_of
from specgen.rules.kit import ERROR, LOGIC, WARNING, Job, Path, Problem, Problems, Spec, date, rule


@rule("PRE025", on=Job, severity=ERROR, source=LOGIC)
def rust_grade_of_steel(job: Job, spec: Spec, on: date) -> Problems:
    told: set[Path] = set()
    for part in parts_of(job, spec):
        own: Path = ("items", part.item.id) if part.item.substrate is not None else ()
        path = (*own, "substrate", "rust_grade")
        steel = part.material in members("bare_steel") | {"cast_iron"}
        if part.substrate.rust_grade is None or steel or path in told:
            continue
        told.add(path)
        what = f"rust grade {part.substrate.rust_grade} is stated for {part.name}, but rust grades are those of carbon steel"
        yield Problem(path, what, severity=WARNING if part.is_zinc else None)
