"""The first new coat over the top old coat, and what the preparation does to old paint. Called by the rules of this folder.

Each pair is told of once, by the rule that says most: lifting, bitumen and electrocoat before the plain refusal of the matrix.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import NamedTuple

from specgen.facts.job.stack import NewLayer, OldLayer, Stack, stacks
from specgen.facts.pairs.answers import answered_by_coat, answered_by_preparation
from specgen.facts.pairs.families import BODY_FILLER, ZINC_RICH
from specgen.facts.pairs.overcoat import Overcoating, on_rub, overcoating
from specgen.model.job import Job, PatchResult, RubResult
from specgen.model.product import Role
from specgen.model.spec import Spec
from specgen.standards.citations import Citation
from specgen.standards.tables import table
from specgen.units.locale import phrase

# Wash primer, zinc dust and body filler are made for metal: the rules on first coats say where they may not lie.
MADE_FOR_METAL = {"wash_primer", BODY_FILLER} | ZINC_RICH
_COLOUR = {Role.BASECOAT, Role.TOPCOAT, Role.CLEARCOAT}


class TopPair(NamedTuple):
    """The first new coat over the top old coat of an item, with the verdict on the two."""

    stack: Stack
    old: OldLayer
    new: NewLayer
    verdict: Overcoating

    @property
    def lifts(self) -> bool:
        return self.verdict.refused and "lifting" in self.verdict.mechanisms and self.old.family != "bituminous"

    @property
    def bare_electrocoat(self) -> bool:
        return self.old.family == "ecoat" and self.new.layer.role in _COLOUR

    @property
    def proven(self) -> bool:
        """True where a patch of the system held, by a limit that was written down."""
        test = self.stack.item.patch_test
        return test is not None and test.result is PatchResult.PASS and test.limit is not None

    def sentence(self) -> str:
        """`DOOR: two-pack epoxy over vinyl is not recommended: ...`."""
        return f"{self.stack.item.id}: {self.verdict.spoken()}"


def top_pairs(job: Job, spec: Spec) -> Iterator[TopPair]:
    """One for each item with old paint of which the family or the solvent rub is known."""
    for stack in stacks(job, spec):
        pair = top_pair(stack)
        if pair is not None:
            yield pair


def top_pair(stack: Stack) -> TopPair | None:
    """The pair of one item; None where no old coat stays, or nobody knows what the top one is."""
    old, new = stack.top_of_old, stack.first
    if old is None or new is None:
        return None
    verdict = _verdict(old, new)
    return TopPair(stack, old, new, verdict) if verdict is not None else None


def _verdict(old: OldLayer, new: NewLayer) -> Overcoating | None:
    if old.family is not None:
        found = overcoating(new.family, old.family, fresh=old.fresh, clear=new.layer.role is Role.CLEARCOAT)
        # what the rag shows on the part is surer ground than what is known of the family
        if found.refused and old.coat.rub is RubResult.SOLUBLE and not found.citation.basis.confirmed:
            rubbed = on_rub(new.family, old.coat.rub)
            return rubbed if rubbed.refused else found
        return found
    return on_rub(new.family, old.coat.rub) if old.coat.rub is not None else None


def done_to_old_paint(pair: TopPair, job: Job, spec: Spec) -> frozenset[str]:
    """What the preparation of the item does to it, as ids of overcoat_needs."""
    return answered_by_preparation(spec.preparation_of(job, pair.stack.item))


def answered(pair: TopPair, job: Job, spec: Spec) -> frozenset[str]:
    """The conditions that the job answers, as ids of overcoat_needs: by its steps, by what is said of the old coat, by a
    patch that held, by the first new coat."""
    seen = {"sound": pair.old.coat.sound is True, "aged_hard": pair.old.coat.cured is True, "patch_test": pair.proven}
    by_coat = answered_by_coat(pair.new.layer, pair.new.family)
    return done_to_old_paint(pair, job, spec) | by_coat | {need for need, yes in seen.items() if yes}


def pass_limits() -> str:
    """What a patch has to show, from the table of tests."""
    rows = {row["id"]: row for row in table("old_paint_tests").rows}
    wait, cut, tape = rows["patch_wait"], rows["patch_cross_cut"], rows["patch_tape"]
    return phrase(
        "no lifting after {least} to {most} h, then after 7 days classification {cut} or better by ISO 2409, "
        "or rating {tape}A or better (method A) or {tape}B or better (method B) by ASTM D3359 (limits: common "
        "practice; ASTM D5064 sets none)",
        least=wait["least"],
        most=wait["most"],
        cut=cut["most"],
        tape=tape["least"],
    )


def citation_of(key: str) -> Citation:
    """On whose word a test of old paint stands."""
    return table("old_paint_tests").row_citation(table("old_paint_tests").row("id", key))
