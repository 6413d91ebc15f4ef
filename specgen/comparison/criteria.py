"""How film criteria compare: ordered by proof within one rule, else told with readings that part the two. Called by `effects`.

Ordered are the levels of SSPC-PA 2, the two readings of the clause of ISO 19840 and the nominal film a rule counts from, and only
where edition, sampling, gauge and correction are the same: whatever passes the narrower one then passes the wider one.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from specgen.comparison.changes import Difference, Effect
from specgen.comparison.film_readings import READINGS, Judge, judge_of, told_apart
from specgen.facts.job.counting import COUNTED_FROM_NOMINAL, counting_table
from specgen.model.acceptance import AcceptanceRule, Criterion, InspectionPoint, LowReadings
from specgen.model.node import Node
from specgen.standards.tables import table
from specgen.units.display import unit_sign
from specgen.units.locale import N_, listed, phrase
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text

_LIMITS = ("min", "nominal", "max", "spot_min", "spot_max", "area_min", "area_max")


def of_criterion(fact: Difference, old: Any, new: Any) -> tuple[Effect, str] | None:
    """Effect and note of a rule, level, count or nominal film; None for any other leaf, which its own polarity judges."""
    if len(fact.owners) < 2:
        return None
    point, criterion = fact.owners[-2], fact.owners[-1]
    sides = (point.old, point.new, criterion.old, criterion.new)
    match sides:
        case InspectionPoint() as was, InspectionPoint() as now, Criterion() as before, Criterion() as after:
            pass
        case _:
            return None
    if fact.name in {"rule", "edition"}:
        # a rule that comes or goes leaves the limits and changes how readings are counted against them
        limited = any(getattr(side, name) is not None for side in (before, after) for name in _LIMITS)
        return (Effect.REPLACED, _apart(was, now)) if limited or (old and new) else None
    if before.rule is not after.rule or not _is_ordered(fact.name, after.rule):
        return None
    if old is None or new is None:
        # what then counts, the rule itself does not say
        return (Effect.REPLACED, "") if fact.name != "nominal" else None
    if before.edition != after.edition or not _read_alike(was, now):
        return Effect.REPLACED, N_("the readings are also taken differently, so the two cannot be ranked")
    return _ordered(fact.name, old, new)


def _is_ordered(name: str, rule: AcceptanceRule | None) -> bool:
    if name == "nominal":
        return rule in COUNTED_FROM_NOMINAL
    return (name, rule) in {("level", AcceptanceRule.PA_2), ("low_readings", AcceptanceRule.ISO_19840)}


def _read_alike(old: InspectionPoint, new: InspectionPoint) -> bool:
    """True where as many readings are taken in the same places with the same gauge and correction."""
    pairs: tuple[tuple[Node | None, Node | None], ...] = ((old.gauge, new.gauge), (old.readings, new.readings))
    return all(before == after for before, after in pairs)


def _ordered(name: str, old: Any, new: Any) -> tuple[Effect, str]:
    if name == "low_readings":
        return (Effect.TIGHTENED if new is LowReadings.FEWER_THAN else Effect.RELAXED), ""
    if name == "nominal":
        # every share and mean that counts from it rises and falls with it
        return (Effect.TIGHTENED if new > old else Effect.RELAXED), ""
    held = table("sspc_pa_2_levels")
    rows = {row["level"]: row for row in held.rows}
    before, after = rows.get(str(old)), rows.get(str(new))
    if before is None or after is None:
        return Effect.REPLACED, phrase("the table “{table}” does not contain both levels", table=phrase(held.title))
    ends = [(Fraction(row["spot_min_pct"]), Fraction(row["spot_max_pct"] or 10**6)) for row in (before, after)]
    (low, high), (new_low, new_high) = ends
    note = phrase("as ranked by the table “{table}”, {basis}", table=phrase(held.title), basis=phrase(str(held.basis)))
    if new_low >= low and new_high <= high:
        return Effect.TIGHTENED, note
    if new_low <= low and new_high >= high:
        return Effect.RELAXED, note
    return Effect.REPLACED, phrase("the table “{table}” does not rank the two", table=phrase(held.title))


def _apart(old: InspectionPoint, new: InspectionPoint) -> str:
    """A set of readings that each side accepts and the other refuses, and on whose word; empty where words decide on a side."""
    before, after = judge_of(old), judge_of(new)
    if before is None or after is None or before == after:
        return ""
    stated = next(
        (value for side in (old, new) for name in _LIMITS if (value := getattr(side.criterion, name)) is not None), None
    )
    unit = "mil" if isinstance(stated, Quantity) and stated.unit.startswith("mil") else "um"
    said = [
        _set_said(before, after, unit, N_("passed before and fails now")),
        _set_said(after, before, unit, N_("passes now and failed before")),
    ]
    tables = [found for side in (old, new) if (found := counting_table(side.criterion.rule)) is not None]
    grounds = dict.fromkeys(
        phrase("{document}, {basis}", document=phrase(str(found.document)), basis=phrase(str(found.basis)))
        if found.document
        else phrase(str(found.basis))
        for found in tables
    )
    return phrase(
        "{sets}; by {grounds}",
        sets=phrase(listed("{first}; {more}", said)),
        grounds=phrase(listed("{first}, {more}", list(grounds))),
    )


def _set_said(accepting: Judge, refusing: Judge, unit: str, verdict: str) -> str:
    found = told_apart(accepting, refusing, unit)
    if found is None:
        return phrase("no set of {count} readings was found that {verdict}", count=READINGS, verdict=phrase(verdict))
    read = " + ".join(f"{count} × {plain_text(value)} {unit_sign(unit)}" for count, value in found)
    return phrase("a set of {count} readings ({read}) {verdict}", count=READINGS, read=read, verdict=phrase(verdict))
