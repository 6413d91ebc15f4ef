"""TST013 A cross-cut is asked on films it is meant for

Checks
    The film that each cross-cut is asked or claimed on, at its least: not above the row of table test_limits for ISO 2409, or for method B of ASTM D3359.
Why
    The blade does not reach the metal in one cut: a sound coat is refused and a poor one passes.
Passes
    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, condition: {film: 200..260 um}, limit: class 0..1, statistic: each}]
Fails
    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ISO 2409, condition: {film: 260..300 um}, limit: class 0..1, statistic: each}]    # at jobs.refit.tests.cut.condition.film

    jobs.refit.tests: [{id: cut, method: cross_cut, standard: ASTM D3359, variant: method B, condition: {film: 130..160 um}, limit: min 4B, statistic: each}]    # at jobs.refit.tests.cut.condition.film
To put right
    Ask for an X-cut (ISO 16276-2, ASTM D3359 method A) or a pull-off.
"""

from specgen.facts.tests.spoken import asked_tests
from specgen.facts.tests.standards import standards_in
from specgen.rules.kit import ERROR, Node, Problem, Problems, Quantity, Range, Spec, cite, date, rule, table

_ROWS = {"ISO 2409": "cross_cut_iso", "ASTM D3359": "cross_cut_astm"}


@rule("TST013", on=Node, severity=ERROR, source=cite("ISO-2409", "scope"))
def cross_cut_film(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        film = asked.test.condition.film if asked.test.condition is not None else None
        least = film.low if isinstance(film, Range) else film
        if asked.test.method != "cross_cut" or least is None:
            continue
        for named in standards_in(asked.test.standard or ""):
            if named.standard in _ROWS:
                row = table("test_limits").row("id", _ROWS[named.standard])
                most = Quantity.of("thickness", int(row["value"]), row["unit"])
                if least > most:
                    what = f"a cross-cut to {named.standard} is asked on a film from {least}; it is meant for at most {most}"
                    yield Problem(
                        (*asked.path, "condition", "film"), what, source=table("test_limits").row_citation(row)
                    )
