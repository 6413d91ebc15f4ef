"""One test report as finished text: laboratory and dates, panels with their films, each test with its results, what they come to, and
photographs. How its files are kept is the manufacturer's and not printed.

The template `test_report/document.html.j2` prints it.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from specgen.documents.context import Context
from specgen.documents.parts.parties import contact_line
from specgen.documents.parts.pictures import PictureView, picture_of
from specgen.documents.parts.results import limit_words, result_words, value_words
from specgen.documents.parts.tables import Column, TableView, table_view
from specgen.documents.parts.tested import (
    coat_words,
    cure_words,
    measured_total,
    method_words,
    product_name,
    substrate_words,
)
from specgen.documents.parts.wording import Words
from specgen.facts.tests.failure_modes import DOLLY, GLUE, Letter, places_of
from specgen.facts.tests.fit import Tested, tests_of
from specgen.facts.tests.outcome import Judged, Outcome, Results, judged, limit_of, results_of
from specgen.facts.tests.plausible import quantity_of
from specgen.figures.result_dots import Dot, result_dots
from specgen.model.spec import Spec
from specgen.model.test_report import DecisionRule, DoneTest, LabReport, PanelSeries
from specgen.model.test_value import Limit, Measured, read_result
from specgen.units.display import unit_sign
from specgen.units.locale import N_

_RULES: Mapping[DecisionRule, str] = {
    DecisionRule.SIMPLE: N_(
        "simple acceptance: the result is compared with the limit as it is, whatever its uncertainty"
    ),
    DecisionRule.GUARDED: N_(
        "guarded acceptance: the result has to keep clear of the limit by its expanded uncertainty"
    ),
    DecisionRule.NON_BINARY: N_(
        "non-binary statement: nearer to the limit than its expanded uncertainty a result conforms, or does not, conditionally"
    ),
}
_MOST_NAMES = 12
"""Panels or places that are named with their series; the table of results names all."""
Pairs = tuple[tuple[str, str], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TestedView:
    """One test: its method, its panels, the table of results, what they come to, the statement of conformity, what the letters of
    failure modes stand for, and a drawing."""

    heading: str
    panels: str
    results: TableView
    outcome: str
    statement: str
    remarks: str
    letters: str
    drawing: str
    pictures: tuple[PictureView, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class TestReportView:
    """The whole document."""

    number: str
    title: str
    on: str
    laboratory: str
    control: Pairs
    call: str
    facts: Pairs
    panels: TableView
    tests: tuple[TestedView, ...]
    pictures: tuple[PictureView, ...]
    program: str


def test_report(report: LabReport, context: Context) -> TestReportView:
    """The view of a report in a specification that checks without errors; its films are in the unit they were measured in."""
    spec, words = context.spec, context.words.with_one_film()
    house, numbers = report.laboratory, iter(range(1, 1000))
    return TestReportView(
        number=report.number,
        title=report.title,
        on=context.day.isoformat(),
        laboratory=house.name,
        control=tuple(_dates(report, words)),
        call=contact_line(spec.project.maker.contact),
        facts=tuple(_facts(report, words)),
        panels=_panels(report, spec, words),
        tests=tuple(_tested(tested, spec, words, numbers) for tested in tests_of(report)),
        pictures=tuple(picture_of(figure, next(numbers), spec, words) for figure in report.figures),
        program=context.program,
    )


def _dates(report: LabReport, words: Words) -> Iterator[tuple[str, str]]:
    dates = report.dates
    stated = (
        (words("Panels coated"), dates.prepared),
        (words("Panels received"), dates.received),
        (words("Tests begun"), dates.started),
        (words("Tests ended"), dates.ended),
        (words("Report issued"), dates.issued),
    )
    yield from ((name, day.isoformat()) for name, day in stated if day is not None)


def _facts(report: LabReport, words: Words) -> Iterator[tuple[str, str]]:
    house = report.laboratory
    standing = words("none stated; laboratory of the manufacturer") if house.own else words("none stated")
    stated = (
        (words("Laboratory"), ", ".join(part for part in (house.name, house.address) if part)),
        (words("Accreditation"), house.accreditation or standing),
        (words("Customer"), report.customer),
        (words("Authorised by"), report.signed_by),
        (words("Repeats the results of report"), report.repeats),
        (words("Deviations from the methods"), report.deviations or words("none stated")),
    )
    yield from ((name, text) for name, text in stated if text)


def _panels(report: LabReport, spec: Spec, words: Words) -> TableView:
    columns = [
        Column(words("Panels"), "w-10"),
        Column(words("Substrate and preparation"), "w-15"),
        Column(words("Coats, batch and DFT measured: mean (lowest to highest)")),
        Column(words("Total DFT"), "w-12"),
        Column(words("Cure and scribe"), "w-20"),
    ]
    rows = [
        (
            _series_name(series, report, words),
            substrate_words(series, words),
            "\n".join(_coat(series, at, spec, words) for at in range(len(series.coats))),
            measured_total(series, words),
            "\n".join(part for part in (cure_words(series, words), series.scribe or "") if part),
        )
        for series in report.series
    ]
    return table_view(words("Panels tested"), columns, rows)


def _series_name(series: PanelSeries, report: LabReport, words: Words) -> str:
    number = words.plural("{number} panel", "{number} panels", series.panels) if series.panels is not None else ""
    control = words("control panels") if series.control else ""
    read = dict.fromkeys(one.id for done in report.tests if done.series == series.id for one in done.results)
    named = list(read) if len(read) <= _MOST_NAMES else [*list(read)[:_MOST_NAMES], "\N{HORIZONTAL ELLIPSIS}"]
    return "\n".join(part for part in (series.id, number, control, ", ".join(named)) if part)


def _coat(series: PanelSeries, at: int, spec: Spec, words: Words) -> str:
    coat = series.coats[at]
    batch = words("batch {}").format(coat.batch) if coat.batch is not None else ""
    made = words("formulation of {}").format(coat.formulated.isoformat()) if coat.formulated is not None else ""
    method = words.word(coat.method) if coat.method is not None else ""
    return ", ".join(part for part in (coat_words(coat, words, spec), batch, made, method) if part)


def _tested(tested: Tested, spec: Spec, words: Words, numbers: Iterator[int]) -> TestedView:
    done = tested.done
    results = results_of(done)
    return TestedView(
        heading=method_words(done, words),
        panels=words("Panels: {}").format(done.series),
        results=_results(done, results, words),
        outcome=result_words(done, words),
        statement=_statement(done, judged(done, done), words),
        remarks=_far_out(results, words),
        letters=_letters(tested, spec, words),
        drawing=_drawing(done, results, words),
        pictures=tuple(picture_of(figure, next(numbers), spec, words) for figure in done.figures),
    )


def _results(done: DoneTest, results: Results, words: Words) -> TableView:
    colour = any(one.colour_before is not None or one.colour_after is not None for one in done.results)
    before, after = (
        (words("L*, a*, b* before"), words("L*, a*, b* after"))
        if colour
        else (words("Gloss before"), words("Gloss after"))
    )
    columns = [
        Column(words("Panel or place"), "w-15"),
        Column(before, "w-15"),
        Column(after, "w-15"),
        Column(words("Result"), "w-15"),
        Column(words("Failure mode"), "w-25"),
        Column(words("Remark")),
    ]
    rows = []
    for one in done.results:
        remark = words("not counted: {}").format(one.excluded) if one.excluded is not None else ""
        if one.id == results.far_out:
            remark = words("lies far out; counted")
        ends = (
            (one.colour_before or "", one.colour_after or "")
            if colour
            else (words.phrase(one.gloss_before), words.phrase(one.gloss_after))
        )
        rows.append((one.id, *ends, value_words(read_result(one.value), words), one.mode or "", remark))
    return table_view("", columns, rows)


def _letters(tested: Tested, spec: Spec, words: Words) -> str:
    """`B: Fennholt 210 epoxy primer; B/Y: between Fennholt 210 epoxy primer and glue`; empty where no result has a letter."""
    said = [
        (
            place.code,
            words("between {} and {}").format(
                *(_letter(letter, tested.series, spec, words) for letter in place.letters)
            )
            if place.letters[1:]
            else _letter(place.letters[0], tested.series, spec, words),
        )
        for place in places_of(tested.done, tested.series)
    ]
    return "; ".join(f"{code}: {meaning}" for code, meaning in said)


def _letter(letter: Letter, series: PanelSeries, spec: Spec, words: Words) -> str:
    if 0 < letter.coat <= len(series.coats):
        return product_name(series.coats[letter.coat - 1].product, spec)
    others = {GLUE: words("glue"), DOLLY: words("dolly")}
    return (
        words("substrate")
        if letter.coat == 0 and letter.letter not in others
        else others.get(letter.letter, words("not stated"))
    )


def _statement(done: DoneTest, found: Judged, words: Words) -> str:
    """`Limit at most 1.0 mm, mean: conforms. Decision rule: …`; the uncertainty alone where the laboratory held the results against no
    limit."""
    uncertainty = ""
    if done.uncertainty is not None:
        stated = value_words(read_result(done.uncertainty), words)
        uncertainty = words("Expanded uncertainty (k = 2): {}.").format(stated)
    if done.limit is None:
        return uncertainty
    said = {
        Outcome.MEETS: words("conforms"),
        Outcome.FALLS_SHORT: words("does not conform"),
        Outcome.NOT_TOLD: words("no statement: {}").format(words(found.why)),
    }[found.outcome]
    if found.inside_guard and done.decision is DecisionRule.NON_BINARY:
        said = words("{verdict}, conditionally").format(verdict=said)
    text = words("Limit {limit}: {verdict}.").format(limit=limit_words(done, words), verdict=said)
    rule = words(_RULES[done.decision]) if done.decision is not None else words("not stated")
    parts = [text, words("Decision rule: {}.").format(rule)]
    if uncertainty:
        parts.append(uncertainty)
    if found.inside_guard:
        parts.append(words("The result lies nearer to the limit than its uncertainty."))
    return " ".join(parts)


def _far_out(results: Results, words: Words) -> str:
    if not results.far_out:
        return ""
    text = words("{id} lies farther out than chance would put it (Grubbs, two-sided at 5 %). It is counted.")
    return text.format(id=results.far_out)


def _drawing(done: DoneTest, results: Results, words: Words) -> str:
    """Dots where there are numbers and something to see: three results, or a limit."""
    limit, mean = limit_of(done), results.mean
    if mean is None or (len(done.results) < 3 and limit is None):
        return ""
    counted = {one.id for one, _ in results.counted}
    dots = [
        Dot(one.id, float(value.number), one.id not in counted or one.id == results.far_out)
        for one in done.results
        if isinstance(value := read_result(one.value), Measured) and value.unit == mean.unit
    ]
    unit = f" ({unit_sign(mean.unit, 2, words.translate)})" if mean.unit else ""
    names = (
        f"{words(quantity_of(done.method))}{unit}",
        words("mean {}").format(value_words(mean, words)),
        words("lies far out, or not counted"),
    )
    return result_dots(dots, float(mean.number), _limits(limit, mean.unit, words), names, method_words(done, words))


def _limits(limit: Limit | None, unit: str, words: Words) -> list[tuple[float, str]]:
    """Each limit that is a number in the unit of the results, with its words."""
    bounds = ((limit.low, words("at least {}")), (limit.high, words("at most {}"))) if limit is not None else ()
    return [
        (float(value.number), said.format(value_words(value, words)))
        for value, said in bounds
        if isinstance(value, Measured) and value.unit == unit
    ]
