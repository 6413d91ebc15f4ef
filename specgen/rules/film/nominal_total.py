"""FLM005 The nominal total DFT is the sum of its coats

Checks
    The stated nominal total DFT against the sum of the nominal DFTs of the coats, where every coat has one. Where only rounding between um and mil sets a total and the sum apart, this is a note.
Why
    With two nominal figures for the same film it is left to chance which one is used to order the paint and to assess the film.
Passes
    systems.cab.total: {nominal: 130 um}

    systems.cab.layers.base.film: {min: 15 um, max: 30 um}

    Given a coat with no film limits at all
    systems.cab.total: {nominal: 130 um}
Fails
    systems.cab.layers.primer.film: {min: 1.6 mil, nominal: 2.4 mil, max: 3.1 mil}
    systems.cab.total: {nominal: 5.1 mil}    # note at systems.cab.total.nominal    # also INS013 at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    systems.cab.layers.primer.film: {min: 1.6 mil, nominal: 2.4 mil, max: 3.1 mil}
    systems.cab.total: {nominal: 5.05 mil}    # at systems.cab.total.nominal    # also INS013 at jobs.refit.inspection.primer-film.criterion.max    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    systems.cab.total: {min: 95 um, nominal: 120 um, max: 180 um}    # at systems.cab.total.nominal

    Given second good
    systems.touch.total: {min: 2.5 mil, nominal: 2.71 mil, max: 3.5 mil}    # at systems.touch.total.nominal

    Given second good
    systems.deck.total: {nominal: 10 mil}    # at systems.deck.total.nominal
To put right
    Leave out the nominal total so that it is calculated, or correct the coat that is wrong.
"""

from specgen.facts.layer.sums import film_sum
from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Spec, System, date, rule, unless_sum_rounded


@rule("FLM005", on=System, severity=ERROR, source=LOGIC)
def nominal_total(system: System, spec: Spec, on: date) -> Problems:
    stated = system.total.nominal if system.total is not None else None
    worked_out = film_sum(system, spec, "nominal")
    if stated is not None and worked_out is not None and stated != worked_out.value:
        what = f"nominal total DFT {stated} differs from the sum of the coats, {worked_out.value}"
        yield unless_sum_rounded(Problem(("total", "nominal"), what), stated, worked_out.films)
