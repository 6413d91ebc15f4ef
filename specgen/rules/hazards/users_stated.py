"""HAZ036 The users of the products are stated

Checks
    The project states whether its products are for professional users or for the general public.
Why
    For the public a label carries more, and training cannot be required. If not stated, professional use is assumed.
Passes
    products.barrier.users: professional

    without project.users
    products.primer.users: professional
    products.base.users: professional
    products.clear.users: professional
    products.barrier.users: professional
Fails
    without project.users    # at project.users

    without project.users    # at project.users
    products.primer.users: professional
    products.base.users: professional
    products.clear.users: professional
To put right
    Write professional or public under users; a product that differs states its own.
"""

from specgen.rules.kit import NOTE, Basis, Problem, Problems, Project, Spec, cite, date, rule


@rule(
    "HAZ036",
    on=Project,
    severity=NOTE,
    source=cite("CLP", "Article 28(2)", Basis.REGULATION),
)
def users_stated(project: Project, spec: Spec, on: date) -> Problems:
    if project.users is None and any(product.users is None for product in spec.products.values()):
        what = "the users of the products (professional or public) are not stated; professional use is assumed"
        yield Problem(("users",), what)
