"""INS032 A standard cited at an inspection point is on what the point looks at

Checks
    The standards that the inspection and the method of a point cite, against the table subjects_of_standards: at least one is on what the point says it looks at, as ISO 8502-3 is on dust and not on soluble salts; a point on a clean surface and nothing else may cite those on dust, salts and profile. A point whose words name no subject of the table, or that cites no standard of it, is not judged.
Why
    The inspector takes the standard with him: by another he reads another thing, and the record proves nothing.
Passes
    jobs.refit.inspection.salt: {id: salt, check: Soluble salts, at: after-preparation, method: "Patch, ISO 8502-6 and -9", criterion: {text: at most 50 mg/m2}, hold_point: yes, if_failed: Wash again.}

    jobs.refit.inspection.clean: {id: clean, check: Clean surface, at: after-preparation, method: "Tape, ISO 8502-3", criterion: {text: at most 2}, hold_point: yes, if_failed: Blow off again.}

    jobs.refit.inspection.look.method: By eye in raking light
Fails
    jobs.refit.inspection.salt: {id: salt, check: Soluble salts, at: after-preparation, method: ISO 8502-3, criterion: {text: at most 50 mg/m2}, hold_point: yes, if_failed: Wash again.}    # at jobs.refit.inspection.salt.method

    jobs.refit.inspection.salt: {id: salt, check: Soluble salts on the surface, at: after-preparation, method: ISO 8502-3, criterion: {text: at most 50 mg/m2}, hold_point: yes, if_failed: Wash again.}    # at jobs.refit.inspection.salt.method

    jobs.refit.inspection.primer-film.method: Magnetic gauge by ISO 4624    # at jobs.refit.inspection.primer-film.method
To put right
    Cite the standard of the test that is meant, or write the point for the standard that is cited.
"""

import re

from specgen.model.acceptance import InspectionPoint
from specgen.rules.kit import WARNING, Job, Problem, Problems, Row, Spec, date, rule, table

_CITED = re.compile(r"\b(?:ISO|ASTM|SSPC|NACE|AMPP)\b", re.I)
_TABLE = table("subjects_of_standards")


@rule("INS032", on=Job, severity=WARNING, source=_TABLE.citation)
def standard_of_the_subject(job: Job, spec: Spec, on: date) -> Problems:
    for point in job.inspection:
        cited = f"{point.check} {point.method or ''}"
        if not _CITED.search(cited):
            continue
        named = {row["id"]: found[0] for row in _TABLE.rows if (found := re.search(row["standards"], cited, re.I))}
        meant = _looks_at(point)
        accepted = {row["id"] for row in meant} | (set(meant[0]["covers"].split()) if len(meant) == 1 else set())
        if named and meant and not named.keys() & accepted:
            first = next(iter(named))
            what = f"{point.id} looks at {meant[0]['subject']} and cites {named[first]}, which is on {_TABLE.row('id', first)['subject']}"
            yield Problem(("inspection", point.id, "method" if point.method else "check"), what)


def _looks_at(point: InspectionPoint) -> list[Row]:
    """The subjects its check names, else its method."""
    for text in (point.check, point.method or ""):
        found = [row for row in _TABLE.rows if re.search(rf"(?<!\w)(?:{row['words']})", text, re.I)]
        if found:
            return found
    return []
