"""Tests as printed: what is asked, of which panels, what was measured. Called by the data sheet, the specification, the report of a test
and the qualification matrix, so that one test reads the same in all of them.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from specgen.documents.parts.results import limit_words
from specgen.documents.parts.wording import Words
from specgen.facts.tests.fit import total_film
from specgen.facts.tests.shown import Shown
from specgen.model.product import Product
from specgen.model.spec import Spec
from specgen.model.test_report import DoneTest, LabReport, PanelCoat, PanelSeries
from specgen.model.test_required import AskedTest, Condition, Detail, Exposed
from specgen.standards.tables import table
from specgen.units.locale import N_
from specgen.units.quantity import Quantity, Range

# A method that measures a resistance is an exposure here, for what it did is assessed by another.
_EXPOSURES: Mapping[str, str] = {
    "chemical": N_("exposure to a liquid"),
    "heat": N_("exposure to dry heat"),
}


def method_words(test: AskedTest | DoneTest, words: Words) -> str:
    """`Scribe creep, ISO 4628-8:2012, one-sided; after 480 h of neutral salt spray exposure, ISO 9227:2022`."""
    if test.method is None:
        return test.test or "" if isinstance(test, AskedTest) else ""
    quantity = quantity_of(test.method, words)
    said = _listed(quantity[:1].upper() + quantity[1:], *_standard(test), *_details(test.details))
    exposed = exposure_words(test.after, words)
    return f"{said}; {exposed}" if exposed else said


def asked_words(test: AskedTest, words: Words) -> str:
    """A test that is asked in one text: method, panels, limit with its statistic, who tests, what the customer does at it."""
    said = [
        method_words(test, words),
        condition_words(test.condition, words),
        of_whom(test, words),
    ]
    limit = limit_words(test, words)
    whole = "; ".join(part for part in said if part)
    return f"{whole}: {limit}" if limit else whole


def of_whom(test: AskedTest, words: Words) -> str:
    """`by an independent laboratory, witnessed by the customer`; empty where neither is stated."""
    told = (test.by, test.obligation, test.attendance)
    return ", ".join(words.word(one) for one in told if one is not None)


def quantity_of(method: str, words: Words) -> str:
    """What a method measures."""
    return words(table("test_methods").row("id", method)["quantity"])


def exposure_words(exposed: Exposed | None, words: Words) -> str:
    """`after 480 h of neutral salt spray exposure, ISO 9227:2022`; empty where there was none."""
    if exposed is None:
        return ""
    quantity = words(_EXPOSURES.get(exposed.method, "")) or quantity_of(exposed.method, words)
    if exposed.duration is not None:
        said = words("after {time} of {exposure}").format(time=words.phrase(exposed.duration), exposure=quantity)
    elif exposed.cycles is not None:
        text = words.plural("after {number} cycle of", "after {number} cycles of", exposed.cycles)
        said = f"{text} {quantity}"
    else:
        said = words("after {exposure}").format(exposure=quantity)
    return _listed(said, *_standard(exposed), *_details(exposed.details))


def condition_words(condition: Condition | None, words: Words, spec: Spec | None = None) -> str:
    """What panels, film and cure a test is for, as a requirement or a claim states it."""
    if condition is None:
        return ""
    coats = " + ".join(
        _listed(product_name(coat.product, spec), _film(coat.film, words), between=" ") for coat in condition.coats
    )
    return _listed(
        _material(condition.substrate, words),
        condition.preparation,
        coats,
        words("total DFT {}").format(words.phrase(condition.film)) if condition.film is not None else "",
        words("age {}").format(words.phrase(condition.age)) if condition.age is not None else "",
        condition.cure,
        _air(condition.temperature, condition.humidity, words),
        between="; ",
    )


def panel_condition(
    series: PanelSeries, words: Words, spec: Spec, *, cured: bool = True, called: Mapping[str, str] | None = None
) -> str:
    """The panels as they were: substrate, preparation, coats with the film measured, and how they were `cured`.

    `called` are short names of products, by their names.
    """
    film = total_film(series)
    several = len(series.coats) > 1 and film is not None
    return _listed(
        _listed(_material(series.substrate, words), series.grade or series.preparation),
        " + ".join(coat_words(coat, words, spec, called) for coat in series.coats),
        words("total DFT {}").format(_measured(film, series, words)) if several else "",
        cure_words(series, words) if cured else "",
        between="; ",
    )


def substrate_words(series: PanelSeries, words: Words) -> str:
    """`blast-cleaned steel, 3 mm, Sa 2 1/2`."""
    thickness = words.phrase(series.thickness)
    return _listed(_material(series.substrate, words), thickness, series.grade, series.preparation)


def measured_total(series: PanelSeries, words: Words) -> str:
    """The mean total film with its range; empty where no coat states its own."""
    ends: PanelSeries | PanelCoat = series
    if series.film is None and len(series.coats) == 1:
        ends = series.coats[0]
    return _measured(total_film(series), ends, words)


def coat_words(coat: PanelCoat, words: Words, spec: Spec, called: Mapping[str, str] | None = None) -> str:
    """`Fennholt 520, 118 µm (104 to 131 µm)`."""
    name = product_name(coat.product, spec)
    return _listed((called or {}).get(name, name), _measured(coat.film, coat, words) if coat.film is not None else "")


def nearest_words(found: Shown, words: Words, spec: Spec) -> str:
    """The report of the nearest test with its panels, then each thing in which it is not what is asked."""
    if found.tested is None:
        return words("none")
    report = words("{number}: {panels}").format(
        number=found.tested.report.number, panels=panel_condition(found.tested.series, words, spec)
    )
    unlike = [
        words("{about}: required {asked}, tested {tested}").format(
            about=words(mismatch.about), asked=words(mismatch.asked), tested=words(mismatch.tested)
        )
        for mismatch in found.unlike
    ]
    return "\n".join([report, *unlike])


def cure_words(series: PanelSeries, words: Words) -> str:
    """`tested after 7 days at 23 °C, 50 % RH`."""
    cure = series.cure
    if cure is None:
        return ""
    said = words("tested after {}").format(words.phrase(cure.time)) if cure.time is not None else ""
    forced = ""
    if cure.stoved is not None:
        forced = words("forced drying {}").format(words.phrase(cure.stoved))
        if cure.stoved_at is not None:
            forced = words("{time} at {conditions}").format(time=forced, conditions=words.phrase(cure.stoved_at))
    air = _air(cure.temperature, cure.humidity, words)
    if said and air:
        said = words("{time} at {conditions}").format(time=said, conditions=air)
        air = ""
    return _listed(forced, said, air, cure.text)


def report_words(report: LabReport, words: Words) -> str:
    """`204/2026: Laboratory Orm, accredited: Example body 12, 2026-05-18`."""
    house = report.laboratory
    standing = words("own laboratory") if house.own else house.name
    accredited = words("accredited: {}").format(house.accreditation) if house.accreditation is not None else ""
    return f"{report.number}: {_listed(standing, accredited, report.dates.issued.isoformat())}"


def product_name(named: str, spec: Spec | None) -> str:
    """The name of a product as printed; of another maker as the report has it."""
    known: Product | None = spec.products.get(named) if spec is not None else None
    return known.name if known is not None else named


def _standard(test: AskedTest | DoneTest | Exposed) -> tuple[str, ...]:
    return tuple(part for part in (dated(test.standard, test.edition), test.variant) if part)


def dated(standard: str | None, edition: str | None) -> str:
    """`ISO 4628-8:2012`, `ASTM D3359-23`; the standard alone where no edition is stated."""
    if standard is None:
        return ""
    if edition is None:
        return standard
    return f"{standard}-{edition}" if standard.startswith("ASTM") else f"{standard}:{edition}"


def _details(details: Sequence[Detail]) -> tuple[str, ...]:
    """`dolly 20 mm`, `tester: self-aligning hydraulic`, in the words of the author."""
    return tuple(
        f"{detail.id.replace('_', ' ')}{'' if detail.value[:1].isdigit() else ':'} {detail.value}" for detail in details
    )


def _material(material: str | None, words: Words) -> str:
    return words(table("materials").row("id", material)["name"]) if material is not None else ""


def _film(film: Quantity | Range | None, words: Words) -> str:
    return words.phrase(film)


def _measured(film: Quantity | None, of: PanelSeries | PanelCoat, words: Words) -> str:
    """The mean with the range beside it, both in one unit."""
    if film is None:
        return ""
    mean = words.phrase(film)
    if of.film_min is None or of.film_max is None:
        return mean
    ends = Range("thickness", of.film_min, of.film_max)
    return f"{mean} ({words.in_one_unit().phrase(ends)})"


def _air(temperature: Quantity | Range | None, humidity: Range | None, words: Words) -> str:
    return words.conditions(temperature, humidity)


def _listed(*parts: str | None, between: str = ", ") -> str:
    said: Iterable[str] = (part for part in parts if part)
    return between.join(said)
