"""Times between the coats of an item and before a coat is sanded, by the recorded times, held against the job. Called by `assessment`.

The minimum holds at the coldest air the job allows, the maximum at the warmest, as its pages print them. A time is as long as the
records allow it to be: from the last of one coat to the first of the next at least, from the first to the last at most. Rows of
application go before batches and air, which tell a moment of the work and not its end.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from fractions import Fraction
from itertools import pairwise

from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.results import AirRead, BatchUsed, Did, Done, Waited
from specgen.facts.layer.called import coat_called
from specgen.facts.layer.intervals import air_of, at_or_above, interval, late_allowed, warmest_of, windows_for
from specgen.facts.layer.sanding import sandable_from, sanded
from specgen.facts.layer.waits import wait_between
from specgen.facts.product.drying import Unstated, longest
from specgen.model.job import Item, Job
from specgen.model.spec import Spec
from specgen.model.system import Layer, System
from specgen.trade.known import known
from specgen.trade.verdict import Verdict, together
from specgen.units.display import show, show_range
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity, Range, lower

_DAY = timedelta(days=1)
_MINUTE = timedelta(minutes=1)


@dataclass(frozen=True, slots=True)
class _Moments:
    """From the earliest to the latest that a piece of work can have gone on; `record` is its first row."""

    begins: datetime
    ends: datetime
    record: Record


def waited(
    job: Job,
    spec: Spec,
    air: Sequence[AirRead],
    batches: Sequence[BatchUsed],
    work: Sequence[Done],
    faults: Faults,
) -> Iterator[Waited]:
    """By item, from the substrate outwards; only where the job or its products state a limit."""
    if not (air or batches or work):
        return
    times = _Times(air, batches, work)
    for item in job.items:
        system = spec.system_of(job, item)
        if system is None:
            continue
        for below, above in pairwise(system.layers):
            judge = _Judge(job, spec, item, system, below, above, times)
            yield from judge.before_sanding(faults)
            yield from judge.before_next(faults)


class _Times:
    """When each coat of each item was worked on."""

    def __init__(self, air: Sequence[AirRead], batches: Sequence[BatchUsed], work: Sequence[Done]) -> None:
        self._air, self._work = air, work
        self._coats: tuple[AirRead | BatchUsed, ...] = (*batches, *air)

    def coat(self, item: Item, layer: Layer) -> _Moments | None:
        """As its application is recorded, else by the batches and the air of it; what a repair took belongs to that."""
        repaired = min((one.on for one in self._of(item, Did.REPAIR)), default=None)
        own = [one for one in self._of(item, Did.APPLICATION) if one.coat == layer.id]
        rows: Iterable[Done | AirRead | BatchUsed] = own or self._coats
        return _moments(
            (one.record, one.on)
            for one in rows
            if one.on is not None
            and one.coat == layer.id
            and one.record.text("item") in {"", item.id}
            and not (repaired is not None and one.record.text("item") and one.on >= repaired)
        )

    def sanding(self, item: Item, layer: Layer) -> _Moments | None:
        done = (one for one in self._of(item, Did.SANDING) if one.coat == layer.id)
        return _moments((one.record, one.on) for one in done)

    def coldest_and_warmest(self, item: Item, layer: Layer) -> tuple[Quantity, Quantity] | None:
        """Of the air recorded for a coat."""
        found = [
            read.measured
            for read in self._air
            if read.measured is not None and read.coat == layer.id and read.item in {"", item.id}
        ]
        return (min(found), max(found)) if found else None

    def _of(self, item: Item, did: Did) -> list[Done]:
        return [one for one in self._work if one.did is did and one.record.text("item") in {"", item.id}]


def _moments(rows: Iterable[tuple[Record, datetime]]) -> _Moments | None:
    found = [(on, on if ":" in record.text("on") else on + _DAY - _MINUTE, record) for record, on in rows]
    if not found:
        return None
    first = min(found, key=lambda one: one[0])
    return _Moments(first[0], max(end for _, end, _ in found), first[2])


@dataclass(frozen=True, slots=True)
class _Judge:
    job: Job
    spec: Spec
    item: Item
    system: System
    below: Layer
    above: Layer
    times: _Times

    def before_sanding(self, faults: Faults) -> Iterator[Waited]:
        cold = air_of(self.job)
        if not sanded(self.below) or self.below.product is None or cold is None:
            return
        stated = sandable_from(self.below, self.spec, cold)
        if stated is None:
            return
        done, then = self.times.coat(self.item, self.below), self.times.sanding(self.item, self.below)
        missing = [
            text
            for text, there in (
                (phrase(N_("when {coat} was applied is not recorded"), coat=self._called(self.below)), done),
                (phrase(N_("when {coat} was sanded is not recorded"), coat=self._called(self.below)), then),
            )
            if there is None
        ]
        held = self._held(None, longest(stated), None, done, then, missing, faults)
        if isinstance(stated, Unstated) and held.verdict is Verdict.CONFORMING:
            text = N_("the product states this time for {air} and warmer alone")
            why = phrase(text, air=show(stated.stated_at))
            held = replace(held, verdict=Verdict.NOT_DECIDED, reasons=(*held.reasons, why))
        yield held

    def before_next(self, faults: Faults) -> Iterator[Waited]:
        least, most = self._limits()
        if least is None and most is None:
            return
        done, then = (self.times.coat(self.item, layer) for layer in (self.below, self.above))
        missing = [
            phrase(N_("when {coat} was applied is not recorded"), coat=self._called(layer))
            for layer, there in ((self.below, done), (self.above, then))
            if there is None
        ]
        yield self._held(self.above, least, most, done, then, missing, faults)

    def _limits(self) -> tuple[Quantity | None, Quantity | None]:
        """As the pages print them: the system's own interval, else the product's at the coldest and the warmest air."""
        own = self.below.overcoat_interval
        least = own.low if own is not None else None
        most = own.high if own is not None else None
        cold, warm = air_of(self.job), warmest_of(self.job)
        if own is None and self.below.product is not None and cold is not None:
            window = interval(self.below, self.above, self.spec, cold).window
            if window is not None and lower(window.air) <= cold:
                least = window.interval.low
            hot = at_or_above(windows_for(self.below, self.above, self.spec), warm) if warm is not None else window
            most = hot.interval.high if hot is not None else None
        return least, None if late_allowed(self.below, self.above) else most

    def _called(self, layer: Layer) -> str:
        return coat_called(layer, self.system)

    def _held(
        self,
        above: Layer | None,
        least: Quantity | None,
        most: Quantity | None,
        done: _Moments | None,
        then: _Moments | None,
        missing: Sequence[str],
        faults: Faults,
    ) -> Waited:
        verdicts, reasons, put_right = [Verdict.CONFORMING], list(missing), ""
        shortest = longest = None
        if done is not None and then is not None:
            shortest, longest = then.begins - done.ends, then.ends - done.begins
            if longest < timedelta(0):
                next_ = self._called(above) if above is not None else phrase(N_("its sanding"))
                what = f"{next_} is recorded before the {self._called(self.below)} under it ({done.begins:%Y-%m-%d})"
                faults.tell("RDG009", what, then.record.place("on"), item=self.item.id)
                verdicts.append(Verdict.NOT_DECIDED)
                reasons.append(phrase(N_("the recorded times cannot be in this order")))
            else:
                self._least(above, least, shortest, longest, verdicts, reasons)
                put_right = self._most(above, most, shortest, longest, done, then, verdicts, reasons)
        else:
            verdicts.append(Verdict.NOT_DECIDED)
        return Waited(
            item=self.item,
            system=self.system,
            below=self.below,
            above=above,
            least=least,
            most=most,
            shortest=shortest,
            longest=longest,
            verdict=together(verdicts),
            reasons=tuple(reasons),
            put_right=put_right,
        )

    def _least(
        self,
        above: Layer | None,
        least: Quantity | None,
        shortest: timedelta,
        longest: timedelta,
        verdicts: list[Verdict],
        reasons: list[str],
    ) -> None:
        if least is None or _hours(shortest) >= least.to("h"):
            return
        if _hours(longest) >= least.to("h"):
            verdicts.append(Verdict.NOT_DECIDED)
            text = N_(
                "{shortest} to {longest} by the records, required: at least {limit}; record when each coat began and ended"
            )
            reasons.append(
                phrase(
                    text, shortest=time_text(max(shortest, timedelta(0))), longest=time_text(longest), limit=show(least)
                )
            )
            return
        reasons.append(
            phrase(N_("{found} at most, required: at least {limit}"), found=time_text(longest), limit=show(least))
        )
        recorded = self.times.coldest_and_warmest(self.item, self.below)
        shorter = self._least_at(above, recorded[0]) if recorded is not None else None
        if recorded is not None and shorter is not None and _hours(shortest) >= shorter.to("h"):
            verdicts.append(Verdict.NOT_DECIDED)
            text = N_(
                "at the air that was recorded, {air}, its product states {limit}: a person decides whether that counts"
            )
            reasons.append(phrase(text, air=show(recorded[0]), limit=show(shorter)))
        else:
            verdicts.append(Verdict.NOT_CONFORMING)

    def _least_at(self, above: Layer | None, air: Quantity) -> Quantity | None:
        if above is None:
            stated = sandable_from(self.below, self.spec, air)
            return longest(stated) if stated is not None and not isinstance(stated, Unstated) else None
        # what the author of the system asks holds at any air
        if self.below.overcoat_interval is not None or self.below.product is None:
            return None
        return known(wait_between(self.system, self.below, above, self.spec, air, None).shortest)

    def _most(
        self,
        above: Layer | None,
        most: Quantity | None,
        shortest: timedelta,
        longest: timedelta,
        done: _Moments,
        then: _Moments,
        verdicts: list[Verdict],
        reasons: list[str],
    ) -> str:
        """What the job says to do, where the maximum was exceeded and nothing says that it was done."""
        if most is None or above is None or _hours(longest) <= most.to("h"):
            return ""
        if _hours(shortest) <= most.to("h"):
            verdicts.append(Verdict.NOT_DECIDED)
            text = N_(
                "{shortest} to {longest} by the records, required: at most {limit}; record when each coat began and ended"
            )
            reasons.append(
                phrase(
                    text, shortest=time_text(max(shortest, timedelta(0))), longest=time_text(longest), limit=show(most)
                )
            )
            return ""
        reasons.append(
            phrase(N_("{found} at least, required: at most {limit}"), found=time_text(shortest), limit=show(most))
        )
        late = interval(self.below, above, self.spec, air_of(self.job)).late if self.below.product is not None else ""
        made = self.times.sanding(self.item, self.below)
        if late and made is not None and done.begins <= made.begins and made.ends <= then.ends:
            text = N_("the coat was abraded on {on}, as the job asks for in that case")
            reasons.append(phrase(text, on=made.record.text("on")))
            return ""
        verdicts.append(Verdict.NOT_CONFORMING)
        return late or self.below.if_exceeded or ""


def _hours(time: timedelta) -> Fraction:
    return Fraction(time // _MINUTE, 60)


def time_text(time: timedelta) -> str:
    """`43 h 35 min`; days from three days on."""
    minutes = time // _MINUTE
    days, minutes = divmod(minutes, 24 * 60) if time >= 3 * _DAY else (0, minutes)
    parts = ((days, "d"), (minutes // 60, "h"), (minutes % 60, "min"))
    return " ".join(f"{number}\N{NO-BREAK SPACE}{unit}" for number, unit in parts if number) or "0\N{NO-BREAK SPACE}min"


def waited_name(wait: Waited) -> str:
    """`primer to surfacer`, or `surfacer to its sanding`."""
    if wait.above is None:
        return phrase(N_("{coat} to its sanding"), coat=coat_called(wait.below, wait.system))
    below, above = (coat_called(layer, wait.system) for layer in (wait.below, wait.above))
    return phrase(N_("{below} to {above}"), below=below, above=above)


def wait_found(wait: Waited) -> str:
    """What the recorded times allow; empty where one of them is missing."""
    if wait.shortest is None or wait.longest is None:
        return ""
    shortest, longest = (time_text(max(time, timedelta(0))) for time in (wait.shortest, wait.longest))
    return shortest if shortest == longest else phrase(N_("{low} to {high}"), low=shortest, high=longest)


def wait_asked(wait: Waited) -> str:
    """The limits as the job asks them."""
    return show_range(Range("duration", wait.least, wait.most))
