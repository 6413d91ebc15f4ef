"""AIR011 No text lets a flame burn or the extraction stop beside wet paint

Checks
    The scope of each job, its ventilation, that of its products and what is done between their coats: where a product of the job is flammable, no sentence lets an open flame, a fired heater, a lamp or fan that is not explosion-proof, welding or grinding go on beside the work; in a confined space nothing that burns fuel stands there whatever the product is; where one is flammable or the space is confined, no sentence lets the extraction stop before the film is dry. A sentence that forbids it, or speaks of the time before or after, is accepted.
Why
    Solvent vapour is heavier than air, creeps along the floor and flashes back from a heater many metres away; with the extraction off it reaches the explosive limit in minutes. What burns in a tank takes the oxygen, gives carbon monoxide, and lays water and carbon dioxide on the film.
Passes
    jobs.refit.ventilation: {statement: "Booth; no open flame, no welding beside the booth while spraying."}

    jobs.refit.ventilation: {statement: "Extraction runs, and is switched off only once the film is dry."}

    jobs.refit.ventilation: {statement: "The exhaust fan cannot be switched off while the gun has air."}

    jobs.refit.ventilation: {statement: "Extraction may be switched off only 2 h after the last coat."}

    jobs.refit.ventilation: {statement: "Extraction is switched off an hour after the last coat has dried; smoking is allowed in the shelter 30 m from the booth."}

    jobs.refit.ventilation: {statement: "Gas heaters are shut off before the first mixing; if the extraction is switched off, spraying stops."}

    jobs.refit.ventilation: {statement: "Extraction during grinding and while spraying; explosion-proof lamps."}

    jobs.refit.ventilation: {statement: "Heated by an indirect gas heater outside the hall."}

    Given second good
    jobs.rails.scope: New railings in an open shed. The welding shop stops work 30 minutes before spraying.
Fails
    jobs.refit.ventilation: {statement: "Switch the extraction off while spraying, so that no dust settles in the wet film, and on again when it is touch-dry."}    # at jobs.refit.ventilation.statement

    jobs.refit.ventilation: {statement: "Booth; a gas heater keeps the bay warm."}    # at jobs.refit.ventilation.statement

    jobs.refit.ventilation: {statement: "Booth, extraction switched off so that no dust is drawn in."}    # at jobs.refit.ventilation.statement

    jobs.refit.scope: "New finish on doors and steps; welding goes on beside the spraying."    # at jobs.refit.scope

    jobs.refit.ventilation: {statement: "Ordinary halogen lamps light the bay. Turn off the fans while spraying."}    # at jobs.refit.ventilation.statement    # at jobs.refit.ventilation.statement

    systems.cab.layers.primer.before_next: Dry with a propane torch.    # at systems.cab.layers.primer.before_next

    Given second good
    products.gloss.hazards.ventilation: "Work without extraction."    # at products.gloss.hazards.ventilation

    Given second good
    jobs.rails.workplace: confined-space    # also AIR004 at jobs.rails.ventilation    # also AIR006 at jobs.rails.confined_space
    jobs.rails.scope: New railings. An open propane burner on the floor keeps the steel warm.    # at jobs.rails.scope
To put right
    Keep every flame, spark and unprotected lamp out of reach from the first mixing until the film is dry, heat with equipment whose flame stands outside, and let the extraction run until then.
"""

from collections.abc import Iterator

from specgen.facts.job.confined import is_confined
from specgen.facts.job.ignition import burning_let, extraction_stopped, ignition_let
from specgen.facts.product.dangers import dangers_of
from specgen.rules.kit import WARNING, Basis, Job, Path, Problem, Problems, Spec, cite, date, rule


@rule("AIR011", on=Job, severity=WARNING, source=cite("CLP", "Annex IV, P210", Basis.REGULATION))
def no_flame_beside_wet_paint(job: Job, spec: Spec, on: date) -> Problems:
    burns = [product.id for product in spec.products_of(job) if "burns" in dangers_of([product])]
    if not burns and not is_confined(job):
        return
    for path, text, product in _texts(job, spec):
        flammable = product if product in burns else next(iter(burns), "")
        beside = f"where {flammable} is used, which is flammable" if burns else "in a confined space"
        for source in dict.fromkeys(ignition_let(text) if burns else burning_let(text)):
            yield Problem(path, f"{source} is allowed {beside}", absolute=True)
        stopped = extraction_stopped(text)
        if stopped is not None:
            yield Problem(path, f"the extraction may stop {beside}: {stopped}", absolute=True)


def _texts(job: Job, spec: Spec) -> Iterator[tuple[Path, str, str]]:
    """What is said of the place and the air, and between coats, each with its address from the top of the sources and its product, if any."""
    yield ("jobs", job.id, "scope"), job.scope, ""
    if job.ventilation is not None and job.ventilation.statement is not None:
        yield ("jobs", job.id, "ventilation", "statement"), job.ventilation.statement, ""
    for product in spec.products_of(job):
        if product.hazards is not None and product.hazards.ventilation is not None:
            yield ("products", product.id, "hazards", "ventilation"), product.hazards.ventilation, product.id
    for system in spec.systems_of(job):
        for layer in system.layers:
            if layer.before_next is not None:
                yield ("systems", system.id, "layers", layer.id, "before_next"), layer.before_next, layer.product or ""
