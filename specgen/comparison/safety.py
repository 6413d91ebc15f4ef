"""Which changes touch safety by what follows from them, whatever their own leaf is declared to concern. Called by `compare`.

A reference that leads to other hazards, a layer that brings in a product nobody met before, a hold point on lead, a ban: the
words for them stand in leaves that mostly concern something else. The words are English ones, as the sources are.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Sequence

from specgen.comparison.changes import Difference, Kind
from specgen.comparison.effects import is_entry
from specgen.comparison.through import Swap
from specgen.facts.graph import Address, closure
from specgen.facts.memo import memoised
from specgen.facts.product.hazard_facts import isocyanates_in
from specgen.model.acceptance import InspectionPoint
from specgen.model.declaring import Concern, Polarity
from specgen.model.job import Item, Job
from specgen.model.node import Node
from specgen.model.preparation import PreparationStep
from specgen.model.product import Product
from specgen.model.references import references
from specgen.model.spec import Spec
from specgen.model.walk import leaves
from specgen.units.locale import phrase

# common practice, no source: what old paint and plating hold that poisons whoever abrades or heats it
_POISONS = re.compile(r"\b(lead|chromates?|chromium|cadmium|asbestos)\b", re.IGNORECASE)
# ... and the words by which a text protects or forbids
_GUARDS = re.compile(
    r"\b(isocyanates?|respirators?|breathing|filter masks?|supplied[- ]air|ventilat\w*|extraction|fumes?"
    r"|must not|may not|never|do not|forbidden|prohibited|banned)\b",
    re.IGNORECASE,
)
# of these every change touches safety where they speak of a poison, though the word itself stays
_EXPLAINING = {Polarity.NOTE, Polarity.WORDING}
_ON_POISON: tuple[type[Node], ...] = (InspectionPoint, PreparationStep)


class Safety:
    """What of two specifications and the swaps between them touches safety."""

    def __init__(self, old: Spec, new: Spec, swaps: Sequence[Swap]) -> None:
        self._old, self._new = old, new
        self._moved = _in_use(old) ^ _in_use(new)
        self._references: set[int] = set()
        by_mark = {fact.through: swap for swap in swaps for fact in swap.differences}
        waiting = [swap for swap in swaps if any(map(self._by_itself, swap.differences))]
        seen: set[int] = set()
        while waiting:
            swap = waiting.pop()
            if id(swap) in seen:
                continue
            seen.add(id(swap))
            for fact in swap.references:
                self._references.add(id(fact))
                if fact.through is not None:
                    waiting.append(by_mark[fact.through])

    def touches(self, fact: Difference) -> bool:
        """True where the change gains, loses or moves something that keeps people from harm."""
        return id(fact) in self._references or self._by_itself(fact)

    def why(self, fact: Difference) -> str:
        """What an entry brings in or takes away, which its own words do not say; empty for any other change."""
        if fact.kind in {Kind.RENAMED, Kind.REORDERED} or not is_entry(fact):
            return ""
        spec, come = (self._new, True) if fact.kind is Kind.ADDED else (self._old, False)
        names = ", ".join(spec.products[key].name for _, key in sorted(self._moved_with(fact)) if key in spec.products)
        if not names:
            return ""
        return (
            phrase("brings in products that no job used before: {names}", names=names)
            if come
            else phrase("no longer used by any job: {names}", names=names)
        )

    def _by_itself(self, fact: Difference) -> bool:
        if fact.kind in {Kind.RENAMED, Kind.REORDERED}:
            return fact.concern is Concern.SAFETY
        if fact.concern is Concern.SAFETY:
            return True
        if is_entry(fact) and (self._moved_with(fact) or _holds_safety(fact)):
            return True
        if fact.name == "binder" and _isocyanates(fact.owners[-1].old) != _isocyanates(fact.owners[-1].new):
            return True
        about_poison = any(isinstance(o.record, _ON_POISON) and _speaks_of_poison(o.old, o.new) for o in fact.owners)
        return about_poison or (fact.polarity not in _EXPLAINING and _guards(fact.old) != _guards(fact.new))

    def _moved_with(self, fact: Difference) -> set[Address]:
        """The products an entry leads to that some job uses on one side only."""
        spec, last = (self._new, fact.new) if fact.kind is Kind.ADDED else (self._old, fact.old)
        led = [(kind, key) for _, kind, key in references(last)]
        job = fact.owners[0].record
        if isinstance(last, Item) and isinstance(job, Job):
            led += [
                (found_kind, found.id)
                for found_kind, found in (
                    ("systems", spec.system_of(job, last)),
                    ("preparations", spec.preparation_of(job, last)),
                )
                if found is not None
            ]
        return {found for address in led for found in self._moved & closure(spec, address)}


def _holds_safety(fact: Difference) -> bool:
    """An entry within a record that states something of safety. A whole job is scope, a whole product binds nobody by itself."""
    record = fact.owners[-1].record
    return len(fact.path) > 2 and any(said.concern is Concern.SAFETY for _, _, said in leaves(record))


def _isocyanates(record: Node | None) -> bool | None:
    return isocyanates_in(record) if isinstance(record, Product) else None


def _speaks_of_poison(*sides: Node | None) -> bool:
    return any(_POISONS.search(text) for side in sides if side is not None for text in _texts(side))


def _guards(value: object) -> Counter[str]:
    """The words of poison, protection and ban that a text, or an entry with its texts, holds, with their number."""
    return Counter(
        found.group().lower()
        for text in _texts(value)
        for words in (_POISONS, _GUARDS)
        for found in words.finditer(text)
    )


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, Node):
        yield from (
            held for _, held, said in leaves(value) if isinstance(held, str) and said.polarity not in _EXPLAINING
        )
    elif isinstance(value, str):
        yield value


@memoised
def _in_use(spec: Spec) -> frozenset[Address]:
    """The products that some job leads to."""
    return frozenset(found for job in spec.jobs for found in closure(spec, ("jobs", job)) if found[0] == "products")
