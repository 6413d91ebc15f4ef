"""TST007 A colour difference says by which formula and under which light

Checks
    Each test of colour that is asked, claimed or reported: it states illuminant and observer, and a geometry; a report gives dE*ab or CIEDE2000 as they follow from the L*, a* and b* it states. A colour difference in the description or a claim of a product names the formula, illuminant and observer. A difference below what two instruments differ by is told as a note; after light one that two readings with such instruments may show.
Why
    The same two panels differ by 0.8 under one formula and by 6.6 under another, and match under one lamp alone. A number without these is no result.
Passes
    products.clear.about: "Colour change in service 1.2 dE00 (D65, 10 degrees)."

    jobs.refit.tests: [{id: shade, method: colour, standard: ISO/CIE 11664-6, details: [{id: illuminant, value: D65}, {id: observer, value: 10 degrees}, {id: geometry, value: "45:0"}], limit: max 1 dE00, statistic: mean}]
Fails
    products.clear.about: "Colour change after one year outdoors: 0.7."    # at products.clear.about

    jobs.refit.tests: [{id: shade, method: colour, standard: ISO/CIE 11664-6, details: [{id: illuminant, value: D65}], limit: max 1 dE00, statistic: mean}]    # at jobs.refit.tests.shade

    jobs.refit.tests: [{id: shade, method: colour, standard: ISO/CIE 11664-6, details: [{id: illuminant, value: D65}, {id: observer, value: 10 degrees}, {id: geometry, value: "45:0"}], limit: max 0.4 dE00, statistic: mean}]    # note at jobs.refit.tests.shade.limit

    jobs.refit.tests: [{id: shade, method: colour, standard: ISO/CIE 11664-6, after: {method: fluor_uv, standard: ISO 16474-3, duration: 600 h}, details: [{id: illuminant, value: D65}, {id: observer, value: 10 degrees}, {id: geometry, value: "45:0"}], limit: max 0.7 dE00, statistic: mean}]    # note at jobs.refit.tests.shade.limit

    Given a claim with its report
    reports.lab-12.tests.shade: {id: shade, series: scribed, method: colour, standard: ISO/CIE 11664-6, details: [{id: illuminant, value: D65}, {id: observer, value: 10 degrees}, {id: geometry, value: "45:0"}], results: [{id: P1, value: 2.04 dE00, colour_before: 50 2.6772 -79.7751, colour_after: 50 0 -82.7485}, {id: P2, value: 4.00 dE00, colour_before: 50 2.6772 -79.7751, colour_after: 50 0 -82.7485}]}    # at reports.lab-12.tests.shade.results.P2.value    # also EVD008 at reports.lab-12
To put right
    State formula, illuminant, observer and geometry as the instrument was set, as in dE00, D65, 10 degrees, 45:0.
"""

import re

from specgen.facts.tests.colour_stated import (
    COLOUR_CHANGE,
    after_light,
    followed,
    instruments_differ_by,
    lacking_in,
    lacking_in_words,
)
from specgen.facts.tests.in_words import sentences
from specgen.facts.tests.outcome import limit_of
from specgen.facts.tests.spoken import asked_tests, spoken
from specgen.model.test_report import LabReport
from specgen.model.test_value import Measured
from specgen.rules.kit import NOTE, PRACTICE, WARNING, Node, Path, Problem, Problems, Spec, cite, date, rule, table

_COLOUR = "colour"
_FIGURE = re.compile(r"(?<![\w.])\d(?:\.\d+)?(?! ?(?:h\b|d\b|day|week|cycle|year|coat|can|deg|°))")


@rule("TST007", on=Node, severity=WARNING, source=cite("SHARMA-2005"))
def colour_says_how(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        if asked.test.method == _COLOUR:
            yield from _lacking(asked.path, lacking_in(asked.test.details))
            limit = limit_of(asked.test)
            for value in limit.stated if limit is not None else ():
                if isinstance(value, Measured) and (what := _too_small(value, after_light(asked.test))):
                    yield Problem((*asked.path, "limit"), what, severity=NOTE, source=PRACTICE)
    for place in spoken(subject, spec):
        if place.words_alone:
            for sentence in sentences(place.text):
                if COLOUR_CHANGE.search(sentence) and _FIGURE.search(sentence):
                    yield from _lacking(place.path, lacking_in_words(place.text))
                    break
    if isinstance(subject, LabReport):
        for done in subject.tests:
            if done.method == _COLOUR:
                yield from _lacking(("tests", done.id), lacking_in(done.details))
                for one in done.results:
                    follows = followed(one)
                    if follows is not None:
                        what = f"{one.value} does not follow from the colours stated, which differ by {follows}"
                        yield Problem(("tests", done.id, "results", one.id, "value"), what)


def _lacking(path: Path, lacking: list[str]) -> Problems:
    if lacking:
        yield Problem(
            path,
            f"the colour difference does not state {', '.join(lacking[:-1])}{' and ' if lacking[1:] else ''}{lacking[-1]}",
        )


def _too_small(value: Measured, light: bool) -> str:
    """What is said of a limit that instruments do not tell apart; after light two readings lie an exposure apart."""
    seen, spread = table("test_limits").row("id", "colour_seen")["value"], instruments_differ_by()
    if light and value.number <= spread:
        return (
            f"a colour change of {value} after light lies inside the spread of instruments, {float(spread)}: "
            "it is no claim of resistance to weather"
        )
    if value.number < float(seen):
        return f"a colour difference of {value} is smaller than two instruments differ by, {seen}"
    return ""
