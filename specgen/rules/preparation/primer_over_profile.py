"""PRE019 The DFT covers the profile peaks

Checks
    The maximum profile a step specifies, against the minimum DFT of the first coat above any wash or etch primer (its own, or else that of its product, which only gives a warning). Where all coats together have three times the profile, the system covers the peaks, whatever the first coat; one and a half times is enough over a zinc-rich primer, whose zinc protects them, unless even the lowest profile reaches its nominal DFT (or, where none is stated, its maximum), which is a warning; and where system or environment has a category, whose table sets the film. Zinc silicate and heat-resistant silicone crack in thicker films: where all coats are of these, they cover the middle of the profile. Else a first coat below the profile is an error if all coats together stay below it too and a warning otherwise, and less than one and a half times the profile is a warning. A minimum of the whole system below three times the profile gives a warning. Zinc, aluminium and stainless steel are not judged: their peaks do not rust. Blasted bare steel without a stated profile cannot be assessed.
Why
    Peaks that protrude from the film rust first: pinpoint rusting all over, weeks after painting.
Passes
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm
    products.primer.film.min: 30 um
    systems.cab.layers.primer.film.min: 30 um
    jobs.refit.inspection.primer-film.criterion.min: 30 um

    Given second good
    systems.deck.layers.first.film.min: 2.25 mil
    jobs.rails.inspection.first.criterion.min: 2.25 mil

    Given a wash primer under a primer
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..15 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm

    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, area: 0.12 m2, preparation: blast, system: holding, substrate: {material: steel_hot_rolled, thickness: 4 mm}}
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 20..35 um, profile_method: ISO 8503-5}], coat_within: 4 h}
    products.barrier.film: {min: 30 um, nominal: 80 um, max: 120 um}
    products.barrier.overcoat: [{id: itself, next_coat: itself, interval: 8 h..30 days, air: 15 degC}]
    systems.holding: {id: holding, title: Holding primer and barrier, layers: [{id: hold, role: primer, product: barrier, variant: standard, film: {min: 30 um, nominal: 40 um, max: 60 um}, coats: 1, overcoat_interval: 8 h..20 days}, {id: barrier, role: topcoat, product: barrier, variant: standard, film: {min: 80 um, nominal: 100 um, max: 120 um}, coats: 1}]}
    systems.holding.handle_after: 16 h
    systems.holding.service_after: 7 days

    Given second good
    jobs.rails.environment: {kind: atmosphere, category: C4}
    preparations.blast.edge_radius: 2 mm
    preparations.abrade.edge_radius: 2 mm
    preparations.blast.steps.blast.profile: 2..3.3 mil
    jobs.rails.consumption.profile: 3 mil
    without jobs.lids.items.FRAME

    Given a zinc-rich primer on blasted steel
    preparations.sand-steel.steps.sand.profile: 25..38 um
    preparations.sand-steel.edge_grade: P2
    systems.cab.layers.primer.film: {min: 30 um, nominal: 60 um, max: 80 um}
    products.primer.film.min: 30 um
    systems.cab.total.min: 115 um
    without jobs.refit.items.STEP
    jobs.refit.inspection.primer-film.criterion.min: 30 um

    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, area: 0.12 m2, preparation: blast, system: holding, substrate: {material: steel_hot_rolled, thickness: 4 mm}}
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 20..30 um, profile_method: ISO 8503-5}], coat_within: 4 h}
    products.barrier.binder: silicone_heat
    products.barrier.film: {min: 25 um, nominal: 40 um, max: 120 um}
    systems.holding: {id: holding, title: Heat-resistant coat, layers: [{id: barrier, role: primer, product: barrier, variant: standard, film: {min: 25 um, nominal: 40 um, max: 60 um}, coats: 1}]}
    systems.holding.handle_after: 16 h
    systems.holding.service_after: 7 days
Fails
    Given a zinc-rich primer on blasted steel
    preparations.sand-steel.steps.sand.profile: 35..38 um    # warning at systems.cab.layers.primer.film    # also FLM005 at systems.cab.total.nominal
    preparations.sand-steel.edge_grade: P2
    systems.cab.layers.primer.film: {min: 30 um, nominal: 35 um, max: 80 um}
    products.primer.film.min: 30 um
    systems.cab.total.min: 115 um
    without jobs.refit.items.STEP
    jobs.refit.inspection.primer-film.criterion.min: 30 um

    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, area: 0.12 m2, preparation: blast, system: holding, substrate: {material: steel_hot_rolled, thickness: 4 mm}}
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 20..31 um, profile_method: ISO 8503-5}], coat_within: 4 h}
    products.barrier.binder: silicone_heat
    products.barrier.film: {min: 25 um, nominal: 40 um, max: 120 um}
    systems.holding: {id: holding, title: Heat-resistant coat, layers: [{id: barrier, role: primer, product: barrier, variant: standard, film: {min: 25 um, nominal: 40 um, max: 60 um}, coats: 1}]}    # at systems.holding.layers.barrier.film.min    # warning at systems.holding.layers
    systems.holding.handle_after: 16 h
    systems.holding.service_after: 7 days

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 25..45 um, profile_method: ISO 8503-5}    # warning at systems.cab.layers.primer.film.min    # also PRE019 warning at systems.cab.layers    # also PRE019 warning at systems.chassis.layers.barrier.film.min    # also PRE019 warning at systems.chassis.layers    # also PRE020 at preparations.sand-steel.steps.sand.profile
    jobs.refit.substrate.thickness: 4 mm

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..41 um, profile_method: ISO 8503-5}    # warning at systems.cab.layers.primer.film.min    # also PRE019 warning at systems.cab.layers    # also PRE019 warning at systems.chassis.layers.barrier.film.min    # also PRE019 warning at systems.chassis.layers    # also PRE020 at preparations.sand-steel.steps.sand.profile
    systems.cab.layers.primer.film: {nominal: 60 um, max: 80 um}
    jobs.refit.substrate.thickness: 4 mm

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet}    # note at preparations.sand-steel.steps.sand.profile
    jobs.refit.substrate.thickness: 4 mm

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..32 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm    # warning at systems.cab.layers.primer.film.min    # warning at systems.cab.layers    # warning at systems.chassis.layers

    Given second good
    preparations.sand.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 1..1.5 mil, profile_method: ISO 8503-5}
    jobs.lids.substrate.thickness: 3 mm    # warning at systems.touch.layers    # warning at systems.touch.layers.ground.film.min

    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, area: 0.12 m2, preparation: blast, system: holding, substrate: {material: steel_hot_rolled, thickness: 4 mm}}
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 20..30 um, profile_method: ISO 8503-5}], coat_within: 4 h}
    products.barrier.film: {min: 25 um, nominal: 40 um, max: 120 um}
    systems.holding: {id: holding, title: Holding primer, layers: [{id: barrier, role: primer, product: barrier, variant: standard, film: {min: 25 um, nominal: 40 um, max: 60 um}, coats: 1}]}    # at systems.holding.layers.barrier.film.min    # warning at systems.holding.layers    # also REL002 at systems.holding.handle_after    # also REL002 at systems.holding.service_after

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20.1 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm    # warning at systems.chassis.layers

    Given second good
    products.mastic.film: {nominal: 4 mil, max: 8 mil}
    systems.deck.layers.first.film: {nominal: 4 mil, max: 6 mil}    # note at systems.deck.layers.first.film.min    # also FLM021 at systems.deck.layers.first.film.min

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20.1 um, profile_method: ISO 8503-5}
    preparations.sand-steel.steps.dust: {id: dust, do: sweep-blast, text: Sweep., medium: garnet, profile: 10..15 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm    # warning at systems.chassis.layers
To put right
    Specify a finer profile, or raise the minimum DFT of the first coat or of all coats.
"""

from fractions import Fraction

from specgen.facts.job.exposure import has_category
from specgen.facts.layer.film import film_limit
from specgen.facts.layer.sums import film_sum
from specgen.facts.pairs.families import ETCHING, THIN_FOR_HEAT, ZINC_RICH
from specgen.facts.pairs.parts import BLASTING, Part, painted_with
from specgen.rules.kit import (
    ERROR,
    NOTE,
    WARNING,
    Concern,
    Layer,
    Problem,
    Problems,
    Quantity,
    Spec,
    System,
    date,
    rule,
    show,
    table,
)

_FILM, _MECHANISMS = table("profile_and_film"), table("mechanisms")
_PEAKS = _MECHANISMS.row_citation(_MECHANISMS.row("id", "pinpoint_rust"))


@rule("PRE019", on=System, severity=ERROR, concern=Concern.FILM, source=_PEAKS)
def primer_over_profile(system: System, spec: Spec, on: date) -> Problems:
    for part in painted_with(system, spec):
        if not part.is_bare_steel:
            continue
        highest = [step.profile.high for step in part.preparation.steps if step.profile and step.profile.high]
        if highest:
            yield from _judged(max(highest), part, spec)
        else:
            yield from _unknown(part)


def _judged(profile: Quantity, part: Part, spec: Spec) -> Problems:
    system = part.system
    whole, total = _FILM.row("id", "system_over_profile"), film_sum(system, spec, "min")
    if total is not None and total.value.base >= profile.base * Fraction(whole["factor"]):
        return
    # a wash primer is far thinner than any profile, and the coat above it is the one that covers
    first = next((layer for layer in system.layers if spec.product_of(layer).binder not in ETCHING), system.layers[0])
    enough = Fraction(_FILM.row("id", "primer_over_peaks_better")["factor"])
    covered = total is not None and total.value.base >= profile.base * enough
    if total is not None and total.value.base >= _middle(part, profile) and _cracks_thicker(system, spec):
        return
    zinc = spec.product_of(first).binder in ZINC_RICH
    if covered and zinc:
        yield from _zinc_in_the_valleys(first, part, profile, spec)
    if covered and (zinc or has_category(part.job, part.item, system)):
        return
    yield from _first_coat(first, profile, system, spec)
    if total is not None:
        what = f"all coats have a minimum DFT of {show(total.value)}{total.lenders} over a profile of up to {show(profile)}; the minimum is {whole['factor']} times the profile"
        yield Problem(("layers",), what, severity=WARNING, source=_FILM.row_citation(whole))


def _middle(part: Part, highest: Quantity) -> Fraction:
    """The middle of the deepest profile asked for; its upper end where no lower one is stated."""
    return ((_lowest(part, highest) or highest).base + highest.base) / 2


def _lowest(part: Part, highest: Quantity) -> Quantity | None:
    """The lower end of the deepest profile asked for; None where none is stated."""
    ranges = [step.profile for step in part.preparation.steps if step.profile and step.profile.high == highest]
    return next((held.low for held in ranges if held.low is not None), None)


def _zinc_in_the_valleys(first: Layer, part: Part, highest: Quantity, spec: Spec) -> Problems:
    row, lowest = _FILM.row("id", "zinc_over_profile"), _lowest(part, highest)
    film = film_limit(part.system, first, spec, "nominal") or film_limit(part.system, first, spec, "max")
    if lowest is None or film is None or film.value.base > lowest.base * Fraction(row["factor"]):
        return
    what = f"the zinc-rich {first.id} is laid at {show(film.value)}{film.lender} over a profile of {show(lowest)} to {show(highest)}: even the lowest peaks reach through it, and other coats alone lie over them"
    yield Problem(("layers", first.id, "film"), what, severity=WARNING, source=_FILM.row_citation(row))


def _cracks_thicker(system: System, spec: Spec) -> bool:
    return all(spec.product_of(layer).binder in THIN_FOR_HEAT for layer in system.layers)


def _first_coat(first: Layer, profile: Quantity, system: System, spec: Spec) -> Problems:
    better, total = _FILM.row("id", "primer_over_peaks_better"), film_sum(system, spec, "min")
    least, path = film_limit(system, first, spec, "min"), ("layers", first.id, "film", "min")
    if least is None:
        what = f"cannot be assessed: {first.id} states no minimum DFT over a profile of up to {show(profile)}"
        yield Problem(path, what, "write the minimum DFT of the coat", NOTE)
        return
    said = f"{first.id} has a minimum DFT of {show(least.value)}{least.lender} over a profile of up to {show(profile)}"
    if least.value < profile:
        # a film above the least one may cover them where the layer did not ask for this one, and later coats may
        covered = total is not None and total.value >= profile
        mild = WARNING if least.borrowed or covered else None
        yield Problem(path, f"{said}: the profile peaks protrude", severity=mild)
    elif least.value.base < profile.base * Fraction(better["factor"]):
        what = f"{said}; {better['factor']} times the profile is better"
        yield Problem(path, what, severity=WARNING, source=_FILM.row_citation(better))


def _unknown(part: Part) -> Problems:
    blasting = next((step for step in part.preparation.steps if step.do in BLASTING), None)
    if blasting is not None:
        path = ("preparations", part.preparation.id, "steps", blasting.id, "profile")
        what = "cannot be assessed: the step blasts but states no profile, so the DFT over it cannot be compared"
        yield Problem(path, what, "write the profile, as in 25..40 um", NOTE, absolute=True)
