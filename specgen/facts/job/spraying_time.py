"""How long one cross coat on one part takes at the rate a job states. Called by the rule on spraying time."""

from __future__ import annotations

from functools import partial

from specgen.facts.job.quantities import quantities
from specgen.facts.layer.figures import solids_in_can
from specgen.facts.layer.film import planned_film
from specgen.model.job import Item, Job
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.standards.citations import ARITHMETIC
from specgen.trade.film import PERCENT
from specgen.trade.given import Given, take
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working, work
from specgen.units.locale import N_, listed
from specgen.units.quantity import Range

_NOTE = listed("{first}; {more}", [PERCENT, N_("1 mL of dry solids on 1 m² is 1 µm; 60: min in an hour")])


def flash_of(layer: Layer, product: Product) -> Range | None:
    """The flash-off time between cross coats: the coat's own, else its product's."""
    if layer.flash_between_passes is not None:
        return layer.flash_between_passes
    return product.application.flash_between_passes if product.application is not None else None


def cross_coat_time(job: Job, item: Item, system: System, layer: Layer, spec: Spec) -> Working | NotKnown | None:
    """Minutes for one cross coat on one part of an item; None where what it takes is not all stated."""
    product, variant = spec.product_of(layer), spec.variant_of(layer)
    film, solids = planned_film(system, layer, spec), solids_in_can(product, variant)
    area = quantities(job, spec).areas.get(item.id)
    rate = job.ventilation.spraying_rate if job.ventilation is not None else None
    landed = job.consumption.transfer_efficiency if job.consumption is not None else None
    density = product.voc.density if product.voc is not None else None
    if film is None or area is None or rate is None or landed is None or density is None or layer.passes is None:
        return None
    if isinstance(solids, NotKnown) or layer.passes.low == 0 or item.count == 0:
        return None
    at = f"jobs.{job.id}"
    inputs = (
        take("A", "area of all parts of the item", area, "area", "m2"),
        take("c", "parts", item.count),
        take("DFT", "dry film thickness", film.given, "thickness", "um"),
        take("n", "cross coats", layer.passes.low),
        take("VS", "volume solids of the can contents", solids, "share", "%"),
        take("TE", "transfer efficiency", Given(landed, f"{at}.consumption.transfer_efficiency"), "share", "%"),
        take("rho", "density", Given(density, f"products.{product.id}.voc.density"), "density", "g/mL"),
        take("q", "contents sprayed per hour", Given(rate, f"{at}.ventilation.spraying_rate"), "release_rate", "g/h"),
    )
    formula = "A / c * DFT / n / (VS / 100) / (TE / 100) * rho / q * 60"
    name = N_("spraying time of one cross coat on one part")
    key = f"spraying-time.{job.id}.{system.id}.{layer.id}.{item.id}"
    return worked_out(
        name,
        partial(work, key, name, formula, inputs, kind="duration", unit="min", places=1, source=ARITHMETIC, note=_NOTE),
    )
