"""What the policies of a project ask of an issue: which approvals, when it is to be looked at again. Called by issuing."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Iterator, Sequence
from datetime import date

from specgen.model.project import ApprovalRole, Policies
from specgen.register.approvals import Collected
from specgen.register.persons import person
from specgen.units.locale import counted

_DONE = {ApprovalRole.CHECK: ("check", "checks"), ApprovalRole.APPROVE: ("approval", "approvals")}


def missing_approvals(policies: Policies | None, approvals: Sequence[Collected]) -> Iterator[str]:
    """What the policy of the project asks for and is not there."""
    policy = policies or Policies()
    persons = {person(one.approval.name) for one in approvals}
    if len(persons) < policy.approvals_needed:
        needed = policy.approvals_needed
        yield f"{needed} {counted('person has', 'persons have', needed)} to check or approve, {len(persons)} did"
    if policy.approvals_needed and not any(one.approval.role == "approve" for one in approvals):
        yield "nobody has approved it"
    for demand in policy.approvals:
        fit = {
            person(one.approval.name)
            for one in approvals
            if one.approval.role == demand.role.value and (one.signer or not demand.signed)
        }
        if len(fit) < demand.count:
            signed = " with a signature" if demand.signed else ""
            one, many = _DONE[demand.role]
            yield f"{demand.id}: {demand.count} {counted(one, many, demand.count)}{signed} required, {len(fit)} given"


def next_review(day: date, policies: Policies | None) -> str:
    """The last day before the next review, by the calendar; empty where the project sets none."""
    if policies is None or policies.review_every is None:
        return ""
    month = day.month - 1 + policies.review_every.months
    year, month = day.year + month // 12, month % 12 + 1
    if year > date.max.year:
        return ""
    return date(year, month, min(day.day, monthrange(year, month)[1])).isoformat()


def policy_lines(policies: Policies | None) -> Iterator[str]:
    """The policy it was issued under, in words."""
    policy = policies or Policies()
    yield f"approvals needed: {policy.approvals_needed}"
    for demand in policy.approvals:
        yield f"{demand.id}: {demand.count} to {demand.role.value}{', signed' if demand.signed else ''}"
    if policy.review_every is not None:
        yield f"review every {policy.review_every}"
