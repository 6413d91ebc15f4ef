"""DOC005 The title of a system agrees with its coats

Checks
    Title and intended use of each system: a dry film they name is the film of a coat, of coats that follow each other or of all, as minimum, nominal or maximum; a kind of paint they name is that of a coat; the number of coats they name is there; a corrosivity or immersion category in the title is the one the system claims. So is a dry film in the evidence for that category. What they say of existing paint, of the metal and of its profile is not read.
Why
    The title is what is ordered, filed and copied. A system that was changed under an old title promises a film, a paint or a category that the painter never lays and that nobody measures.
Passes
    systems.cab.title: Primer, base coat and clear, 130 µm

    systems.cab.title: Three-coat system of epoxy primer, basecoat and clearcoat

    systems.chassis.title: Epoxy over blasted steel with a profile of 25 µm

    systems.chassis.title: One coat of epoxy on old alkyd
Fails
    systems.cab.title: Primer, base coat and clear, 160 µm    # at systems.cab.title

    systems.cab.title: Two-coat system of primer and clearcoat    # at systems.cab.title

    systems.chassis.title: Polyurethane for frames    # at systems.chassis.title

    systems.chassis.use: Frames and axles, 7 mil of dry film    # at systems.chassis.use

    systems.chassis.title: Epoxy for C4    # at systems.chassis.title    # also FLM012 at systems.chassis.category
    systems.chassis.category: {corrosivity: C3, durability: medium}

    systems.chassis.category: {corrosivity: C3, durability: medium, evidence: Tested with 240 µm of this system.}    # at systems.chassis.category.evidence
To put right
    Write into the title what the coats are, or put right the coats.
"""

from specgen.facts.layer.said import categories_said, coats_too_many, films_of, films_said, is_one_of, kinds_missing
from specgen.facts.layer.sums import total_film
from specgen.rules.kit import LOGIC, WARNING, Path, Problem, Problems, Spec, System, date, rule


@rule("DOC005", on=System, severity=WARNING, source=LOGIC)
def title_agrees_with_coats(system: System, spec: Spec, on: date) -> Problems:
    texts: tuple[tuple[Path, str], ...] = ((("title",), system.title), (("use",), system.use or ""))
    for path, text in texts:
        figures = films_said(text)
        films = films_of(system, spec) if figures else []
        for said in figures:
            if films and not is_one_of(said, films):
                total = total_film(system, spec, "nominal")
                beside = f"; the nominal DFT of all coats is {total}" if total is not None else ""
                what = f"{path[-1]} of {system.id} names a DFT of {said}, which is that of no coat and of no sum of coats{beside}"
                yield Problem(path, what)
        for kind in kinds_missing(text, system, spec):
            yield Problem(path, f"{path[-1]} of {system.id} names {kind}; none of its coats is one")
        wrong = coats_too_many(text, system)
        if wrong is not None:
            yield Problem(path, f"{path[-1]} of {system.id} says '{wrong[0]}'; it has {wrong[1]}")
    claim = system.category
    for said in films_said(claim.evidence or "") if claim is not None else ():
        if (films := films_of(system, spec)) and not is_one_of(said, films):
            what = f"the evidence for the category of {system.id} names a DFT of {said}, which is that of no sum of its coats"
            yield Problem(("category", "evidence"), what)
    claimed = [str(one) for one in (claim.corrosivity, claim.immersion) if one is not None] if claim is not None else []
    for named in categories_said(system.title):
        same_kind = [one for one in claimed if one[0] == named[0]]
        if same_kind and named not in same_kind:
            yield Problem(("title",), f"title of {system.id} names {named}; the system claims {same_kind[0]}")
