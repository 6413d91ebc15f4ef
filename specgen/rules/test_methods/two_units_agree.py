"""TST006 Two units of one value in a text say the same

Checks
    Every text that gives a value in one unit and, in brackets or behind a stroke, in another of the same kind, as in 5 MPa (725 psi) or 60 °C / 140 °F: each within half a unit of its last digit, the two can be one amount.
Why
    One of two readers works by the wrong figure, and the paper gives him right.
Passes
    products.barrier.about: "Adheres with 5 MPa (725 psi); dry heat to 120 °C (248 °F); film 80 µm (3 mil)."

    products.barrier.about: "Blast to 50 µm (Sa 2 1/2), 20 °C (50 % RH), 6 mm (1/4 in)."
Fails
    products.barrier.about: "Pull-off 5.0 MPa (500 psi) after 7 days."    # at products.barrier.about

    products.barrier.about: "Dry heat to 120 °C (284 °F)."    # at products.barrier.about

    products.barrier.about: "Reverse impact 5 J / 60 in.lb."    # at products.barrier.about
To put right
    Work one out from the other: 1 MPa is 145.04 psi, °C are (°F - 32) / 1.8, 1 J is 8.85 in.lb.
"""

import re

from specgen.facts.tests.pairs_said import pairs_said
from specgen.facts.texts import texts
from specgen.rules.kit import LOGIC, WARNING, Node, Problem, Problems, Spec, date, rule

_DIGIT = re.compile(r"\d")


@rule("TST006", on=Node, severity=WARNING, source=LOGIC)
def two_units_agree(subject: Node, spec: Spec, on: date) -> Problems:
    for path, text, _ in texts(spec, subject):
        if ("(" in text or "/" in text or "=" in text) and _DIGIT.search(text):
            for first, second in pairs_said(text):
                where = path[:-1] if path[-1].startswith("[") else path
                yield Problem(where, f"{first} and {second} stand for one value and are not equal")
