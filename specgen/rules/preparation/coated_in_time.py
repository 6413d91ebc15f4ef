"""PRE012 Bare metal is primed before it re-rusts

Checks
    The maximum interval from surface preparation to the first coat on bare metal, against the time a document gives for the steel of vehicles, where it is an error; on steelwork and on other metals the same time only gives a warning. A preparation of bare metal that states no interval gives a warning.
Why
    Flash rust or oxide forms again within hours and separates the primer from the metal.
Passes
    preparations.sand-steel.coat_within: 2 h

    preparations.sand-steel.coat_within: 4 h

    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]
    jobs.refit.items.STEP.substrate: {material: grp}
    preparations.sand-steel.coat_within: 24 h
Fails
    preparations.sand-steel.coat_within: 24 h    # at preparations.sand-steel.coat_within

    without preparations.sand-steel.coat_within    # warning at preparations.sand-steel.coat_within

    preparations.sand-steel.coat_within: 4.1 h    # at preparations.sand-steel.coat_within
    jobs.refit.items.DOOR.old_coats: [{id: factory, family: oem_finish, thickness: 110 um, condition: sound}]

    Given second good
    without preparations.sand.coat_within    # warning at preparations.sand.coat_within

    Given second good
    preparations.blast.coat_within: 6 h    # warning at preparations.blast.coat_within

    preparations.sand-steel.coat_within: 5 h    # warning at preparations.sand-steel.coat_within
    jobs.refit.substrate.material: aluminium
    jobs.refit.inspection.primer-film.gauge: {principle: eddy-current}
To put right
    Prime on the same shift within the time named, or prepare the surface again before priming.
"""

from fractions import Fraction

from specgen.facts.job.exposure import like_a_vehicle
from specgen.facts.pairs.parts import prepared_with
from specgen.rules.kit import (
    ERROR,
    WARNING,
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

_STEEL = cell_citation("substrates", "steel_cold_rolled", "max_h_to_prime")


@rule("PRE012", on=Preparation, severity=ERROR, source=_STEEL)
def coated_in_time(preparation: Preparation, spec: Spec, on: date) -> Problems:
    bare = [part for part in prepared_with(preparation, spec) if part.is_bare_metal]
    if not bare:
        return
    digits = table("substrates").row("material", "steel_cold_rolled")["max_h_to_prime"]
    most, path = Quantity.of("duration", Fraction(digits), "h", digits), ("coat_within",)
    metals = ", ".join(dict.fromkeys(part.name for part in bare))
    if preparation.coat_within is None:
        what = f"no maximum interval is stated between the preparation of {metals} and the first coat"
        yield Problem(path, what, f"write coat_within: {most}, or less", WARNING)
    elif preparation.coat_within > most:
        said = f"bare {metals} may remain uncoated for {preparation.coat_within}; the maximum is {most}"
        if any(part.is_bare_steel and like_a_vehicle(part.job, part.item, part.system) for part in bare):
            yield Problem(path, said)
        else:
            yield Problem(path, f"{said}, the figure for steel of vehicles", severity=WARNING)
