"""Figures of a prepared surface against the limits of its preparation: salt, profile and dust. Called by `looked_at`."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from fractions import Fraction

from specgen.assessing.answer import Answer
from specgen.assessing.cells import CellError, figure_of, number_of, unit_of
from specgen.assessing.records import Record
from specgen.facts.job.concessions import profile_asked
from specgen.facts.tests.profile_grade import grade_ranges
from specgen.model.preparation import Preparation
from specgen.trade.salt import salt_on_surface
from specgen.trade.verdict import Verdict
from specgen.units.display import show, show_range
from specgen.units.kinds import KINDS
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity, Range


class ColumnError(CellError):
    """A cell that is not read, and the column it stands in."""

    def __init__(self, what: str, column: str) -> None:
        super().__init__(what)
        self.column = column


def _salt(record: Record, preparation: Preparation | None) -> Answer:
    """A mass on an area, or the rise of conductivity of the water that took it up."""
    limit = preparation.salt_limit if preparation is not None else None
    text, unit = record.text("value"), record.unit_text("value")
    _, _, own = number_of(text)
    if unit_of("conductivity", own or unit) not in KINDS["conductivity"].units:
        return _at_most(figure_of("surface_density", text, unit), limit, N_("salt"))
    rise = figure_of("conductivity", text, unit)
    if not record.text("water"):
        why = N_("conductivity rose by {rise}; how much water was on the patch is not recorded")
        return Answer(Verdict.NOT_DECIDED, phrase(why, rise=show(rise)))
    try:
        water = figure_of("volume", record.text("water"), record.unit_text("water"))
    except CellError as reason:
        raise ColumnError(reason.what, "water") from None
    if not water.number:
        raise ColumnError(f"{record.text('water')} is no water that takes up salt", "water")
    found = salt_on_surface("salt", rise, water).quantity
    said = _at_most(found, limit, N_("salt"))
    from_ = phrase(
        N_("{salt} of salt, from a rise of {rise} in {water} (factor of ISO 8502-9, not verified)"),
        salt=show(found),
        rise=show(rise),
        water=show(water),
    )
    return replace(said, why=phrase(N_("{what}; {why}"), what=from_, why=said.why) if said.why else from_)


def _profile(record: Record, preparation: Preparation | None) -> Answer:
    """A figure, or the grade of a comparator."""
    asked = profile_asked(preparation) if preparation is not None else None
    graded = grade_ranges(record.text("value"))
    found = figure_of("thickness", record.text("value"), record.unit_text("value")) if not graded else None
    if asked is None:
        return Answer(Verdict.NOT_DECIDED, phrase(N_("no surface profile is specified")))
    if found is None:
        return _graded(record.text("value"), graded, asked)
    if asked.holds(found):
        return Answer(Verdict.CONFORMING)
    return Answer(
        Verdict.NOT_CONFORMING,
        phrase(N_("surface profile {found}, outside {limits}"), found=show(found), limits=show_range(asked)),
    )


def _graded(text: str, graded: Mapping[str, Range], asked: Range) -> Answer:
    """A grade conforms where all of it lies within what is asked, and does not where none of it does."""
    verdicts = {_of_range(one, asked) for one in graded.values()}
    verdict = verdicts.pop() if len(verdicts) == 1 else Verdict.NOT_DECIDED
    ranges = "; ".join(f"{comparator} {show_range(one)}" for comparator, one in graded.items())
    what = phrase(
        N_("profile {grade}: {ranges} (limits of the grades not verified); required: {asked}"),
        grade=text,
        ranges=ranges,
        asked=show_range(asked),
    )
    if verdict is not Verdict.NOT_DECIDED:
        return Answer(verdict, what)
    return Answer(verdict, phrase(N_("{what}; {why}"), what=what, why=phrase(N_("measure the profile"))))


def _of_range(one: Range, asked: Range) -> Verdict:
    low, high = one.low, one.high
    if low is None or high is None:
        return Verdict.NOT_DECIDED
    if (asked.low is None or asked.low <= low) and (asked.high is None or high <= asked.high):
        return Verdict.CONFORMING
    apart = (asked.low is not None and high <= asked.low) or (asked.high is not None and low > asked.high)
    return Verdict.NOT_CONFORMING if apart else Verdict.NOT_DECIDED


def _dust(name: str) -> Callable[[Record, Preparation | None], Answer]:
    def judged(record: Record, preparation: Preparation | None) -> Answer:
        found, digits, _ = number_of(record.text("value"))
        if found < 0:
            raise CellError(f"{digits} is no rating of dust")
        limit: str | None = getattr(preparation, f"dust_{name}") if preparation is not None else None
        if limit is None:
            return Answer(Verdict.NOT_DECIDED, phrase(N_("no limit of dust is specified")))
        if found <= Fraction(limit):
            return Answer(Verdict.CONFORMING)
        why = N_("dust rated {found}, at most {limit} is allowed")
        return Answer(Verdict.NOT_CONFORMING, phrase(why, found=digits, limit=limit))

    return judged


def _at_most(found: Quantity, limit: Quantity | None, what: str) -> Answer:
    if limit is None:
        return Answer(Verdict.NOT_DECIDED, phrase(N_("no limit of {what} is specified"), what=phrase(what)))
    if found <= limit:
        return Answer(Verdict.CONFORMING)
    why = N_("{what} {found}, at most {limit} is allowed")
    return Answer(Verdict.NOT_CONFORMING, phrase(why, what=phrase(what), found=show(found), limit=show(limit)))


TESTS: Mapping[str, Callable[[Record, Preparation | None], Answer]] = {
    "salt": _salt,
    "profile": _profile,
    "dust-quantity": _dust("quantity"),
    "dust-size": _dust("size"),
}
"""By the word in the column `test`: what the preparation of the item limits in figures."""
