"""Compare two checked folders. Called by `specgen compare`, and promised as `specgen.compare`.

The comparison itself runs no rule: what the rules say of both sides, and which concern each of them has, is handed to it here.
"""

from __future__ import annotations

from dataclasses import replace

from specgen.checking import Checked
from specgen.comparison.changes import Comparison
from specgen.comparison.compare import Side
from specgen.comparison.compare import compare as compare_sides
from specgen.comparison.decisions import Answers
from specgen.comparison.figures import Figures, figures_of_job, figures_of_product
from specgen.comparison.reference_snapshot import Snapshot, reference_snapshot
from specgen.findings import Severity
from specgen.model.spec import LIST_KINDS
from specgen.model.walk import Path
from specgen.rules.declare import all_rules


def compare(
    old: Checked,
    new: Checked,
    *,
    answers: Answers | None = None,
    tables: tuple[Snapshot | None, Snapshot | None] = (None, None),
    about: Path = (),
) -> Comparison:
    """What changed from `old` to `new`, the heaviest change first.

    `answers` are what persons have decided, `tables` those of each side, None where they are those of this program, `about`
    the record both sides are documents of. Raises ValueError where a side holds no whole specification.
    """
    return compare_judged(side_of(old), side_of(new), answers=answers, tables=tables, about=about)


def compare_judged(
    old: Side,
    new: Side,
    *,
    answers: Answers | None = None,
    tables: tuple[Snapshot | None, Snapshot | None] = (None, None),
    about: Path = (),
) -> Comparison:
    """The same of sides already made."""
    given = answers or Answers()
    # where one program judged both no table can differ, and none has to be read
    held = ({}, {}) if tables == (None, None) else [reference_snapshot() if one is None else one for one in tables]
    return compare_sides(
        replace(old, tables=held[0]),
        replace(new, tables=held[1]),
        renames=given.renames,
        decisions=given.decisions,
        concern_of_rule={rule.id: rule.concern for rule in all_rules()},
        about=about,
    )


def side_of(checked: Checked) -> Side:
    """The side as the comparison takes it; entries that stand in the sources but are not whole are named as unread.

    Raises ValueError where it holds no whole specification.
    """
    spec = checked.loaded.spec
    if spec is None:
        raise ValueError("a side that holds no whole specification cannot be compared: see its report")
    whole = {(kind, key) for kind in LIST_KINDS for key in getattr(spec, kind)}
    unread = {path for path in checked.loaded.places if path[0] in LIST_KINDS and path not in whole}

    def figures(kind: str, key: str) -> Figures:
        if kind == "products":
            return figures_of_product(spec.products[key], spec, checked.on)
        return figures_of_job(spec.jobs[key], spec, checked.on)

    # what was wrong with reading a file has no address in the sources
    broken = {f.place.file for f in checked.loaded.findings if f.severity is Severity.ERROR and not f.path}
    return Side(
        spec,
        checked.loaded.place,
        checked.report,
        figures,
        unread=frozenset(unread),
        unread_files=tuple(sorted(broken)),
    )
