"""TST002 An edition that is cited is the one in force

Checks
    Every text of the sources that cites a standard with its edition, where the table test_editions knows a later one. An edition later than the table passes, for it may be newer. What is said of the past passes. An edition that is not verified against the published text gives a note.
Why
    Editions change how many places are tested, which grit is thrown and what counts as a failure; results by two of them are not the same result. An older edition may be agreed, and then the paper has to say that it is meant.
Passes
    jobs.refit.inspection.holds: {id: holds, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409:2020", frequency: one part, criterion: {text: Class 1 or better.}, if_failed: Ask.}

    jobs.refit.inspection.holds: {id: holds, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409", frequency: one part, criterion: {text: Class 1 or better.}, if_failed: Ask.}

    products.barrier.about: Tested for adhesion by ASTM D4541-22.
Fails
    jobs.refit.inspection.holds: {id: holds, check: Adhesion, at: completion, method: "Cross-cut, ISO 2409:2013", frequency: one part, criterion: {text: Class 1 or better.}, if_failed: Ask.}    # at jobs.refit.inspection.holds.method

    products.barrier.about: Tested for adhesion by ASTM D4541-17.    # at products.barrier.about

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, edition: "2016", limit: min 5 MPa, statistic: each}]    # at jobs.refit.tests.pull.standard

    products.barrier.about: "Panels in neutral salt spray, ISO 9227:2017: no rust after 480 h."    # note at products.barrier.about
To put right
    Cite the edition in force, or the standard without an edition where the one in force on the day of the test is meant. Where the older edition is agreed, accept the finding with a waiver that says so.
"""

from specgen.facts.tests.cited import cited
from specgen.facts.tests.standards import aged
from specgen.rules.kit import NOTE, WARNING, Basis, Node, Problem, Problems, Spec, date, rule, table


@rule("TST002", on=Node, severity=WARNING, source=table("test_editions").citation)
def edition_in_force(subject: Node, spec: Spec, on: date) -> Problems:
    for path, named in cited(spec, subject):
        old = aged(named)
        if old is not None and not old.replaced:
            weight = NOTE if old.source.basis is Basis.MEMORY else WARNING
            what = f"{named.written} is an earlier edition; the table knows {old.now}"
            yield Problem(path, what, severity=weight, source=old.source)
