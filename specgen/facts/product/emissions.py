"""VOC content of a product from its composition, and VOC that a job lets off.

Called by the rules on emissions and by the views.
"""

from __future__ import annotations

from collections.abc import Mapping

from specgen.facts.job.packs import contents_of
from specgen.facts.product.hazard_facts import is_water
from specgen.model.job import Job
from specgen.model.product import Ingredient, Product
from specgen.model.spec import Spec
from specgen.standards.citations import ARITHMETIC
from specgen.trade.emissions import Part, voc_eu, voc_released_by_volume
from specgen.trade.given import Given, take
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Input, Working, work
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity


def voc_of(product: Product, density: Quantity) -> Working | NotKnown:
    """VOC content in g/L as the EU counts it, propellant included; every solvent counts, water is taken out.

    Not known where nothing in the composition evaporates, or water has no density.
    """
    path = f"products.{product.id}"
    parts = []
    for line in product.composition:
        share = Given(line.mass_share, f"{path}.composition.{line.id}.mass_share", "maker")
        if line.kind is Ingredient.SOLIDS:
            parts.append(Part(line.name, share, "solids"))
        elif is_water(line):
            own = Given(line.density, f"{path}.composition.{line.id}.density", "maker")
            parts.append(Part(line.name, share, "water", own))
        else:
            parts.append(Part(line.name, share, "voc"))
    hazards = product.hazards
    if hazards is not None and hazards.cure_releases is not None and hazards.cure_release_share is not None:
        share = Given(hazards.cure_release_share, f"{path}.hazards.cure_release_share", "maker")
        parts.append(Part(hazards.cure_releases, share, "voc"))
    given = Given(density, f"{path}.voc.density")
    return worked_out("VOC content", lambda: voc_eu(f"voc.{product.id}", parts, given))


def voc_let_off(job: Job, spec: Spec, packs: Mapping[tuple[str, str | None], Working]) -> tuple[Working, ...]:
    """VOC in g that a job lets off at most, product by product and in all, were every pack ordered emptied.

    `packs` are those of `quantities`, by product and variant. The stated content counts the litre less water, so the
    figure is never too low; thinner and cleaners are not in it. A product without a stated content is left out, and a
    total is only there where none is. Each volume comes before the figure that builds on it.
    """
    found: list[Working] = []
    masses: list[Working] = []
    complete = True
    for product in spec.products_of(job):
        content = product.voc.content if product.voc is not None else None
        volume = _volume(job, product, spec, packs)
        if content is None or volume is None:
            complete = False
            continue
        stated = Given(content, f"products.{product.id}.voc.content")
        masses.append(voc_released_by_volume(f"voc.{job.id}.{product.id}", volume, stated))
        found += [volume, masses[-1]]
    if complete and len(masses) > 1:
        inputs = tuple(
            take(
                f"m_{n}",
                phrase(
                    "{figure}, {product}",
                    figure=phrase(mass.name),
                    product=spec.products[mass.id.rpartition(".")[2]].name,
                ),
                mass,
                "mass",
                "g",
            )
            for n, mass in enumerate(masses, start=1)
        )
        formula = " + ".join(entry.symbol for entry in inputs)
        name = N_("VOC emission of the whole job")
        found.append(work(f"voc.{job.id}", name, formula, inputs, kind="mass", unit="g", places=0, source=ARITHMETIC))
    return tuple(found)


def _volume(job: Job, product: Product, spec: Spec, packs: Mapping[tuple[str, str | None], Working]) -> Working | None:
    """Contents in litres of all packs of a product; None where packs or contents are not known."""
    inputs: list[Input] = []
    terms: list[str] = []
    for (id, variant_id), needed in packs.items():
        if id != product.id:
            continue
        variant = next((entry for entry in product.variants if entry.id == variant_id), None)
        contents = contents_of(product, variant)
        if isinstance(contents, NotKnown):
            return None
        n = len(terms) + 1
        inputs += [
            take(f"n_{n}", needed.name, needed),
            take(f"V_{n}", "contents of a pack", contents, "volume", "L"),
        ]
        terms.append(f"n_{n} * V_{n}")
    if not terms:
        return None
    return work(
        f"volume.{job.id}.{product.id}",
        "contents of all packs",
        " + ".join(terms),
        tuple(inputs),
        kind="volume",
        unit="L",
        places=2,
        source=ARITHMETIC,
    )
