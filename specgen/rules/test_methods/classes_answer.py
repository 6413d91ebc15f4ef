"""TST018 Classes of ISO and ASTM beside each other are one result

Checks
    A text that gives a cross-cut by ISO 2409 and by ASTM D3359 side by side, as in class 1 (4B): the two answer each other in the table test_scales_answering.
Why
    The scales run opposite ways, and a slip turns the best class into the worst.
Passes
    jobs.refit.inspection.holds: {id: holds, check: Cross-cut, at: completion, method: "ISO 2409", frequency: one part, criterion: {text: Class 1 (4B) or better.}, if_failed: Ask.}
Fails
    jobs.refit.inspection.holds: {id: holds, check: Cross-cut, at: completion, method: "ISO 2409", frequency: one part, criterion: {text: Class 1 (1B) or better.}, if_failed: Ask.}    # at jobs.refit.inspection.holds.criterion.text
To put right
    Write one of them, or the pair that answers: 0 and 5B, 1 and 4B, 2 and 3B, 3 and 2B, 4 and 1B, 5 and 0B.
"""

import re

from specgen.facts.tests.spoken import spoken
from specgen.rules.kit import WARNING, Node, Problem, Problems, Spec, date, rule, table

_BOTH = re.compile(r"\bclass ([0-5]) ?(?:\(|/ ?|= ?)([0-5]B)\b", re.IGNORECASE)
_ISO = "iso_2409"


@rule("TST018", on=Node, severity=WARNING, source=table("test_scales").row_citation(table("test_scales").rows[0]))
def classes_answer(subject: Node, spec: Spec, on: date) -> Problems:
    rows = [row for row in table("test_scales_answering").rows if row["scale"] == _ISO]
    answers = {(row["code"], row["other_code"]) for row in rows}
    for place in spoken(subject, spec):
        for found in _BOTH.finditer(place.text):
            if (found[1], found[2].upper()) not in answers:
                yield Problem(
                    place.path, f"class {found[1]} of ISO 2409 and {found[2]} of ASTM D3359 are not one result"
                )
