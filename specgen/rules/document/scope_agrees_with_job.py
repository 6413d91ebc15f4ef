"""DOC006 The scope of a job agrees with what is typed in it

Checks
    The scope of each job in words: a dry film it names is one of its coats, systems, criteria or existing coats, and that at which a coat is laid that it calls is one of that coat; a preparation grade is one of its preparations; a corrosivity or immersion category is that of its environments or systems, and a durability that of a system; an application method is used by a coat; a number of coats that is said of the whole is that of a system; paint that is said to be of one pack or of two, waterborne or free of solvent, or to be epoxy, alkyd, polyurethane, acrylic, powder or zinc-rich is a coat of a system. What is said of other work, of existing paint, of what is fitted later and of another state is not read.
Why
    The scope is read first, and often alone: where it was copied from the last job it orders another blast or another film than the pages behind it.
Passes
    jobs.refit.scope: Doors and step of a vehicle, sanded and coated with 130 µm.

    jobs.refit.scope: Doors and step, three coats of paint. Edges are brushed, welds are brushed, the paint is one-pack.

    Given second good
    jobs.rails.scope: Rails, four coats, two coats of mastic primer in the works; old one-pack paint stays.

    Given second good
    jobs.rails.scope: Rails of steel, blasted to SP 10 and coated.

    jobs.refit.scope: Doors and step; the guards at 190 µm are fitted later.

    jobs.refit.scope: Doors and step. Where zinc is burnt, the place is ground, primed with zinc-rich epoxy to 100 µm and coated.

    jobs.refit.scope: Doors and step. Rust that sanding cannot reach is taken off with power tools to St 3.

    systems.cab.layers.clear.role: clearcoat
    jobs.refit.scope: Doors and step; the clear coat is laid at 50 µm.
Fails
    jobs.refit.scope: Doors and step; the clear coat is laid at 20 µm.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step of a vehicle, coated with 190 µm.    # at jobs.refit.scope

    Given second good
    jobs.rails.scope: Rails, blasted to SP 5 and coated.    # at jobs.rails.scope

    jobs.refit.scope: Doors and step, coated with alkyd enamel.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, coated by roller.    # at jobs.refit.scope
    systems.chassis.layers.barrier.method: brush

    Given second good
    jobs.rails.scope: Rails, coated with one-pack paint.    # at jobs.rails.scope

    jobs.refit.scope: Doors and step, coated with waterborne paint.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, coated with 0.4 mm of paint.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step, given five coats.    # at jobs.refit.scope

    jobs.refit.scope: Doors and step; all coats are rolled.    # at jobs.refit.scope
    systems.chassis.layers.barrier.method: brush

    systems.cab.category: {corrosivity: C2, durability: medium}    # also FLM012 at systems.cab.category
    systems.chassis.category: {corrosivity: C2, durability: medium}    # also FLM012 at systems.chassis.category
    jobs.refit.scope: Doors and step, low durability.    # at jobs.refit.scope
    jobs.refit.exposure: interior    # also INS021 at jobs.refit.inspection
To put right
    Write into the scope what the job is, or put right the job.
"""

import re
from collections.abc import Iterator

from specgen.facts.job.exposure import environment_of
from specgen.facts.job.films_of_called import films_of_called_apart
from specgen.facts.job.in_words import grades_said, same_grade
from specgen.facts.job.practices import SENTENCE
from specgen.facts.layer.said import (
    carriers_missing,
    categories_said,
    coats_too_many,
    films_of,
    films_said,
    is_one_of,
    kinds_missing,
    packs_missing,
)
from specgen.facts.pairs.parts import parts_of
from specgen.facts.texts import CLAUSE
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Quantity, Spec, date, rule

# what is done in a case that may not come about, whatever commas stand in the sentence
_IN_A_CASE = re.compile(r"\W*(?:where|if|when|should)\b", re.IGNORECASE)
_OTHER = re.compile(
    r"\b(?:not|no|cannot|old|existing|later|afterwards|fitted|fit|delivered|attached|hung|hinges?|bolts?|beside|remains?|stays?|excluded|without|before|instead|damage[ds]?|repaired)\b",
    re.IGNORECASE,
)
_METHOD = re.compile(
    r"\bby (brush|roller|airless|dip|dipping)\b|\bfrom (?:the |spray )?(?:aerosol )?(cans?)\b|"
    r"(?<!stripe )\b(?:coats?|layers?|paint|primer|finish|enamel|lining|mastic|epoxy|polyurethane|varnish|lacquer|surfacer) (?:is|are) (?:all )?(rolled|brushed|dipped)\b",
    re.IGNORECASE,
)
_OF_SOME = re.compile(
    r"\b(?:prim\w+|finish\w*|top\w*|clear\w*|base\w*|intermediate|surfacer|fill\w+|mastic|epoxy|alkyd|polyurethane|zinc|acrylic|"
    r"silicone|MIO|gloss|stripe|each|per|more|extra|further|first|last|shop|works|site|yard|inside|faces?|edges|between|under|over|"
    r"cross|coats? of \d.*)\b",
    re.IGNORECASE,
)
_COATED = re.compile(
    r"\b(?:coated|painted|primed|finished|given|sprayed|lined)\b(?! (?:over|on)\b)[^.;]*?\b(?:with|in|by)\b(.*)|\b(powder[ -]coated (?:in|by|at)|(?:are|is|be) powder[ -]coated)\b",
    re.I,
)
_IS_A = re.compile(
    r"\bthe (?:primer|finish|lining|(?:top|mid)[ -]?coat|intermediate(?: coat)?|paint) is (?:an? |of )?(?:[\w-]+ ){0,2}?"
    r"((?:epoxy|alkyd|polyurethane|powder|silicone|acrylic)\b.*)",
    re.IGNORECASE,
)
_THE_ZINC = re.compile(r"\bzinc (?:is|has|of|stays|remains|reads|measures|must|shall)\b", re.IGNORECASE)
_DURABILITY = re.compile(
    r"\bdurability(?: range| class)?(?: of)? (low|medium|high|very high)\b|(?<!very )\b(low|medium|high|very high) durability\b",
    re.I,
)
_METHODS = {
    "dipping": "dip",
    "dipped": "dip",
    "rolled": "roller",
    "brushed": "brush",
    "can": "aerosol",
    "cans": "aerosol",
}


@rule("DOC006", on=Job, severity=WARNING, source=LOGIC)
def scope_agrees_with_job(job: Job, spec: Spec, on: date) -> Problems:
    parts = list(parts_of(job, spec))
    if not parts:
        return
    for what in _parted(job, spec):
        yield Problem(("scope",), f"the scope of {job.id} {what}")


def _parted(job: Job, spec: Spec) -> Iterator[str]:
    parts = list(parts_of(job, spec))
    sentences = [one for one in SENTENCE.split(job.scope) if not _IN_A_CASE.match(one)]
    clauses = [one for said in sentences for one in CLAUSE.split(said) if not _OTHER.search(one)]
    own = "; ".join(clauses)
    dipped = any(part.is_zinc for part in parts)
    figures = films_said("; ".join(one for one in clauses if not (dipped and _THE_ZINC.search(one))))
    films = _films(job, spec) if figures else []
    for said in figures:
        if films and not is_one_of(said, films):
            yield f"names a DFT of {said}, which is that of no coat, system or criterion of it"
    preparations = {part.preparation.id: part.preparation for part in parts}
    grades = [step.grade for one in preparations.values() for step in one.steps if step.grade is not None]
    for named in grades_said(own):
        if grades and not any(same_grade(named, grade) for grade in grades):
            yield f"names the grade {named}; its preparations ask for {', '.join(dict.fromkeys(grades))}"
    typed = _categories(job, spec)
    for said_category in categories_said(own):
        same_kind = [one for one in typed if one[0] == said_category[0]]
        if same_kind and said_category not in same_kind:
            yield f"names {said_category}; the job states {', '.join(dict.fromkeys(same_kind))}"
    claims = [part.system.category for part in parts]
    durabilities = [str(claim.durability) for claim in claims if claim is not None]
    for match in _DURABILITY.finditer(own):
        named = (match[1] or match[2]).lower().replace(" ", "-")
        if durabilities and len(durabilities) == len(claims) and named not in durabilities:
            yield f"names the durability {named.replace('-', ' ')}; its systems claim {', '.join(dict.fromkeys(durabilities))}"
    methods = {str(layer.method) for part in parts for layer in part.system.layers if layer.method is not None}
    systems = list({part.system.id: part.system for part in parts}.values())
    for clause in clauses:
        coated = _COATED.search(clause)
        is_a = _IS_A.search(clause)
        kind_said = (coated[1] or coated[2]) if coated is not None else is_a[1] if is_a is not None else ""
        missing = [kinds_missing(kind_said, system, spec) for system in systems] if kind_said else []
        for kind in missing[0] if missing else []:
            if all(kind in each for each in missing):
                yield f"says that {kind} is laid; no coat of its systems is that"
        all_told = _OF_SOME.search(clause) is None
        counted = [coats_too_many(clause, one, all_told=all_told) for one in systems]
        wrong = [one for one in counted if one is not None]
        if wrong and len(wrong) == len(counted):
            yield f"says '{wrong[0][0]}'; it has {', '.join(str(count) for _, count in wrong)}"
        own_films = [(system, layer) for system in systems for layer in system.layers]
        if all(is_one_of(one, films) for one in films_said(clause)):
            yield from films_of_called_apart(clause, own_films, spec)
        packs = packs_missing(clause, spec, systems)
        carrier = carriers_missing(clause, spec, systems)
        for words in (packs, carrier):
            if words is not None:
                yield f"says '{words}'; no coat of its systems is that"
    for match in _METHOD.finditer(own):
        word = next(said for said in match.groups() if said).lower()
        if methods and _METHODS.get(word, word) not in methods:
            yield f"says '{match[0]}'; its coats are laid by {', '.join(sorted(methods))}"


def _films(job: Job, spec: Spec) -> list[Quantity]:
    """Every film that is stated anywhere in the job."""
    found = [
        film
        for system in {part.system.id: part.system for part in parts_of(job, spec)}.values()
        for film in films_of(system, spec)
    ]
    for point in job.inspection:
        found += [one for one in (point.criterion.min, point.criterion.nominal, point.criterion.max) if one is not None]
    for item in job.items:
        found += [coat.thickness for coat in item.old_coats if coat.thickness is not None]
        found += [item.strip_limit] if item.strip_limit is not None else []
    return found


def _categories(job: Job, spec: Spec) -> list[str]:
    found = []
    for part in parts_of(job, spec):
        held, claim = environment_of(job, part.item), part.system.category
        found += [str(held.category)] if held is not None and held.category is not None else []
        found += (
            [str(one) for one in (claim.corrosivity, claim.immersion) if one is not None] if claim is not None else []
        )
    return found
