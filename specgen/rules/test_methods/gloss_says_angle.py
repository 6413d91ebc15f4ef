"""TST008 Gloss says at which angle it was measured

Checks
    Each test of gloss, or of gloss retained, that is asked, claimed or reported states its angle; gloss in the description or a claim of a product names one. Above 70 GU at 60 degrees the value at 20 degrees belongs beside it, below 10 GU that at 85 degrees.
Why
    One and the same satin panel reads 35, 70 or 95 GU at 20, 60 or 85 degrees. And at 60 degrees high gloss no longer tells two panels apart, nor does a matt one.
Passes
    products.clear.about: "Gloss 88 to 94 GU at 60 degrees and 80 to 86 GU at 20 degrees."

    products.clear.about: "Gloss at 60 degrees 45 GU; high gloss after two coats."

    jobs.refit.tests: [{id: shine, method: gloss, standard: ISO 2813, details: [{id: angle, value: 60 degrees}], limit: 40..60 GU, statistic: mean}]
Fails
    products.clear.about: "Gloss 45 GU."    # at products.clear.about

    products.clear.about: "Gloss 90 to 96 at 60 degrees."    # note at products.clear.about

    products.clear.about: "Gloss at 60 degrees 4 GU."    # note at products.clear.about

    jobs.refit.tests: [{id: shine, method: gloss, standard: ISO 2813, limit: min 80 GU, statistic: mean}]    # at jobs.refit.tests.shine
To put right
    State the angle, as in details: [{id: angle, value: 20 degrees}], and the angle that tells panels of this gloss apart.
"""

from fractions import Fraction

from specgen.facts.tests.gloss_stated import GLOSS_RETAINED
from specgen.facts.tests.in_words import GLOSS, SaidValue, angles_in, said_values
from specgen.facts.tests.spoken import asked_tests, spoken
from specgen.model.test_report import DoneTest, LabReport
from specgen.model.test_required import AskedTest
from specgen.rules.kit import NOTE, WARNING, Node, Problem, Problems, Spec, cite, date, rule, table

_OF_GLOSS = frozenset({GLOSS, GLOSS_RETAINED})
_SIXTY, _TWENTY, _EIGHTY_FIVE = "60", "20", "85"


@rule("TST008", on=Node, severity=WARNING, source=cite("ISO-2813"))
def gloss_says_angle(subject: Node, spec: Spec, on: date) -> Problems:
    typed: list[tuple[tuple[str, ...], AskedTest | DoneTest]] = [
        (asked.path, asked.test) for asked in asked_tests(subject)
    ]
    if isinstance(subject, LabReport):
        typed += [(("tests", done.id), done) for done in subject.tests]
    for path, test in typed:
        if test.method in _OF_GLOSS and not _angle_stated(test):
            yield Problem(path, "a test of gloss states no angle")
    for place in spoken(subject, spec):
        if not place.words_alone:
            continue
        named = angles_in(place.text)
        for value in said_values(place):
            if value.method != GLOSS:
                continue
            if not named:
                yield Problem(place.path, f"{_told(value)} names no angle")
            for row, other in _beside(value.values[-1].number, value.values[0].number):
                if named == {_SIXTY}:
                    what = f"{_told(value)}, at 60 degrees: {row} the value at {other} degrees tells panels apart"
                    yield Problem(place.path, what, f"Give the value at {other} degrees beside it.", severity=NOTE)


def _told(value: SaidValue) -> str:
    """`gloss of 45 GU`: the words of the text, which may name the gloss themselves."""
    written = value.written.strip()
    return written if written.casefold().startswith(GLOSS) else f"gloss of {written}"


def _angle_stated(test: AskedTest | DoneTest) -> bool:
    said = f"{test.variant or ''} {' '.join(f'{detail.id} {detail.value}' for detail in test.details)}"
    return bool(angles_in(said)) or any(detail.id == "angle" for detail in test.details)


def _beside(most: Fraction, least: Fraction) -> list[tuple[str, str]]:
    high, low = (table("test_limits").row("id", name)["value"] for name in ("gloss_high", "gloss_low"))
    found = [(f"above {high} GU", _TWENTY)] if most > Fraction(high) else []
    return found + ([(f"below {low} GU", _EIGHTY_FIVE)] if least < Fraction(low) else [])
