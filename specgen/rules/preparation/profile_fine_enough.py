"""PRE020 The profile is fine enough for vehicle coatings

Checks
    The maximum profile a step specifies, against the maximum beneath a vehicle coating system, in jobs that name vehicles. Steelwork is not assessed: systems that claim a corrosivity category, and parts whose environment states one.
Why
    Vehicle coatings are thin: a coarse profile shows through the colour and its peaks rust.
Passes
    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..20 um, profile_method: ISO 8503-5}
    jobs.refit.substrate.thickness: 4 mm

    Given second good
    preparations.blast.steps.blast.profile: 1..1.5 mil
    jobs.rails.vehicles: [F-1]

    Given second good
    preparations.blast.steps.blast.profile: 1..1.8 mil

    Given second good
    preparations.abrade.edge_radius: 2 mm
    jobs.rails.vehicles: [F-1]
    systems.deck.category: {corrosivity: C4, durability: low, evidence: own report}
    preparations.blast.steps.blast.profile: 1..1.8 mil

    Given second good
    jobs.rails.vehicles: [F-1]
    jobs.rails.environment: {kind: atmosphere, category: C4}
    preparations.blast.edge_radius: 2 mm
    preparations.abrade.edge_radius: 2 mm
    preparations.blast.steps.blast.profile: 1..1.8 mil
Fails
    preparations.blast: {id: blast, title: Blast, steps: [{id: degrease, do: degrease, text: Degrease., acceptance: The cloth stays white.}, {id: blast, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 25..39 um, profile_method: ISO 8503-5}], coat_within: 4 h}    # at preparations.blast.steps.blast.profile
    jobs.refit.items.STEP: {id: STEP, name: Step tube, count: 4, area: 0.12 m2, preparation: blast, substrate: {material: steel_hot_rolled, thickness: 4 mm}, system: cab}
    systems.cab.layers.primer.film: {min: 60 um, nominal: 60 um, max: 80 um}
    systems.cab.layers.clear.film: {min: 45 um, nominal: 50 um, max: 70 um}
    without systems.cab.total    # also INS013 at jobs.refit.inspection.primer-film.criterion.min

    Given second good
    jobs.rails.vehicles: [F-1]
    preparations.blast.steps.blast.profile: 1..1.51 mil    # at preparations.blast.steps.blast.profile

    preparations.sand-steel.steps.sand: {id: sand, do: blast, text: Blast., grade: Sa 2 1/2, medium: garnet, profile: 13..38.2 um, profile_method: ISO 8503-5}    # at preparations.sand-steel.steps.sand.profile
    systems.cab.category: {corrosivity: C3, durability: low, evidence: own report}
    jobs.refit.substrate.thickness: 4 mm    # also PRE019 at systems.chassis.layers    # also INS021 at jobs.refit.inspection
To put right
    Specify a finer profile, with a finer abrasive and less pressure.
"""

from fractions import Fraction

from specgen.facts.job.exposure import like_a_vehicle
from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import WARNING, Preparation, Problem, Problems, Quantity, Spec, date, rule, show, table

_FILM = table("profile_and_film")


@rule(
    "PRE020",
    on=Preparation,
    severity=WARNING,
    source=_FILM.row_citation(_FILM.row("id", "vehicle_system")),
)
def profile_fine_enough(preparation: Preparation, spec: Spec, on: date) -> Problems:
    vehicle = _FILM.row("id", "vehicle_system")
    if not any(like_a_vehicle(part.job, part.item, part.system) for part in prepared_with(preparation, spec)):
        return
    most = Quantity.of("thickness", Fraction(vehicle["most_um"]), "um", vehicle["most_um"])
    for step in preparation.steps:
        high = step.profile.high if step.profile is not None else None
        if high is not None and high > most:
            what = f"a profile of up to {show(high)}; the maximum for vehicle systems is {show(most)}"
            yield Problem(("steps", step.id, "profile"), what)
