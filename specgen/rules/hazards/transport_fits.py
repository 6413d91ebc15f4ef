"""HAZ031 Transport data match the can

Checks
    Where transport is stated: an aerosol can is UN 1950, class 2.1 where it is flammable, otherwise 2.2, in limited quantities up to 1 L a can and 30 kg a package.
Why
    With a wrong number a can of flammable gas is transported as paint.
Passes
    products.base.hazards.transport: {un_number: UN 1950, transport_class: "2.1", limited_quantity: 1 L, package_max: 30 kg}

    products.barrier.hazards.transport: {un_number: UN 1263, transport_class: "3"}
Fails
    products.base.hazards.transport: {un_number: UN 1263, transport_class: "2.1"}    # at products.base.hazards.transport.un_number

    products.base.hazards.transport: {un_number: UN 1950, transport_class: "2.2"}    # at products.base.hazards.transport.transport_class

    products.base.hazards.transport: {un_number: UN 1950, transport_class: "2.1", limited_quantity: 1.01 L, package_max: 30.1 kg}    # at products.base.hazards.transport.limited_quantity    # at products.base.hazards.transport.package_max

    Given second good
    products.touch-up.hazards.transport: {un_number: UN 1263, transport_class: "2.1"}    # at products.touch-up.hazards.transport.un_number
To put right
    Take the data from section 14 of the safety data sheet.
"""

from specgen.facts.product.hazard_facts import package_of
from specgen.facts.product.hazards import hazards_of
from specgen.rules.kit import NOTE, WARNING, Basis, Problem, Problems, Product, Spec, cite, date, rule, table
from specgen.units.quantity import parse_quantity


@rule(
    "HAZ031",
    on=Product,
    severity=WARNING,
    source=cite("ADR", "3.2, Table A; 3.4", Basis.MEMORY),
)
def transport_fits(product: Product, spec: Spec, on: date) -> Problems:
    stated = product.hazards.transport if product.hazards is not None else None
    if stated is None or package_of(product) != "aerosol":
        return
    rows = {row["id"]: row["value"] for row in table("transport_notes").rows}
    path = ("hazards", "transport")
    if stated.un_number != rows["un"]:
        yield Problem(
            (*path, "un_number"), f"{product.id} is declared as {stated.un_number}; an aerosol is {rows['un']}"
        )
    carriage = hazards_of(spec, product.id, on).carriage
    if carriage is None:
        what = f"the transport class of {product.id} cannot be assessed: its aerosol category is not stated"
        yield Problem((*path, "transport_class"), what, severity=NOTE)
    elif stated.transport_class != carriage.code:
        what = f"{product.id} is declared as class {stated.transport_class}; as {carriage.reasons[0]} it is {carriage.code}"
        yield Problem((*path, "transport_class"), what)
    for name, row, kind in (("limited_quantity", "lq", "volume"), ("package_max", "lq_package", "mass")):
        value, most = getattr(stated, name), parse_quantity(kind, rows[row])
        if value is not None and value > most:
            yield Problem((*path, name), f"{value} is above the limit for a limited quantity, {most}")
