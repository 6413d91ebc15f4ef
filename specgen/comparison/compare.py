"""Compare two specifications: facts, judgement, echoes folded, the heaviest first. Called by `comparing`.

No rule is run and no file is read here: findings, figures and tables of both sides are handed in.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace

from specgen.comparison.changes import Change, Comparison, Decision, Difference, Effect, Reached
from specgen.comparison.differences import facts
from specgen.comparison.effects import judge
from specgen.comparison.figures import NO_FIGURES, Figures, moved
from specgen.comparison.fingerprint import fingerprint
from specgen.comparison.fold import fold
from specgen.comparison.gather import gathered
from specgen.comparison.likes import told_once
from specgen.comparison.listed import row_name
from specgen.comparison.moved_findings import moved_findings
from specgen.comparison.reach import jobs_reached, reached
from specgen.comparison.reference_snapshot import moved_tables
from specgen.comparison.renames import Named, Renames
from specgen.comparison.safety import Safety
from specgen.comparison.through import content_of, reached_by, swaps
from specgen.findings import Place, Report
from specgen.model.control import Waiver
from specgen.model.declaring import Concern
from specgen.model.spec import LIST_KINDS, Spec
from specgen.model.walk import Path
from specgen.units.locale import listed


def _no_figures(kind: str, key: str) -> Figures:
    return NO_FIGURES


@dataclass(frozen=True, slots=True)
class Side:
    """One of the two specifications with what is known of it.

    `place` says where a path stands, `figures` works out those of a job or product by its kind and id, `tables` maps each published
    table and cited document to its digest. `unread` are records that stand in the sources and are too broken to be compared,
    `unread_files` the files of which that is not even known.
    """

    spec: Spec
    place: Callable[[Path], Place]
    report: Report = field(default_factory=Report)
    figures: Callable[[str, str], Figures] = _no_figures
    tables: Mapping[str, str] = field(default_factory=dict)
    unread: frozenset[Path] = frozenset()
    unread_files: tuple[str, ...] = ()


def compare(
    old: Side,
    new: Side,
    *,
    renames: Renames | None = None,
    decisions: Sequence[Decision] = (),
    concern_of_rule: Mapping[str, Concern] | None = None,
    about: Path = (),
) -> Comparison:
    """What changed from `old` to `new`. `concern_of_rule` gives a waiver the concern of the rule it sets aside.

    `about` is the path of the record both sides are documents of, which then is not named in every sentence.
    """
    found = facts(
        old.spec,
        new.spec,
        renames or {},
        old.unread | new.unread,
        part_of_old=bool(old.unread_files),
        part_of_new=bool(new.unread_files),
    )
    answers = {decision.fingerprint: decision for decision in decisions}
    swapped = swaps(old.spec, new.spec, found.differences, found.renames)
    safety = Safety(old.spec, new.spec, swapped)
    by_mark = {fact.through: swap for swap in swapped for fact in swap.differences if fact.through is not None}
    rules = concern_of_rule or {}

    def judged_one(fact: Difference, reaches: tuple[Reached, ...] | None) -> Change:
        change = _change(_implying(fact, about), old, new, answers, rules, reaches)
        if not safety.touches(fact):
            return change
        return replace(
            change,
            concern=Concern.SAFETY,
            note=listed("{first}; {more}", [text for text in (change.note, safety.why(fact)) if text]),
        )

    direct = [judged_one(fact, None) for fact in found.differences]
    reached_through = [
        judged_one(fact, reaches)
        for swap in swapped
        for reaches in [reached_by(swap, by_mark, old.spec, new.spec)]
        for fact in swap.differences
    ]
    judged = direct + reached_through
    told = told_once(gathered(fold(judged), answers), answers, _weight)
    used = {change.decision.fingerprint for change in (*judged, *told) if change.decision is not None}
    return Comparison(
        changes=tuple(sorted(told, key=_weight)),
        figures=moved(_figures(old, new, direct, found.renames), direct, found.renames),
        findings=tuple(moved_findings(old.report, new.report, Named(found.renames).address)),
        tables=tuple(moved_tables(old.tables, new.tables)),
        not_compared=tuple(".".join(path) for path in found.not_compared),
        unread_files=tuple((side, file) for side, one in (("old", old), ("new", new)) for file in one.unread_files),
        unused_decisions=tuple(decision for decision in decisions if decision.fingerprint not in used),
    )


def _change(
    fact: Difference,
    old: Side,
    new: Side,
    answers: Mapping[str, Decision],
    rules: Mapping[str, Concern],
    reaches: tuple[Reached, ...] | None,
) -> Change:
    judgement = judge(fact)
    name = fingerprint(fact, content_of(fact, old.spec, new.spec))
    record = fact.owners[-1].record
    concern = rules.get(record.rule, fact.concern) if isinstance(record, Waiver) else fact.concern
    held_before, held_after = fact.owners[0].old is not None, fact.owners[0].new is not None
    change = Change(
        fact,
        judgement.effect,
        concern,
        old.place(fact.old_path) if held_before else None,
        new.place(fact.path) if held_after else None,
        name,
        judgement.note,
        judgement.rounding,
        reaches=reached(new.spec if held_after else old.spec, fact.path) if reaches is None else reaches,
        names=(_name(old.spec, fact, fact.old), _name(new.spec, fact, fact.new)),
    )
    return replace(change, decision=answers[name]) if change.is_open and name in answers else change


def _implying(fact: Difference, about: Path) -> Difference:
    first = fact.owners[0]
    if not about or fact.path[:2] != about:
        return fact
    return replace(fact, owners=(replace(first, implied=True), *fact.owners[1:]))


def _name(spec: Spec, fact: Difference, key: object) -> str:
    """The name of the record a reference leads to, or of the row of a published table."""
    kind = fact.refers
    if kind not in LIST_KINDS:
        return row_name(fact, key)
    record = getattr(spec, kind).get(key)
    return str(getattr(record, "name", None) or getattr(record, "title", ""))


_ORDER = (Effect.RELAXED, None, Effect.TIGHTENED, Effect.FACT, Effect.EDITORIAL)


def _weight(change: Change) -> tuple[int, int]:
    """Relaxed first, then what is open; within each, safety first. Changes that weigh alike keep the order of the sources."""
    weighed = change.weighed
    rank = _ORDER.index(weighed) if weighed in _ORDER else _ORDER.index(None)
    return rank, list(Concern).index(change.concern)


def _figures(
    old: Side, new: Side, changes: Iterable[Change], renames: Renames
) -> Iterator[tuple[str, str, Figures, Figures]]:
    """Old and new figures of every job that a change can reach and every product it stands in; no others can have moved."""
    touched = {path[:2] for change in changes for path in (change.difference.path, change.difference.old_path)}
    reached = jobs_reached(old.spec, touched) | jobs_reached(new.spec, touched)
    # a job or product that is new or gone is told as such
    for job in old.spec.jobs:
        now = renames.get(("jobs", job), job)
        if (job in reached or now in reached) and now in new.spec.jobs:
            yield "jobs", now, old.figures("jobs", job), new.figures("jobs", now)
    for product in old.spec.products:
        now = renames.get(("products", product), product)
        if ("products", product) in touched and now in new.spec.products:
            yield "products", now, old.figures("products", product), new.figures("products", now)
