"""TST017 Drying times in words say temperature and film

Checks
    Drying times in the description or a claim of a product: an air temperature and a film stand beside them.
Why
    A film twice as thick, or air ten degrees colder, doubles the time. The figure without them is read as that of the reader's own shop.
Passes
    products.barrier.about: "Touch-dry after 1 h at 20 degC and 60 um."

    products.barrier.about: "Dries quickly to touch."
Fails
    products.barrier.about: "Dust-dry after 15 to 25 min, touch-dry after 1 h."    # at products.barrier.about
To put right
    State temperature and film, or leave the times to the drying stages of the product, which have both.
"""

import re

from specgen.facts.tests.in_words import said_values
from specgen.facts.tests.spoken import spoken
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, cite, date, rule

_AIR = re.compile(r"\d ?(?:°|deg) ?[CF]\b")
_FILM = re.compile(r"\d ?(?:um|µm|μm|microns?|mils?)\b")


@rule("TST017", on=Product, severity=WARNING, source=cite("ASTM-D5895"))
def drying_says_conditions(product: Product, spec: Spec, on: date) -> Problems:
    for place in spoken(product, spec):
        timed = [value for value in said_values(place) if value.method == "drying"] if place.words_alone else []
        lacking = [name for name, pattern in (("temperature", _AIR), ("film", _FILM)) if not pattern.search(place.text)]
        if timed and lacking:
            yield Problem(
                place.path, f"the drying time of {timed[0].written.strip()} states no {' and no '.join(lacking)}"
            )
