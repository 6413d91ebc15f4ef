"""DOC014 The scope asks for no less than what is typed

Checks
    The scope of each job in words: soluble salts, dust, edges and surface profile against what its preparations limit; a rust grade against those of its substrates; the voltage of a holiday test against those of its inspection points; parts that are said to be blasted, where no preparation has a blasting step; paint that is said to be laid in a booth, or outdoors, where the workplace is stated otherwise. What is said of other work, of existing paint or of another state is not read.
Why
    The scope is read first, and often alone: what it allows is done, whatever the table behind it asks for.
Passes
    preparations.sand-steel.edge_radius: 2 mm
    jobs.refit.scope: Doors and steps; edges are rounded to 2 mm.

    jobs.refit.scope: Doors and steps, coated in the booth; blasted parts of others stay outside.

    Given second good
    jobs.rails.scope: New paint on blasted rails.
Fails
    preparations.sand-steel.edge_radius: 2 mm
    jobs.refit.scope: Doors and steps; edges are rounded to 0.5 mm.    # at jobs.refit.scope

    jobs.refit.scope: Doors and steps, painted outdoors.    # at jobs.refit.scope

    jobs.refit.scope: Doors and steps; all are sprayed in the yard.    # at jobs.refit.scope

    jobs.refit.scope: Doors and steps; all parts are blasted before coating.    # at jobs.refit.scope

    jobs.refit.substrate.rust_grade: A
    jobs.refit.scope: Doors and steps of rust grade D.    # at jobs.refit.scope
To put right
    Write one and the same in both places, or leave it out of the scope.
"""

import re
from collections.abc import Iterator

from specgen.facts.job.in_words import looser, profile_said, quantities_said
from specgen.facts.job.looked_for import PORES, SALT
from specgen.facts.pairs.parts import Part, parts_of
from specgen.facts.texts import CLAUSE
from specgen.model.application import Workplace
from specgen.model.preparation import StepKind
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule
from specgen.units.quantity import Range

_OTHER = re.compile(
    r"\b(?:not|no|never|nothing|old|existing|later|afterwards|other|others|if|where|when|until|unless|instead|without|earlier|"
    r"already|delivered|returned|sent|by the|than|repairs?|damage[ds]?)\b",
    re.I,
)
_RUST_GRADE = re.compile(r"\b(?i:rust grade) ([A-D])\b")
_BLASTED = re.compile(
    r"\b(?:is|are|be) (?:all )?(?:sweep[- ]?|shot[- ]?|grit[- ]?|abrasive[- ]?|sand-?)?blast(?:ed|-cleaned)\b", re.I
)
_BLASTS = {StepKind.BLAST, StepKind.SWEEP}
_LAID = r"\b(?:painted|sprayed|coated|primed|refinished|applied|laid)\b(?! \w+ (?:stand|wait|lie|come|are kept))[^.;]{0,25}?"
_IN_BOOTH = re.compile(rf"{_LAID}\bin (?:the |a |our )?(?:spray |paint )?booth\b", re.I)
_OUT = re.compile(rf"{_LAID}\b(?:outdoors|in the (?:open(?: air)?|yard|street)|out of doors)\b", re.I)
_UNDER_A_ROOF = {Workplace.BOOTH, Workplace.WORKSHOP, Workplace.CONFINED}


@rule("DOC014", on=Job, severity=WARNING, source=LOGIC)
def scope_asks_no_less(job: Job, spec: Spec, on: date) -> Problems:
    parts = list(parts_of(job, spec))
    if not parts:
        return
    for clause in CLAUSE.split(job.scope):
        for what in _less(clause, job, parts):
            yield Problem(("scope",), f"the scope of {job.id} {what}")


def _less(clause: str, job: Job, parts: list[Part]) -> Iterator[str]:
    preparations = list({part.preparation.id: part.preparation for part in parts}.values())
    for said, asked in looser(clause, preparations, of_salt=SALT.search(clause) is not None, of_grade=False):
        yield f"speaks of {said}; {asked}"
    if _OTHER.search(clause):
        return
    yield from _profile(
        clause, [step.profile for one in preparations for step in one.steps if step.profile is not None]
    )
    rust, grades = _RUST_GRADE.search(clause), {part.substrate.rust_grade for part in parts}
    if rust is not None and None not in grades and rust[1] not in grades:
        yield f"speaks of rust grade {rust[1]}; the substrate is stated as {', '.join(sorted(map(str, grades)))}"
    volts, typed = (
        quantities_said(clause, "voltage"),
        [one.voltage for one in job.inspection if one.voltage is not None],
    )
    if len(volts) == 1 and typed and volts[0] not in typed and PORES.search(f"{clause} {_tested(clause)}"):
        yield f"speaks of a test at {volts[0]}; the test voltage stated is {', '.join(map(str, typed))}"
    steps = {step.do for one in preparations for step in one.steps}
    if _BLASTED.search(clause) and steps.isdisjoint(_BLASTS):
        yield f"says '{clause.strip()}'; no preparation of it has a blasting step"
    inside, outside = _IN_BOOTH.search(clause), _OUT.search(clause)
    if inside is not None and job.workplace is Workplace.OUTDOORS:
        yield f"says '{clause.strip()}'; the workplace is stated as outdoors"
    if outside is not None and job.workplace in _UNDER_A_ROOF:
        yield f"says '{clause.strip()}'; the workplace is stated as {job.workplace}"


def _tested(clause: str) -> str:
    """A clause on a test at thousands of volts is one on pores."""
    return "holiday" if re.search(r"\btest\w*\b", clause, re.I) and re.search(r"\bkV\b", clause) else ""


def _profile(clause: str, typed: list[Range]) -> Iterator[str]:
    said = profile_said(clause)
    if said is None or not typed:
        return
    apart = all(
        (said.high is not None and one.low is not None and said.high < one.low)
        or (said.low is not None and one.high is not None and said.low > one.high)
        for one in typed
    )
    if apart:
        yield f"speaks of a profile of {said}; its preparations ask for {', '.join(map(str, typed))}"
