"""Why readings do not pass, and where to measure next, in words. Called by the judgement."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from fractions import Fraction

from specgen.standards.tables import table
from specgen.trade.film_acceptance import AT_A_SPOT, Counting, Fault, Reason
from specgen.units.display import unit_sign
from specgen.units.locale import N_, listed, phrase
from specgen.units.quantity import Quantity
from specgen.units.rounding import plain_text, round_half_up

_NAMED = 6
_MOST_PLACES = 6
_PERCENT = 100

_LOW_OR_HIGH = {
    Fault.READING_LOW: N_("a reading of {found} is below {limit}{at}"),
    Fault.READING_HIGH: N_("a reading of {found} is above {limit}{at}"),
    Fault.SPOT_LOW: N_("a spot measurement of {found} is below {limit}{at}"),
    Fault.SPOT_HIGH: N_("a spot measurement of {found} is above {limit}{at}"),
    Fault.MEAN_LOW: N_("the mean of {found} is below {limit}"),
    Fault.MEAN_HIGH: N_("the mean of {found} is above {limit}"),
}
_NEAR = {
    Fault.READING_LOW: N_("a reading of {found} is within the guard band of the limit {limit}{at}"),
    Fault.READING_HIGH: N_("a reading of {found} is within the guard band of the limit {limit}{at}"),
    Fault.SPOT_LOW: N_("a spot measurement of {found} is within the guard band of the limit {limit}{at}"),
    Fault.SPOT_HIGH: N_("a spot measurement of {found} is within the guard band of the limit {limit}{at}"),
    Fault.MEAN_LOW: N_("the mean of {found} is within the guard band of the limit {limit}"),
    Fault.MEAN_HIGH: N_("the mean of {found} is within the guard band of the limit {limit}"),
}
_COUNTED = {
    Fault.FEW_SPOTS: N_("spots read: {found}; required: {limit}"),
    Fault.FEW_READINGS: N_("readings taken: {found}; required: {limit}"),
    Fault.FEW_IN_SPOT: N_("readings at a spot: {found}; required: {limit}{at}"),
}


def film_in_column(value: Fraction, unit: str) -> str:
    """A film to a tenth of a micrometre or a hundredth of a mil, zeros too, so that figures stand under each other."""
    return f"{round_half_up(value, _places(unit))}\N{NO-BREAK SPACE}{unit_sign(unit)}"


def _places(unit: str) -> int:
    return 2 if unit == "mil" else 1


def film_text(value: Fraction, unit: str, beside: Fraction | None = None) -> str:
    """A film to a tenth of a micrometre or a hundredth of a mil; with more digits where it would look equal to `beside`."""
    places = _places(unit)
    while beside is not None and value != beside and places < _MOST_PLACES:
        if round_half_up(value, places) != round_half_up(beside, places):
            break
        places += 1
    return f"{plain_text(Fraction(round_half_up(value, places)))}\N{NO-BREAK SPACE}{unit_sign(unit)}"


def share_text(share: Fraction) -> str:
    return f"{plain_text(Fraction(round_half_up(share * _PERCENT, 1)))}\N{NO-BREAK SPACE}%"


def reason_text(reason: Reason, unit: str) -> str:
    """One reason, with what was found and the limit."""
    at = phrase(" ({at})", at=names(reason.at)) if reason.at else phrase("")
    if reason.fault in _COUNTED:
        return phrase(_COUNTED[reason.fault], found=str(reason.found), limit=str(reason.limit), at=at)
    if reason.fault is Fault.NOTHING_READ:
        return phrase(N_("nothing was read"))
    if reason.fault is Fault.MANY_BELOW:
        text = N_("{found} of the readings are below nominal, where fewer than {limit} may be{at}")
        most = N_("{found} of the readings are below nominal, where at most {limit} may be{at}")
        told = phrase(
            text if reason.fewer else most, found=share_text(reason.found), limit=share_text(reason.limit), at=at
        )
    elif reason.near:
        found = film_text(reason.found, unit, reason.limit)
        return phrase(_NEAR[reason.fault], found=found, limit=film_text(reason.limit, unit), at=at)
    else:
        found = film_text(reason.found, unit, reason.limit)
        told = phrase(_LOW_OR_HIGH[reason.fault], found=found, limit=film_text(reason.limit, unit), at=at)
    if reason.near:
        return phrase(N_("{reason}, or are within the guard band of it"), reason=told)
    if not reason.decides:
        return phrase(N_("{reason}, as far as was read"), reason=told)
    return told


def outside(reasons: Iterable[Reason]) -> set[str]:
    """The spots at which a figure is outside its limits, with the guard band if there is one."""
    return {name for reason in reasons if reason.fault in AT_A_SPOT and not reason.near for name in reason.at}


def spot_text(reasons: Sequence[Reason], spot: str) -> str:
    """What is told of one spot, in a word or two; empty where nothing is."""
    told = [reason for reason in reasons if spot in reason.at]
    if spot in outside(told):
        return phrase(N_("outside"))
    if any(reason.fault is Fault.FEW_IN_SPOT for reason in told):
        return phrase(N_("too few readings"))
    if any(reason.fault is Fault.MANY_BELOW for reason in told):
        return phrase(N_("below nominal"))
    return phrase(N_("within the guard band")) if told else ""


def accepted_text(held: Counting, unit: str) -> str:
    """What a rule accepts at the limits in force."""
    ranges = (
        (held.single_min, held.single_max, N_("every reading {range}")),
        (held.spot_min, held.spot_max, N_("every spot measurement {range}")),
        (held.mean_min, held.mean_max, N_("the mean {range}")),
    )
    said = [
        phrase(text, range=_range(low, high, unit)) for low, high, text in ranges if low is not None or high is not None
    ]
    if held.counted_from is not None:
        few = N_("fewer than {share} of the readings below {film}")
        most = N_("at most {share} of the readings below {film}")
        film = film_text(held.counted_from.to(unit), unit)
        said.append(phrase(few if held.fewer else most, share=share_text(held.below_most), film=film))
    return listed("{first}; {more}", said)


def _range(low: Quantity | None, high: Quantity | None, unit: str) -> str:
    shown = [film_text(limit.to(unit), unit) if limit is not None else "" for limit in (low, high)]
    if all(shown):
        return phrase(N_("from {low} to {high}"), low=shown[0], high=shown[1])
    return phrase(N_("at least {film}"), film=shown[0]) if shown[0] else phrase(N_("at most {film}"), film=shown[1])


def names(places: Iterable[str]) -> str:
    """The first few names, and how many more there are."""
    all_of = tuple(places)
    shown = ", ".join(all_of[:_NAMED])
    more = len(all_of) - _NAMED
    return shown if more <= 0 else phrase(N_("{names} and {more} more"), names=shown, more=more)


def walk_text() -> str:
    """How the extent of an area that does not conform is found under SSPC-PA 2."""
    rows = {row["what"]: row for row in table("sspc_pa_2_walk").rows}
    return phrase(
        N_(
            "measure spots outwards every {distance} m until {count} in a row lie within minimum and maximum, without the allowance for "
            "spots; of parts smaller than {small} m one spot each"
        ),
        distance=rows["distance from spot to spot"]["value"],
        count=rows["spots in a row that conform"]["value"],
        small=rows["largest dimension of a part that is one spot of the walk, below"]["value"],
    )
