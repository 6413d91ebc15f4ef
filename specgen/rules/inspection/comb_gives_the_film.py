"""INS033 A wet film in words gives the film asked

Checks
    The criterion in words of each inspection point that reads with a comb: the minimum wet film that a clause accepts against the wet film that the least DFT of the coat needs in one pass, by its volume solids and the thinner added. The coat is the one that the clause calls primer, intermediate or the like, else what the point is called; of several the one that needs least counts, and a tenth is allowed for the marks of a comb (table inspection_in_words). What is said of the dry film, of a first or mist coat or of how the comb is read is not read.
Why
    Wet film is dry film divided by the share of solids, not multiplied by it. A painter who stops at the lower figure lays every coat too thin, and nobody sees it before it is dry.
Passes
    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: "At least 100 µm wet."}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: As the coat table.}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: barrier, gauge: {principle: wet-film-comb}, criterion: {text: "At least 116 µm wet, for a DFT of at least 60 µm."}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: barrier, gauge: {principle: wet-film-comb}, criterion: {text: "120 to 180 µm wet, read to 10 µm."}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, at: during-application, items: [DOOR], gauge: {principle: wet-film-comb}, criterion: {text: "At least 35 µm wet."}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, at: during-application, items: [DOOR], gauge: {principle: wet-film-comb}, criterion: {text: "Primer at least 34 µm, base coat at least 33 µm, clear coat at least 58 µm."}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: barrier, gauge: {principle: wet-film-comb}, criterion: {text: "At least 120 µm wet; 60 µm wet is not enough."}}

    jobs.refit.inspection.dry: {id: dry, check: Film of the barrier, after: barrier, gauge: {principle: magnetic}, criterion: {rule: own, min: 60 um, max: 120 um, text: "60 to 120 µm."}}
Fails
    jobs.refit.inspection.wet: {id: wet, check: Wet film of the clear coat, at: during-application, items: [DOOR], gauge: {principle: wet-film-comb}, criterion: {text: "At least 40 µm wet."}}    # at jobs.refit.inspection.wet.criterion.text

    jobs.refit.inspection.wet: {id: wet, check: Wet film, at: during-application, items: [DOOR], gauge: {principle: wet-film-comb}, criterion: {text: "Primer 35 to 60 µm, clear coat 40 to 60 µm."}}    # at jobs.refit.inspection.wet.criterion.text

    systems.chassis.layers.barrier.thinner: 10 %    # also VOC005 at systems.chassis.layers.barrier.thinner
    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: barrier, gauge: {principle: wet-film-comb}, criterion: {text: "116 µm wet."}}    # at jobs.refit.inspection.wet.criterion.text

    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: "At least 20 µm wet."}}    # at jobs.refit.inspection.wet.criterion.text    # also DOC010 at jobs.refit.inspection.wet.criterion.text
To put right
    Divide the least DFT of a pass by the volume solids as sprayed, or refer to the wet film in the coat table.
"""

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from specgen.facts.job.coats_in_words import Coat, called
from specgen.facts.job.in_words import bounds, of_another_state, quantities_said
from specgen.facts.job.inspected import places
from specgen.facts.job.points import layers_read, principle_of
from specgen.facts.layer.figures import solids_sprayed
from specgen.facts.layer.film import film_limit
from specgen.facts.texts import CLAUSE
from specgen.model.acceptance import GaugePrinciple
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule, show, table
from specgen.trade.film import wet_film
from specgen.trade.given import Given
from specgen.trade.known import NotKnown
from specgen.units.rounding import round_half_up

_NOT_THE_WET_FILM = re.compile(
    r"\b(?:DFT|dry|dries|first|mist|tack|nearest|read(?:ing)? to|steps?|marks?|tooth|teeth)\b|±", re.I
)


@rule("INS033", on=Job, severity=WARNING, source=LOGIC)
def comb_gives_the_film(job: Job, spec: Spec, on: date) -> Problems:
    share = Fraction(table("inspection_in_words").row("id", "comb")["value"]) / 100
    for point in job.inspection:
        if principle_of(point) is not GaugePrinciple.COMB:
            continue
        read = [(system, layer) for _, system in places(point, job, spec) for layer in layers_read(point, system)]
        for clause in CLAUSE.split(point.criterion.text or ""):
            said, needed = _least_said(clause), list(_needed(called(clause, called(point.check, read)), spec))
            if said is None or not needed:
                continue
            film, layer = min(needed)
            if said.base < film.base * share:
                what = f"{point.id} accepts a wet film of {show(said)}; the least DFT of {layer} needs {show(film)} wet in a pass"
                yield Problem(("inspection", point.id, "criterion", "text"), what)


def _least_said(clause: str) -> Quantity | None:
    """The minimum wet film that a clause accepts: the lower end of its range, or its one figure."""
    if _NOT_THE_WET_FILM.search(clause):
        return None
    accepted, figures = bounds(clause, "thickness"), quantities_said(clause, "thickness")
    if accepted is not None:
        return accepted.low or accepted.high
    return figures[0] if len(figures) == 1 and not of_another_state(clause) else None


def _needed(coats: Sequence[Coat], spec: Spec) -> Iterator[tuple[Quantity, str]]:
    """The wet film of a pass at the least DFT of each coat whose film and solids are stated, with the coat."""
    for system, layer in coats:
        least = film_limit(system, layer, spec, "min")
        solids = solids_sprayed(spec.product_of(layer), spec.variant_of(layer))
        if least is None or isinstance(solids, NotKnown):
            continue
        count = layer.passes or layer.coats
        thinner = Given(layer.thinner) if layer.thinner is not None else None
        share = 1 if count is None or not count.high else count.high
        wet = wet_film("wet", Given(least.value), solids, thinner).quantity
        film = round_half_up(wet.to("um") / share, 0)
        yield Quantity.of("thickness", Fraction(film), "um", str(film)), layer.id
