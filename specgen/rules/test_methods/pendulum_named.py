"""TST016 A pendulum value says which pendulum and in which count

Checks
    A pendulum value in the description or a claim of a product: it names König's or Persoz's pendulum, and seconds or oscillations.
Why
    Glass swings 250 s on the one and 430 s on the other, and König's makes one oscillation in 1.4 s: a bare number is three values.
Passes
    products.barrier.about: "König pendulum 120 s after 7 days."
Fails
    products.barrier.about: "Pendulum hardness 60 swings."    # at products.barrier.about

    products.barrier.about: "König pendulum hardness 90."    # at products.barrier.about
To put right
    Write König or Persoz, and seconds.
"""

import re

from specgen.facts.tests.in_words import KONIG, PERSOZ, said_values, sentences
from specgen.facts.tests.spoken import spoken
from specgen.facts.tests.standards import says
from specgen.rules.kit import WARNING, Problem, Problems, Product, Spec, cite, date, rule

_BARE = re.compile(
    r"\bpendulum(?: damping| hardness| value)?(?: of| is|:)? \d+(?: to \d+)?(?=\s*(?:$|[,;.]))", re.IGNORECASE
)


@rule("TST016", on=Product, severity=WARNING, source=cite("ASTM-D4366"))
def pendulum_named(product: Product, spec: Spec, on: date) -> Problems:
    for place in spoken(product, spec):
        if not place.words_alone:
            continue
        counted = [value for value in said_values(place) if value.method in {KONIG, PERSOZ}]
        named = says(place.text, KONIG) or says(place.text, PERSOZ)
        if counted and not named:
            yield Problem(
                place.path, f"{counted[0].written.strip()} of a pendulum do not say whether it is König's or Persoz's"
            )
        for bare in (_BARE.search(sentence) for sentence in sentences(place.text)):
            if bare is not None:
                yield Problem(place.path, f"'{bare[0]}' does not say whether seconds or oscillations are meant")
