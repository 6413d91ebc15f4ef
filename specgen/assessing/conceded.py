"""What lies outside a limit as specified and inside one that is conceded: which concession holds, and what it comes to then.

Called by the judgement of one item, once something does not conform. What is conceded is never silent: it is a verdict of its own, and the
reason names the concession. A concession eases no number of readings, and nothing of another item.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from datetime import date
from fractions import Fraction
from typing import Any

from specgen.assessing.cells import Dates, day_read
from specgen.assessing.film import judged_by
from specgen.assessing.records import Record, columns
from specgen.assessing.results import Lot
from specgen.facts.job.concessions import (
    CALLED,
    FILM,
    Eased,
    climate_asked,
    concessions_in,
    eased_range,
    granted,
    with_eased,
)
from specgen.facts.job.counting import most_of_nominal, specified
from specgen.model.acceptance import AcceptanceRule, Criterion
from specgen.model.concession import Concession
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.project import Policies
from specgen.model.spec import Spec
from specgen.trade.film_acceptance import Fault, Judged, Least
from specgen.units.display import show, show_range
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity, Range

_HIGH = frozenset({Fault.READING_HIGH, Fault.SPOT_HIGH, Fault.MEAN_HIGH})
COUNTS = frozenset({Fault.FEW_SPOTS, Fault.FEW_READINGS, Fault.FEW_IN_SPOT, Fault.NOTHING_READ})
"""What no concession eases."""
_when = columns("item", "on")


@dataclass(frozen=True, slots=True)
class Film:
    """The spots of one item alone under the limits conceded for it, and the concessions these are of, by the limit."""

    judged: Judged
    by: tuple[tuple[Concession, Eased], ...]

    def of(self, fault: Fault) -> tuple[tuple[Concession, Eased], ...]:
        """The concessions of the side on which a fault lies."""
        return tuple(one for one in self.by if (one[1].name == "film_max") is (fault in _HIGH))


@dataclass(frozen=True, slots=True)
class Grants:
    """The concessions of a job that hold for what was made or read by the day `made`, on the `day` it is judged.

    Of rows that do not all state a day nothing shows that a concession had not ended: they are held to the day of judging.
    """

    job: Job
    spec: Spec
    day: date
    dates: Dates
    made: date | None = None

    def of_rows(self, rows: Iterable[Record]) -> Grants:
        """Those that hold for what these rows tell, by the last of their days."""
        return replace(self, made=self._last(row.text("on") for row in rows))

    def by_item(self, rows: Iterable[Record]) -> Mapping[str, Grants]:
        """Those that hold for the rows of each item; nothing where the job has no concession."""
        said: dict[str, list[str]] = {}
        if concessions_in(self.job, self.spec):
            for item, on in dict.fromkeys(map(_when, rows)):
                said.setdefault(item, []).append(on)
        return {item: replace(self, made=self._last(days)) for item, days in said.items()}

    def _last(self, days: Iterable[str]) -> date | None:
        read = [day_read(text, self.dates) for text in days]
        known = [day.date() for day in read if day is not None]
        return max(known) if known and len(known) == len(read) else None

    def of(self, name: str, item: Item, point: str = "", coat: str = "") -> Iterator[tuple[Concession, Eased]]:
        yield from granted(
            name,
            self.job,
            self.spec,
            self.day,
            made=self.made or self.day,
            item=item.id,
            point=point,
            coat=coat,
        )

    def named(self, key: str, item: Item, point: str) -> Concession | None:
        """The concession on words that a person names at a point, if it holds there."""
        return next((one for one, _ in self.of("words", item, point) if one.id == key), None)

    def film(self, lot: Lot, item: Item) -> Film | None:
        """None where no film is conceded there."""
        by = tuple(one for name in FILM for one in self.of(name, item, lot.point.id))
        names = {spot.name for spot in lot.spots if spot.item == item.id}
        if not by or not names:
            return None
        policies = self.spec.project.policies or Policies()
        guard = policies.guard_band.to(lot.unit) if policies.guard_band is not None else Fraction(0)
        judged, _ = judged_by(_eased(lot.criterion, [limit for _, limit in by]), lot.area.only(names), Least(), guard)
        return Film(judged, by) if judged is not None else None

    def prepared(self, name: str, item: Item, point: str) -> Iterator[tuple[Concession, Eased, Preparation]]:
        """Each preparation as it would be with a limit that is conceded."""
        preparation = self.spec.preparation_of(self.job, item)
        if preparation is not None:
            for one, limit in self.of(name, item, point):
                yield one, limit, with_eased(preparation, limit)

    def air(self, name: str, found: Quantity, item: Item, coat: str) -> tuple[Concession, Eased] | None:
        """The concession under which a figure of the air is accepted while a coat is applied."""
        asked = climate_asked(name, self.job, self.spec)
        for one, limit in self.of(name, item, coat=coat):
            if asked is not None and eased_range(asked, limit.conceded).holds(found):
                return one, limit
        return None


def under(reason: str, concession: Concession, limit: Eased) -> str:
    """A reason with the concession under which it is accepted."""
    text = N_("{reason}; accepted under the concession {id}: {what} {conceded} instead of {specified}")
    return phrase(
        text,
        reason=reason,
        id=concession.id,
        what=phrase(CALLED[limit.name]),
        conceded=shown(limit.conceded),
        specified=shown(limit.specified),
    )


def outside(reason: str, concession: Concession, limit: Eased) -> str:
    """A reason that no concession covers, though one is in force."""
    text = N_("{reason}; outside the concession {id} too, which allows {conceded}")
    return phrase(text, reason=reason, id=concession.id, conceded=shown(limit.conceded))


def shown(limit: Any) -> str:
    """A limit as it is printed."""
    if isinstance(limit, Quantity):
        return show(limit)
    return show_range(limit) if isinstance(limit, Range) else str(limit)


def _eased(criterion: Criterion, limits: list[Eased]) -> Criterion:
    """The criterion with the limits conceded; what its rule makes of others stays what it was."""
    least, most = specified(criterion)
    update: dict[str, Any] = {}
    if criterion.rule is AcceptanceRule.PA_2:
        # of a film stated alone the edition makes both limits
        update |= {"min": least, "max": most}
    if criterion.rule is AcceptanceRule.ISO_19840 and criterion.max is None and criterion.nominal is not None:
        update["max"] = most_of_nominal(criterion.nominal)
    for limit in limits:
        name = FILM[limit.name]
        update[name] = limit.conceded
        if name != "nominal" and criterion.rule is AcceptanceRule.PA_2:
            update[f"spot_{name}"] = None
            update[f"area_{name}"] = None
    return criterion.model_copy(update=update)
