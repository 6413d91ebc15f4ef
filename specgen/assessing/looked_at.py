"""Rows of tests and of what a person judged, at points that read no film. Called by `assessment`.

A limit that is typed is held against the figure; words are a person's to judge, who is named. What nothing decides is not decided.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace

from specgen.assessing.answer import Answer
from specgen.assessing.beneath import Means
from specgen.assessing.cells import CellError, concession_of, given, number_of, verdict_of
from specgen.assessing.conceded import Grants, outside, under
from specgen.assessing.faults import Faults
from specgen.assessing.records import Record
from specgen.assessing.surface import TESTS, ColumnError
from specgen.assessing.wording import film_text
from specgen.facts.job.zinc_beneath import zinc_asked
from specgen.facts.tests.outcome import Outcome, judged, limit_of
from specgen.model.acceptance import InspectionPoint
from specgen.model.concession import Concession
from specgen.model.job import Item
from specgen.model.test_report import DoneTest
from specgen.model.test_required import AskedTest
from specgen.model.test_value import read_result
from specgen.trade.verdict import Verdict
from specgen.units.display import show_range
from specgen.units.locale import N_, phrase


def answers(
    point: InspectionPoint, records: Sequence[Record], item: Item, grants: Grants, faults: Faults
) -> Iterator[Answer]:
    """One answer a row, and one for all results of the test that the point asks for."""
    results: list[Record] = []
    for record in records:
        text, test = record.text("value"), record.text("test")
        if not text:
            faults.tell("RDG011", "the row has no value", record.place("value"), point=point.id, item=item.id)
            continue
        said, by = verdict_of(text), given(record.text("by"))
        if said is not None:
            yield _of_person(said, by, record)
        elif key := concession_of(text):
            yield _under(key, by, record, grants.of_rows([record]).named(key, item, point.id))
        elif test in TESTS:
            try:
                yield _of_surface(record, test, item, point, grants)
            except CellError as reason:
                column = reason.column if isinstance(reason, ColumnError) else "value"
                faults.tell("RDG003", reason.what, record.place(column), point=point.id, item=item.id)
        elif _limited(point):
            results.append(record)
        else:
            why = N_("{value} was entered; the criterion is in words: enter conforming or not conforming, with a name")
            yield Answer(Verdict.NOT_DECIDED, phrase(why, value=text), by)

    if results:
        yield from _of_test(point, results, item, grants, faults)
    elif records and _limited(point):
        yield Answer(Verdict.NOT_DECIDED, phrase(N_("the test has a limit in figures or ratings: enter its results")))


def zinc_answers(point: InspectionPoint, item: Item, zinc: Means, records: Sequence[Record]) -> Iterator[Answer]:
    """The mean of every part of an item against what the criterion says of it; parts without one are not decided."""
    asked = zinc_asked(point)
    by = ", ".join(dict.fromkeys(name for record in records if (name := record.text("by"))))
    parts = [str(number) for number in range(1, item.count + 1)]
    lacking = [part for part in parts if (item.id, part) not in zinc]
    if lacking:
        yield Answer(
            Verdict.NOT_DECIDED,
            phrase(N_("no zinc thickness is recorded of the parts: {parts}"), parts=", ".join(lacking)),
            by,
        )
    if asked is None:
        return
    for part in parts:
        mean = zinc.get((item.id, part))
        if mean is None:
            continue
        if asked.holds(mean):
            yield Answer(Verdict.CONFORMING, "", by)
        else:
            text = N_("mean zinc thickness of part {part} is {found}; required: {limits}")
            found = film_text(mean.number, "um")
            yield Answer(Verdict.NOT_CONFORMING, phrase(text, part=part, found=found, limits=show_range(asked)), by)


def _limited(point: InspectionPoint) -> bool:
    """True where the test of a point has a limit in figures or ratings."""
    return point.test is not None and point.test.method is not None and limit_of(point.test) is not None


def _of_surface(record: Record, test: str, item: Item, point: InspectionPoint, grants: Grants) -> Answer:
    """A figure of the prepared surface against its limit, then against one that is conceded."""
    said = TESTS[test](record, grants.spec.preparation_of(grants.job, item))
    if said.verdict is Verdict.NOT_CONFORMING:
        for one, limit, eased in grants.of_rows([record]).prepared(test.replace("-", "_"), item, point.id):
            if TESTS[test](record, eased).verdict is Verdict.CONFORMING:
                return Answer(Verdict.CONCEDED, under(said.why, one, limit), said.by, under=one)
            return replace(said, why=outside(said.why, one, limit))
    return said


def _of_test(
    point: InspectionPoint, records: Sequence[Record], item: Item, grants: Grants, faults: Faults
) -> Iterator[Answer]:
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
    yield _conceded_result(
        Answer(_VERDICTS[found.outcome], found.why, by), asked, done, item, point, grants.of_rows(records)
    )
    if asked.specimens is not None and len(read) < asked.specimens:
        why = N_("results: {read}; required: {asked}")
        yield Answer(Verdict.NOT_DECIDED, phrase(why, read=len(read), asked=asked.specimens), by)


def _conceded_result(
    said: Answer, asked: AskedTest, done: DoneTest, item: Item, point: InspectionPoint, grants: Grants
) -> Answer:
    """Results that fall short, against the limit that is conceded for the test."""
    if said.verdict is not Verdict.NOT_CONFORMING:
        return said
    for one, limit in grants.of("test", item, point.id):
        if judged(asked.model_copy(update={"limit": limit.conceded}), done).outcome is Outcome.MEETS:
            return replace(said, verdict=Verdict.CONCEDED, why=under(said.why, one, limit), under=one)
        return replace(said, why=outside(said.why, one, limit))
    return said


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


def _under(key: str, by: str, word: Record, found: Concession | None) -> Answer:
    """A person who accepts the words of a criterion under a concession, which has to be there and hold."""
    if found is None or found.words is None:
        why = N_("accepted under the concession {id}, which is not in force for the words of this point and item")
        return Answer(Verdict.NOT_CONFORMING, phrase(why, id=key), by)
    if not by:
        return Answer(Verdict.NOT_DECIDED, phrase(N_("accepted by nobody who is named")))
    why = N_("accepted by {who} under the concession {id}: {conceded}")
    said = phrase(why, who=by, id=key, conceded=" ".join(found.words.conceded.split()))
    return Answer(Verdict.CONCEDED, said, by, under=found)
