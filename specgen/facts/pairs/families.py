"""Binder families: the row of each, its name, and the sets of them that rules and pages speak of."""

from __future__ import annotations

from specgen.standards.tables import Row, table

NOT_NAMED = "not-named"
"""The family of a paint, and the material of a part, of which nobody says what it is: what goes by it is not judged."""

ZINC_RICH = frozenset({"zinc_organic", "zinc_inorganic", "zinc_pu"})
ETCHING = frozenset({"wash_primer", "etch_primer_1k"})
THIN_FOR_HEAT = frozenset({"zinc_inorganic", "silicone_heat"})
"""What stands heat as a thin film and cracks as a thick one."""
WATERBORNE = frozenset({"acrylic_wb", "pu_wb", "epoxy_wb", "alkyd_wb"})
BODY_FILLER = "polyester_putty"


def binder_family(family: str) -> Row:
    """The row of a family in the table binder_families. Raises KeyError for one that is not there."""
    return table("binder_families").row("id", family)


def paint_name(key: str) -> str:
    """A family, a material or a class of the rub test in words."""
    for name in ("binder_families", "materials"):
        for row in table(name).rows:
            if row["id"] == key:
                return row["name"]
    return (
        f"existing coating that is {key} in the solvent rub"
        if key != "softens"
        else "existing coating that softens in the solvent rub"
    )
