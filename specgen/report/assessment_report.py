"""An assessment as text for the screen and as JSON for other programs. Called by `specgen assess`."""

from __future__ import annotations

import json
from collections.abc import Iterator, Sequence
from datetime import timedelta
from typing import Any

from specgen.assessing.as_built import Open
from specgen.assessing.conceded import shown
from specgen.assessing.forms import state_of
from specgen.assessing.instruments import instruments_of
from specgen.assessing.results import Assessment, At, ConcessionSeen, Did, LessBefore, Lot, SpotRead, Verdict, Waited
from specgen.assessing.waited import wait_asked, wait_found, waited_name
from specgen.assessing.wording import accepted_text, film_text, reason_text
from specgen.facts.job.concessions import CALLED, eased
from specgen.findings import Finding, Report
from specgen.report import as_text as findings_text
from specgen.source.characters import printable
from specgen.units.display import show_range

SCHEMA_VERSION = 1
_NARROWEST = 14
RELEASE = "The release is the responsible person's: it rests on what was recorded, nothing more."


def as_text(found: Assessment, open_: Sequence[Open] | None = None) -> str:
    """The verdict on every item, then each point with its reasons, other rules, and what is wrong with the files."""
    lines = [f"{found.job.id}: {found.verdict.value}, assessed as at {found.day.isoformat()}", ""]
    width = max(len(item.id) for item in found.job.items)
    wide = max(_NARROWEST, *(len(found.verdict_on(item).value) for item in found.job.items))
    lines += [f"  {item.id:<{width}}  {found.verdict_on(item).value:<{wide}}  {item.name}" for item in found.job.items]
    for item in found.job.items:
        lines += ["", f"{item.id}, {item.name}"]
        for at in found.of(item):
            lines += _at(at)
        for wait in found.waited:
            if wait.item.id == item.id:
                lines += _waited(wait)
    lines += _deviations(found)
    if found.concessions:
        lines += ["", *_concessions(found)]
    for lot in found.lots:
        if lot.others:
            lines += ["", *_others(lot)]
    for lot in found.lots:
        lines += [
            f"  dropped by {record.text('dropped_by')}, row {record.row}: {record.text('value')} ({record.text('dropped_why')})"
            for record in lot.dropped
        ]
    text = "\n".join(printable(line) for line in lines) + "\n"
    told = Report.of(found.findings)
    if len(told):
        text += "\nWhat is wrong with the files (file:row:column)\n\n" + findings_text.write(
            told, prefix="", on=found.day
        )
    return f"{text}{_released(found, open_)}\n{RELEASE}\n"


def _concessions(found: Assessment) -> Iterator[str]:
    """How many there are and are used, then each: nothing is accepted under one without a word."""
    held = [seen for seen in found.concessions if seen.is_in_force]
    used = [seen for seen in found.concessions if seen.used]
    yield f"Concessions: {len(found.concessions)} of this job, {len(held)} in force, {len(used)} used"
    for seen in found.concessions:
        one = seen.concession
        limits = ", ".join(
            f"{CALLED[limit.name]} {shown(limit.conceded)} instead of {shown(limit.specified)}" for limit in eased(one)
        )
        state = "" if seen.is_in_force else "; ended since" if seen.used else "; not in force"
        yield f"  {one.id}: {limits} on {', '.join(one.items)}, agreed by {one.agreed_by} on {one.agreed_on}, until {one.until}{state}"
        where = ", ".join(f"{item} at {point}" for item, point in seen.used)
        yield f"    used for: {where or 'nothing'}"
        if seen.after is not None:
            yield f"    agreed after the readings of {seen.after}"


def _released(found: Assessment, open_: Sequence[Open] | None) -> str:
    """Whether the records that are kept release the job, and what is missing; nothing where it was not asked."""
    if open_ is None:
        return ""
    if open_:
        listed = "".join(f"  {printable(one.where)}: {printable(one.what)}\n" for one in open_)
        return f"\nNOT RELEASED. Open by the records kept in the folder:\n{listed}"
    by = "; ".join(
        f"{record.text('item') or 'all items'} by {record.text('by')} on {record.text('on')}"
        for record in (one.record for one in found.work if one.did is Did.RELEASE)
    )
    return f"\nReleased by the records kept in the folder: {printable(by)}\n"


def _at(at: At) -> Iterator[str]:
    yield f"  {at.point.id} ({at.point.check}): {at.verdict.value}"
    for lot in at.lots:
        if mine := [spot for spot in lot.spots if spot.item == at.item.id]:
            yield f"    {_read(lot, mine)}"
            if lot.counting is not None:
                yield f"    accepted: {accepted_text(lot.counting, lot.unit)}"
    if (less := at.less) is not None and less.spots:
        low, high = (film_text(end(spot.left for spot in less.spots), less.unit) for end in (min, max))
        yield f"    less {less.before.check} at the same spot: {len(less.spots)} spots, {low} to {high}; required: {show_range(less.asked)}"
    yield from (f"    - {reason}" for reason in at.reasons)
    yield from (f"    next: {step}" for step in at.next)
    if at.put_right:
        yield f"    do: {at.put_right}"


def _waited(wait: Waited) -> Iterator[str]:
    yield f"  {waited_name(wait)}: {wait.verdict.value}"
    times = (wait_found(wait), wait_asked(wait))
    yield f"    {times[0] or 'not known'}; required: {times[1]}"
    yield from (f"    - {reason}" for reason in wait.reasons)
    if wait.put_right:
        yield f"    do: {wait.put_right}"


def _deviations(found: Assessment) -> Iterator[str]:
    if found.deviations:
        yield from ("", "What was found before a repair")
    for one in found.deviations:
        record = one.repair.record
        said = "; ".join(one.found) or "nothing was read before"
        yield f"  {one.item.id}, {one.point.check}: {said}; repaired {record.text('on')} by {record.text('by') or 'nobody named'}"
        yield f"    {record.text('remark')}; since then {one.verdict.value}"


def _read(lot: Lot, spots: Sequence[SpotRead]) -> str:
    """What was read on one item."""
    named = f"area {lot.name}: " if lot.name else ""
    count = sum(len(spot.readings) for spot in spots)
    low, high = (film_text(film, lot.unit) for film in lot.area.ends({spot.name for spot in spots}))
    return f"{named}{len(spots)} spots, {count} readings, {low} to {high}"


def _others(lot: Lot) -> Iterator[str]:
    yield f"{lot.point.id} under other rules, for information; none of them decides"
    for other in lot.others:
        if other.judged is None:
            yield f"  {other.rule}: cannot be told, {other.why}"
            continue
        marked = " (a limit of this rule is not verified)" if other.unconfirmed else ""
        yield f"  {other.rule}: {other.judged.verdict.value}{marked}"
        yield from (f"    - {reason_text(reason, lot.unit)}" for reason in other.judged.reasons)


def as_json(found: Assessment, open_: Sequence[Open] | None = None) -> str:
    """Under keys that stay; a change of their meaning raises `SCHEMA_VERSION`."""
    whole = {
        "schema_version": SCHEMA_VERSION,
        "job": found.job.id,
        "state": state_of(found.job),
        "on": found.day.isoformat(),
        "verdict": found.verdict.value,
        "files": [{"name": name, "sha256": digest} for name, digest in found.files],
        "instruments": [{**one.stated, "points": list(one.points)} for one in instruments_of(found)],
        "items": [
            {
                "item": item.id,
                "name": item.name,
                "verdict": found.verdict_on(item).value,
                "points": [_at_record(at) for at in found.of(item)],
                "times": [_waited_record(wait) for wait in found.waited if wait.item.id == item.id],
            }
            for item in found.job.items
        ],
        "lots": [_lot_record(lot) for lot in found.lots],
        "concessions": [_concession(seen) for seen in found.concessions],
        "findings": [_finding(finding) for finding in Report.of(found.findings)],
        "release": RELEASE,
        **({} if open_ is None else {"open": [{"where": one.where, "what": one.what} for one in open_]}),
    }
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _at_record(at: At) -> dict[str, Any]:
    return {
        "point": at.point.id,
        "check": at.point.check,
        "verdict": at.verdict.value,
        "reasons": list(at.reasons),
        "next": list(at.next),
        "put_right": at.put_right,
        "judged_by": at.said_by,
        "concessions": [one.id for one in at.conceded],
        "by_difference": None if at.less is None else _less_record(at.less),
    }


def _concession(seen: ConcessionSeen) -> dict[str, Any]:
    one = seen.concession
    return {
        "id": one.id,
        "in_force": seen.is_in_force,
        "limits": [
            {"limit": limit.name, "specified": str(limit.specified), "conceded": str(limit.conceded)}
            for limit in eased(one)
        ],
        "items": list(one.items),
        "agreed_by": one.agreed_by,
        "agreed_on": one.agreed_on.isoformat(),
        "until": one.until.isoformat(),
        "used": [{"item": item, "point": point} for item, point in seen.used],
        "agreed_after_readings_of": seen.after.isoformat() if seen.after is not None else None,
    }


def _less_record(less: LessBefore) -> dict[str, Any]:
    return {
        "deducted": less.before.id,
        "required": str(less.asked),
        "unit": less.unit,
        "verdict": less.verdict.value,
        "spots": [
            {"spot": one.name, "total": float(one.total), "before": float(one.before), "left": float(one.left)}
            for one in less.spots
        ],
        "not_read_before": list(less.alone),
    }


def _waited_record(wait: Waited) -> dict[str, Any]:
    return {
        "between": [wait.below.id, wait.above.id if wait.above is not None else None],
        "verdict": wait.verdict.value,
        "minutes": [None if time is None else time // timedelta(minutes=1) for time in (wait.shortest, wait.longest)],
        "required": [None if limit is None else str(limit) for limit in (wait.least, wait.most)],
        "reasons": list(wait.reasons),
    }


def _lot_record(lot: Lot) -> dict[str, Any]:
    judged = lot.judged
    return {
        "point": lot.point.id,
        "area": lot.name,
        "items": list(lot.items),
        "unit": lot.unit,
        "spots": len(lot.area.spots),
        "readings": lot.area.count,
        "verdict": judged.verdict.value if judged is not None else Verdict.NOT_DECIDED.value,
        "mean": judged.mean.printed() if judged is not None and judged.mean is not None else None,
        "unconfirmed": lot.counting is not None and lot.counting.unconfirmed is not None,
        "dropped": len(lot.dropped),
        "other_rules": [
            {
                "rule": other.rule,
                "verdict": other.judged.verdict.value if other.judged is not None else None,
                "reasons": [reason_text(reason, lot.unit) for reason in other.judged.reasons]
                if other.judged
                else [other.why],
                "unconfirmed": other.unconfirmed,
            }
            for other in lot.others
        ],
    }


def _finding(finding: Finding) -> dict[str, Any]:
    place = finding.place
    return {
        "id": finding.id,
        "severity": finding.severity.value,
        "file": place.file,
        "row": place.line,
        "column": place.column,
        "what": finding.what,
        "remedy": finding.remedy,
    }
