"""FLM012 DFT and number of coats fit the corrosivity or immersion category claimed

Checks
    The number of coats and the nominal DFT of a system that claims a corrosivity category or immersion (Im1 to Im3) and a durability, against annexes B and C of ISO 12944-5 for its binders and for each substrate on which a job uses it. The fewest coats of a range count; the DFT is compared as stated, without rounding. A claim of both is assessed for both. Film that sanding and polishing remove does not count. Where a coat has no nominal DFT its maximum is taken: a system that is too thin even then is found. A system with its own test report is not assessed. For Im4 the table has no systems, nor for any immersion of low or medium durability, of galvanised steel, or of families that it does not group: the claim is then noted as not assessed.
Why
    The category tells the owner how long the coating lasts; a system thinner than the table has no basis for that claim. The table is not verified against the published text, so the licensed copy takes precedence.
Passes
    systems.chassis.category: {corrosivity: C2, durability: high}
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    systems.cab.category: {corrosivity: C3, durability: high, evidence: test report of this system}
    jobs.refit.inspection.clear-film: {id: clear-film, check: Film of all coats, after: clear, gauge: {principle: destructive}, criterion: {rule: own, min: 40 um, max: 70 um, text: the clear in the cut}}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: high}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.layers.first.film: {min: 3 mil, nominal: 5 mil, max: 6 mil}
    systems.deck.layers.second.film: {nominal: 8 mil}
    systems.deck.category: {immersion: Im1, durability: high}
Fails
    systems.chassis.category: {corrosivity: C3, durability: high}    # at systems.chassis.category
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    systems.chassis.category: {corrosivity: C2, durability: high}    # note at systems.chassis.category

    systems.chassis.category: {corrosivity: C3, durability: high}    # at systems.chassis.category
    systems.chassis.layers.barrier.film: {min: 60 um, max: 119 um}    # also FLM014 at systems.chassis.layers.barrier.coats
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    systems.chassis.category: {corrosivity: C3, durability: high}    # note at systems.chassis.category
    systems.chassis.layers.barrier.film: {min: 60 um, max: 120 um}    # also FLM014 at systems.chassis.layers.barrier.coats
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C4, durability: very-high}    # at systems.deck.category

    Given second good
    systems.deck.category: {corrosivity: C4, durability: high}    # note at systems.deck.category    # also PRE015 at preparations.abrade.edge_grade

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {corrosivity: C2, durability: low}    # note at systems.deck.category

    Given second good
    without jobs.rails.items.LOCKER
    products.gloss.binder: basecoat
    systems.deck.category: {corrosivity: C2, durability: high}    # note at systems.deck.category    # also LAY008 at jobs.lids.items.FRAME.exposure    # also LAY008 at jobs.rails.exposure

    systems.chassis.category: {corrosivity: C4, durability: high}    # at systems.chassis.category
    systems.chassis.layers.barrier.film: {min: 60 um, nominal: 160 um, max: 200 um}
    products.barrier.film: {min: 60 um, nominal: 160 um, max: 200 um}
    jobs.refit.items.STEP.substrate: {material: galvanized_hot_dip, thickness: 3 mm}

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {immersion: Im2, durability: high}    # at systems.deck.category

    Given second good
    without jobs.rails.items.LOCKER
    systems.deck.category: {immersion: Im4, durability: high}    # note at systems.deck.category

    Given a zinc-rich primer on blasted steel
    products.base.binder: pu_latent
    products.base.hazards.isocyanates: {contained: no}
    systems.cab.category: {corrosivity: C4, durability: high}    # at systems.cab.category    # also HAZ037 at products.base.hazards.isocyanates.contained    # also OVR002 at systems.cab.layers.base.product    # also PRE015 at preparations.sand-steel.edge_grade    # also INS021 at jobs.refit.inspection
To put right
    Raise the DFT or the number of coats, lower the claim, or name as evidence the test report of this very system.
"""

from itertools import product

from specgen.facts.job.quantities import is_blasted
from specgen.facts.layer.film import film_limit
from specgen.facts.layer.sums import nominal_in_the_end, sum_of, total_film
from specgen.facts.pairs.families import NOT_NAMED
from specgen.facts.placing import items_painted_with
from specgen.model.system import CategoryClaim
from specgen.rules.kit import NOTE, WARNING, Problem, Problems, Quantity, Row, Spec, System, date, rule, table
from specgen.trade.given import from_table

_SYSTEMS, _IMMERSION = "iso_12944_5_systems", "iso_12944_5_immersion"
_UNDER_WATER_OR_SOIL = ("Im1", "Im2", "Im3")


@rule("FLM012", on=System, severity=WARNING, source=table("iso_12944_5_systems").citation)
def film_for_category(system: System, spec: Spec, on: date) -> Problems:
    claim = system.category
    if (
        claim is None
        or claim.evidence is not None
        or any(p.binder == NOT_NAMED for p in map(spec.product_of, system.layers))
    ):
        return
    nominal = nominal_in_the_end(system, spec) or total_film(system, spec, "nominal")
    at_most = nominal if nominal is not None else _at_most(system, spec)
    paint, surfaces = _paint(system, spec), sorted(_surfaces(system, spec))
    if paint is None or at_most is None or not surfaces or "" in surfaces:
        lacking = (
            "the table has no group for its binders"
            if paint is None
            else "not every coat has a nominal DFT"
            if at_most is None
            else "the jobs do not apply it to blast-cleaned or hot-dip galvanised steel alone"
        )
        yield Problem(("category",), f"the claim cannot be assessed: {lacking}", severity=NOTE)
        return
    coats = sum(1 if layer.coats is None else layer.coats.low for layer in system.layers)
    claimed = [str(category) for category in (claim.corrosivity, claim.immersion) if category is not None]
    for category, surface in product(claimed, surfaces):
        asked = f"{category} with durability {claim.durability} on {surface}"
        rows = _rows(surface, paint, category, claim)
        if not rows:
            yield Problem(("category",), f"the table has no {paint} system for {asked}", severity=NOTE)
        elif not any(coats >= int(row["coats"]) and at_most >= _least(row) for row in rows):
            film = f"{at_most}" if nominal is not None else f"at most {at_most}"
            required = "; or ".join(
                f"coats at least {row['coats']}, nominal DFT at least {_least(row)}" for row in rows
            )
            yield Problem(("category",), f"coats {coats}, nominal DFT {film}; required for {asked}: {required}")
        elif nominal is None:
            what = "the claim cannot be assessed: not every coat has a nominal DFT"
            yield Problem(("category",), what, severity=NOTE)


def _least(row: Row) -> Quantity:
    return from_table(_IMMERSION if "on" not in row else _SYSTEMS, row, "nominal_um", "thickness", "um").quantity


def _at_most(system: System, spec: Spec) -> Quantity | None:
    """What the nominal films add up to at most, the maximum taken where a coat has no nominal; None where it has neither."""
    films = [
        film_limit(system, layer, spec, "nominal") or film_limit(system, layer, spec, "max") for layer in system.layers
    ]
    held = [film.value for film in films if film is not None]
    return sum_of(held) if held and len(held) == len(films) else None


def _paint(system: System, spec: Spec) -> str | None:
    """How annex B groups the system: by its first coat, where it groups every later one too."""
    grouped = {row["id"]: row for row in table("iso_12944_5_binders").rows}
    rows = [grouped.get(spec.product_of(layer).binder) for layer in system.layers]
    if not rows or rows[0] is None or any(row is None or not row["as_later_coat"] for row in rows[1:]):
        return None
    return rows[0]["as_first_coat"]


def _surfaces(system: System, spec: Spec) -> set[str]:
    """The surfaces of annex B that jobs put the system on; empty text for a surface it does not know."""
    found = set()
    for job, item in items_painted_with(system, spec):
        substrate = spec.substrate_of(job, item)
        material = substrate.material if substrate is not None else ""
        if material == "galvanized_hot_dip":
            found.add("hot-dip galvanised steel")
        elif material == "steel_blasted" or (material.startswith("steel_") and is_blasted(job, item, spec)):
            found.add("blast-cleaned steel")
        else:
            found.add("")
    return found


def _rows(surface: str, paint: str, category: str, claim: CategoryClaim) -> list[Row]:
    """The systems the tables name; each of them is enough by itself."""
    if category in _UNDER_WATER_OR_SOIL:
        held = table(_IMMERSION).rows if surface == "blast-cleaned steel" else ()
    else:
        held = tuple(row for row in table(_SYSTEMS).rows if (row["on"], row["corrosivity"]) == (surface, category))
    return [row for row in held if (row["paint"], row["durability"]) == (paint, claim.durability.value)]
