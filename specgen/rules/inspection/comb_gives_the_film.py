"""INS033 A wet film in words gives the film asked

Checks
    The criterion in words of each inspection point that reads with a comb: the lowest wet film it names against the wet film that the least DFT of the coats it reads needs in one pass, by their volume solids and the thinner added. Of several coats the one that needs least counts, and a tenth is allowed for the marks of a comb (table inspection_in_words).
Why
    Wet film is dry film divided by the share of solids, not multiplied by it. A painter who stops at the lower figure lays every coat too thin, and nobody sees it before it is dry.
Passes
    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: "At least 100 µm wet."}}

    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: As the coat table.}}
Fails
    jobs.refit.inspection.wet: {id: wet, check: Wet film, after: primer, gauge: {principle: wet-film-comb}, criterion: {text: "At least 20 µm wet."}}    # at jobs.refit.inspection.wet.criterion.text    # also DOC010 at jobs.refit.inspection.wet.criterion.text
To put right
    Divide the least DFT of a pass by the volume solids as sprayed, or refer to the wet film in the coat table.
"""

from collections.abc import Iterator
from fractions import Fraction

from specgen.facts.job.in_words import quantities_said
from specgen.facts.job.inspected import places
from specgen.facts.job.points import layers_read, principle_of
from specgen.facts.layer.figures import solids_sprayed
from specgen.facts.layer.film import film_limit
from specgen.model.acceptance import GaugePrinciple, InspectionPoint
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule, table
from specgen.trade.film import wet_film
from specgen.trade.given import Given
from specgen.trade.known import NotKnown
from specgen.units.rounding import round_half_up


@rule("INS033", on=Job, severity=WARNING, source=LOGIC)
def comb_gives_the_film(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        if principle_of(point) is not GaugePrinciple.COMB:
            continue
        said = quantities_said(point.criterion.text or "", "thickness")
        needed = list(_needed(point, job, spec))
        if not said or not needed:
            continue
        least, (film, layer) = min(said), min(needed)
        share = Fraction(table("inspection_in_words").row("id", "comb")["value"]) / 100
        if least.to("um") < film * share:
            what = f"{point.id} accepts a wet film of {least}; the least DFT of {layer} needs {round_half_up(film, 0)} um wet in a pass"
            yield Problem(("inspection", point.id, "criterion", "text"), what)


def _needed(point: InspectionPoint, job: Job, spec: Spec) -> Iterator[tuple[Fraction, str]]:
    """The wet film in um of a pass at the least DFT of each coat read, with the coat; of those whose film and solids are stated."""
    for _, system in places(point, job, spec):
        for layer in layers_read(point, system):
            product = spec.product_of(layer)
            variant = next((one for one in product.variants if one.id == layer.variant), None)
            least, solids = film_limit(system, layer, spec, "min"), solids_sprayed(product, variant)
            if least is None or isinstance(solids, NotKnown):
                continue
            count = layer.passes or layer.coats
            thinner = Given(layer.thinner) if layer.thinner is not None else None
            wet = wet_film("wet", Given(least.value), solids, thinner).quantity.to("um")
            yield wet / (count.high if count is not None and count.high else 1), layer.id
