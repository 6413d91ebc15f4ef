"""Whether the grade a part is prepared to reaches the least one a table asks below its first coat, and how surely.

Asked by the method statement and by the rules on least preparation: `preparation.grade_reaches_floor` and
`substrates.zinc_rich_preparation`.
"""

from __future__ import annotations

from typing import NamedTuple

from specgen.facts.job.exposure import severe_service
from specgen.facts.pairs.parts import WORKING, Part, is_jetting
from specgen.model.preparation import Preparation, PreparationStep
from specgen.model.product import Product
from specgen.standards.citations import LOGIC, Citation
from specgen.standards.reads import remembered
from specgen.standards.tables import Row, table
from specgen.trade.known import NotKnown

_FAR = 2


class MissedFloor(NamedTuple):
    """The least grades that no step reaches; `step` states the cleanest grade, `path` is its place, `source` who asks for them.

    `confirmed`: grade and least grade are of one series, or paired by a published equivalence, or the product's own word and
    one of them is of local work; else the ladder of common practice decided alone. `certain`: that, and it is the product's
    own word or each row of the table for the family, so that none of its paints may stand on it. `paint` names the one of its
    family that a row speaks of, empty where of all.
    """

    step: PreparationStep
    path: tuple[str, ...]
    grades: str
    paint: str
    source: Citation
    confirmed: bool
    certain: bool

    @property
    def least(self) -> str:
        """`the minimum is SP 6 or SP 11, compared over the ladder of common practice`."""
        return (
            f"the minimum is {self.grades}{'' if self.confirmed else ', compared over the ladder of common practice'}"
        )

    @property
    def remedy(self) -> str:
        return f"prepare to {self.grades}, or choose a primer made for {self.step.grade}"


def missed_floor(part: Part, product: Product) -> MissedFloor | NotKnown | None:
    """What the preparation of a part misses below a product on it; None where it reaches the least or no table asks one.

    A least grade that the product states goes before the table. Of several rows that are missed the one missed most surely;
    NotKnown names the place of the grade that is not stated or stands outside the ladder.
    """
    rows = _rows(part, product.binder) if product.least_grade is None else []
    if not rows and product.least_grade is None:
        return None
    about, steps = f"the preparation beneath the product {product.id}", ("preparations", part.preparation.id, "steps")
    step = best_step(part.preparation)
    if step is None or step.grade is None:
        why = f"no step states the grade that {part.name} has beneath the product {product.id}"
        return NotKnown(about, why, ("the grade of the working step",), at=steps)
    at = (*steps, step.id, "grade")
    if product.least_grade is not None:
        found = reaches(step.grade, product.least_grade)
        if found is None:
            return NotKnown(about, f"{step.grade} is not on the same ladder as {product.least_grade}", at=at)
        reached, confirmed = found
        confirmed = confirmed or _local(step.grade, product.least_grade)
        certain = confirmed or _far_below(step.grade, product.least_grade)
        return None if reached else MissedFloor(step, at, product.least_grade, "", LOGIC, confirmed, certain)
    missed: list[tuple[Row, bool]] = []
    for row in rows:
        each = [reaches(step.grade, least) for least in row["grades"].split(" or ")]
        compared = [one for one in each if one is not None]
        if not compared:
            return NotKnown(about, f"{step.grade} is not on the same ladder as {row['grades']}", at=at)
        if not any(reached for reached, _ in compared):
            missed.append((row, any(confirmed for _, confirmed in compared)))
    if not missed:
        return None
    # A family with several rows holds several paints; the source of the one that is missed most surely comes first.
    row, confirmed = next((pair for pair in missed if pair[1]), missed[0])
    paint = f" ({row['paint']})" if row["paint"] else ""
    source = table("minimum_preparation").row_citation(row)
    return MissedFloor(step, at, row["grades"], paint, source, confirmed, confirmed and len(missed) == len(rows))


def reaches(grade: str, least: str) -> tuple[bool, bool] | None:
    """Whether a grade is as clean as another, and whether that is confirmed; None where one stands outside the ladder."""
    level = _level()
    if grade not in level or least not in level:
        return None
    grades = table("preparation_grades")
    alike = {grade} | _equals(grade)
    series = grades.row("id", least)["series"]
    return level[grade] >= level[least], any(grades.row("id", other)["series"] == series for other in alike)


@remembered
def _level() -> dict[str, int]:
    """The step of the ladder each grade stands on."""
    return {row["grade"]: int(row["level"]) for row in table("preparation_ladder").rows}


def _local(grade: str, least: str) -> bool:
    """Grades that differ in their number alone, of which one or both are of local work: P St 2 is St 2 on spots in sound paint."""
    plain = [one.removeprefix("P ").split()[0] for one in (grade, least)]
    return plain[0] == plain[1]


def _far_below(grade: str, least: str) -> bool:
    """Two steps of the ladder or more: hand tools where a blast is asked. No reading of the ladder makes these one."""
    level = _level()
    return level[least] - level[grade] >= _FAR


def small_spots(family: str, *, severe: bool) -> tuple[Row, ...]:
    """The rows of minimum_preparation for a small spot that cannot be blasted; none in severe service, which lets off nothing."""
    if severe:
        return ()
    rows = table("minimum_preparation").rows
    return tuple(row for row in rows if row["family"] == family and row["service"] == "small spots")


def best_step(preparation: Preparation) -> PreparationStep | None:
    """The step with the cleanest grade, water jetting included; None where no working step states one."""
    level = _level()
    graded = [step for step in preparation.steps if step.grade is not None and (step.do in WORKING or is_jetting(step))]
    return max(graded, key=lambda step: level.get(step.grade or "", -1), default=None)


def _rows(part: Part, family: str) -> list[Row]:
    severe = severe_service(part.job, part.item, part.system)
    of_family = [row for row in table("minimum_preparation").rows if row["family"] == family]
    if part.is_repair and (small := small_spots(family, severe=severe)):
        return list(small)
    wanted = "severe" if severe else "normal"
    return [row for row in of_family if row["service"] == wanted]


@remembered
def _equals(grade: str) -> frozenset[str]:
    """Grades a published chart takes as equal."""
    pairs = [row for row in table("preparation_equivalences").rows if row["basis"] == "published"]
    return frozenset(
        other
        for row in pairs
        for one, other in ((row["grade"], row["equals"]), (row["equals"], row["grade"]))
        if one == grade
    )
