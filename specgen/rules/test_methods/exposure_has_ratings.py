"""TST009 Hours of exposure say what was found after them

Checks
    Hours or cycles of salt spray, condensation or cyclic corrosion in the description or a claim of a product: beside them stands what was found, as creep, blisters, rust, adhesion or a rating. A text that names several different hours of one exposure is no comparison.
Why
    Hours are no result: every panel survives any hours until somebody looks at it. And after unequal hours two coatings cannot be compared.
Passes
    products.barrier.about: "After 480 h of salt spray, creep from the scribe 1.5 mm or less."

    products.barrier.about: "Salt spray 240 h, humidity cabinet 120 h: no blisters, Ri 0."
Fails
    products.barrier.about: "1000 h neutral salt spray."    # at products.barrier.about

    products.barrier.about: "Salt spray: 1000 h without rust; a one-pack primer 160 h of salt spray, another 80 h of salt spray."    # at products.barrier.about
To put right
    State the ratings after the exposure, and for a comparison both coatings after the same hours in one run: ISO 4628 blisters, rust and creep from the scribe.
"""

import re
from collections import defaultdict

from specgen.facts.tests.in_words import said_values
from specgen.facts.tests.spoken import spoken
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, cite, date, rule

_EXPOSURES = frozenset(
    {"nss", "cyclic_12944", "j2334", "gmw14872", "vda621", "vda233", "humidity_6270_1", "humidity_6270_2"}
)
_FOUND = re.compile(
    r"creep|undercut|delamin|blister|\brust|corro(?:sion|ded)|\bRi ?\d|adhe(?:sion|res)|peel|flak|crack|class|grade|rating|\bS0\b|loss|change|unchanged|intact|soften",
    re.IGNORECASE,
)


@rule("TST009", on=Product, severity=WARNING, source=cite("A-A-52474", "2.6"))
def exposure_has_ratings(product: Product, spec: Spec, on: date) -> Problems:
    for place in spoken(product, spec):
        hours: dict[str, list[str]] = defaultdict(list)
        for value in said_values(place) if place.words_alone else ():
            if value.method in _EXPOSURES:
                hours[value.method].append(value.written.strip())
        if hours and not _FOUND.search(place.text):
            told = next(iter(hours.values()))[0]
            yield Problem(place.path, f"{told} of exposure are stated without what was found after them")
        for written in hours.values():
            if len(set(written)) > 1:
                told = f"{', '.join(written[:-1])} and {written[-1]}"
                yield Problem(
                    place.path, f"{told} of one exposure stand beside each other: unequal hours are no comparison"
                )
