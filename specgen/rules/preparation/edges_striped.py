"""PRE024 Edges and welds under water, and of steelwork in corrosive air, get a stripe coat

Checks
    Each system on metal that is immersed in service, or on hot-rolled or blasted steel in an environment of C5 or CX: at least one of its coats has a stripe coat; the lining of pipe needs none. The extent of a stripe coat names what is striped: edges, welds, corners, bolts or the like.
Why
    Wet paint draws back from edges and welds; under water the first blister and the first rust are there.
Passes
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    systems.deck.layers.second.stripe_coat: {when: before, where: edges and welds}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: atmosphere, category: C3}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    products.gloss.roles: [tank-lining]
    systems.deck.layers.gloss.role: tank-lining
Fails
    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}    # at systems.deck.layers.first.stripe_coat

    Given second good
    systems.deck.layers.first.stripe_coat: {when: before, where: flat faces}    # at systems.deck.layers.first.stripe_coat.where
To put right
    Write stripe_coat at the first coat, with its extent, as in edges, welds and bolts.
"""

import re

from specgen.facts.job.exposure import environment_of, like_a_vehicle
from specgen.facts.pairs.parts import painted_with
from specgen.model.environment import EnvironmentKind
from specgen.model.job import Item, ShapeKind
from specgen.rules.kit import PRACTICE, WARNING, Problem, Problems, Role, Spec, System, date, rule

_STRIPED = re.compile(
    r"edge|weld|seam|corner|bolt|rivet|nut|notch|hole|joint|overlap|crevice|angle|fastener|toe|interlock|eye|bracket|cut|rim|lip|thread|flange|flare|nozzle|stiffener|fold|hem|pit|pore|reach|all|spot|member|tube end|cope|gap",
    re.I,
)
_STEELWORK = {"steel_hot_rolled", "steel_blasted", "steel_rusted"}
_UNDER_VEHICLES = {Role.UNDERBODY, Role.CAVITY_WAX}
_CORROSIVE = {"C5", "CX"}


@rule("PRE024", on=System, severity=WARNING, source=PRACTICE)
def edges_striped(system: System, spec: Spec, on: date) -> Problems:
    for layer in system.layers:
        if layer.stripe_coat is not None and not _STRIPED.search(layer.stripe_coat.where):
            what = f"the stripe coat of {layer.id} is for {layer.stripe_coat.where}; no edge, weld, bolt or the like is named"
            yield Problem(("layers", layer.id, "stripe_coat", "where"), what)
    if any(layer.stripe_coat is not None for layer in system.layers):
        return
    for part in painted_with(system, spec):
        environment = environment_of(part.job, part.item)
        if part.kind == "metal" and environment is not None and environment.kind is EnvironmentKind.IMMERSION:
            if _lines_pipe(part.item, system):
                continue
            what = f"{part.item.id} is immersed in service, but no coat of {system.id} has a stripe coat"
            yield Problem(("layers", system.layers[0].id, "stripe_coat"), what)
            return
        category = environment.category if environment is not None else None
        vehicle = like_a_vehicle(part.job, part.item, system) or part.system.layers[-1].role in _UNDER_VEHICLES
        if part.material in _STEELWORK and category in _CORROSIVE and not part.old_paint and not vehicle:
            what = f"{part.item.id} is of {part.name} in {category}, but no coat of {system.id} has a stripe coat"
            yield Problem(("layers", system.layers[0].id, "stripe_coat"), what)
            return


def _lines_pipe(item: Item, system: System) -> bool:
    """The inside of pipe is smooth: standards of water utilities for its lining ask for none."""
    tubes = bool(item.shapes) and all(shape.kind is ShapeKind.TUBE for shape in item.shapes)
    return tubes and system.layers[-1].role is Role.TANK_LINING
