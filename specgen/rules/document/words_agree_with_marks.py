"""DOC013 What words order for a coat is not typed as left out

Checks
    The instructions in words of each job, and what is done between its coats: amine blush is not washed off a coat by a sentence beside it where the coat states that it is not (blush_wash: no); no mist coat or tie coat is laid in words where the coat states that there is none, nor left out in words where it states one; no stripe coat is spoken of in the scope where no coat of the job has one; and the scope does not have coated what an item states as masked. What a sentence denies, or orders under a condition, is not read.
Why
    Pages, job cards and amounts follow what is typed: the step that stands in a sentence alone is on no list, and nobody signs for it.
Passes
    systems.cab.layers.primer.before_next: Wash amine blush off with warm water and detergent.

    systems.cab.layers.primer.blush_wash: no
    systems.cab.layers.primer.before_next: Test for blush; wash where it is found.

    systems.cab.layers.primer.stripe_coat: {when: before, where: edges and welds}
    jobs.refit.scope: Doors and steps, stripe coats on edges and welds.

    jobs.refit.scope: Doors and steps; stripe coats where edges are sharp.

    jobs.refit.items.DOOR.masked: [{id: hinges, what: hinge bores, area: 0.01 m2}]
    jobs.refit.scope: Doors and steps; hinge bores are masked before the first coat.
Fails
    jobs.refit.items.DOOR.masked: [{id: hinges, what: hinge bores, area: 0.01 m2}]
    jobs.refit.scope: Doors and steps; hinge bores get the finish as well.    # at jobs.refit.scope

    systems.cab.layers.primer.blush_wash: no    # at systems.cab.layers.primer.blush_wash
    systems.cab.layers.primer.before_next: Wash amine blush off with warm water and detergent.

    systems.cab.layers.base.mist_coat: no    # at systems.cab.layers.base.mist_coat
    systems.cab.layers.primer.before_next: A mist coat first, then the full coat.

    systems.cab.layers.base.mist_coat: yes
    jobs.refit.scope: Doors and steps, laid without a mist coat.    # at jobs.refit.scope

    jobs.refit.scope: Doors and steps, stripe coats on edges and welds.    # at jobs.refit.scope
To put right
    Type the step where the words order it, or take it out of the words.
"""

import re
from collections.abc import Iterator
from itertools import pairwise

from specgen.facts.texts import CLAUSE
from specgen.rules.kit import LOGIC, WARNING, Job, Layer, Path, Problem, Problems, Spec, System, date, rule

_DENIED = re.compile(
    r"\b(?:not|never|no|nothing|none|without|if|where|when|unless|instead|until|old|existing|was|were)\b", re.I
)
_WASHED = re.compile(r"\b(?:wash|rins)\w*", re.I)
_BLUSH = re.compile(r"\bblush|\bamine\b|\bbloom\b", re.I)
_MIST = re.compile(r"\b(?:mist|fog)[- ]coats?\b", re.I)
_TIE = re.compile(r"\btie[- ]coats?\b", re.I)
_STRIPE = re.compile(r"\bstripe[- ]coat\w*|\bare striped\b", re.I)
_COATS_IT = re.compile(
    r"\b(?:get|gets|receive|receives|take|takes|are given|is given) (?:the|all|both|one|two|three|a) (?:[\w-]+ ){0,2}?(?:coats?|finish|primer|paint|film|system|lining)\b|"
    r"\b(?:is|are) (?:also )?(?:coated|painted|primed|sprayed)(?: too| as well| with (?:the|all))",
    re.I,
)
_LEFT_BARE = re.compile(r"\b(?:mask\w*|taped?|bare|plug\w*|except|but|beside|around|round|up to|after|later)\b", re.I)
_NONE = {
    "mist_coat": re.compile(r"\b(?:no|without(?: an?)?) (?:mist|fog)[- ]coats?\b", re.I),
    "tie_coat": re.compile(r"\b(?:no|without(?: an?)?) tie[- ]coats?\b", re.I),
}


@rule("DOC013", on=Job, severity=WARNING, source=LOGIC)
def words_agree_with_marks(job: Job, spec: Spec, on: date) -> Problems:
    systems = list(spec.systems_of(job))
    for system in systems:
        for layer_id, mark, said in _left_out(system):
            path = ("systems", system.id, "layers", layer_id, mark)
            yield Problem(path, f"the words of {system.id} say '{said}'; {layer_id} states {mark}: no", absolute=True)
    for at, text, marks in _texts_on_first_coats(job, systems):
        for mark, pattern in _NONE.items():
            none = pattern.search(text)
            if none is not None and mark in marks:
                yield Problem(at, f"the words of {job.id} say '{none[0]}'; a coat states {mark}: yes", absolute=True)
    for clause in CLAUSE.split(job.scope):
        masked = _masked_and_coated(clause, job)
        if masked:
            yield Problem(("scope",), f"the words of {job.id} say '{clause.strip()}'; {masked} is stated as masked")
    striped = any(layer.stripe_coat is not None for system in systems for layer in system.layers)
    said = _ordered(_STRIPE, job.scope)
    if said and systems and not striped:
        yield Problem(("scope",), f"the words of {job.id} say '{said}'; none of its coats has a stripe coat")


def _masked_and_coated(clause: str, job: Job) -> str:
    """What is typed as masked and a clause coats, in its own words; empty where there is none."""
    coated = _COATS_IT.search(clause)
    if coated is None or _DENIED.search(clause) or _LEFT_BARE.search(clause):
        return ""
    words = set(re.findall(r"[a-z]{4,}", clause[: coated.start()].lower()))
    for mask in (one for item in job.items for one in item.masked):
        named = [set(re.findall(r"[a-z]{4,}", part.lower())) for part in re.split(r",| and ", mask.what)]
        if any(part and part <= words for part in named):
            return mask.what
    return ""


def _texts_on_first_coats(job: Job, systems: list[System]) -> Iterator[tuple[Path, str, set[str]]]:
    """The scope, and what is done before each coat, with the marks that are typed yes of the coats they speak of."""
    yield (
        ("jobs", job.id, "scope"),
        job.scope,
        {mark for one in systems for layer in one.layers for mark in _marks(layer)},
    )
    for system in systems:
        for below, above in pairwise(system.layers):
            path: Path = ("systems", system.id, "layers", below.id, "before_next")
            yield path, below.before_next or "", _marks(above)


def _marks(layer: Layer) -> set[str]:
    return {mark for mark, stated in (("mist_coat", layer.mist_coat), ("tie_coat", layer.tie_coat)) if stated}


def _left_out(system: System) -> Iterator[tuple[str, str, str]]:
    for layer in system.layers:
        text = layer.before_next or ""
        said = _ordered(_WASHED, text)
        if layer.blush_wash is False and said and _BLUSH.search(text):
            yield layer.id, "blush_wash", said
    for below, above in pairwise(system.layers):
        yield from _first_coat_within(below, above)


def _first_coat_within(below: Layer, above: Layer) -> Iterator[tuple[str, str, str]]:
    for mark, pattern, stated in (("mist_coat", _MIST, above.mist_coat), ("tie_coat", _TIE, above.tie_coat)):
        said = _ordered(pattern, below.before_next or "")
        if stated is False and said:
            yield above.id, mark, said


def _ordered(pattern: re.Pattern[str], text: str) -> str:
    """The first clause that orders it, empty where none does."""
    clauses = (clause.strip() for clause in CLAUSE.split(text))
    return next((one for one in clauses if pattern.search(one) and not _DENIED.search(one)), "")
