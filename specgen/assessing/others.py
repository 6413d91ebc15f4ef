"""The same readings under the other common rules, for information: none of them decides. Called by `film`."""

from __future__ import annotations

from collections.abc import Iterator

from specgen.assessing.results import Other
from specgen.facts.job.counting import counting
from specgen.facts.job.counts import counts_of_rule, readings_in_a_spot
from specgen.model.acceptance import AcceptanceRule, Criterion, Each, LowReadings
from specgen.trade.film_acceptance import Least, judge
from specgen.trade.film_area import Area
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity

_RULES: tuple[tuple[str, dict[str, object]], ...] = (
    (N_("every reading within the limits"), {"rule": AcceptanceRule.OWN, "each": Each.READING}),
    (N_("every spot measurement within the limits"), {"rule": AcceptanceRule.OWN, "each": Each.SPOT}),
    (N_("SSPC-PA 2, edition 2004"), {"rule": AcceptanceRule.PA_2, "edition": "2004"}),
    (N_("SSPC-PA 2, edition 2012, level 3"), {"rule": AcceptanceRule.PA_2, "edition": "2012", "level": 3}),
    (
        N_("ISO 19840, fewer than 20 % below nominal"),
        {"rule": AcceptanceRule.ISO_19840, "low_readings": LowReadings.FEWER_THAN},
    ),
    (
        N_("ISO 19840, at most 20 % below nominal"),
        {"rule": AcceptanceRule.ISO_19840, "low_readings": LowReadings.AT_MOST},
    ),
    (N_("90-10"), {"rule": AcceptanceRule.NINETY_TEN}),
    (N_("80-20"), {"rule": AcceptanceRule.EIGHTY_TWENTY}),
)


def others(criterion: Criterion, area: Area, size: Quantity | None) -> Iterator[Other]:
    """Every other rule at the limits of a criterion, with the number of readings each asks for on an area of that size."""
    films = {name: getattr(criterion, name) for name in ("min", "nominal", "max")}
    mine = counting(criterion)
    for name, by in _RULES:
        tried = Criterion.model_construct(**{**_EMPTY, **films, **by})
        held = counting(tried)
        if held is not None and held == mine:
            continue
        limited = held is not None and any(True for _ in held.limits())
        if held is None or not limited:
            yield Other(phrase(name), None, phrase(_missing(tried)))
            continue
        yield Other(phrase(name), judge(held, area, _least(tried, size)), unconfirmed=held.unconfirmed is not None)


_EMPTY = {name: field.default for name, field in Criterion.model_fields.items()}


def _least(criterion: Criterion, size: Quantity | None) -> Least:
    if size is None:
        return Least()
    asked = counts_of_rule(criterion.rule, size)
    in_spot = readings_in_a_spot() if criterion.rule is AcceptanceRule.PA_2 else None
    spots, readings = (asked[name].number if name in asked else None for name in ("spots", "readings"))
    return Least(spots, readings, in_spot)


def _missing(criterion: Criterion) -> str:
    if criterion.rule in {AcceptanceRule.PA_2, AcceptanceRule.OWN}:
        return N_("no minimum or maximum is specified")
    return N_("no nominal DFT is specified")
