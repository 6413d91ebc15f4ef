"""All computed figures of one product, asked for in one place.

The wet film for the comb, the area from a can or a litre, the volume solids, the VOC content, the heat of combustion
and what stands behind the label. Called by `data_sheet`, `label_sheet`, `explain`, the comparison and by rules.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date
from functools import partial
from typing import NamedTuple

from specgen.facts.layer.figures import solids_in_can, solids_sprayed
from specgen.facts.memo import memoised
from specgen.facts.product.comb import Comb, combs
from specgen.facts.product.coverage import Coverage, coverage
from specgen.facts.product.emissions import voc_of
from specgen.facts.product.hazard_facts import contents_of
from specgen.facts.product.hazards import DerivedHazards, hazards_of
from specgen.facts.product.variants import alike, own
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.trade.combustion import heat_of_combustion, without_heat
from specgen.trade.given import Given
from specgen.trade.known import NotKnown, known, worked_out
from specgen.trade.working import Working


class ProductFigures(NamedTuple):
    """`film` are the workings behind `combs` and `coverage`, each once and before those that build on it.

    The volume solids in percent are those of the product itself, which a variant may state anew. `voc` is the
    content in g/L of the composition, `heat` its heat of combustion in kJ/g.
    `hazards` is what follows for the label, with workings of its own.
    """

    combs: tuple[Comb, ...]
    coverage: tuple[Coverage, ...]
    film: tuple[Working, ...]
    solids_in_can: Given | Working | NotKnown
    solids_sprayed: Given | Working | NotKnown
    voc: Working | NotKnown
    heat: Working | NotKnown
    hazards: DerivedHazards

    def workings(self) -> tuple[Working, ...]:
        """Every Working of the product, once each. Raises ValueError where two figures share an id."""
        found: dict[str, Working] = {}
        for working in self._all():
            if found.setdefault(working.id, working) != working:
                raise ValueError(f"two figures of the product are called {working.id}")
        return tuple(found.values())

    def makers(self) -> frozenset[str]:
        """The ids of workings whose result is the maker's as well: it would give a share of the composition back.

        That is so of a result of one such share, and of the sums behind the label: of shares weighted in several ways.
        """
        behind_label = {entry.id for entry in (self.heat, *self.hazards.workings()) if isinstance(entry, Working)}
        return frozenset(behind_label | {entry.id for entry in self.workings() if _of_one_share(entry)})

    def _all(self) -> Iterator[Working]:
        yield from self.film
        single = (self.solids_in_can, self.solids_sprayed, self.voc, self.heat)
        yield from (figure for figure in single if isinstance(figure, Working))
        yield from self.hazards.workings()


def _of_one_share(working: Working) -> bool:
    return sum(entry.audience == "maker" for entry in working.inputs) == 1


def product_figures(product: Product, spec: Spec, on: date) -> ProductFigures:
    """All figures the product's data allow, by the law of the day `on`; a rule says why one is not known, where it matters."""
    return _work_out(spec, product.id, on)


@memoised
def _work_out(spec: Spec, product_id: str, on: date) -> ProductFigures:
    product = spec.products[product_id]
    workings: dict[str, Working] = {}
    covered: list[Coverage] = []
    for names, variant in alike(product, lambda v: (v.fill, own(v, "solids_in_can"))):
        lines = worked_out("coverage", partial(tuple, coverage(product, names, variant, workings)))
        covered += known(lines) or ()
    combed: list[Comb] = []
    for names, variant in alike(product, lambda v: (own(v, "per_pass"), own(v, "solids_sprayed"))):
        wet = worked_out("WFT by comb gauge", partial(tuple, combs(product, names, variant, workings)))
        combed += known(wet) or ()
    return ProductFigures(
        tuple(combed),
        tuple(covered),
        tuple(workings.values()),
        solids_in_can(product, None),
        solids_sprayed(product, None),
        voc_content(product),
        heat(product),
        hazards_of(spec, product.id, on),
    )


def voc_content(product: Product) -> Working | NotKnown:
    """VOC content in g/L from the composition, propellant included; it takes the density of the contents."""
    density = product.voc.density if product.voc is not None else None
    if density is None or not product.composition:
        at = ("products", product.id, *(("composition",) if density is not None else ("voc", "density")))
        why, missing = "composition and density of the contents are not both stated", ("composition", "density")
        return NotKnown("VOC content", why, missing, at=at)
    return voc_of(product, density)


def heat(product: Product) -> Working | NotKnown:
    """Heat of combustion in kJ/g from the composition, where that of every component is known."""
    contents, at = contents_of(product), ("products", product.id, "composition")
    gaps = without_heat(contents)
    if not contents or gaps:
        why = "the heat of combustion is not known for every component" if gaps else "the composition is not stated"
        return NotKnown("heat of combustion", why, tuple(gaps) or ("composition",), at=at)
    return worked_out("heat of combustion", lambda: heat_of_combustion(f"{product.id}.heat", contents), at)
