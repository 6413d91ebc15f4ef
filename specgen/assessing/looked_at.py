"""Rows of tests and of what a person judged, at points that read no film. Called by `assessment`.

A limit that is typed is held against the figure; words are a person's to judge, who is named. What nothing decides is not decided.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from specgen.assessing.cells import CellError, figure_of, number_of, verdict_of
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.facts.tests.outcome import Outcome, judged, limit_of
from specgen.model.acceptance import InspectionPoint
from specgen.model.job import Item, Job
from specgen.model.preparation import Preparation
from specgen.model.spec import Spec
from specgen.model.test_report import DoneTest
from specgen.model.test_value import read_result
from specgen.trade.verdict import Verdict
from specgen.units.display import show, show_range
from specgen.units.locale import N_, phrase
from specgen.units.quantity import Quantity, Range


@dataclass(frozen=True, slots=True)
class Answer:
    """What one row says of a point: a verdict and why, and by whom; `word` is the row where it is a person's word."""

    verdict: Verdict
    why: str = ""
    by: str = ""
    word: Record | None = None


def answers(
    point: InspectionPoint, records: Sequence[Record], item: Item, job: Job, spec: Spec, faults: Faults
) -> Iterator[Answer]:
    """One answer a row, and one for all results of the test that the point asks for."""
    preparation = spec.preparation_of(job, item)
    results: list[Record] = []
    for record in records:
        text, test = record.text("value"), record.text("test")
        if not text:
            faults.tell("RDG011", "the row has no value", record.place("value"), point=point.id, item=item.id)
            continue
        said, by = verdict_of(text), record.text("by")
        if said is not None:
            yield _of_person(said, by, record)
        elif test in _TESTS:
            try:
                yield _TESTS[test](record, preparation)
            except CellError as reason:
                faults.tell("RDG003", reason.what, record.place("value"), point=point.id, item=item.id)
        elif _limited(point):
            results.append(record)
        else:
            why = N_("{value} was entered; the criterion is in words: enter conforming or not conforming, with a name")
            yield Answer(Verdict.NOT_DECIDED, phrase(why, value=text), by)

    if results:
        yield from _of_test(point, results, item, faults)
    elif records and _limited(point):
        yield Answer(Verdict.NOT_DECIDED, phrase(N_("the test has a limit in figures or ratings: enter its results")))


def _limited(point: InspectionPoint) -> bool:
    """True where the test of a point has a limit in figures or ratings."""
    return point.test is not None and point.test.method is not None and limit_of(point.test) is not None


def _of_test(point: InspectionPoint, records: Sequence[Record], item: Item, faults: Faults) -> Iterator[Answer]:
    """The results of the point's test together, by its statistic; too few are not decided."""
    asked = point.test
    read = []
    for record in records:
        text = _result(record)
        try:
            read_result(text)
        except ValueError as fault:
            faults.tell("RDG003", str(fault), record.place("value"), point=point.id, item=item.id)
        else:
            read.append({"id": f"row-{record.row}", "value": text})
    if not read or asked is None:
        return
    done = DoneTest.model_validate(
        {"id": "job", "series": "job", "method": asked.method, "standard": asked.standard, "results": tuple(read)}
    )
    found = judged(asked, done)
    by = ", ".join(dict.fromkeys(name for record in records if (name := record.text("by"))))
    yield Answer(_VERDICTS[found.outcome], found.why, by)
    if asked.specimens is not None and len(read) < asked.specimens:
        why = N_("results: {read}; required: {asked}")
        yield Answer(Verdict.NOT_DECIDED, phrase(why, read=len(read), asked=asked.specimens), by)


def _result(record: Record) -> str:
    """`5,2` with the unit MPa in its column is `5.2 MPa`; a rating stands as it was entered."""
    text = record.text("value")
    try:
        _, digits, own = number_of(text)
    except CellError:
        return text
    return f"{digits} {own or record.unit_text('value')}".strip()


_VERDICTS = {
    Outcome.MEETS: Verdict.CONFORMING,
    Outcome.FALLS_SHORT: Verdict.NOT_CONFORMING,
    Outcome.NOT_TOLD: Verdict.NOT_DECIDED,
}


def _of_person(said: Verdict, by: str, row: Record) -> Answer:
    if not by and said is Verdict.CONFORMING:
        return Answer(Verdict.NOT_DECIDED, phrase(N_("accepted by nobody who is named")), word=row)
    if said is Verdict.NOT_CONFORMING:
        return Answer(said, phrase(N_("found not conforming by {who}"), who=by or "?"), by, row)
    return Answer(said, "", by, row)


def _salt(record: Record, preparation: Preparation | None) -> Answer:
    found = figure_of("surface_density", record.text("value"), record.unit_text("value"))
    return _at_most(found, preparation.salt_limit if preparation is not None else None, N_("salt"))


def _profile(record: Record, preparation: Preparation | None) -> Answer:
    found = figure_of("thickness", record.text("value"), record.unit_text("value"))
    steps = preparation.steps if preparation is not None else ()
    asked: Range | None = next((step.profile for step in reversed(steps) if step.profile is not None), None)
    if asked is None:
        return Answer(Verdict.NOT_DECIDED, phrase(N_("no surface profile is specified")))
    if asked.holds(found):
        return Answer(Verdict.CONFORMING)
    return Answer(
        Verdict.NOT_CONFORMING,
        phrase(N_("surface profile {found}, outside {limits}"), found=show(found), limits=show_range(asked)),
    )


def _dust(name: str) -> Callable[[Record, Preparation | None], Answer]:
    def judged(record: Record, preparation: Preparation | None) -> Answer:
        found, digits, _ = number_of(record.text("value"))
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


_TESTS: Mapping[str, Callable[[Record, Preparation | None], Answer]] = {
    "salt": _salt,
    "profile": _profile,
    "dust-quantity": _dust("quantity"),
    "dust-size": _dust("size"),
}
"""By the word in the column `test`: what the preparation of the item limits in figures."""
