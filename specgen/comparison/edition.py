"""A comparison as a customer may see it. Called by the command, before any report or document is made of it."""

from __future__ import annotations

from dataclasses import replace

from specgen.comparison.address_words import address_in_words
from specgen.comparison.changes import Change, Comparison, FindingMoved
from specgen.findings import Finding
from specgen.model.audience import customer_path
from specgen.model.declaring import PATH, Audience


def for_customer(found: Comparison) -> Comparison:
    """Without changes of the maker's leaves, figures whose names tell of the composition, what stands at addresses that lead into
    it, and the wordings of findings, which may name it.
    """
    shown = tuple(_change(change) for change in found.changes if _may_see(change))
    return replace(
        found,
        changes=shown,
        figures=tuple(entry for entry in found.figures if not entry.is_makers),
        findings=tuple(
            _finding_moved(entry) for entry in found.findings if _is_shown(entry.old) and _is_shown(entry.new)
        ),
        withheld=len(found.changes) - len(shown),
        audience=Audience.CUSTOMER,
    )


def _may_see(change: Change) -> bool:
    return change.difference.audience is Audience.CUSTOMER


def _change(change: Change) -> Change:
    fact = change.difference
    if fact.refers == PATH:
        old, new = (
            address_in_words(customer_path(value)) if isinstance(value, str) else value
            for value in (fact.old, fact.new)
        )
        fact = replace(fact, old=old, new=new)
    follows = tuple(_change(echo) for echo in change.follows if _may_see(echo))
    return replace(change, difference=fact, follows=follows, alike=tuple(_change(other) for other in change.alike))


def _is_shown(finding: Finding | None) -> bool:
    return finding is None or customer_path(finding.path) == finding.path


def _finding_moved(entry: FindingMoved) -> FindingMoved:
    return FindingMoved(_finding(entry.old), _finding(entry.new))


def _finding(finding: Finding | None) -> Finding | None:
    if finding is None:
        return None
    return replace(finding, what="", why="", place=replace(finding.place, text=""))
