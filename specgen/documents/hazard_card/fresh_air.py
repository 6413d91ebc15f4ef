"""The fresh air that spraying a job needs, in a few words: the method statement tells it limit by limit. Called by `hazard_card`."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from datetime import date

from specgen.documents.parts.caution_catalogue import AT_LEAST, NOT_JUDGED
from specgen.documents.parts.wording import Words
from specgen.facts.job.air import ProductAir, air_of_job
from specgen.facts.job.confined import is_confined
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.trade.known import NotKnown
from specgen.trade.working import Working


def air_needed(job: Job, spec: Spec, on: date, short: Mapping[str, str], words: Words) -> tuple[str, ...]:
    """As sentences, with the products by their short names; none where the job is silent on its air, or a permit to enter decides."""
    return () if is_confined(job) else tuple(_told(job, spec, on, short, words))


def _told(job: Job, spec: Spec, on: date, short: Mapping[str, str], words: Words) -> Iterator[str]:
    listed = air_of_job(job, spec, on)
    asked: dict[str, dict[str, None]] = {}
    for found in listed:
        asked.setdefault(_flow(found, words), {})[short[spec.products[found.product].name]] = None
    if asked:
        flows = "; ".join(f"{', '.join(names)}: {flow}" for flow, names in asked.items())
        text = words("Fresh-air flow that the exposure limits require: {flows}; provided: {provided}.")
        yield text.format(flows=flows, provided=_provided(listed[0], words))


def _flow(found: ProductAir, words: Words) -> str:
    """The highest of what the limits ask for, or what the known vapours ask for at the least."""
    asked = found.flows()
    flow = asked[-1].flow if asked else found.spraying
    if isinstance(flow, Working):
        return words.worked(flow)
    known = next(iter(flow.workings), None) if isinstance(flow, NotKnown) else None
    return words(AT_LEAST).replace("{flow}", words.worked(known)) if known is not None else words(NOT_JUDGED)


def _provided(found: ProductAir, words: Words) -> str:
    if isinstance(found.stated, NotKnown):
        return words("not stated")
    return words.worked(found.stated) if isinstance(found.stated, Working) else words.phrase(found.stated.quantity)
