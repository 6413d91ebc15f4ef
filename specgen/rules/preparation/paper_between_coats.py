"""PRE018 The last paper between two coats suits them

Checks
    The last paper named in what is done to a filler or body filler before the next coat, against the window of its task: filler below a base coat, filler below a two-pack colour, body filler below anything.
Why
    A base coat is thin: it draws coarse scratches, and on a ground sanded too fine the next coat peels.
Passes
    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.before_next: Sand with P400, then P500 until level.

    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.before_next: Sand with P400.

    Given second good
    systems.deck.layers.second.role: surfacer
    systems.deck.layers.second.before_next: Sand with P320.
Fails
    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.before_next: Sand with P240 until level.    # at systems.cab.layers.primer.before_next

    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.before_next: Sand with P600, then P800.    # at systems.cab.layers.primer.before_next

    Given second good
    systems.deck.layers.first.before_next: Sand with P80.
    systems.deck.layers.second.role: surfacer
    systems.deck.layers.second.before_next: Sand with P600.    # at systems.deck.layers.second.before_next

    Given second good
    products.mastic.roles: [primer, body-filler]
    systems.deck.layers.first.role: body-filler
    systems.deck.layers.first.before_next: Sand with P150.    # at systems.deck.layers.first.before_next
    jobs.rails.inspection.film.gauge: {principle: destructive}
    jobs.rails.inspection.first.gauge: {principle: destructive}
To put right
    End with a paper inside the window named.
"""

from specgen.facts.pairs.papers import consequence, papers_between, papers_in, sanding_task, side_of_window
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Spec, System, date, rule, table

_STAGES = table("sanding_stages")
# What is left of a primer or an old finish is judged by its product, not by the look of the next coat.
_TASKS = {"filler_finish", "surfacer_before_basecoat", "surfacer_before_solid_2k"}


@rule("PRE018", on=System, severity=WARNING, source=PRACTICE)
def paper_between_coats(system: System, spec: Spec, on: date) -> Problems:
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        name, papers = papers_between(below, above), papers_in(below.before_next)
        if name not in _TASKS or not papers:
            continue
        row = sanding_task(name)
        if side := side_of_window(papers[-1], row):
            window = f"P{row['coarsest_p']} to P{row['finest_p']} for {row['task']}"
            what = f"P{papers[-1]} between {below.id} and {above.id} is {side} than {window}: {consequence(side)}"
            yield Problem(("layers", below.id, "before_next"), what, source=_STAGES.row_citation(row))
