"""EVD006 The file of a report is the one that was received

Checks
    Each file of each report: its SHA-256 is the one stated. A file of which none is stated is told as a note, with the SHA-256 to state.
Why
    A report that was saved anew, corrected or replaced is another report; whoever relies on it has to know.
Passes
    Given a claim with its report
    reports.lab-12.files: [{id: report, file: sketch.svg, sha256: "9420310722eca29d54c92f3095b46660597ff1470f134cced47f6ed07803a5cb"}]
Fails
    Given a claim with its report
    reports.lab-12.files: [{id: report, file: sketch.svg, sha256: "0000000000000000000000000000000000000000000000000000000000000000"}]    # at reports.lab-12.files.report.sha256

    Given a claim with its report
    reports.lab-12.files: [{id: report, file: sketch.svg}]    # note at reports.lab-12.files.report.sha256
To put right
    Put the file back as it was received; where a new edition of the report was received, state its number, dates and SHA-256.
"""

from specgen.model.kept import name_and_digest
from specgen.model.test_report import LabReport
from specgen.rules.kit import ERROR, LOGIC, NOTE, Problem, Problems, Spec, date, rule


@rule("EVD006", on=LabReport, severity=ERROR, source=LOGIC)
def files_unchanged(report: LabReport, spec: Spec, on: date) -> Problems:
    for file in report.files:
        name, digest = name_and_digest(file.file)
        if not digest:
            continue  # that it cannot be read is told already
        at = ("files", file.id, "sha256")
        if file.sha256 is None:
            what = f"no SHA-256 is stated of {name}, a file of the report {report.id}"
            yield Problem(at, what, f"state sha256: {digest}", severity=NOTE)
        elif file.sha256 != digest:
            yield Problem(
                at, f"{name}, a file of the report {report.id}, has the SHA-256 {digest}; {file.sha256} is stated"
            )
