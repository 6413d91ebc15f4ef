"""INS025 A test of the finished coat accepts only what holds in service

Checks
    The acceptance criterion in words of each point that tests adhesion or looks for pores, and the scope of the job where it names the test: a cross-cut of class 3 or worse of ISO 2409, a pull-off below 1.5 MPa, a solvent rub of ASTM D4752 of rating 3 or worse, or pores accepted in a test for pores. The field of the cross-cut has a rule of its own. Words that reject the class are accepted.
Why
    A criterion that weak passes a coat that is already coming off.
Passes
    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409", criterion: {text: Class 0 or 1.}}

    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409", criterion: {text: "Class 2 or better; class 3 and worse is rejected."}}

    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Pull-off, ISO 4624", criterion: {text: "At least 5 MPa, no break at the steel."}}

    jobs.refit.inspection.cure: {id: cure, check: Cure, at: completion, method: "MEK rub, ASTM D4752", criterion: {text: Rating 4 or better.}}

    jobs.refit.inspection.pores: {id: pores, check: Pores, at: completion, method: "High voltage, ISO 29601", criterion: {text: No pore.}}
Fails
    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409", criterion: {text: Class 3 or better.}}    # at jobs.refit.inspection.adhesion.criterion.text

    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409", criterion: {text: Class 0 to 4.}}    # at jobs.refit.inspection.adhesion.criterion.text

    jobs.refit.inspection.adhesion: {id: adhesion, check: Adhesion by pull-off, at: completion, criterion: {text: At least 0.5 MPa.}}    # at jobs.refit.inspection.adhesion.criterion.text

    jobs.refit.inspection.cure: {id: cure, check: Cure, at: completion, method: "MEK rub, ASTM D4752", criterion: {text: Rating 1 or better.}}    # at jobs.refit.inspection.cure.criterion.text

    jobs.refit.inspection.pores: {id: pores, check: Holiday test, at: completion, method: "High voltage, ISO 29601", criterion: {text: At most 5 pores a square metre.}}    # at jobs.refit.inspection.pores.criterion.text
To put right
    Ask for class 0 or 1 (2 after weathering), for the pull-off of the system's own tests, and for no pore in a lining.
"""

import re
from fractions import Fraction

from specgen.facts.job.looked_for import PORES, words_of
from specgen.facts.texts import CLAUSE
from specgen.rules.kit import WARNING, Job, Problem, Problems, Quantity, Spec, date, rule
from specgen.standards.tables import table

_CROSS_CUT = re.compile(r"cross.?(?:cut|hatch)|\b2409\b", re.I)
_PULL_OFF = re.compile(r"pull.?off|\b4624\b|D4541", re.I)
_RUB = re.compile(r"D4752|\bMEK\b|solvent rub", re.I)
_RATING = re.compile(r"\b(?:rating|resistance)s? (?:of )?(?:at least )?([0-5])\b", re.I)
_CLASS = re.compile(r"\bclass(?:es)? ([0-5])(?: ?(?:to|or|and|-|–) ?([0-5]))?", re.I)
_AT_LEAST = re.compile(r"(\d+(?:\.\d+)?) ?(MPa|N/mm2|N/mm²|psi)", re.I)
_PORES_PASS = re.compile(
    r"\b[1-9]\d* (?:pores?|holidays?|pinholes?)\b|(?:pores?|holidays?) (?:are |is )?(?:allowed|accepted)", re.I
)
_REJECTED = re.compile(
    r"reject|not\b|\bno\b|fail|worse than|repeat|below|again|strip|repair|mend|touch|old|existing", re.I
)
_TABLE = table("inspection_in_words")
_MPA = "MPa"


def _limit(row: str) -> Fraction:
    return Fraction(_TABLE.row("id", row)["value"])


@rule("INS025", on=Job, severity=WARNING, source=_TABLE.citation)
def weak_tests_accepted(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        path, method = ("inspection", point.id), f"{point.check} {point.method or ''}"
        for clause in CLAUSE.split(point.criterion.text or ""):
            weak = _weak(clause, words_of(point), method) if not _REJECTED.search(clause) else None
            if weak is not None:
                yield Problem((*path, "criterion", "text"), f"{point.id} accepts {weak}")
    for clause in CLAUSE.split(job.scope):
        weak = _weak(clause, clause, clause) if not _REJECTED.search(clause) else None
        if weak is not None:
            yield Problem(("scope",), f"the scope of {job.id} accepts {weak}")


def _weak(clause: str, said: str, method: str) -> str | None:
    cut, pulled = _CLASS.search(clause), _AT_LEAST.search(clause)
    if (
        cut is not None
        and _CROSS_CUT.search(said)
        and max(int(digit) for digit in cut.groups() if digit) >= _limit("cross_cut")
    ):
        return f"{cut[0].lower()} of the cross-cut"
    if pulled is not None and _PULL_OFF.search(said):
        unit = "psi" if pulled[2].lower() == "psi" else _MPA
        stress = Quantity.of("pressure", Fraction(pulled[1]), unit, pulled[1])
        weakest = Quantity.of("pressure", _limit("pull_off"), _MPA)
        return f"a pull-off of {pulled[0]}" if stress < weakest else None
    rubbed = _RATING.search(clause)
    if rubbed is not None and _RUB.search(said) and int(rubbed[1]) <= _limit("solvent_rub"):
        return f"{rubbed[0].lower()} of the solvent rub"
    found = _PORES_PASS.search(clause)
    return found[0] if found is not None and PORES.search(method) else None
