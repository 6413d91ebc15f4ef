"""TST022 A single dolly pulls on a panel that does not bend

Checks
    Each pull-off to method B of ISO 4624 (one dolly) on panels of plastic, or of metal thinner than the row rigid_steel of table test_limits: reported with the thickness of the panels, or asked of a substrate that is plastic.
Why
    A thin sheet bends under the dolly and the coat is peeled rather than pulled: the value is too low, and says more of the sheet than of the coat.
Passes
    Given a claim with its report
    reports.lab-12.series.scribed.thickness: 6 mm
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ISO 4624, edition: "2023", variant: method B, details: [{id: dolly, value: 20 mm}, {id: tester, value: self-aligning}], results: [{id: P1, value: 7.9 MPa, mode: B 100 %}, {id: P2, value: 8.4 MPa, mode: B 100 %}, {id: P3, value: 7.2 MPa, mode: B 100 %}]}

    Given a claim with its report
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ISO 4624, edition: "2023", variant: method A, details: [{id: dolly, value: 20 mm}, {id: tester, value: self-aligning}], results: [{id: P1, value: 7.9 MPa, mode: B 100 %}, {id: P2, value: 8.4 MPa, mode: B 100 %}, {id: P3, value: 7.2 MPa, mode: B 100 %}]}
Fails
    Given a claim with its report
    reports.lab-12.tests.pull: {id: pull, series: scribed, method: pull_off, standard: ISO 4624, edition: "2023", variant: method B, details: [{id: dolly, value: 20 mm}, {id: tester, value: self-aligning}], results: [{id: P1, value: 7.9 MPa, mode: B 100 %}, {id: P2, value: 8.4 MPa, mode: B 100 %}, {id: P3, value: 7.2 MPa, mode: B 100 %}]}    # at reports.lab-12.tests.pull.variant

    jobs.refit.tests: [{id: pull, method: pull_off, standard: ISO 4624, variant: method B, condition: {substrate: plastic}, limit: min 3 MPa, statistic: each}]    # at jobs.refit.tests.pull.variant
To put right
    Have two dollies glued, one on either side (method A), or a thicker panel coated in the same run.
"""

import re

from specgen.facts.pairs.overcoat import table_row
from specgen.facts.tests.fit import tests_of
from specgen.facts.tests.spoken import asked_tests
from specgen.model.test_report import LabReport
from specgen.rules.kit import WARNING, Node, Path, Problem, Problems, Quantity, Spec, date, rule, table

_PULL_OFF, _METAL, _PLASTIC = "pull_off", "metal", "plastic"
_ONE_DOLLY = re.compile(r"\bmethod B\b|\bsingle|\bone dolly", re.IGNORECASE)
_RIGID = "rigid_steel"


@rule("TST022", on=Node, severity=WARNING, source=table_row("test_limits", _RIGID))
def rigid_panel(subject: Node, spec: Spec, on: date) -> Problems:
    for asked in asked_tests(subject):
        substrate = asked.test.condition.substrate if asked.test.condition is not None else None
        if asked.test.method == _PULL_OFF and substrate is not None:
            yield from _told(asked.path, f"{asked.test.standard} {asked.test.variant}", substrate, None)
    if isinstance(subject, LabReport):
        for tested in tests_of(subject):
            if tested.done.method == _PULL_OFF:
                said = f"{tested.done.standard} {tested.done.variant}"
                yield from _told(("tests", tested.done.id), said, tested.series.substrate, tested.series.thickness)


def _told(path: Path, said: str, substrate: str, thickness: Quantity | None) -> Problems:
    if "ISO 4624" not in said or not _ONE_DOLLY.search(said):
        return
    row = table("materials").row("id", substrate)
    limit = table("test_limits").row("id", _RIGID)
    least = Quantity.of("length", int(limit["value"]), limit["unit"])
    if row["kind"] == _PLASTIC:
        yield Problem((*path, "variant"), f"one dolly pulls on {row['name']}, which bends")
    elif row["kind"] == _METAL and thickness is not None and thickness < least:
        yield Problem((*path, "variant"), f"one dolly pulls on {row['name']} of {thickness}; below {least} it bends")
