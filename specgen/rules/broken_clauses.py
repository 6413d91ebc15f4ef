"""The finding on a limit of a clause that a job does not meet, alike for what is required and what is advised; how a clause is named in findings."""

from collections.abc import Iterator

from specgen.facts.contract.documents import named
from specgen.facts.contract.held import Held, Value, Verdict
from specgen.facts.contract.trace import Traced, traced
from specgen.facts.offered import in_figures
from specgen.facts.requirement import Asked
from specgen.model.contract_document import Force
from specgen.rules.kit import WARNING, Job, Problem, Quantity, Range, Spec, show, unless_range_rounded, unless_rounded
from specgen.units.count import Count, show_count
from specgen.units.display import show_range
from specgen.units.quantity import CalendarSpan


def of_broken(job: Job, spec: Spec, force: Force) -> Iterator[Problem]:
    for clause in traced(job, spec):
        if clause.verdict is not Verdict.NOT_MET or clause.clause.force is not force:
            continue
        for held in clause.those(Verdict.NOT_MET):
            what = (
                f"{held.what} {said(held.found, held)}; {named_clause(clause)} {_verb(force)} {said(held.asked, held)}"
            )
            weak = WARNING if held.borrowed else None
            yield _rounded(Problem(held.path, what, severity=weak, absolute=True), held)


def named_clause(clause: Traced) -> str:
    """`clause 4.2 of BT-114, edition 3`."""
    return f"clause {clause.clause.number} of {named(clause.document)}"


def _verb(force: Force) -> str:
    return "requires" if force is Force.REQUIRED else "advises"


def asked_of(held: Held) -> str:
    """`Total DFT, minimum 95 µm`: a limit with its value, as a finding says it."""
    return f"{held.what} {said(held.asked, held)}"


def said(value: Value | tuple[Value, ...] | None, held: Held) -> str:
    """A value asked for or found, as a finding says it."""
    match value:
        case tuple():
            return ", ".join(said(one, held) for one in value)
        case Count():
            return show_count(value)
        case Range():
            return show_range(value)
        case Quantity():
            return f"at most {show(value)}" if held.of is Asked.VOC and value is held.asked else show(value)
        case None:
            return "not stated"
        case CalendarSpan():
            return str(value)
    return in_figures(held.of, value) if held.of is not None else str(value)


def _rounded(problem: Problem, held: Held) -> Problem:
    if isinstance(held.asked, Quantity) and isinstance(held.found, Quantity):
        return unless_rounded(problem, held.found, held.asked)
    if isinstance(held.asked, Range) and isinstance(held.found, Range):
        return unless_range_rounded(problem, held.found, held.asked)
    return problem
