"""Category of an aerosol from its contents and, where there is one, its spray test.

Without a test, whatever holds more than 1 % flammable components or gives 20 kJ/g is category 1: that is the sound
default for a spray paint. Foam has tests of its own and is not judged here. Called by the rules on hazards.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from typing import NamedTuple

from specgen.standards.tables import Row, table
from specgen.trade.combustion import (
    Content,
    flammable_share,
    flammable_share_at_most,
    heat_of_combustion,
    without_flammability,
    without_heat,
)
from specgen.trade.given import Source
from specgen.trade.judged import Classified
from specgen.trade.known import NotKnown, worked_out
from specgen.trade.working import Working
from specgen.units.locale import phrase
from specgen.units.quantity import Quantity

_CRITERIA = "aerosol_criteria"
_CLASS = "aerosols"
_WHAT = "aerosol category"


class SprayTest(NamedTuple):
    """Results of the flammability tests of a spray.

    `ignition` is the farthest distance (a length) at which the spray caught fire, None where it did not at the nearest
    one. `time_equivalent` in s/m3 and `deflagration_density` in g/m3 are bare numbers of the enclosed-space test.
    """

    ignition: Quantity | None
    time_equivalent: Fraction | None = None
    deflagration_density: Fraction | None = None


@dataclass(frozen=True, slots=True)
class _Can:
    """What is known of a can: bounds of the flammable share in %, of the heat in kJ/g, and what leaves them open.

    A component of unknown heat leaves the heat without an upper bound.
    """

    least_share: Fraction
    most_share: Fraction
    least_heat: Fraction
    workings: tuple[Working, ...]
    open_shares: tuple[str, ...] = field(default=())
    open_heats: tuple[str, ...] = field(default=())

    def share_from(self, limit: Fraction) -> bool | None:
        return True if self.least_share >= limit else False if self.most_share < limit else None

    def share_over(self, limit: Fraction) -> bool | None:
        return True if self.least_share > limit else False if self.most_share <= limit else None

    def heat_from(self, limit: Fraction) -> bool | None:
        return True if self.least_heat >= limit else None if self.open_heats else False


def aerosol_category(
    id: str, contents: Sequence[Content], test: SprayTest | None = None, efficiency: Source | None = None
) -> Classified | NotKnown:
    """Category 1, 2 or 3 of an aerosol, with the step of CLP Annex I 2.3 that decides and the workings behind it.

    An unknown component matters only where it could change the category. NotKnown where shares do not add up to
    100 %, where what is not known decides, and where the deciding step is only known from memory.
    """

    def work_out() -> tuple[Working, Working, Working]:
        return (
            flammable_share(f"{id}.flammable", contents),
            flammable_share_at_most(f"{id}.flammable_at_most", contents),
            heat_of_combustion(f"{id}.heat", contents, efficiency),
        )

    figures = worked_out(_WHAT, work_out, missing=("the complete composition by mass",))
    if isinstance(figures, NotKnown):
        return figures
    least, most, heat = figures
    workings = (least, heat) if least.number == most.number else (least, most, heat)
    can = _Can(least.number, most.number, heat.number, workings, without_flammability(contents), without_heat(contents))
    return _untested(can) if test is None else _tested(can, test)


def _untested(can: _Can) -> Classified | NotKnown:
    row = _row("untested")
    over, hot = can.share_over(Fraction(row["flammable_over"])), can.heat_from(Fraction(row["heat_from"]))
    if _extreme(can):
        return _found("extreme", can, _extreme_why())
    if over or hot:
        ground = (
            phrase(
                "more than {share} % of the contents are flammable components and no flammability test is stated",
                share=row["flammable_over"],
            )
            if over
            else phrase(
                "the heat of combustion is {heat} kJ/g or more and no flammability test is stated",
                heat=row["heat_from"],
            )
        )
        return _found("untested", can, ground)
    return _open(can) if over is None or hot is None else _harmless(can)


def _tested(can: _Can, test: SprayTest) -> Classified | NotKnown:
    harmless, near, enclosed = _row("harmless"), _row("near"), _row("enclosed")
    over, hot = can.share_over(Fraction(harmless["flammable_over"])), can.heat_from(Fraction(harmless["heat_from"]))
    if over is False and hot is False:
        return _harmless(can)
    extreme = _extreme(can)
    if extreme:
        return _found("extreme", can, _extreme_why())
    reached = test.ignition.to("cm") if test.ignition is not None else Fraction(0)
    if reached >= Fraction(near["distance_below"]):
        return _found("far", can, f"the spray ignited at {near['distance_below']} cm or farther")
    if extreme is None:
        return _open(can)
    if reached >= Fraction(near["distance_from"]):
        return _found("near", can, f"the spray ignited between {near['distance_from']} and {near['distance_below']} cm")
    if hot is None or (over is None and not hot):
        return _open(can)
    if hot:
        return _found("hot_and_near", can, "the heat of combustion is high and the spray did not ignite at a distance")
    time, density = test.time_equivalent, test.deflagration_density
    met = (time is not None and time <= Fraction(enclosed["time_up_to"])) or (
        density is not None and density <= Fraction(enclosed["density_up_to"])
    )
    if met:
        return _found("enclosed", can, "the spray ignites in the enclosed-space test")
    if time is None or density is None:
        why = "the spray did not ignite, and the enclosed-space test is not stated in full"
        return NotKnown(_WHAT, why, ("time equivalent", "deflagration density"), can.workings)
    return _found(
        "otherwise", can, "neither the ignition distance nor the enclosed-space test makes it category 1 or 2"
    )


def _extreme(can: _Can) -> bool | None:
    row = _row("extreme")
    share, heat = can.share_from(Fraction(row["flammable_from"])), can.heat_from(Fraction(row["heat_from"]))
    if share is False or heat is False:
        return False
    return True if share and heat else None


def _extreme_why() -> str:
    row = _row("extreme")
    return (
        f"{row['flammable_from']} % or more is flammable and the heat of combustion is {row['heat_from']} kJ/g or more"
    )


def _harmless(can: _Can) -> Classified | NotKnown:
    row = _row("harmless")
    return _found(
        "harmless",
        can,
        f"at most {row['flammable_over']} % is flammable and the heat of combustion is below {row['heat_from']} kJ/g",
    )


def _found(step: str, can: _Can, why: str) -> Classified | NotKnown:
    row = _row(step)
    source = table(_CRITERIA).row_citation(row)
    if not source.basis.confirmed:
        unsure = f"{why}: that would be category {row['category']}, but the step is {source.basis}"
        return NotKnown(_WHAT, unsure, ("a confirmed copy of the criterion",), can.workings, source)
    return Classified(_CLASS, row["category"], why, can.workings, source)


def _open(can: _Can) -> NotKnown:
    missing = [f"whether {name} is flammable" for name in can.open_shares]
    missing += [f"heat of combustion of {name}" for name in can.open_heats]
    return NotKnown(
        _WHAT, "the category depends on data of the contents that are not known", tuple(missing), can.workings
    )


def _row(step: str) -> Row:
    return table(_CRITERIA).row("id", step)
