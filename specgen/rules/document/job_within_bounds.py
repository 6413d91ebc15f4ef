"""DOC008 The cards of a job fit into one file

Checks
    The coats of all systems of a job, counted for each vehicle it names, come to at most 200.
Why
    The job card has a sheet for each vehicle and system with a line for each coat and a box for each reading. Far more of them than this cannot be laid out as one document: the cards come in several files, and who prints one alone has not all of them.
Passes
    jobs.refit.vehicles: [V1, V2, V3, V4, V5, V6, V7, V8, V9, V10, V11, V12, V13, V14, V15, V16, V17, V18, V19, V20, V21, V22, V23, V24, V25, V26, V27, V28, V29, V30, V31, V32, V33, V34, V35, V36, V37, V38, V39, V40, V41, V42, V43, V44, V45, V46, V47, V48, V49, V50]

    jobs.refit.vehicles: []
Fails
    jobs.refit.vehicles: [V1, V2, V3, V4, V5, V6, V7, V8, V9, V10, V11, V12, V13, V14, V15, V16, V17, V18, V19, V20, V21, V22, V23, V24, V25, V26, V27, V28, V29, V30, V31, V32, V33, V34, V35, V36, V37, V38, V39, V40, V41, V42, V43, V44, V45, V46, V47, V48, V49, V50, V51]    # note at jobs.refit.vehicles
To put right
    Print every file of the cards, or divide the vehicles, or the parts with their systems, over several jobs.
"""

from specgen.facts.job.builds import MOST_COATS, builds_of
from specgen.rules.kit import LOGIC, NOTE, Job, Problem, Problems, Spec, date, rule


@rule("DOC008", on=Job, severity=NOTE, source=LOGIC)
def job_within_bounds(job: Job, spec: Spec, on: date) -> Problems:
    try:
        built = builds_of(job, spec)
    except ValueError:
        return
    coats = sum(len(build.system.layers) for build in built)
    vehicles = max(1, len(job.vehicles))
    if coats * vehicles > MOST_COATS:
        path = ("vehicles",) if job.vehicles else ("items",)
        what = f"{coats} coats in {len(built)} systems on {vehicles} vehicles make {coats * vehicles} lines of coats; one file of job cards holds about {MOST_COATS}"
        yield Problem(path, what)
