"""The VOC content of a product once thinner is added. Called by the rule on thinned products.

Where the thinner states none, it has at least that of the lightest solvents, unless water or an exempt solvent may be meant.
"""

from __future__ import annotations

import re
from fractions import Fraction
from functools import partial

from specgen.facts.pairs.families import WATERBORNE
from specgen.facts.usual import proportion
from specgen.model.product import Product
from specgen.standards.citations import ARITHMETIC
from specgen.standards.tables import table
from specgen.trade.film import PERCENT
from specgen.trade.given import Given, take
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working, work
from specgen.units.quantity import Quantity, lower

_NO_SOLVENT = re.compile(r"\bwater|\bexempt|VOC[- ]free|\bPCBTF\b|\bTBAC\b|chlorobenzotrifluoride", re.I)


def solvent_free(product: Product) -> bool:
    """True where its solids leave next to no solvent: what is thinned all the same stays under a film that hardens through at once."""
    solids = product.solids.in_can if product.solids is not None else None
    return solids is not None and lower(solids).to("%") >= proportion("solvent_free")


def thinned_voc(product: Product, thinner: Quantity, origin: str) -> Working | NotKnown:
    """The VOC content in g/L with `thinner` percent by volume added; not known where either content is not stated."""
    mixing = product.application.mixing if product.application is not None else None
    own = product.voc.content if product.voc is not None else None
    added = mixing.thinner_voc if mixing is not None else None
    if own is None or added is None:
        missing = tuple(
            name for name, value in (("VOC content", own), ("VOC content of the thinner", added)) if value is None
        )
        at = ("products", product.id)
        return NotKnown("VOC content as thinned", f"not stated: {', '.join(missing)}", missing, at=at)
    return worked_out("VOC content as thinned", partial(_mixed, product, own, added, thinner, origin))


def least_thinned_voc(product: Product, thinner: Quantity, origin: str) -> Working | None:
    """The least VOC content in g/L with `thinner` percent of some organic solvent; None where the thinner may be none."""
    mixing = product.application.mixing if product.application is not None else None
    own = product.voc.content if product.voc is not None else None
    named = (mixing.thinner if mixing is not None else None) or ""
    if own is None or product.binder in WATERBORNE or _counts_for_nothing(named):
        return None
    least = table("thinner_voc_least").row("id", "solvents")["least_g_l"]
    added = Quantity.of("voc_content", Fraction(least), "g/L", least)
    found = worked_out("VOC content as thinned", partial(_mixed, product, own, added, thinner, origin))
    return None if isinstance(found, NotKnown) else found


def _counts_for_nothing(thinner: str) -> bool:
    """True where a thinner is named that is no VOC, or none everywhere."""
    exempt = (row["name"].casefold() for row in table("voc_exempt_us").rows)
    return _NO_SOLVENT.search(thinner) is not None or any(name in thinner.casefold() for name in exempt)


def _mixed(product: Product, own: Quantity, added: Quantity, thinner: Quantity, origin: str) -> Working:
    path = f"products.{product.id}"
    inputs = (
        take("V", "VOC content of the product", Given(own, f"{path}.voc.content"), "voc_content", "g/L"),
        take(
            "V_t",
            "VOC content of the thinner",
            Given(added, f"{path}.application.mixing.thinner_voc"),
            "voc_content",
            "g/L",
        ),
        take("t", "thinner added, by volume", Given(thinner, origin), "percentage", "%"),
    )
    name, formula = "VOC content as thinned", "(V + V_t * t / 100) / (1 + t / 100)"
    return work(
        f"voc-thinned.{product.id}",
        name,
        formula,
        inputs,
        kind="voc_content",
        unit="g/L",
        places=0,
        source=ARITHMETIC,
        note=PERCENT,
    )
