"""Waivers: a warning that a named person takes on becomes a note until the day the waiver ends.

A waiver that is unused, past its day, aimed at an error or at a rule nobody can waive is a finding of its own (WVR001 to WVR004).
Neither an error nor what such a rule finds is ever waived.
A finding in a product, preparation or system is waived only where every job that rests on it carries the waiver.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from datetime import date
from typing import NamedTuple

from specgen.facts.graph import PROJECT, address_of, jobs_in, reach
from specgen.facts.job.waivers import in_force
from specgen.findings import Finding, Severity
from specgen.model.control import Waiver
from specgen.model.guarded import NotWholeError
from specgen.model.parse import Loaded
from specgen.model.spec import Spec
from specgen.rules.judge import Judged
from specgen.standards.citations import Basis, Citation


class WaiverFault(NamedTuple):
    """One way a waiver can be wrong; `specgen explain` prints it."""

    id: str
    title: str
    why: str
    remedy: str
    severity: Severity = Severity.WARNING


FAULTS = {
    fault.id: fault
    for fault in (
        WaiverFault(
            "WVR001",
            "A waiver matches no finding",
            "A waiver that is kept after its finding is gone would hide the finding if it came back.",
            "Delete the waiver, or correct its rule or path to those the finding prints.",
        ),
        WaiverFault(
            "WVR002",
            "A waiver has expired",
            "The person who accepted the deviation did so until that day and no longer.",
            "Correct the finding, or have the waiver renewed with a later date.",
        ),
        WaiverFault(
            "WVR003",
            "A waiver names an error",
            "A document with an error must not be issued; an error cannot be waived.",
            "Correct the error and delete the waiver.",
            Severity.ERROR,
        ),
        WaiverFault(
            "WVR004",
            "A waiver names a rule that cannot be waived",
            "The rule protects people or follows the law, so its finding stays open, and a document must not show it as waived.",
            "Delete the waiver and correct what the rule finds.",
            Severity.ERROR,
        ),
    )
}


def apply_waivers(judged: Judged, loaded: Loaded, on: date) -> list[Finding]:
    """The findings with waived warnings turned into notes, and the faults of the waivers themselves.

    That the waiver of a rule which could not judge some record sets nothing aside cannot be told.
    """
    spec, found = loaded.judged, judged.found
    if spec is None:
        return found
    stopped = {one.rule for one in judged.stopped}
    jobs = {**spec.jobs, **loaded.partial.get("jobs", {})}
    held = [(job_id, waiver) for job_id, job in jobs.items() for waiver in job.waivers]
    # what such a rule finds stays as it is, even where it only warns
    result = [one if one.id in judged.never_waived else _waived(one, held, spec, on) for one in found]
    for job_id, waiver in held:
        result.extend(
            fault
            for fault in _faults(job_id, waiver, judged, loaded, on)
            if fault.id != "WVR001" or not (waiver.rule in stopped or _unread(waiver, spec, loaded))
        )
    return result


def waiver_matches(waiver: Waiver, finding: Finding) -> bool:
    return waiver.rule == finding.id and waiver.path == finding.path


def _waived(finding: Finding, held: list[tuple[str, Waiver]], spec: Spec, on: date) -> Finding:
    if finding.severity is not Severity.WARNING:
        return finding
    granted = {job_id: w for job_id, w in held if waiver_matches(w, finding) and in_force(w, on)}
    if not granted or not _jobs_with(finding, spec) <= set(granted):
        return finding
    waiver = next(iter(granted.values()))
    what = f"waived by {waiver.by} until {waiver.until}: {finding.what}"
    return replace(
        finding, severity=Severity.NOTE, what=what, remedy=f"Nothing until {waiver.until}; assess it again then."
    )


def _jobs_with(finding: Finding, spec: Spec) -> set[str]:
    """The jobs that rest on what was found; none where that cannot be told, for nothing can be issued then anyway."""
    try:
        return set(jobs_in(spec, reach(spec, address_of(finding.path.split(".")))))
    except NotWholeError:
        return set()


def _unread(waiver: Waiver, spec: Spec, loaded: Loaded) -> bool:
    """True where the record that the waiver speaks of has faults, and was not judged."""
    kind, key = address_of(waiver.path.split("."))
    if kind == PROJECT[0]:
        return loaded.spec is None
    return bool(loaded.unread) or (
        key in loaded.ids[kind] and key not in {*getattr(spec, kind), *loaded.partial.get(kind, {})}
    )


def _faults(job_id: str, waiver: Waiver, judged: Judged, loaded: Loaded, on: date) -> Iterator[Finding]:
    path = ("jobs", job_id, "waivers", waiver.id)
    aimed = [finding for finding in judged.found if waiver_matches(waiver, finding)]
    if any(finding.severity is Severity.ERROR for finding in aimed):
        yield _fault("WVR003", path, loaded, f"the waiver {waiver.id} names an error")
    elif waiver.rule in judged.never_waived:
        # whether it finds anything today or not: the waiver would be printed as granted
        yield _fault(
            "WVR004", (*path, "rule"), loaded, f"the waiver {waiver.id} names {waiver.rule}, which cannot be waived"
        )
    elif not in_force(waiver, on):
        what = f"the waiver {waiver.id} expired on {waiver.until}, before {on}"
        yield _fault("WVR002", (*path, "until"), loaded, what)
    elif not aimed:
        what = f"there is no finding {waiver.rule} at {waiver.path} to waive"
        yield _fault("WVR001", path, loaded, what)


def _fault(fault_id: str, path: tuple[str, ...], loaded: Loaded, what: str) -> Finding:
    row = FAULTS[fault_id]
    ground = str(Citation(Basis.LOGIC))
    return Finding(row.id, row.severity, loaded.place(path), ".".join(path), what, row.why, row.remedy, ground)
