"""TST001 A standard that is cited has not been replaced

Checks
    Every text of the sources that cites a standard or class as one that holds: the table test_successors names no successor of it. What is said of the past (`was ISO 7253`, `replaces DIN 50021`) passes, and so do title blocks and what a part was painted with before.
Why
    A laboratory tests by the standard in force and an inspector buys that one. A withdrawn number leaves open which of the two is meant, and with it the cycle, the solution or the category.
Passes
    jobs.refit.inspection.gloss: {id: gloss, check: Corrosion test of a panel, at: completion, method: "ISO 9227 (was ISO 7253)", frequency: One panel, criterion: {text: No rust.}, if_failed: Ask.}

    products.barrier.about: Epoxy for steel outdoors, C5 to ISO 12944-2:2018.
Fails
    products.barrier.about: Epoxy for steel outdoors, C5-M.    # at products.barrier.about

    jobs.refit.inspection.holds: {id: holds, check: Cyclic test of a panel, at: completion, method: ISO 20340, frequency: One panel, criterion: {text: Creep from the scribe 3 mm at most.}, if_failed: Ask.}    # at jobs.refit.inspection.holds.method

    jobs.refit.inspection.holds: {id: holds, check: Corrosion test of a panel, at: completion, method: ISO 7253, frequency: One panel, criterion: {text: No rust.}, if_failed: Ask.}    # note at jobs.refit.inspection.holds.method
To put right
    Cite the standard that is in force. Where an older report is meant, say so: tested to ISO 20340, replaced by ISO 12944-9.
"""

from specgen.facts.tests.cited import cited
from specgen.facts.tests.standards import aged
from specgen.rules.kit import NOTE, WARNING, Basis, Node, Problem, Problems, Spec, date, rule, table


@rule("TST001", on=Node, severity=WARNING, source=table("test_successors").citation)
def standard_in_force(subject: Node, spec: Spec, on: date) -> Problems:
    for path, named in cited(spec, subject):
        old = aged(named)
        if old is not None and old.replaced:
            weight = NOTE if old.source.basis is Basis.MEMORY else WARNING
            yield Problem(
                path,
                f"{named.standard} was replaced by {old.now}",
                f"Cite {old.now}.",
                severity=weight,
                source=old.source,
            )
