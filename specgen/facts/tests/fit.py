"""Whether a test of a report is of what is asked or claimed: the same product in the same formulation, system, film, substrate, method
and variant, each mismatch with both its sides.

Called by `evidence` and `qualification`. What the claim leaves open does not decide; but a claim has to name its method and substrate,
and one that names no coats is of the product alone, inside its own film limits.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import NamedTuple

from specgen.model.preparation import known_grades
from specgen.model.product import PackForm, Product
from specgen.model.spec import Spec
from specgen.model.test_report import DoneTest, LabReport, PanelCoat, PanelSeries
from specgen.model.test_required import AskedTest, CoatAsked, Detail, Exposed, Tester
from specgen.standards.tables import table
from specgen.units.display import show, show_range
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range
from specgen.units.rounding import plain_text, round_half_up

NOT_STATED = N_("not stated")
EQUAL_FILM = N_("mean total DFT")
_PERCENT = 100


class Mismatch(NamedTuple):
    """What differs, as it is asked or claimed, and as it was tested."""

    about: str
    asked: str
    tested: str

    def __str__(self) -> str:
        return f"{self.about}: {self.asked}; tested: {self.tested}"


class Tested(NamedTuple):
    """A test of a report with the panels it was done on."""

    report: LabReport
    done: DoneTest
    series: PanelSeries


def tests_of(report: LabReport) -> tuple[Tested, ...]:
    """The tests of a report whose panels it describes, in its order."""
    panels = {series.id: series for series in report.series}
    return tuple(Tested(report, done, panels[done.series]) for done in report.tests if done.series in panels)


def mismatches(asked: AskedTest, product: Product, tested: Tested, *, claimed: bool = True) -> tuple[Mismatch, ...]:
    """Why the test is not of what is asked of the product; empty where it is.

    What is `claimed` has to name its substrate, and its coats where they are more than the product; what a requirement leaves out is
    left open, but who tests and how many specimens are held against the report.
    """
    found = (*_of_method(asked, tested.done), *_of_panels(asked, product, tested.series, claimed=claimed))
    return found if claimed else (*found, *_of_report(asked, tested))


def unequal(one: Tested, other: Tested) -> Iterator[Mismatch]:
    """What keeps two tests from being compared: another method, other hours, another film or substrate; of one series with itself."""
    if one.series.id == other.series.id:
        yield Mismatch(N_("panels compared"), one.series.id, other.series.id)
        return
    mine, theirs = one.done, other.done
    pairs = [
        (N_("method"), method_name(mine.method), method_name(theirs.method)),
        (N_("standard"), mine.standard, theirs.standard),
        (N_("edition"), mine.edition, theirs.edition),
        (N_("variant of the method"), mine.variant, theirs.variant),
        (N_("details of the method"), _told(mine.details), _told(theirs.details)),
        *_exposures(mine.after, theirs.after),
        (N_("substrate"), _material(one.series.substrate), _material(other.series.substrate)),
    ]
    for about, ours, others in pairs:
        if _plain(ours or "") != _plain(others or ""):
            yield Mismatch(about, ours or NOT_STATED, others or NOT_STATED)
    films = total_film(one.series), total_film(other.series)
    if films[0] is None or films[1] is None or not films_alike(films[0], films[1]):
        yield Mismatch(EQUAL_FILM, in_figures(films[0]), in_figures(films[1]))


def _exposures(one: Exposed | None, other: Exposed | None) -> Iterator[tuple[str, str | None, str | None]]:
    if one is None or other is None:
        named = [method_name(held.method) if held is not None else None for held in (one, other)]
        yield N_("exposure before the test"), named[0], named[1]
        return
    yield N_("exposure before the test"), method_name(one.method), method_name(other.method)
    yield N_("standard of the exposure"), one.standard, other.standard
    yield N_("edition of the exposure"), one.edition, other.edition
    yield N_("variant of the exposure"), one.variant, other.variant
    yield N_("details of the exposure"), _told(one.details), _told(other.details)
    if one.duration != other.duration:
        yield N_("duration of the exposure"), in_figures(one.duration), in_figures(other.duration)
    if one.cycles != other.cycles:
        yield N_("cycles of the exposure"), str(one.cycles or NOT_STATED), str(other.cycles or NOT_STATED)


def _told(details: Sequence[Detail]) -> str:
    return ", ".join(f"{detail.id} {detail.value}" for detail in sorted(details, key=lambda detail: detail.id))


def total_film(series: PanelSeries) -> Quantity | None:
    """The mean total film of the panels: as measured, else the sum of its coats where each is stated."""
    if series.film is not None:
        return series.film
    films = [coat.film for coat in series.coats]
    stated = [film for film in films if film is not None]
    if not stated or len(stated) < len(films):
        return None
    unit = stated[0].unit
    total = sum((film.to(unit) for film in stated), Fraction(0))
    return Quantity.of("thickness", total, unit, plain_text(Fraction(round_half_up(total, 1))))


def in_figures(value: Quantity | Range | None) -> str:
    """A value as a finding says it."""
    if value is None:
        return NOT_STATED
    return show_range(value) if isinstance(value, Range) else show(value)


def names_product(named: str, product: Product) -> bool:
    """True where a coat of the panels or of a claim is of the product, by its id or its name as printed."""
    return named.casefold() in {product.id.casefold(), product.name.casefold()}


def _of_report(asked: AskedTest, tested: Tested) -> Iterator[Mismatch]:
    if asked.by is Tester.INDEPENDENT and tested.report.laboratory.own:
        yield Mismatch(N_("laboratory"), N_("an independent laboratory"), N_("laboratory of the manufacturer"))
    counted = sum(result.excluded is None for result in tested.done.results)
    if asked.specimens is not None and counted < asked.specimens:
        yield Mismatch(N_("number of results"), str(asked.specimens), str(counted))


def _of_method(asked: AskedTest, done: DoneTest) -> Iterator[Mismatch]:
    if asked.method is None:
        yield Mismatch(N_("method"), NOT_STATED, method_name(done.method))
    elif asked.method != done.method:
        yield Mismatch(N_("method"), method_name(asked.method), method_name(done.method))
    yield from _words(N_("standard"), asked.standard, done.standard)
    yield from _words(N_("edition"), asked.edition, done.edition)
    yield from _words(N_("variant of the method"), asked.variant, done.variant)
    yield from _details(asked.details, done.details)
    yield from _exposure(asked.after, done.after)


def method_name(method: str) -> str:
    """`scribe creep`: the quantity a method measures."""
    return str(table("test_methods").row("id", method)["quantity"])


def _words(about: str, asked: str | None, tested: str | None) -> Iterator[Mismatch]:
    if asked is not None and (tested is None or _plain(asked) != _plain(tested)):
        yield Mismatch(about, asked, tested or NOT_STATED)


def _plain(text: str) -> str:
    """Small letters and single blanks; a degree sign and an hour are as often written one way as the other."""
    return re.sub(r"[\s,;]+", " ", text.casefold().replace("°", " degrees ")).strip()


def _details(asked: Sequence[Detail], tested: Sequence[Detail]) -> Iterator[Mismatch]:
    stated = {detail.id: detail.value for detail in tested}
    for detail in asked:
        yield from _words(detail.id, detail.value, stated.get(detail.id))


def _exposure(asked: Exposed | None, tested: Exposed | None) -> Iterator[Mismatch]:
    if asked is None and tested is None:
        return
    if asked is None or tested is None:
        named = [NOT_STATED if one is None else method_name(one.method) for one in (asked, tested)]
        yield Mismatch(N_("exposure before the test"), *named)
        return
    if asked.method != tested.method:
        yield Mismatch(N_("exposure before the test"), method_name(asked.method), method_name(tested.method))
        return
    yield from _words(N_("standard of the exposure"), asked.standard, tested.standard)
    yield from _words(N_("edition of the exposure"), asked.edition, tested.edition)
    yield from _words(N_("variant of the exposure"), asked.variant, tested.variant)
    yield from _details(asked.details, tested.details)
    if asked.duration is not None and not _lasted(asked.duration, tested.duration):
        yield Mismatch(N_("duration of the exposure"), in_figures(asked.duration), in_figures(tested.duration))
    if asked.cycles is not None and (tested.cycles is None or tested.cycles < asked.cycles):
        cycles = NOT_STATED if tested.cycles is None else str(tested.cycles)
        yield Mismatch(N_("cycles of the exposure"), str(asked.cycles), cycles)


def _lasted(asked: Quantity | Range, tested: Quantity | Range | None) -> bool:
    """True where the panels were exposed as long as asked, or longer."""
    least = asked.low if isinstance(asked, Range) else asked
    lasted = tested.low if isinstance(tested, Range) else tested
    return least is None or (lasted is not None and lasted >= least)


def _of_panels(asked: AskedTest, product: Product, series: PanelSeries, *, claimed: bool) -> Iterator[Mismatch]:
    condition = asked.condition
    coat = next((coat for coat in series.coats if names_product(coat.product, product)), None)
    if series.control:
        yield Mismatch(N_("panels"), N_("panels of the product"), N_("control panels"))
    if coat is None:
        yield Mismatch(N_("product"), product.name, ", ".join(one.product for one in series.coats))
        return
    yield from _formulation(product, coat)
    coats = condition.coats if condition is not None else ()
    if coats or claimed:
        yield from _coats(coats, product, series)
    substrate = condition.substrate if condition is not None else None
    if substrate != series.substrate and (substrate is not None or claimed):
        yield Mismatch(N_("substrate"), _material(substrate), _material(series.substrate))
    if condition is None:
        return
    if condition.preparation is not None and not _prepared_alike(condition.preparation, series):
        stated = ", ".join(one for one in (series.grade, series.preparation) if one) or NOT_STATED
        yield Mismatch(N_("preparation of the panels"), condition.preparation, stated)
    if condition.film is not None and not film_fits(condition.film, total_film(series)):
        yield Mismatch(N_("total DFT"), in_figures(condition.film), in_figures(total_film(series)))
    cure = series.cure
    if condition.age is not None and not _same(condition.age, cure.time if cure is not None else None):
        yield Mismatch(N_("age at the test"), in_figures(condition.age), in_figures(cure.time if cure else None))
    if condition.temperature is not None and not _same(condition.temperature, cure.temperature if cure else None):
        kept = in_figures(cure.temperature if cure else None)
        yield Mismatch(N_("temperature of the cure"), in_figures(condition.temperature), kept)
    yield from _words(N_("cure"), condition.cure, cure.text if cure is not None else None)


def _formulation(product: Product, coat: PanelCoat) -> Iterator[Mismatch]:
    if product.formulated is not None and coat.formulated != product.formulated:
        tested = coat.formulated.isoformat() if coat.formulated is not None else NOT_STATED
        yield Mismatch(N_("formulation of the product"), product.formulated.isoformat(), tested)
    by_can = product.pack.form is PackForm.AEROSOL
    if coat.method is not None and by_can != (coat.method.value == PackForm.AEROSOL.value):
        yield Mismatch(N_("application"), product.pack.form.value, coat.method.value)


def _coats(asked: Sequence[CoatAsked], product: Product, series: PanelSeries) -> Iterator[Mismatch]:
    """The coats of the panels, from the substrate up, against those of the claim, or against the product alone."""
    tested = [coat.product for coat in series.coats]
    if asked:
        alike = len(asked) == len(tested) and all(
            one.product.casefold() == other.casefold() for one, other in zip(asked, tested, strict=False)
        )
        if not alike:
            yield Mismatch(N_("coats"), ", ".join(one.product for one in asked), ", ".join(tested))
            return
        for one, coat in zip(asked, series.coats, strict=True):
            if one.film is not None and not film_fits(one.film, coat.film):
                yield Mismatch(N_("DFT of a coat"), in_figures(one.film), in_figures(coat.film))
        return
    if not all(names_product(name, product) for name in tested):
        yield Mismatch(N_("coats"), N_("the product alone"), ", ".join(tested))
        return
    limits = Range("thickness", product.film.min, product.film.max)
    for coat in series.coats:
        if coat.film is not None and not limits.holds(coat.film):
            yield Mismatch(N_("DFT of the product"), in_figures(limits), in_figures(coat.film))


def film_fits(asked: Quantity | Range, measured: Quantity | None) -> bool:
    """True where the film measured is the one asked: inside a range, or as near to a figure as panels are sprayed."""
    if measured is None:
        return False
    if isinstance(asked, Range):
        return asked.holds(measured)
    return films_alike(asked, measured)


def films_alike(one: Quantity, other: Quantity) -> bool:
    """True where two mean films count as equal: they differ by no more than panels of one series do."""
    share = Fraction(table("evidence_limits").row("id", "equal_film")["value"]) / _PERCENT
    return abs(one.base - other.base) <= max(one.base, other.base) * share


def _same(asked: Quantity | Range, tested: Quantity | Range | None) -> bool:
    if tested is None:
        return False
    if isinstance(asked, Range):
        return asked.holds_all_of(tested) if isinstance(tested, Range) else asked.holds(tested)
    return tested.holds(asked) if isinstance(tested, Range) else tested == asked


def _prepared_alike(asked: str, series: PanelSeries) -> bool:
    grade = known_grades().get(asked)
    if grade is not None and series.grade is not None:
        return grade == series.grade
    return series.preparation is not None and _plain(asked) == _plain(series.preparation)


def _material(material: str | None) -> str:
    return str(table("materials").row("id", material)["name"]) if material is not None else NOT_STATED


def reports_of(product: Product, spec: Spec) -> tuple[LabReport, ...]:
    """The reports with panels on which the product is a coat, in the order of the sources."""
    return tuple(
        report
        for report in spec.reports.values()
        if any(names_product(coat.product, product) for series in report.series for coat in series.coats)
    )
