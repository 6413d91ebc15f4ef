"""Whether a grade reaches the least grade a table asks, and how well that verdict is founded.

Called by the rules on least preparation: `grade_reaches_floor` here and `zinc_rich_preparation` of `substrates`.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from specgen.facts.pairs.parts import WORKING, Part
from specgen.findings import Severity
from specgen.model.preparation import PreparationStep
from specgen.model.system import Corrosivity
from specgen.rules.declare import Problem
from specgen.standards.tables import Row, table


@dataclass(frozen=True, slots=True)
class Verdict:
    """`confirmed`: grade and least grade are of one series, or paired by a published equivalence; else the ladder of
    common practice decided alone.
    """

    reached: bool
    confirmed: bool


def verdict(grade: str, least: str) -> Verdict | None:
    """None where one of the two stands outside the ladder."""
    level = {row["grade"]: int(row["level"]) for row in table("preparation_ladder").rows}
    if grade not in level or least not in level:
        return None
    series = {row["id"]: row["series"] for row in table("preparation_grades").rows}
    alike = {grade} | _equals(grade)
    return Verdict(level[grade] >= level[least], any(series[other] == series[least] for other in alike))


def below_floor(part: Part, family: str, name: str, because: str) -> Iterator[Problem]:
    """Problems of a part whose preparation does not reach the least that the table asks below a family of paint.

    `name`: the product in words; `because`: what a lower grade does, put behind the figures.
    """
    rows = _rows(part, family)
    if not rows:
        return
    step = best_step(part)
    if step is None or step.grade is None:
        what = f"cannot judge: no step states the grade that {name} stands on, on {part.name}"
        yield Problem(("steps",), what, "write the grade of the working step, as in Sa 2 1/2", Severity.NOTE)
        return
    path = ("steps", step.id, "grade")
    missed: list[tuple[Row, bool]] = []
    for row in rows:
        found = [verdict(step.grade, least) for least in row["grades"].split(" or ")]
        known = [one for one in found if one is not None]
        if not known:
            what = f"cannot judge: {step.grade} stands outside the ladder that {row['grades']} is on"
            yield Problem(path, what, "name a grade of the series SSPC or ISO 8501-1", Severity.NOTE)
            return
        if not any(one.reached for one in known):
            missed.append((row, any(one.confirmed for one in known)))
    if not missed:
        return
    # A family with several rows holds several paints; the source of the one that is missed most surely comes first.
    row, confirmed = next((pair for pair in missed if pair[1]), missed[0])
    every, by_ladder = len(missed) == len(rows), "" if confirmed else ", compared over the ladder of common practice"
    paint = f" ({row['paint']})" if row["paint"] else ""
    what = f"{step.grade} on {part.name} below {name}{paint}: {row['grades']} is the least{by_ladder}; {because}"
    severity = Severity.ERROR if every and confirmed else Severity.WARNING
    remedy = f"prepare to {row['grades']}, or choose a primer made for {step.grade}"
    yield Problem(path, what, remedy, severity, table("minimum_preparation").row_citation(row))


def best_step(part: Part) -> PreparationStep | None:
    """The step with the cleanest grade; None where no working step states one."""
    level = {row["grade"]: int(row["level"]) for row in table("preparation_ladder").rows}
    graded = [step for step in part.preparation.steps if step.grade is not None and step.do in WORKING]
    return max(graded, key=lambda step: level.get(step.grade or "", -1), default=None)


def _rows(part: Part, family: str) -> list[Row]:
    claim = part.system.category
    severe = claim is not None and claim.corrosivity is Corrosivity.C5
    of_family = [row for row in table("minimum_preparation").rows if row["family"] == family]
    if part.item.repair is not None and not severe:
        small = [row for row in of_family if row["service"] == "small spots"]
        if small:
            return small
    wanted = "severe" if severe else "normal"
    return [row for row in of_family if row["service"] == wanted]


def _equals(grade: str) -> set[str]:
    """Grades a published chart takes as equal."""
    pairs = [row for row in table("preparation_equivalences").rows if row["basis"] == "published"]
    return {row["equals"] for row in pairs if row["grade"] == grade} | {
        row["grade"] for row in pairs if row["equals"] == grade
    }
