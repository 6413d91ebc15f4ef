"""TST015 No years of life are claimed from a laboratory test

Checks
    The description and the claims of a product: a sentence that names a laboratory test or ISO 12944-6 names no years of life or protection.
Why
    The standard calls its tests an aid to selection: their hours do not turn into years, and the customer who counts them is owed what was never shown.
Passes
    products.barrier.about: "Tested to ISO 12944-6: 720 h of salt spray, creep from the scribe 1 mm or less. Kept in stock for two years."
Fails
    products.barrier.about: "Protects for 25 years, as tested by 1440 h of salt spray without rust."    # at products.barrier.about
To put right
    Claim category and durability of ISO 12944 with the test that shows them, and leave the years out.
"""

import re

from specgen.facts.tests.in_words import sentences
from specgen.facts.tests.spoken import spoken
from specgen.facts.tests.standards import methods_in
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, cite, date, rule

_YEARS = re.compile(r"\b(?:\d+|ten|fifteen|twenty|thirty)(?: ?(?:to|-|–) ?\d+)?[ -]years?\b", re.IGNORECASE)
_LIFE = re.compile(r"protect|last|life|durab|service|hold|corrosion", re.IGNORECASE)
_LABORATORY = frozenset(
    {
        "nss",
        "fluor_uv",
        "xenon_iso",
        "xenon_sae",
        "cyclic_12944",
        "j2334",
        "gmw14872",
        "vda621",
        "vda233",
        "humidity_6270_2",
    }
)
_PERFORMANCE = re.compile(r"ISO 12944-(?:6|9)")


@rule("TST015", on=Product, severity=WARNING, source=cite("ISO-12944-6", "scope"))
def no_years_from_a_test(product: Product, spec: Spec, on: date) -> Problems:
    for place in spoken(product, spec):
        for sentence in sentences(place.text) if place.claimed else ():
            years = _YEARS.search(sentence)
            tested = _LABORATORY & set(methods_in(sentence)) or _PERFORMANCE.search(sentence)
            if years is not None and _LIFE.search(sentence) and tested:
                yield Problem(place.path, f"{years[0]} of life are claimed from a laboratory test")
