"""TST024 A coat is tested when it has cured

Checks
    Each test of a film that cures by itself with a hardener or the moisture of the air: its age at the test at 23 °C or below, asked (a note) or reported, against the rows cure and cure_air of table test_limits. Panels that were stoved or warmer are not judged, nor is a coat that its product calls fully cured by then; nor film, gloss, colour and drying.
Why
    A film that still cures is soft and open: it fails what it would pass a week later, or passes a bend that it would not.
Passes
    systems.chassis.tests: [{id: pull, method: pull_off, standard: ISO 4624, condition: {age: 7 days}, limit: min 5 MPa, statistic: each}]

    Given a claim with its report
    reports.lab-12.series.scribed.cure: {time: 30 min, temperature: 23 degC, stoved: 30 min, stoved_at: 60 degC}
Fails
    systems.cab.tests: [{id: pull, method: pull_off, standard: ISO 4624, condition: {age: 24 h}, limit: min 5 MPa, statistic: each}]    # note at systems.cab.tests.pull.condition.age

    systems.chassis.tests: [{id: pull, method: pull_off, standard: ISO 4624, condition: {age: 24 h}, limit: min 5 MPa, statistic: each}]    # note at systems.chassis.tests.pull.condition.age

    Given a claim with its report
    reports.lab-12.series.scribed.cure.time: 3 days    # at reports.lab-12.series.scribed.cure.time
To put right
    Test later, state how the panels were warmed, or say in the claim how old the coat was.
"""

from collections.abc import Iterable

from specgen.facts.pairs.families import binder_family
from specgen.facts.pairs.overcoat import table_row
from specgen.facts.tests.fit import names_product, tests_of
from specgen.facts.tests.spoken import asked_tests
from specgen.model.drying import DryingStage
from specgen.model.test_report import LabReport, PanelSeries
from specgen.model.test_required import Condition
from specgen.rules.kit import (
    NOTE,
    WARNING,
    Node,
    Path,
    Problem,
    Problems,
    Product,
    Quantity,
    Range,
    Spec,
    System,
    date,
    rule,
    table,
)

_CURE, _AIR = "cure", "cure_air"
_OF_THE_PAINT = frozenset(
    {"dft", "gloss", "colour", "drying", "volume_solids", "nonvolatile", "viscosity", "density", "voc", "pot_life", "aerosol_delivery"}
)  # fmt: skip
"""What is measured of the paint, or of a film of any age."""
_BY_HARDENER = frozenset({"chemical", "released by moisture", "moisture"})


@rule("TST024", on=Node, severity=WARNING, source=table_row("test_limits", _CURE))
def tested_when_cured(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        condition = asked.test.condition
        if condition is None or condition.age is None or asked.test.method in _OF_THE_PAINT or condition.cure:
            continue
        if not _warm(condition.temperature):
            at = (*asked.path, "condition", "age")
            yield from _told(at, condition.age, _coats(subject, condition, spec), asked=True)
    if isinstance(subject, LabReport):
        judged = {one.series.id: one.series for one in tests_of(subject) if one.done.method not in _OF_THE_PAINT}
        for series in judged.values():
            cure = series.cure
            if cure is not None and cure.time is not None and cure.stoved is None and not _warm(cure.temperature):
                at = ("series", series.id, "cure", "time")
                yield from _told(at, cure.time, _on(series, spec), asked=False)


def _told(at: Path, age: Quantity | Range, coats: Iterable[Product], *, asked: bool) -> Problems:
    oldest = age.high if isinstance(age, Range) else age
    least = _limit("duration", _CURE)
    if oldest is None or oldest >= least:
        return
    for product in coats:
        if binder_family(product.binder)["cure"] in _BY_HARDENER and not _cured_by(product, oldest):
            what = f"{product.name} is tested {oldest} after the last coat; a coat that cures by itself is tested from {least} on"
            yield Problem(at, what, severity=NOTE if asked else WARNING)
            return


def _limit(dimension: str, id: str) -> Quantity:
    row = table("test_limits").row("id", id)
    return Quantity.of(dimension, int(row["value"]), row["unit"])


def _warm(temperature: Quantity | Range | None) -> bool:
    most = temperature.high if isinstance(temperature, Range) else temperature
    return most is not None and most > _limit("temperature", _AIR)


def _cured_by(product: Product, age: Quantity) -> bool:
    """True where the product states that it is fully cured by then, in air no warmer than the test."""
    for row in product.drying:
        time = row.time.high if isinstance(row.time, Range) else row.time
        if row.stage is DryingStage.FULLY_CURED and time is not None and time <= age and not _warm(row.air):
            return True
    return False


def _coats(subject: Node, condition: Condition, spec: Spec) -> list[Product]:
    """The coats that a test asks for: those it names, else the product or the coats of the system."""
    named = [spec.products[coat.product] for coat in condition.coats if coat.product in spec.products]
    if named or condition.coats:
        return named
    if isinstance(subject, Product):
        return [subject]
    return [spec.product_of(layer) for layer in subject.layers] if isinstance(subject, System) else []


def _on(series: PanelSeries, spec: Spec) -> list[Product]:
    return [one for one in spec.products.values() if any(names_product(coat.product, one) for coat in series.coats)]
