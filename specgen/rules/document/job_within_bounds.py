"""DOC008 A job is small enough for its cards

Checks
    The coats of all systems of a job, counted for each vehicle it names, come to at most 300.
Why
    The job card has a sheet for each vehicle and system with a line for each coat and a box for each reading. Far more of them than this cannot be laid out as one document, and the job could not be printed on the day it is needed.
Passes
    jobs.refit.vehicles: [V1, V2, V3, V4, V5, V6, V7, V8, V9, V10, V11, V12, V13, V14, V15, V16, V17, V18, V19, V20, V21, V22, V23, V24, V25, V26, V27, V28, V29, V30, V31, V32, V33, V34, V35, V36, V37, V38, V39, V40, V41, V42, V43, V44, V45, V46, V47, V48, V49, V50, V51, V52, V53, V54, V55, V56, V57, V58, V59, V60, V61, V62, V63, V64, V65, V66, V67, V68, V69, V70, V71, V72, V73, V74, V75]

    jobs.refit.vehicles: []
Fails
    jobs.refit.vehicles: [V1, V2, V3, V4, V5, V6, V7, V8, V9, V10, V11, V12, V13, V14, V15, V16, V17, V18, V19, V20, V21, V22, V23, V24, V25, V26, V27, V28, V29, V30, V31, V32, V33, V34, V35, V36, V37, V38, V39, V40, V41, V42, V43, V44, V45, V46, V47, V48, V49, V50, V51, V52, V53, V54, V55, V56, V57, V58, V59, V60, V61, V62, V63, V64, V65, V66, V67, V68, V69, V70, V71, V72, V73, V74, V75, V76]    # at jobs.refit.vehicles
To put right
    Divide the vehicles, or the parts with their systems, over several jobs.
"""

from specgen.facts.job.builds import MOST_COATS, builds_of
from specgen.rules.kit import LOGIC, WARNING, Job, Problem, Problems, Spec, date, rule


@rule("DOC008", on=Job, severity=WARNING, source=LOGIC)
def job_within_bounds(job: Job, spec: Spec, on: date) -> Problems:
    try:
        built = builds_of(job, spec)
    except ValueError:
        return
    coats = sum(len(build.system.layers) for build in built)
    vehicles = max(1, len(job.vehicles))
    if coats * vehicles > MOST_COATS:
        path = ("vehicles",) if job.vehicles else ("items",)
        what = f"{coats} coats in {len(built)} systems on {vehicles} vehicles make {coats * vehicles} lines of coats; a job card holds about {MOST_COATS}"
        yield Problem(path, what)
