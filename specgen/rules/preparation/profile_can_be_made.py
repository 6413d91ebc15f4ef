"""PRE010 The step can produce the profile it specifies

Checks
    A step that specifies a profile with a grade whose tools produce none, on metal without an existing blast profile.
Why
    Hand tools, power tools to SP 3 and water remove contamination but produce no peaks: the profile exists only on paper, and the primer has no key.
Passes
    preparations.sand-steel.steps.sand: {id: sand, do: power-tool, text: Grind to bare metal., grade: SP 11, profile: 15..20 um, profile_method: ASTM D4417-B}
    systems.cab.layers.primer.film.min: 45 um
    systems.cab.total: {min: 100 um, nominal: 130 um, max: 180 um}
    jobs.refit.inspection.primer-film.criterion.min: 45 um
Fails
    preparations.sand-steel.steps.sand: {id: sand, do: power-tool, text: Brush., grade: SP 3, profile: 15..20 um, profile_method: ASTM D4417-B}    # at preparations.sand-steel.steps.sand.profile    # also PRE008 at preparations.sand-steel.steps.sand.grade    # also PRE008 at preparations.sand-steel.steps.sand.grade

    Given second good
    preparations.blast.steps.blast: {id: blast, do: power-tool, text: Brush., grade: SP 3, profile: 1..1.5 mil, profile_method: ISO 8503-5}    # at preparations.blast.steps.blast.profile
    jobs.rails.substrate.has_profile: yes    # also PRE008 at preparations.blast.steps.blast.grade    # also PRE009 at preparations.blast.steps.blast.grade
To put right
    Blast, or use power tools to SP 11 or SP 15, which require a profile; or leave the profile out.
"""

from specgen.facts.pairs.parts import grade_notes, prepared_with
from specgen.rules.kit import ERROR, Preparation, Problem, Problems, Spec, cite, date, rule, table


@rule("PRE010", on=Preparation, severity=ERROR, source=cite("SSPC-SP-11", "scope"))
def profile_can_be_made(preparation: Preparation, spec: Spec, on: date) -> Problems:
    makes_none = grade_notes("makes no profile")
    for part in prepared_with(preparation, spec):
        for step in preparation.steps if part.kind == "metal" and part.substrate.has_profile is not True else ():
            if step.profile is not None and step.grade in makes_none:
                source = table("preparation_grade_notes").row_citation(makes_none[step.grade])
                what = f"a profile of {step.profile} is specified, but {step.grade} produces none"
                yield Problem(("steps", step.id, "profile"), what, source=source)
