"""PRE018 The final paper between two coats suits them

Checks
    The final paper named for the work on a surfacer or body filler before the next coat, in before_next and in abraded_with, against the range for its task: surfacer beneath a basecoat, surfacer beneath a two-pack colour, body filler beneath anything but more of it. In these and in if_exceeded of any coat, papers named one after the other go from coarse to fine.
Why
    A basecoat is thin: coarse scratches show through it, and over a surface sanded too fine the next coat peels.
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

    systems.cab.layers.primer.before_next: Sand with P400, runs with P320 first.
Fails
    systems.cab.layers.primer.before_next: Sand with P500, then P400.    # at systems.cab.layers.primer.before_next

    systems.cab.layers.primer.if_exceeded: Sand with 400 grit and then 240 grit.    # at systems.cab.layers.primer.if_exceeded

    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.before_next: Sand with P240 until level.    # at systems.cab.layers.primer.before_next

    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.before_next: Sand with P600, then P800.    # at systems.cab.layers.primer.before_next

    products.primer.roles: [surfacer]
    systems.cab.layers.primer.role: surfacer
    systems.cab.layers.primer.abraded_with: P80    # at systems.cab.layers.primer.abraded_with

    Given second good
    systems.deck.layers.first.before_next: Sand with P80.
    systems.deck.layers.second.role: surfacer
    systems.deck.layers.second.before_next: Sand with P600.    # at systems.deck.layers.second.before_next    # also LAY016 at systems.deck.layers.second.before_next

    Given second good
    products.mastic.roles: [primer, body-filler]
    systems.deck.layers.first.role: body-filler
    systems.deck.layers.first.before_next: Sand with P150.    # at systems.deck.layers.first.before_next
    jobs.rails.inspection.film.gauge: {principle: destructive}
    jobs.rails.inspection.first.gauge: {principle: destructive}
To put right
    Finish with a paper in the range named, and write papers from coarse to fine.
"""

from specgen.facts.pairs.papers import consequence, finer_first, papers_between, papers_in, sanding_task, side_of_window
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule, table

_STAGES = table("sanding_stages")
# What is left of a primer or an old finish is judged by its product, not by the look of the next coat.
_TASKS = {"filler_finish", "surfacer_before_basecoat", "surfacer_before_solid_2k"}


@rule("PRE018", on=System, severity=WARNING, source=PRACTICE)
def paper_between_coats(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        for key in ("before_next", "abraded_with", "if_exceeded"):
            found = finer_first(getattr(layer, key))
            if found is not None:
                yield Problem(("layers", layer.id, key), f"{found[1]} follows {found[0]}, which is finer")
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        name = papers_between(below, above)
        if name not in _TASKS or below.role is above.role is Role.BODY_FILLER:  # one filler is shaped for the next
            continue
        row = sanding_task(name)
        for at, text in (("before_next", below.before_next), ("abraded_with", below.abraded_with)):
            papers = papers_in(text)
            if papers and (side := side_of_window(papers[-1], row)):
                papers_for = f"P{row['coarsest_p']} to P{row['finest_p']} for {row['task']}"
                what = (
                    f"P{papers[-1]} between {below.id} and {above.id} is {side} than {papers_for}: {consequence(side)}"
                )
                yield Problem(("layers", below.id, at), what, source=_STAGES.row_citation(row))
