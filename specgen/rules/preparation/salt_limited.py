"""PRE013 Steel exposed to salt, or bound for water, has a soluble-salt limit

Checks
    Bare steel that has been exposed to salt, is pitted (rust grade D, and C where it is bound for corrosivity C4, C5 or CX), is immersed, or is splashed by the sea: its preparation limits soluble salts, and where it is wetted in service not more loosely than the one published limit, which is for ships and here a choice. In the atmosphere a looser limit is noted, and a warning above what is usual there (table salt_limits). The same warning is given on any bare metal. Pitted steel indoors, at no category above C2, is not asked for a limit. A limit that stands in the words of an inspection point after the preparation alone is a note. Rusted steel for which neither is stated cannot be assessed.
Why
    Salt left on the steel, deepest in pits, draws water through the film: blisters in rows, with rust beneath.
Passes
    jobs.refit.substrate.salt_exposure: yes
    preparations.sand-steel.salt_limit: 50 mg/m2
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    jobs.refit.substrate.rust_grade: B
    preparations.sand-steel.salt_limit: 100 mg/m2
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    jobs.refit.substrate.rust_grade: C
    jobs.refit.environment: {kind: atmosphere, category: C3}

    jobs.refit.items.STEP.substrate: {material: steel_rusted, thickness: 3 mm, salt_exposure: no}

    Given second good
    jobs.rails.environment: {kind: splash, category: Im2}
    preparations.abrade.salt_limit: 50 mg/m2
    preparations.abrade.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    jobs.refit.substrate.rust_grade: D
    jobs.refit.exposure: interior
    jobs.refit.environment: {kind: atmosphere, category: C2}
    jobs.refit.items.STEP.system: cab
Fails
    jobs.refit.items.STEP.substrate: {material: stainless, thickness: 3 mm}
    preparations.sand-steel.salt_limit: 101 mg/m2    # at preparations.sand-steel.salt_limit
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    jobs.refit.substrate.salt_exposure: yes    # at preparations.sand-steel.salt_limit

    jobs.refit.substrate.salt_exposure: yes    # note at preparations.sand-steel.salt_limit
    jobs.refit.inspection.salt: {id: salt, check: Soluble salt, at: after-preparation, criterion: {text: At most 50 mg/m2.}}

    jobs.refit.substrate.salt_exposure: yes    # note at preparations.sand-steel.salt_limit    # warning at preparations.sand-steel.salt_limit
    jobs.refit.inspection.salt: {id: salt, check: Soluble salt, at: after-preparation, items: [STEP], criterion: {text: At most 50 mg/m2.}}

    jobs.refit.substrate.rust_grade: D
    preparations.sand-steel.salt_limit: 101 mg/m2    # at preparations.sand-steel.salt_limit
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    jobs.refit.items.STEP.substrate: {material: steel_rusted, thickness: 3 mm, rust_grade: C}    # at preparations.sand-steel.salt_limit
    jobs.refit.items.STEP.environment: {kind: atmosphere, category: C4}
    preparations.sand-steel.edge_radius: 2 mm

    jobs.refit.items.STEP.substrate: {material: steel_rusted, thickness: 3 mm}    # note at jobs.refit.items.STEP.substrate.salt_exposure

    jobs.refit.items.STEP.substrate: {material: steel_rusted, thickness: 3 mm, rust_grade: D}
    preparations.sand-steel.salt_limit: 51 mg/m2    # note at preparations.sand-steel.salt_limit
    preparations.sand-steel.steps.salt: {id: salt, do: test, text: Measure soluble salts.}

    Given second good
    without preparations.blast.salt_limit    # at preparations.blast.salt_limit
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}

    Given second good
    jobs.rails.items.RAIL.environment: {kind: immersion, category: Im1}
    systems.deck.layers.first.stripe_coat: {when: before, where: welds}
    preparations.blast.salt_limit: 51 mg/m2    # at preparations.blast.salt_limit

    Given second good
    jobs.lids.items.FRAME.substrate.salt_exposure: yes
    preparations.blast.salt_limit: 0.0501 g/m2    # note at preparations.blast.salt_limit
To put right
    Write salt_limit, measure to ISO 8502-6 and -9, and wash and prepare again where the limit is exceeded.
"""

from fractions import Fraction

from specgen.facts.job.exposure import environment_of, exposure_of
from specgen.facts.job.in_words import salt_said
from specgen.facts.job.looked_for import SALT, words_of
from specgen.facts.pairs.parts import Part, prepared_with
from specgen.model.acceptance import Stage
from specgen.model.environment import Environment, EnvironmentKind, Medium
from specgen.model.job import Exposure
from specgen.rules.kit import NOTE, WARNING, Concern, Preparation, Problem, Problems, Quantity, Spec, date, rule, table

_LIMITS = table("salt_limits")
_PITTED, _SHALLOW = "D", "C"
_HARSH = {"C4", "C5", "CX"}
_SEA = {"Im2", "Im4"}


@rule(
    "PRE013",
    on=Preparation,
    severity=WARNING,
    concern=Concern.ACCEPTANCE,
    source=_LIMITS.row_citation(_LIMITS.row("use", "ballast tanks")),
)
def salt_limited(preparation: Preparation, spec: Spec, on: date) -> Problems:
    found = list(_of_exposed(preparation, spec))
    yield from found
    stated, usual = preparation.salt_limit, _most("in the atmosphere")
    bare = any(part.is_bare_metal for part in prepared_with(preparation, spec))
    if not found and bare and stated is not None and stated > usual:
        row = _LIMITS.row("use", "in the atmosphere")
        what = f"the limit for soluble salts, {stated}, is above what is usual in the atmosphere, {usual}"
        yield Problem(("salt_limit",), what, source=_LIMITS.row_citation(row))


def _of_exposed(preparation: Preparation, spec: Spec) -> Problems:
    ships, usual = _most("ballast tanks"), _most("in the atmosphere")
    stated, path = preparation.salt_limit, ("salt_limit",)
    for part in prepared_with(preparation, spec):
        reason = _reason(part)
        if reason and stated is None:
            at_point = _limit_at_a_point(part)
            if at_point is None:
                yield Problem(path, f"{part.name} {reason}, but no limit for soluble salts is stated")
            else:
                what = f"{part.name} {reason}; the limit for soluble salts stands at the inspection point {at_point}, not in the preparation"
                yield Problem(path, what, severity=NOTE)
        elif reason and stated is not None and stated > ships:
            said = f"{part.name} {reason}; the limit for soluble salts, {stated}, is above"
            if stated > usual and not _wetted(environment_of(part.job, part.item)):
                row = _LIMITS.row("use", "in the atmosphere")
                what = f"{said} what is usual in the atmosphere, {usual}"
                yield Problem(path, what, source=_LIMITS.row_citation(row))
            else:
                wet = _wetted(environment_of(part.job, part.item))
                yield Problem(path, f"{said} the maximum for ships, {ships}", severity=None if wet else NOTE)
        elif stated is None and _unknown(part):
            owner = ("items", part.item.id) if part.item.substrate is not None else ()
            where = ("jobs", part.job.id, *owner, "substrate", "salt_exposure")
            what = "cannot be assessed: neither rust grade nor salt exposure of the rusted steel is stated"
            yield Problem(where, what, "write salt_exposure and rust_grade", NOTE, absolute=True)


def _limit_at_a_point(part: Part) -> str | None:
    """The inspection point before painting whose words limit the salt on the part."""
    for point in part.job.inspection:
        looked_at = point.at is Stage.PREPARED and (not point.items or part.item.id in point.items)
        if looked_at and SALT.search(words_of(point)) and salt_said(point.criterion.text or "") is not None:
            return point.id
    return None


def _most(use: str) -> Quantity:
    row = _LIMITS.row("use", use)
    return Quantity.of("surface_density", Fraction(row["most"]), row["unit"], row["most"])


def _reason(part: Part) -> str:
    if not part.is_bare_steel:
        return ""
    if part.substrate.salt_exposure:
        return "has been exposed to salt"
    environment = environment_of(part.job, part.item)
    grade, category = part.substrate.rust_grade, environment.category if environment is not None else None
    if (grade == _PITTED and not _mild(part, environment)) or (grade == _SHALLOW and category in _HARSH):
        return f"is pitted (rust grade {grade})"
    return _wetted(environment)


def _mild(part: Part, environment: Environment | None) -> bool:
    """Indoors, where no category above C2 is stated: hardly any salt comes there, and nobody measures it."""
    if exposure_of(part.job, part.item) is not Exposure.INTERIOR:
        return False
    return environment is None or (
        environment.kind is EnvironmentKind.ATMOSPHERE and environment.category in {None, "C1", "C2"}
    )


def _wetted(environment: Environment | None) -> str:
    if environment is None:
        return ""
    if environment.kind is EnvironmentKind.IMMERSION:
        return "is immersed in service"
    by_the_sea = environment.medium is Medium.SEA_WATER or environment.category in _SEA
    return "is splashed by the sea in service" if environment.kind is EnvironmentKind.SPLASH and by_the_sea else ""


def _unknown(part: Part) -> bool:
    said = part.substrate.salt_exposure is not None or part.substrate.rust_grade is not None
    return part.is_bare_steel and part.material == "steel_rusted" and not said
