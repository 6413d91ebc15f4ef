"""Inspection points as printed: when each falls and its acceptance criterion. Called by `method_statement` and `job_card`."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

from specgen.documents.parts.climate import in_a_line
from specgen.documents.parts.pictures import marked, see
from specgen.documents.parts.results import limit_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.tested import condition_words, method_words, of_whom
from specgen.documents.parts.wording import Words
from specgen.facts.job.counting import PERCENT, counting
from specgen.facts.job.criteria import Held, criteria_of
from specgen.facts.job.inspected import numbers_of
from specgen.facts.job.looked_for import CLIMATE, words_of
from specgen.facts.job.points import once_sanded
from specgen.model.acceptance import AcceptanceRule, Criterion, Each, Gauge, InspectionPoint, Readings, Sampling
from specgen.model.job import Job
from specgen.model.spec import Spec
from specgen.model.system import Layer
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import plain_text

_FEW = 3
"""So many items of a point stand beside its name."""


def points_table(job: Job, spec: Spec, words: Words) -> TableView:
    """Every point of a job, numbered in the order of the work."""
    layers = {layer.id: layer for system in spec.systems_of(job) for layer in system.layers}
    columns = [
        Column(words("No."), "w-4", numeric=True),
        Column(words("Stage"), "w-12"),
        Column(words("Inspection"), "w-12"),
        Column(words("Method and frequency"), "w-32"),
        Column(words("Acceptance criterion")),
        Column(words("If it fails"), "w-15"),
    ]
    rows = []
    numbers = numbers_of(job)
    for point in job.inspection:
        when = _when(point, layers, words) + (f"\n{words('HOLD POINT')}" if point.hold_point else "")
        # many items stand where the room is
        many = words("Items: {}").format(", ".join(point.items)) if len(point.items) > _FEW else ""
        named = f"({', '.join(point.items)})" if point.items and not many else ""
        method = _joined((method_of(point, words), many))
        check = _joined((point.check, named, marked(point, job, spec, words), see(point, job, spec, words)))
        rows.append((numbers[point.id], when, check, method, passes(point, job, spec, words), point.if_failed or ""))
    return table_view(words("Inspection points in work sequence"), columns, rows, words("not stated"))


def method_of(point: InspectionPoint, words: Words) -> str:
    """How a point is measured, with what, where and how often, one line each."""
    return _joined((measured_with(point, words), how_much(point, words)))


def run_on(lines: str) -> str:
    """The same lines one behind the other: a new sentence after a full stop, anything else after a semicolon."""
    first, *rest = lines.split("\n")
    return first + "".join((". " if line[:1].isupper() else "; ") + line for line in rest)


def measured_with(point: InspectionPoint, words: Words) -> str:
    """The method, the test, the gauge and its zero, the voltage, one line each."""
    voltage = words("test voltage {}").format(words.phrase(point.voltage)) if point.voltage is not None else ""
    return _joined((point.method, *_test(point, words), *_gauge(point.gauge, words), voltage))


def how_much(point: InspectionPoint, words: Words) -> str:
    """How often and how many, and how far from an edge, one line each."""
    return _joined((sampling(point.sampling, words), point.frequency, *_counts(point.readings, words)))


def passes(point: InspectionPoint, job: Job, spec: Spec, words: Words, *, wide: bool = False) -> str:
    """What passes, one line a limit, rule or text, with what the rule makes of the limits; `wide` has room for all limits in a line."""
    held = criteria_of(point, job, spec)
    between = ", " if wide else "\n"
    said = (
        _joined(
            (
                between.join(_films(one.criterion, words)),
                *_counted(one.criterion, words),
                _accepted(one.criterion, words),
            )
        )
        for one in held
    )
    tested = limit_words(point.test, words) if point.test is not None else ""
    return _joined((*_each(held, said, "\n"), tested, ambient(point, job, words), point.criterion.text))


def accepted(point: InspectionPoint, job: Job, spec: Spec, words: Words) -> str:
    """What the counting rule accepts at the limits in force, for each film that is specified."""
    held = criteria_of(point, job, spec)
    return "; ".join(_each(held, (_accepted(one.criterion, words) for one in held), " "))


def limits(point: InspectionPoint, job: Job, spec: Spec, words: Words, *, brief: bool = False) -> str:
    """The limits and rules of a criterion in a line, without its text; for each film that is specified with its items.

    Ambient conditions are in one unit, for the table of them has both; with `brief` it says where they stand.
    """
    held = criteria_of(point, job, spec)
    tested = limit_words(point.test, words) if point.test is not None else ""
    films = _each(held, (", ".join(_limits(one.criterion, words)) for one in held), " ")
    air = ambient(point, job, words.in_one_unit())
    if air and brief:
        air = words("limits at the head")
    return "; ".join(part for part in (*films, tested, air) if part)


def ambient(point: InspectionPoint, job: Job, words: Words) -> str:
    """The ambient conditions of the job in a line, for a point that looks at them by its words; else empty."""
    if not CLIMATE.search(words_of(point)):
        return ""
    return in_a_line(job.climate, words)


def _each(held: Sequence[Held], said: Iterable[str], between: str) -> Iterator[str]:
    """What is said of each film, with the items it holds for where there are several."""
    for one, text in zip(held, said, strict=True):
        named = ", ".join(item.id for item in one.items)
        yield f"{named}:{between}{text}" if named and text else text


def _accepted(criterion: Criterion, words: Words) -> str:
    """What the counting rule accepts at the limits stated; empty where words decide, or where the rule lacks its figure."""
    held = counting(criterion)
    if held is None or _all_inside(criterion):
        return ""
    ranges = (
        (held.single_min, held.single_max, words("single reading {}")),
        (held.spot_min, held.spot_max, words("spot measurement {}")),
        (held.mean_min, held.mean_max, words("mean {}")),
    )
    said = [
        text.format(words.phrase(Range("thickness", low, high)))
        for low, high, text in ranges
        if low is not None or high is not None
    ]
    if held.counted_from is not None:
        fewer = words("fewer than {share} of the readings below {film}")
        below = fewer if held.fewer else words("at most {share} of the readings below {film}")
        percent = held.below_most * PERCENT
        share = words.phrase(Quantity.of("share", percent, "%", plain_text(percent)))
        said.append(below.format(share=share, film=words.phrase(held.counted_from)))
    if held.single_min is None and held.single_max is None:
        said.append(words("a single gauge reading is not limited"))
    if held.tripled:
        said.append(words("no maximum is stated, so it is three times the nominal DFT"))
    text = words("accepted by this rule: {}").format("; ".join(said))
    return (
        words("{text} ({basis})").format(text=text, basis=words(held.unconfirmed.value)) if held.unconfirmed else text
    )


def _limits(criterion: Criterion, words: Words) -> tuple[str, ...]:
    """The limits and rules of a criterion, without its text."""
    return (*_films(criterion, words), *_counted(criterion, words))


def _films(criterion: Criterion, words: Words) -> tuple[str, ...]:
    films = (
        (criterion.min, words("at least {}")),
        (criterion.max, words("at most {}")),
        (criterion.nominal, words("nominal {}")),
        (criterion.spot_min, words("spot measurement at least {}")),
        (criterion.spot_max, words("spot measurement at most {}")),
        (criterion.area_min, words("area measurement at least {}")),
        (criterion.area_max, words("area measurement at most {}")),
    )
    return tuple(text.format(words.phrase(film)) for film, text in films if film is not None)


def _counted(criterion: Criterion, words: Words) -> tuple[str, ...]:
    """The rules of a criterion: whether the film is as specified, and how readings count."""
    said = []
    low = words.word(criterion.low_readings) if criterion.low_readings is not None else ""
    decides = words("this rule takes precedence") if criterion.governs else ""
    if criterion.as_specified:
        inside = words("as specified; no reading outside these limits")
        said.append(inside if _all_inside(criterion) else words("as specified"))
    return tuple(part for part in (*said, _rule(criterion, words), low, decides) if part)


def _all_inside(criterion: Criterion) -> bool:
    """True where the film is as specified and nothing says how readings count, so that each has to be inside."""
    own = criterion.rule is AcceptanceRule.OWN and criterion.each is Each.READING
    return criterion.as_specified and own and criterion.text is None


def _test(point: InspectionPoint, words: Words) -> tuple[str, ...]:
    """The test done at the point, its panels, and who does it; the limit stands among what passes."""
    test = point.test
    if test is None:
        return ()
    return method_words(test, words), condition_words(test.condition, words), of_whom(test, words)


def _gauge(gauge: Gauge | None, words: Words) -> Iterator[str]:
    """How the gauge works, what it is set to zero on, and what is taken off each reading."""
    if gauge is None:
        return
    parts = [words("gauge: {}").format(words.word(gauge.principle)) if gauge.principle is not None else ""]
    if gauge.zeroed_on is not None:
        parts.append(words("zeroed on {}").format(words.word(gauge.zeroed_on)))
    if gauge.correction is not None:
        parts.append(words("deduct {} from each reading").format(words.phrase(gauge.correction)))
    yield ", ".join(part for part in parts if part)


def sampling(plan: Sampling | None, words: Words) -> str:
    """`5 measurements or tests: in the first 10 m², then in every 10 m²; every 4 h; per shift`."""
    if plan is None:
        return ""
    said = []
    if plan.first_area is not None and plan.each_area is not None:
        text = words("in the first {first}, then in each further {each}")
        said.append(text.format(first=words.phrase(plan.first_area), each=words.phrase(plan.each_area)))
    elif plan.first_area is not None:
        said.append(words("in the first {}").format(words.phrase(plan.first_area)))
    elif plan.each_area is not None:
        said.append(words("in each {}").format(words.phrase(plan.each_area)))
    if plan.every is not None:
        said.append(words("every {}").format(words.phrase(plan.every)))
    if plan.per is not None:
        said.append(words.word(plan.per))
    count = words("measurements or tests: {}").format(words.phrase(plan.count)) if plan.count is not None else ""
    return ", ".join(part for part in (count, *said) if part)


def _counts(plan: Readings | None, words: Words) -> Iterator[str]:
    """How many areas, spots and readings, and how far from an edge."""
    if plan is None:
        return
    counts = (
        (plan.areas, words("measurement areas: {}")),
        (plan.spots, words("spots: {}")),
        (plan.readings, words("readings: {}")),
    )
    yield ", ".join(text.format(count) for count, text in counts if count is not None)
    if plan.from_edge is not None:
        yield words("at least {} from edges, corners and holes").format(words.phrase(plan.from_edge))


def _joined(parts: Iterable[str | None]) -> str:
    return "\n".join(part for part in parts if part)


def _rule(criterion: Criterion, words: Words) -> str:
    if criterion.rule is None or criterion.rule is AcceptanceRule.OWN:
        return ""
    named = [words.word(criterion.rule)]
    if criterion.edition:
        named.append(words("edition {}").format(criterion.edition))
    if criterion.level is not None:
        named.append(words("level {}").format(criterion.level))
    return " ".join(named)


def _when(point: InspectionPoint, layers: dict[str, Layer], words: Words) -> str:
    if point.at is not None:
        return words.word(point.at)
    layer = layers.get(point.after or "")
    if layer is None:
        return ""
    text = words("after the {}, once sanded") if once_sanded(point) else words("after the {}")
    return text.format(words.word(layer.role))
