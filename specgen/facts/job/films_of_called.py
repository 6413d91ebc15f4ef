"""The film at which a sentence lays a coat that it calls by its place or its zinc, held against that coat. Called by the rule on scopes.

What is said of the film that all coats make, of a comb or of another state is not read.
"""

from __future__ import annotations

import re
from collections.abc import Iterator

from specgen.facts.job.coats_in_words import Coat, called
from specgen.facts.layer.film import film_limit
from specgen.facts.layer.said import films_said
from specgen.facts.pairs.families import ZINC_RICH
from specgen.model.spec import Spec
from specgen.units.quantity import Range

_LAID = re.compile(
    r"\b(?:laid|applied|sprayed|put on|built up|brushed|rolled)\b(?: \w+){0,2}? (?:at|to|with|in)"
    r"(?: an?| about)?(?: DFT| dry film| film)?(?: of)?(?: about| at least| at most)? (?=\d)|"
    r"\b(?:laid|applied|sprayed|is) (?=\d[\d.]* ?(?:mils?|µm|um|microns?) thick\b)",
    re.I,
)
_OTHER = re.compile(
    r"\b(?:total|all|whole|together|altogether|wet|comb|existing|old|not|never|no|over|on|each|cross|pass(?:es)?|more|again|stripe|spots?|where|if)\b",
    re.I,
)
_ZINC = re.compile(r"\bzinc(?:[ -](?:rich\w*|primer|epoxy|silicate|dust|paint|coat))?\b", re.I)


def films_of_called_apart(clause: str, coats: list[Coat], spec: Spec) -> Iterator[str]:
    """What a clause says, where no coat that it calls may have that film."""
    if _LAID.search(clause) is None or _OTHER.search(clause):
        return
    said = films_said(_ZINC.sub("coat", clause))
    own = called(clause, coats)
    if len(own) == len(coats):
        own = [one for one in coats if spec.product_of(one[1]).binder in ZINC_RICH] if _ZINC.search(clause) else []
    ranges = [_range(one, spec) for one in own]
    if len(said) != 1 or not ranges or any(one is None or one.holds(said[0]) for one in ranges):
        return
    yield f"says '{clause.strip()}'; that coat is laid at a DFT of {ranges[0]}"


def _range(coat: Coat, spec: Spec) -> Range | None:
    least, most = (film_limit(*coat, spec, limit) for limit in ("min", "max"))
    if least is None and most is None:
        return None
    return Range("thickness", least.value if least is not None else None, most.value if most is not None else None)
