"""The dangers that stand on the first page beside the signal word: what harms for life at one breath or touch, and fire.

Called by `safety`; the hazard card has every danger, by the same facts.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from specgen.documents.parts.hurts import hurts
from specgen.documents.parts.wording import Words
from specgen.facts.job.chemicals import chemicals, supply_codes
from specgen.facts.product.dangers import Danger, dangers_of
from specgen.model.job import Job
from specgen.model.product import Product

# who stands beside it is hurt by these whatever is sprayed at the time, so that no product is named
_OF_ALL: frozenset[Danger] = frozenset({"explodes", "burns"})
_MAIN: frozenset[Danger] = _OF_ALL | {"poison", "reacts", "isocyanate"}


def main_dangers(products: Sequence[Product], job: Job, words: Words) -> tuple[str, ...]:
    """As sentences, the gravest first, each with what has it where not everything has; of a job that has none of these its gravest."""
    return tuple(_told(products, job, words))


def _told(products: Sequence[Product], job: Job, words: Words) -> Iterator[str]:
    found = dangers_of(products, supply_codes(job))
    each = [(product.name, dangers_of([product])) for product in products]
    each += [(entry.what, dangers_of((), entry.statements)) for entry in chemicals(job)]
    for danger in [one for one in found if one in _MAIN] or list(found)[:1]:
        text = hurts(danger, found[danger], words)
        owners = [name for name, held in each if danger in held]
        whole = danger in _OF_ALL or len(owners) == len(each)
        yield text if whole else f"{', '.join(owners)}: {text}"
