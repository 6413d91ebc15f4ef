"""Measured air held against a job, as text for the screen and as JSON for other programs. Called by `specgen climate`.

Neither says that work may begin: that is for the person responsible, who has the air and the part before him.
"""

from __future__ import annotations

import json
from collections.abc import Iterator
from typing import Any

from specgen.facts.job.measured_air import Assessed, Measured, Verdict
from specgen.facts.job.moist_air import HEATERS
from specgen.facts.layer.waits import Wait, water_for
from specgen.source.characters import printable
from specgen.trade.known import NotKnown
from specgen.trade.moisture_cure import uncertainty
from specgen.trade.working import Working
from specgen.units.display import show
from specgen.units.quantity import Quantity
from specgen.units.waiting import show_minutes, show_wait

SCHEMA_VERSION = 1
RELEASE = "The release is the responsible person's: these are figures of the moment they were measured, nothing more."


def as_text(job: str, at: Measured, found: Assessed) -> str:
    """Air, limits not met first with what would make it right, and how long each coat waits."""
    lines = [f"{job}: air {show(at.air)}, {show(at.humidity)}, part {show(at.surface)}", ""]
    lines += [f"  {figure.name}: {figure.printed()}" for figure in found.figures]
    missed = [verdict for verdict in found.verdicts if not verdict.met]
    if missed:
        lines += ["", "Not met"]
        lines += [line for verdict in missed for line in (*_verdict(verdict), f"    {_sentence(verdict.put_right)}")]
        lines += ["", HEATERS]
    if met := [verdict for verdict in found.verdicts if verdict.met]:
        lines += ["", "Met", *(line for verdict in met for line in _verdict(verdict))]
    if not found.verdicts:
        lines += ["", "Neither the job nor its products state a limit."]
    for system, waiting in found.waits:
        if waiting:
            lines += ["", f"Overcoating intervals in this air, {system.id}"]
            lines += [f"  {line}" for wait in waiting for line in _wait(wait, at)]
    return "\n".join(printable(line) for line in [*lines, "", RELEASE]) + "\n"


def as_json(job: str, at: Measured, found: Assessed) -> str:
    """Under keys that stay; a change of their meaning raises `SCHEMA_VERSION`."""
    whole = {
        "schema_version": SCHEMA_VERSION,
        "job": job,
        "measured": {"air": str(at.air), "humidity": str(at.humidity), "surface": str(at.surface)},
        "figures": {figure.name: figure.printed() for figure in found.figures},
        "all_met": found.met,
        "limits": [
            {
                "what": verdict.what,
                "found": verdict.found,
                "limits": [{"limit": str(one.range), "of": one.of, "met": one.met} for one in verdict.limits],
                "met": verdict.met,
                "put_right": verdict.put_right,
            }
            for verdict in found.verdicts
        ],
        "waits": [{"system": system.id, **_wait_record(wait)} for system, waiting in found.waits for wait in waiting],
        "heaters": HEATERS,
        "release": RELEASE,
    }
    return json.dumps(whole, ensure_ascii=False, indent=2) + "\n"


def _verdict(verdict: Verdict) -> Iterator[str]:
    yield f"  {verdict.what}: {verdict.found}"
    for limit in (*(one for one in verdict.limits if not one.met), *(one for one in verdict.limits if one.met)):
        yield f"    {'' if limit.met else 'outside '}{limit.range} ({limit.of})"


def _sentence(text: str) -> str:
    return f"{text[0].upper()}{text[1:]}."


def _wait(wait: Wait, at: Measured) -> Iterator[str]:
    pair = f"{wait.below.id} to {wait.above.id}"
    shortest = (
        "minimum not stated for this air"
        if isinstance(wait.shortest, NotKnown)
        else f"at least {_figure(wait.shortest)}"
    )
    longest = "no maximum" if wait.longest is None else f"at most {_figure(wait.longest)}"
    if isinstance(wait.longest, NotKnown):
        longest = "maximum not stated for this air"
    yield f"{pair}: {shortest}, {longest}"
    if isinstance(wait.estimate, Working):
        least, most = (wait.estimate.number * factor for factor in (1 / uncertainty(), uncertainty()))
        yield (
            f"  the water for {wait.below.id} takes about {show_wait(wait.estimate.quantity)}: an estimate, "
            f"somewhere between {show_minutes(least)} and {show_minutes(most)}, no property of the product"
        )
        if (needed := water_for(wait, at.air, at.humidity)) is not None:
            yield f"  the stated minimum would be enough with about {needed.printed()} of water in the air at {show(at.air)}"
    elif isinstance(wait.estimate, NotKnown):
        yield f"  how long the water for {wait.below.id} takes cannot be estimated: {wait.estimate.why}"


def _wait_record(wait: Wait) -> dict[str, Any]:
    estimate = wait.estimate
    return {
        "below": wait.below.id,
        "above": wait.above.id,
        "shortest": _figure(wait.shortest),
        "longest": None if wait.longest is None else _figure(wait.longest),
        "estimate": estimate.printed() if isinstance(estimate, Working) else None,
        "estimate_missing": list(estimate.missing) if isinstance(estimate, NotKnown) else [],
    }


def _figure(time: Quantity | NotKnown) -> str:
    return "not stated" if isinstance(time, NotKnown) else show_wait(time)
