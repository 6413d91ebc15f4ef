"""Each layer over the one below it, with the verdict of the tables. Called by the rules of this folder.

What a maker states of his own product goes before every table: a window for the product above counts as leave to cover, and so
does the word of the product above that it may go over the generic type below.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.facts.pairs.answers import DULLING, answered_by_coat, dulled
from specgen.facts.pairs.families import BODY_FILLER, ETCHING, NOT_NAMED, binder_family
from specgen.facts.pairs.overcoat import ZINC, Overcoating, overcoating
from specgen.model.product import Product, Role
from specgen.model.spec import Spec
from specgen.model.system import Layer, System

# Zinc dust, wash primer, body filler, oil on zinc, and what goes on acid or filler have rules of their own.
_MADE_FOR_METAL = {"wash_primer", "zinc_organic", "zinc_pu", BODY_FILLER}
# A coat with blocked hardener is taken like its two-pack parent, which is common practice.
PARENT = {"epoxy_latent": "epoxy_2k", "pu_latent": "pu_2k_aliphatic"}
_CARRIES_CLEAR = {Role.BASECOAT, Role.TOPCOAT, Role.CLEARCOAT}


class LayerPair(NamedTuple):
    """One layer over another, with the verdict on the two families."""

    below: Layer
    above: Layer
    covered: Product
    covering: Product
    verdict: Overcoating

    @property
    def stated_by_name(self) -> bool:
        """True where the product below states a window for the very product above."""
        names = {window.next_coat for window in self.covered.overcoat}
        return self.above.product in names or (self.above.product == self.covered.id and "itself" in names)

    @property
    def allowed_by_above(self) -> bool:
        """True where the product above states that it may go over the generic type below."""
        return own_word(self.covering, self.covered.binder) is True

    @property
    def answered(self) -> frozenset[str]:
        """The conditions that the two layers answer, as ids of overcoat_needs."""
        dulling = DULLING if dulled(self.below) else frozenset()
        return dulling | answered_by_coat(self.above, self.verdict.new)

    @property
    def told_elsewhere(self) -> bool:
        """True where a rule of another folder speaks of the pair, the one on zinc silicate, or the one on types not named."""
        new, old = self.verdict.new, self.verdict.old
        return (
            new in _MADE_FOR_METAL
            or old in ETCHING
            or NOT_NAMED in (new, old)
            or old == BODY_FILLER
            or new == old == "zinc_inorganic"
            or (old in ZINC and "saponification" in self.verdict.mechanisms)
            or (self.above.role is Role.CLEARCOAT and self.below.role not in _CARRIES_CLEAR)
        )


def own_word(above: Product, family: str) -> bool | None:
    """Whether a product states that it may or must not go over a generic type; None where it says nothing of that one."""
    alike = {family, PARENT.get(family, family)}
    if alike & set(above.not_over):
        return False
    return True if alike & set(above.may_go_over) else None


def layer_pairs(system: System, spec: Spec) -> Iterator[LayerPair]:
    """The pairs of a system from the part up."""
    for below, above in zip(system.layers, system.layers[1:], strict=False):
        old, new = spec.product_of(below), spec.product_of(above)
        # a drying oil is covered within days, long before it is hard through
        fresh = binder_family(old.binder)["cure"] == "oxidative"
        verdict = overcoating(new.binder, old.binder, fresh=fresh, clear=above.role is Role.CLEARCOAT)
        yield LayerPair(below, above, old, new, verdict)
