"""DOC012 A figure in words is the one that is typed

Checks
    Figures that a text names and that are typed as well. Of a job: how many parts, the thickness of their plate, their area, the colour of the finish, the spray distance, the time from preparation to the first coat (not one from galvanising, delivery or another coat), and in its ventilation the flow and the air changes. Of a preparation: the time to the first coat. Of a system: what is sanded off a coat, and its flash-off time. Of a product: the mixing ratio, the induction time and the pot life in the texts of its application. Where several values are typed, one that is met is enough; a clause on old or other work, on one part of many or on another state is not read.
Why
    Who orders goes by one figure and who works by the other; one of them is wrong.
Passes
    jobs.refit.scope: Two doors and four steps of 1.5 mm sheet.

    jobs.refit.scope: Repainting of doors; the old finish is blue.

    products.clear.variants: [{id: standard, name: Green, order_number: EX-clear}]
    jobs.refit.scope: Doors and steps; the finish is measured, the colour is compared with the master panel.

    preparations.sand-steel.steps.sand.text: Sand and prime within an hour.

    jobs.refit.scope: Doors and steps, sanded and primed within a week of delivery.

    systems.cab.layers.primer.before_next: Flash off for 40 min.

    Given second good
    products.mastic.application.mixing.stir: Stir, then add hardener at the ratio stated.
Fails
    jobs.refit.scope: Twelve doors of trams.    # at jobs.refit.scope

    jobs.refit.scope: Doors and steps of 4 mm sheet.    # at jobs.refit.scope

    jobs.refit.ventilation: {flow: 9000 m3/h, statement: "Extraction of 900 m3/h."}    # at jobs.refit.ventilation.statement    # also AIR003 at jobs.refit.ventilation    # also AIR003 at jobs.refit.ventilation    # also AIR003 at jobs.refit.ventilation    # also AIR003 at jobs.refit.ventilation

    preparations.sand-steel.steps.sand.text: Sand and prime within two days.    # at preparations.sand-steel.steps.sand.text

    jobs.refit.scope: Sanded doors are primed within two days.    # at jobs.refit.scope

    products.clear.variants: [{id: standard, name: Green, order_number: EX-clear}]    # at jobs.refit.scope
    jobs.refit.scope: Doors and steps, finished in red.

    products.clear.variants: [{id: standard, name: Green, order_number: EX-clear}]    # at jobs.refit.scope
    jobs.refit.scope: Doors and steps, finish RAL 5010.

    systems.cab.layers.primer.sanding_removes: 10 um    # at systems.cab.layers.primer.before_next    # also FLM011 at systems.cab.layers.primer.remaining_min
    systems.cab.layers.primer.before_next: Sand 40 µm off.

    Given second good
    products.mastic.application.mixing.stir: Pour 8:1 and stir.    # at products.mastic.application.mixing.stir
To put right
    Write one and the same in both places, or leave the figure out of the sentence.
"""

from specgen.facts.job.figures_in_words import figures_apart
from specgen.rules.kit import LOGIC, WARNING, Node, Problem, Problems, Spec, date, rule


@rule("DOC012", on=Node, severity=WARNING, source=LOGIC)
def figures_said_twice(record: Node, spec: Spec, on: date) -> Problems:
    for path, what in figures_apart(record, spec):
        yield Problem(path, f"the words of {getattr(record, 'id', '')} say {what}")
