"""The judgement on each fact: does the new side accept less than the old one, more, or something else? Called by `compare`.

A leaf stands for the set of what it accepts. New inside old is tightened, old inside new relaxed, neither shifted; values are
ordered exactly, so a chain of tightened steps is tightened as a whole. A limit that is not stated accepts everything, a
permission that is not stated nothing.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction
from math import inf
from typing import Any

from specgen.comparison.changes import Difference, Effect, Kind, Rounding
from specgen.comparison.criteria import of_criterion
from specgen.comparison.ladders import basis, level
from specgen.comparison.policy import (
    ALL_WHERE_LEFT_OUT,
    CUTS_BOTH_WAYS,
    EASES,
    INHERITED,
    INHERITED_PARTS,
    ON_THE_SHELF,
    WHOLE,
)
from specgen.comparison.rounding import left_over
from specgen.comparison.same_words import said_alike
from specgen.comparison.values import members, written_alike
from specgen.facts.tests.narrower import as_limit, narrower
from specgen.model.contract_document import ContractClause, Force
from specgen.model.declaring import Polarity
from specgen.model.job import Job
from specgen.model.node import Node
from specgen.standards.tables import table
from specgen.units.count import Count
from specgen.units.locale import N_, phrase
from specgen.units.quantity import CalendarSpan, Quantity, Range, as_range, lower, upper


@dataclass(frozen=True, slots=True)
class Judgement:
    """The effect of a difference, why where that is not plain, and what a change of unit left over."""

    effect: Effect
    note: str = ""
    rounding: tuple[Rounding, ...] = ()


def judge(fact: Difference) -> Judgement:
    """The effect of one difference, by the polarity its leaf declares."""
    if fact.kind is Kind.RENAMED:
        return Judgement(Effect.EDITORIAL, N_("the same entry under another id"))
    if fact.kind is Kind.REORDERED:
        return Judgement(Effect.FACT if fact.polarity is Polarity.FACT else Effect.SHIFTED)
    if is_entry(fact):
        return _entry(fact)
    old, new, note = _in_force(fact)
    if type(fact.owners[-1].record) in EASES and (old is None) != (new is None) and fact.polarity is not Polarity.FACT:
        return Judgement(Effect.RELAXED if old is None else Effect.TIGHTENED)
    if _equal(old, new) or _says_the_same(fact, old, new):
        return Judgement(Effect.EDITORIAL, note or N_("the same value, written differently"))
    if (told := of_criterion(fact, old, new)) is not None:
        return Judgement(*told, left_over(old, new))
    effect = _EFFECTS[fact.polarity](fact, old, new)
    if _key(fact) in ALL_WHERE_LEFT_OUT and not (old and new):
        note = N_("left out, it means all of them")
    ordered = effect in {Effect.TIGHTENED, Effect.RELAXED, Effect.SHIFTED, Effect.FACT}
    return Judgement(effect, note or _ladder_note(fact, effect), left_over(old, new) if ordered else ())


def _key(fact: Difference) -> tuple[type[Node], str]:
    return type(fact.owners[-1].record), fact.name


def is_entry(fact: Difference) -> bool:
    """True where an entry came or went, rather than a value of one."""
    last = fact.owners[-1]
    return bool(last.key) and (last.old is None or last.new is None) and fact.path[-1] == last.key


def _entry(fact: Difference) -> Judgement:
    came = fact.kind is Kind.ADDED
    record = fact.owners[-1].record
    if type(record) in CUTS_BOTH_WAYS:
        return Judgement(Effect.SHIFTED, CUTS_BOTH_WAYS[type(record)])
    if type(record) in ON_THE_SHELF:
        return Judgement(Effect.FACT, N_("it applies to nobody until something refers to it"))
    if fact.polarity in {Polarity.WAIVER, Polarity.PERMISSION} or _permits(record):
        return Judgement(Effect.RELAXED if came else Effect.TIGHTENED)
    if fact.polarity is Polarity.SCOPE:
        return Judgement(Effect.TIGHTENED if came else Effect.RELAXED)
    return Judgement(Effect.FACT if fact.polarity is Polarity.FACT else Effect.EDITORIAL)


def _permits(record: Node) -> bool:
    """True for a clause that permits: with it goes a permission."""
    return isinstance(record, ContractClause) and record.force is Force.PERMITTED


def _in_force(fact: Difference) -> tuple[Any, Any, str]:
    """What counts on each side: the value stated, else what the job says for its items, else the default."""
    old, new = fact.old, fact.new
    if _key(fact) in INHERITED:
        above = fact.owners[0]
        if isinstance(above.record, Job):
            old = old if old is not None else getattr(above.old, fact.name, None)
            new = new if new is not None else getattr(above.new, fact.name, None)
            if old is not None and old == new:
                return old, new, N_("the job states the same")
    part = fact.owners[-1]
    if len(fact.owners) > 2 and (type(fact.owners[-2].record), part.name) in INHERITED_PARTS:
        # of a part the item has on both sides the job's says nothing
        job = fact.owners[0].old if part.old is None else fact.owners[0].new if part.new is None else None
        of_job = getattr(getattr(job, part.name, None), fact.name, None)
        if of_job is not None and _equal(of_job, new if old is None else old):
            return of_job, of_job, N_("the job states the same")
    if fact.default is not None:
        old = old if old is not None else fact.default
        new = new if new is not None else fact.default
        if _equal(old, new):
            return old, new, N_("where nothing is stated, the same value applies")
    return old, new, ""


def _equal(old: Any, new: Any) -> bool:
    if isinstance(old, Quantity | Range | CalendarSpan) and type(old) is type(new):
        return bool(old == new)
    return written_alike(old, new)


def _says_the_same(fact: Difference, old: Any, new: Any) -> bool:
    return fact.polarity is Polarity.REQUIREMENT_TEXT and bool(old and new) and said_alike(old, new)


def _ladder_note(fact: Difference, effect: Effect) -> str:
    if fact.polarity is not Polarity.LADDER or (fact.old is None or fact.new is None):
        return ""
    named = basis(type(fact.owners[-1].record), fact.name)
    if not named:
        return ""
    if effect is Effect.SHIFTED:
        return phrase("the table “{table}” does not rank the two", table=phrase(table(named).title))
    return phrase(
        "as ranked by the table “{table}”, {basis}",
        table=phrase(table(named).title),
        basis=phrase(str(table(named).basis)),
    )


def _by_inclusion(*, inside_old: bool, holds_old: bool) -> Effect:
    if inside_old:
        return Effect.EDITORIAL if holds_old else Effect.TIGHTENED
    return Effect.RELAXED if holds_old else Effect.SHIFTED


def _limit(old: Any, new: Any, narrower: Callable[[Any, Any], bool]) -> Effect:
    """`narrower(a, b)`: all that a accepts is accepted by b; what is not stated accepts everything."""
    inside = old is None or (new is not None and narrower(new, old))
    holds = new is None or (old is not None and narrower(old, new))
    return _by_inclusion(inside_old=inside, holds_old=holds)


def _at_least(fact: Difference, old: Any, new: Any) -> Effect:
    return _limit(old, new, lambda a, b: all(x >= y for x, y in zip(_ends(a), _ends(b), strict=True)))


def _at_most(fact: Difference, old: Any, new: Any) -> Effect:
    return _limit(old, new, lambda a, b: all(x <= y for x, y in zip(_ends(a), _ends(b), strict=True)))


def _ends(value: Any) -> tuple[Any, Any]:
    """Both ends of what may be stated as a range, `4..6 h`; the value twice where it is one."""
    if isinstance(value, Count):
        return value.low, inf if value.high is None else value.high
    return (lower(value), upper(value)) if isinstance(value, Quantity | Range) else (value, value)


def _within(fact: Difference, old: Any, new: Any) -> Effect:
    return _limit(old, new, lambda a, b: bool(_accepted(b).holds_all_of(_accepted(a))))


def _accepted(value: Any) -> Any:
    """What a range, a value or a count accepts."""
    return as_range(value) if isinstance(value, Quantity) else value


def _exactly(fact: Difference, old: Any, new: Any) -> Effect:
    return _limit(old, new, _equal)


def _one_of(fact: Difference, old: Any, new: Any) -> Effect:
    def narrower(a: Any, b: Any) -> bool:
        return WHOLE in members(b) or members(a) <= members(b)

    return _limit(old or None, new or None, narrower)


def _all_of(fact: Difference, old: Any, new: Any) -> Effect:
    if _key(fact) in ALL_WHERE_LEFT_OUT and not (old and new):
        return _by_inclusion(inside_old=not new, holds_old=not old)
    return _by_inclusion(inside_old=members(new) >= members(old), holds_old=members(old) >= members(new))


def _scope(fact: Difference, old: Any, new: Any) -> Effect:
    if fact.name == "id":
        return Effect.EDITORIAL
    if isinstance(old, tuple) or isinstance(new, tuple):
        return _all_of(fact, old, new)

    def takes_in(a: Any, b: Any) -> bool:
        return WHOLE in members(a) or members(a) == members(b)

    return _by_inclusion(inside_old=takes_in(new, old), holds_old=takes_in(old, new))


def _permission(fact: Difference, old: Any, new: Any) -> Effect:
    def granted(value: Any) -> Fraction:
        if value is None:
            return Fraction(0)
        return value.base if isinstance(value, Quantity) else Fraction(int(value))

    return _by_inclusion(inside_old=granted(new) <= granted(old), holds_old=granted(old) <= granted(new))


def _ladder(fact: Difference, old: Any, new: Any) -> Effect:
    model = type(fact.owners[-1].record)

    def narrower(a: str | Enum, b: str | Enum) -> bool:
        high, low = level(model, fact.name, a), level(model, fact.name, b)
        return high is not None and low is not None and high > low

    return _limit(old, new, narrower)


def _test_limit(fact: Difference, old: Any, new: Any) -> Effect:
    """By the method of the test, where both sides have one and the same; what has no order on its scale is shifted."""
    if old is None or new is None:
        return _limit(old, new, _equal)
    owner = fact.owners[-1]
    methods = [(getattr(side, "method", None), getattr(side, "standard", None)) for side in (owner.old, owner.new)]
    method, standard = methods[0]
    if method is None and methods[1][0] is None:
        return Effect.REWORDED
    if method is None or methods[0] != methods[1]:
        return Effect.SHIFTED
    before, after = as_limit(method, old), as_limit(method, new)
    if before is None or after is None:
        return Effect.REWORDED
    scale = standard or ""
    inside, holds = narrower(method, scale, after, before), narrower(method, scale, before, after)
    if inside is None or holds is None:
        return Effect.SHIFTED
    return _by_inclusion(inside_old=inside, holds_old=holds)


def _replaced(fact: Difference, old: Any, new: Any) -> Effect:
    # a reference that is left out leads elsewhere, it does not free anyone from the choice
    if (old is None or new is None) and not fact.refers:
        return _limit(old, new, _equal)
    return Effect.REPLACED


def _waiver(fact: Difference, old: Any, new: Any) -> Effect:
    if fact.name == "until" and old is not None and new is not None:
        return _by_inclusion(inside_old=new <= old, holds_old=old <= new)
    return Effect.SHIFTED


def _text(fact: Difference, old: Any, new: Any) -> Effect:
    return Effect.REWORDED if old is not None and new is not None else _limit(old, new, _equal)


def _fact(fact: Difference, old: Any, new: Any) -> Effect:
    return Effect.FACT


def _words(fact: Difference, old: Any, new: Any) -> Effect:
    return Effect.EDITORIAL


_EFFECTS: dict[Polarity, Callable[[Difference, Any, Any], Effect]] = {
    Polarity.AT_LEAST: _at_least,
    Polarity.AT_MOST: _at_most,
    Polarity.WITHIN: _within,
    Polarity.EXACTLY: _exactly,
    Polarity.ONE_OF: _one_of,
    Polarity.ALL_OF: _all_of,
    Polarity.PERMISSION: _permission,
    Polarity.LADDER: _ladder,
    Polarity.SCOPE: _scope,
    Polarity.TEST_LIMIT: _test_limit,
    Polarity.REPLACED: _replaced,
    Polarity.WAIVER: _waiver,
    Polarity.FACT: _fact,
    Polarity.REQUIREMENT_TEXT: _text,
    Polarity.WORDING: _words,
    Polarity.NOTE: _words,
}
