"""DOC004 A folder of jobs names its customer

Checks
    A folder that holds jobs names the customer they are written for.
Why
    A method statement says for whom it is. A folder of products alone, which several customers share, is written for nobody in
    particular and needs no customer.
Passes
    project.customer: {name: Depot South}
Fails
    without project.customer    # at project.customer
To put right
    Write the name of the customer under customer of the project.
"""

from specgen.rules.kit import ERROR, LOGIC, Problem, Problems, Project, Spec, date, rule


@rule("DOC004", on=Project, severity=ERROR, source=LOGIC)
def customer_of_jobs(project: Project, spec: Spec, on: date) -> Problems:
    if project.customer is None and spec.jobs:
        yield Problem(("customer",), "the folder holds jobs and names no customer")
