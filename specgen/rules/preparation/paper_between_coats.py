"""PRE018 The last paper between two coats suits them

Checks
    The last paper named in what is done to a filler or body filler before the next coat, against the window of its task: filler below a base coat, filler below a two-pack colour, body filler below anything.
Why
    A base coat is thin: it draws coarse scratches, and on a ground sanded too fine the next coat peels.
Passes
    products.primer.roles: [filler]
    systems.cab.layers.primer.role: filler
    systems.cab.layers.primer.before_next: Sand with P400, then P500 until level.
Fails
    products.primer.roles: [filler]
    systems.cab.layers.primer.role: filler
    systems.cab.layers.primer.before_next: Sand with P240 until level.    # at systems.cab.layers.primer.before_next
To put right
    End with a paper inside the window named.
"""

from specgen.facts.pairs.papers import consequence, outside, papers_in, task
from specgen.rules.kit import PRACTICE, WARNING, Layer, Problem, Problems, Role, Spec, System, date, rule, table

_STAGES = table("sanding_stages")


@rule("PRE018", on=System, severity=WARNING, source=PRACTICE)
def paper_between_coats(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        name, papers = _task(below, above), papers_in(below.before_next)
        if not name or not papers:
            continue
        row = task(name)
        if side := outside(papers[-1], row):
            window = f"P{row['coarsest_p']} to P{row['finest_p']} for {row['task']}"
            what = f"P{papers[-1]} between {below.id} and {above.id} is {side} than {window}: {consequence(side)}"
            yield Problem(("layers", below.id, "before_next"), what, source=_STAGES.row_citation(row))


def _task(below: Layer, above: Layer) -> str:
    if below.role is Role.BODY_FILLER:
        return "filler_finish"
    if below.role is not Role.FILLER:
        return ""
    return {Role.BASE_COAT: "surfacer_before_basecoat", Role.TOP_COAT: "surfacer_before_solid_2k"}.get(above.role, "")
