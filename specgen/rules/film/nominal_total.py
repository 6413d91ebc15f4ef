"""FLM005 The nominal total DFT is the sum of its coats

Checks
    The stated nominal total DFT against the sum of the nominal DFTs of the coats, where every coat has one; a total after sanding and polishing may be stated instead. Where some coats have none, the total is not below the sum of the others. Where only rounding between um and mil sets a total and the sum apart, this is a note.
Why
    With two nominal figures for the same film it is left to chance which one is used to order the paint and to assess the film.
Passes
    systems.cab.total: {nominal: 130 um, max: 180 um}

    systems.cab.layers.base.film: {min: 15 um, max: 30 um}

    Given a coat with no film limits at all
    systems.cab.total: {nominal: 130 um, max: 180 um}

    systems.cab.layers.primer.sanding_removes: 10 um
    systems.cab.layers.primer.remaining_min: 30 um
    systems.cab.total: {min: 85 um, nominal: 120 um, max: 180 um}
Fails
    systems.cab.layers.base.film: {min: 15 um, max: 30 um}
    systems.cab.total: {nominal: 109 um, max: 180 um}    # at systems.cab.total.nominal

    systems.cab.layers.primer.film: {min: 1.6 mil, nominal: 2.4 mil, max: 3.1 mil}
    systems.cab.total: {nominal: 5.1 mil}    # note at systems.cab.total.nominal    # also INS013 at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.min    # also FLM022 at systems.cab.total.max

    systems.cab.layers.primer.film: {min: 1.6 mil, nominal: 2.4 mil, max: 3.1 mil}
    systems.cab.total: {nominal: 5.05 mil}    # at systems.cab.total.nominal    # also INS013 at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.min    # also FLM022 at systems.cab.total.max

    systems.cab.total: {min: 95 um, nominal: 120 um, max: 180 um}    # at systems.cab.total.nominal

    Given second good
    systems.touch.total: {min: 2.5 mil, nominal: 2.71 mil, max: 3.5 mil}    # at systems.touch.total.nominal

    Given second good
    systems.deck.total: {nominal: 10 mil}    # at systems.deck.total.nominal    # also FLM022 at systems.deck.total.max
To put right
    Leave out the nominal total so that it is calculated, or correct the coat that is wrong.
"""

from specgen.facts.layer.film import film_limit
from specgen.facts.layer.sums import film_sum, nominal_in_the_end, sum_of
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule, unless_sum_rounded


@rule("FLM005", on=System, severity=ERROR, source=LOGIC)
def nominal_total(system: System, spec: Spec, on: date) -> Problems:
    stated = system.total.nominal if system.total is not None else None
    worked_out = film_sum(system, spec, "nominal")
    if stated is None:
        return
    if worked_out is None:
        known = [
            film.value for layer in system.layers if (film := film_limit(system, layer, spec, "nominal")) is not None
        ]
        least = sum_of(known) if known else None
        if least is not None and stated < least:
            what = f"nominal total DFT {stated} is below the sum of the coats that have a nominal DFT, {least}"
            yield unless_sum_rounded(Problem(("total", "nominal"), what), stated, known)
    elif stated not in {worked_out.value, nominal_in_the_end(system, spec)}:
        what = f"nominal total DFT {stated} differs from the sum of the coats, {worked_out.value}"
        yield unless_sum_rounded(Problem(("total", "nominal"), what), stated, worked_out.films)
