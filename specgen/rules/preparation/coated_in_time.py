"""PRE012 Bare metal is primed before it re-rusts

Checks
    The maximum interval from surface preparation to the first coat on bare metal, against the time a document gives for the steel of vehicles, where it is an error and on other metals of a vehicle a warning. What is no vehicle is given a shift, or a day where the job keeps the air dry (table climate_limits); more gives a warning. A preparation of bare metal that states no interval gives a warning. Fully weathered zinc that is washed and not blasted has oxidised already and is not assessed.
Why
    Flash rust or oxide forms again within hours and separates the primer from the metal.
Passes
    preparations.sand-steel.coat_within: 2 h

    preparations.sand-steel.coat_within: 4 h

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    jobs.refit.items.STEP.substrate: {material: grp}
    preparations.sand-steel.coat_within: 24 h

    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: fully_weathered}
    jobs.refit.items.DOOR.substrate: {material: galvanized_hot_dip, thickness: 1.5 mm, zinc_state: fully_weathered}
    preparations.sand-steel.coat_within: 24 h

    Given second good
    preparations.blast.coat_within: 8 h

    Given second good
    preparations.blast.coat_within: 24 h
    jobs.rails.climate.humidity: max 50 %
    jobs.lids.climate.humidity: 40..50 %
Fails
    preparations.sand-steel.coat_within: 24 h    # at preparations.sand-steel.coat_within

    without preparations.sand-steel.coat_within    # warning at preparations.sand-steel.coat_within

    preparations.sand-steel.coat_within: 4.1 h    # at preparations.sand-steel.coat_within
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]

    Given second good
    without preparations.sand.coat_within    # warning at preparations.sand.coat_within

    Given second good
    preparations.blast.coat_within: 8.1 h    # warning at preparations.blast.coat_within

    Given second good
    preparations.blast.coat_within: 24 h    # warning at preparations.blast.coat_within
    jobs.rails.climate.humidity: max 51 %
    jobs.lids.climate.humidity: 40..51 %

    Given second good
    preparations.blast.coat_within: 24.1 h    # warning at preparations.blast.coat_within
    jobs.rails.climate.humidity: max 50 %
    jobs.lids.climate.humidity: 40..50 %

    preparations.sand-steel.coat_within: 5 h    # warning at preparations.sand-steel.coat_within
    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
To put right
    Prime on the same shift within the time named, or prepare the surface again before priming.
"""

from fractions import Fraction

from specgen.facts.job.exposure import like_a_vehicle
from specgen.facts.pairs.parts import BLASTING, Part, prepared_with
from specgen.rules.kit import (
    ERROR,
    WARNING,
    Citation,
    Preparation,
    Problem,
    Problems,
    Quantity,
    Spec,
    cell_citation,
    date,
    rule,
    table,
)

_CLIMATE = table("climate_limits")
_STEEL = cell_citation("substrates", "steel_cold_rolled", "max_h_to_prime")


@rule("PRE012", on=Preparation, severity=ERROR, source=_STEEL)
def coated_in_time(preparation: Preparation, spec: Spec, on: date) -> Problems:
    bare = [part for part in prepared_with(preparation, spec) if part.is_bare_metal and not _weathered(part)]
    if not bare:
        return
    path, metals = ("coat_within",), ", ".join(dict.fromkeys(part.name for part in bare))
    if preparation.coat_within is None:
        most = min(_most(part)[0] for part in bare)
        what = f"no maximum interval is stated between the preparation of {metals} and the first coat"
        yield Problem(path, what, f"write coat_within: {most}, or less", WARNING)
        return
    late = [part for part in bare if preparation.coat_within > _most(part)[0]]
    if not late:
        return
    sure = [part for part in late if part.is_bare_steel and _vehicle(part)]
    most, source = min((_most(part) for part in sure or late), key=lambda found: found[0])
    metals = ", ".join(dict.fromkeys(part.name for part in late))
    what = f"bare {metals} may remain uncoated for {preparation.coat_within}; the maximum is {most}"
    yield Problem(path, what, severity=None if sure else WARNING, source=source)


def _weathered(part: Part) -> bool:
    """True for zinc that has formed its stable layer, and keeps it."""
    blasted = any(step.do in BLASTING for step in part.preparation.steps)
    return part.is_zinc and part.substrate.zinc_state == "fully_weathered" and not blasted


def _vehicle(part: Part) -> bool:
    return like_a_vehicle(part.job, part.item, part.system)


def _most(part: Part) -> tuple[Quantity, Citation]:
    """How long the part may stay bare, and who says so."""
    if _vehicle(part):
        digits, source = table("substrates").row("material", "steel_cold_rolled")["max_h_to_prime"], _STEEL
    else:
        humidity = part.job.climate.humidity if part.job.climate is not None else None
        driest = Fraction(_CLIMATE.row("id", "bare_metal_dry_air")["most"])
        dry = humidity is not None and humidity.high is not None and humidity.high.to("%") <= driest
        row = _CLIMATE.row("id", "bare_metal_in_dry_air" if dry else "bare_metal")
        digits, source = row["most"], _CLIMATE.row_citation(row)
    return Quantity.of("duration", Fraction(digits), "h", digits), source
