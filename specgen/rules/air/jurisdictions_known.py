"""AIR008 Jurisdictions are named by codes that the tables know

Checks
    The jurisdictions of the project: each is a code, as EU, GB, US, US-CA, DE; a member state stands beside EU, whose law holds there too (US-CA names US itself). One whose exposure limits are not on file is noted.
Why
    What no table knows brings no limit, no duty and no statement: nothing of that law is checked, and nobody is told.
Passes
    project.jurisdictions: [EU, FR]

    project.jurisdictions: [SE, EU]
Fails
    project.jurisdictions: [eu]    # at project.jurisdictions

    project.jurisdictions: [EU, Germany]    # at project.jurisdictions

    project.jurisdictions: [FR]    # warning at project.jurisdictions

    project.jurisdictions: [EU, AU]    # note at project.jurisdictions

    project.jurisdictions: []    # warning at project.jurisdictions
To put right
    Write the code of each jurisdiction whose law holds where the work is done, the law above it included.
"""

import re

from specgen.rules.kit import ERROR, LOGIC, NOTE, WARNING, Problem, Problems, Project, Spec, date, rule
from specgen.trade.exposure import has_own_limits, law_above

_CODE = re.compile(r"[A-Z]{2}(?:-[A-Z]{2,3})?")


@rule("AIR008", on=Project, severity=ERROR, source=LOGIC)
def jurisdictions_known(project: Project, spec: Spec, on: date) -> Problems:
    path = ("jurisdictions",)
    if not project.jurisdictions:
        yield Problem(path, "no jurisdiction is named, so no limit of any law is checked", severity=WARNING)
    for code in project.jurisdictions:
        above = law_above(code)
        if not _CODE.fullmatch(code):
            yield Problem(path, f"{code} is not the code of a jurisdiction, and nothing is checked under it")
        elif above and above not in project.jurisdictions and not code.startswith(f"{above}-"):
            what = f"{code} is named without {above}, whose law holds there too and is not checked"
            yield Problem(path, what, severity=WARNING)
        elif not above and not has_own_limits(code):
            what = f"no exposure limit of {code} is on file, so no air is assessed under its law"
            yield Problem(path, what, severity=NOTE)
