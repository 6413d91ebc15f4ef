"""Everything under and in a system on one item: the substrate, the old coats that stay, then the new layers, from the part up.

Old coats go where the preparation strips or blasts the part, unless it feathers an edge: then they stay around the spot.
Called by the rules on old paint, layers, climate and repair, and by the method statement.
"""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction
from typing import NamedTuple

from specgen.facts.layer.film import expected_film
from specgen.facts.memo import memoised
from specgen.facts.pairs.families import NOT_NAMED
from specgen.facts.pairs.parts import takes_old_paint_off
from specgen.model.job import Item, Job, OldCoat
from specgen.model.preparation import Substrate
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.model.walk import Path
from specgen.standards.tables import table
from specgen.units.quantity import Quantity

# A part that comes with paint on it, and the family of that paint; empty where it may be any.
_PAINTED = {"ecoat_part": "ecoat", "powder_part": "powder", "oem_finish": "oem_finish", "old_paint": None}


class OldLayer(NamedTuple):
    """An old coat that stays. `path` is its address from the top of the sources, `coat` what is said of it.

    `family` is None where it is not stated, or stated as not named.
    """

    family: str | None
    coat: OldCoat
    path: Path

    @property
    def name(self) -> str:
        """`the old coat factory`, or the paint the part comes with."""
        return f"the existing coat {self.coat.id}"

    @property
    def fresh(self) -> bool:
        """True where it is said not to be hard through."""
        return self.coat.cured is False


class NewLayer(NamedTuple):
    """A layer of the system with its product. `film` is what it will have, None where nothing tells."""

    layer: Layer
    product: Product
    path: Path
    film: Quantity | None

    @property
    def family(self) -> str:
        return self.product.binder


class Stack(NamedTuple):
    """The whole stack of one item. `old` and `new` run from the part up; `system` is what `new` comes from."""

    item: Item
    system: System
    substrate: Substrate | None
    old: tuple[OldLayer, ...]
    new: tuple[NewLayer, ...]

    @property
    def top_of_old(self) -> OldLayer | None:
        return self.old[-1] if self.old else None

    @property
    def first(self) -> NewLayer | None:
        return self.new[0] if self.new else None

    @property
    def last(self) -> NewLayer | None:
        return self.new[-1] if self.new else None

    def build(self) -> Quantity | None:
        """The film of all coats together in um: measured old coats and expected new ones; None where a new one has none.

        A coat laid in places only, as seam sealer is, is no film of the part.
        """
        over_all = [new for new in self.new if table("coat_places").row("role", new.layer.role.value)["local"] == "no"]
        films = [new.film for new in over_all if new.film is not None]
        if len(films) < len(over_all):
            return None
        measured = [old.coat.thickness for old in self.old if old.coat.thickness is not None]
        return Quantity.of("thickness", sum((film.to("um") for film in (*measured, *films)), Fraction(0)), "um")

    def unmeasured(self) -> tuple[OldLayer, ...]:
        """The old coats whose thickness nobody has measured."""
        return tuple(old for old in self.old if old.coat.thickness is None)


def stack(job: Job, item: Item, spec: Spec) -> Stack | None:
    """The stack of an item; None where it has no system."""
    system = spec.system_of(job, item)
    if system is None:
        return None
    new = _new_layers(spec, system.id)
    return Stack(item, system, spec.substrate_of(job, item), tuple(old_layers(job, item, spec)), new)


@memoised
def _new_layers(spec: Spec, system_id: str) -> tuple[NewLayer, ...]:
    system = spec.systems[system_id]
    return tuple(
        NewLayer(
            layer,
            spec.product_of(layer),
            ("systems", system.id, "layers", layer.id),
            expected_film(system, layer, spec),
        )
        for layer in system.layers
    )


def stacks(job: Job, spec: Spec) -> tuple[Stack, ...]:
    """The stack of every item of a job that has a system."""
    return _stacks(spec, job.id)


@memoised
def _stacks(spec: Spec, job_id: str) -> tuple[Stack, ...]:
    job = spec.jobs[job_id]
    found = (stack(job, item, spec) for item in job.items)
    return tuple(whole for whole in found if whole is not None)


def old_paint_goes(job: Job, item: Item, spec: Spec) -> bool:
    """True where the preparation takes the old paint off all over."""
    preparation = spec.preparation_of(job, item)
    return preparation is not None and takes_old_paint_off(preparation)


def old_layers(job: Job, item: Item, spec: Spec) -> Iterator[OldLayer]:
    """The old coats of an item that stay: those listed, else the paint its part comes with."""
    if old_paint_goes(job, item, spec):
        return
    at: Path = ("jobs", job.id, "items", item.id)
    substrate = spec.substrate_of(job, item)
    if (
        substrate is not None
        and not item.old_coats
        and table("materials").row("id", substrate.material)["kind"] == "paint"
    ):
        where = (*at, "substrate") if item.substrate is not None else ("jobs", job.id, "substrate")
        coat = OldCoat.model_validate({"id": substrate.material.replace("_", "-")})
        yield OldLayer(_PAINTED[substrate.material], coat, (*where, "material"))
    for coat in item.old_coats:
        yield OldLayer(coat.family if coat.family != NOT_NAMED else None, coat, (*at, "old_coats", coat.id))
