"""Every table against every other: ids have a home, keys are unique, each row says on whose word it stands."""

from __future__ import annotations

import re
from collections import Counter

import pytest

from specgen.facts.job.faults import OCCURS
from specgen.facts.pairs.families import NOT_NAMED
from specgen.model.product import Role
from specgen.standards.citations import Basis, documents
from specgen.standards.tables import table, table_names

BASES = {word for basis in Basis for word in (basis.value, basis.name.lower())}


def _ids(name: str) -> set[str]:
    return {row[table(name).columns[0]] for row in table(name).rows}


FAMILIES, MATERIALS, GRADES = _ids("binder_families"), _ids("materials"), _ids("preparation_grades")
NAMES = FAMILIES | MATERIALS | _ids("overcoat_groups")

# Columns whose cells name rows of another table: table, column, where they live, what parts several in one cell.
HOMES: list[tuple[str, str, set[str], str]] = [
    ("overcoat_matrix", "new", NAMES, ""),
    ("overcoat_matrix", "old", NAMES, ""),
    ("overcoat_matrix", "mechanisms", _ids("mechanisms"), ", "),
    ("faults", "mechanism", _ids("mechanisms"), ""),
    ("faults", "when", set(OCCURS), ""),
    ("overcoat_matrix", "needs", _ids("overcoat_needs"), "; | or "),
    ("overcoat_matrix", "further_needs", _ids("overcoat_needs"), "; | or "),
    ("overcoat_matrix", "other_document", set(documents()), ""),
    ("binder_families", "cured_rub", _ids("rub_test_classes"), ""),
    ("repair_by_old_paint", "old", FAMILIES | _ids("rub_test_classes"), ""),
    ("repair_by_old_paint", "primer", FAMILIES, ""),
    ("repair_by_old_paint", "finish", FAMILIES, ""),
    ("preparation_ladder", "grade", GRADES, ""),
    ("preparation_equivalences", "grade", GRADES, ""),
    ("preparation_equivalences", "equals", GRADES, ""),
    ("preparation_differences", "grade", GRADES, ""),
    ("preparation_differences", "equals", GRADES, ""),
    ("steel_defect_uses", "grade", _ids("steel_defect_grades"), ""),
    ("minimum_preparation", "family", FAMILIES, ""),
    ("minimum_preparation", "grades", GRADES, " or "),
    ("substrates", "material", MATERIALS, ""),
    ("substrates", "grade", GRADES, ""),
    ("substrates", "coarsest_p", _ids("abrasive_grains"), ""),
    ("substrates", "finest_p", _ids("abrasive_grains"), ""),
    ("substrate_coats", "material", MATERIALS, ""),
    ("substrate_coats", "family", FAMILIES, ""),
    ("substrate_coats", "unless", _ids("overcoat_needs"), " or "),
    ("substrate_media", "material", MATERIALS, ""),
    ("substrate_media", "medium", _ids("preparation_media"), ""),
    ("sanding_stages", "coarsest_p", _ids("abrasive_grains"), ""),
    ("sanding_stages", "finest_p", _ids("abrasive_grains"), ""),
    ("sanding_stages", "then_p", _ids("abrasive_grains"), ""),
    ("galvanic_series", "material", MATERIALS, ""),
    ("galvanic_couples", "fastener", MATERIALS, ""),
    ("galvanic_couples", "sheet", MATERIALS, ""),
    ("recoat_windows", "under", NAMES, ""),
    ("recoat_windows", "over", NAMES, ""),
    ("family_film_limits", "family", FAMILIES, ""),
    ("dry_heat_limits", "family", FAMILIES, ""),
    ("comb_unfit_binders", "id", FAMILIES, ""),
    ("iso_12944_5_binders", "id", FAMILIES, ""),
]

# Columns that make a row the only one of its kind, where the first column alone does not.
KEYS = {
    "mechanisms": ("id", "part"),
    "overcoat_groups": ("id", "member"),
    "overcoat_matrix": ("new", "old", "state"),
    "repair_by_old_paint": ("old", "on"),
    "preparation_equivalences": ("grade", "equals"),
    "minimum_preparation": ("family", "paint", "service"),
    "profile_comparator": ("comparator", "segment"),
    "profile_grades": ("grade", "comparator"),
    "substrate_coats": ("material", "family"),
    "substrate_media": ("material", "medium"),
    "sweep_blast_limits": ("what", "side"),
    "dry_heat_limits": ("family", "paint", "side", "duration"),
    "reactivity_limits_california": ("id", "from"),
    "iso_12944_5_immersion": ("paint", "durability", "coats"),
    "iso_12944_5_systems": ("on", "paint", "corrosivity", "durability"),
}

# A row of NAME_read is one of several cells of the same row.
BY_ID = [
    name for name in table_names() if table(name).columns[0] == "id" and name not in KEYS and not name.endswith("_read")
]


@pytest.mark.parametrize(
    ("name", "column", "home", "parted"), HOMES, ids=[f"{name} {column}" for name, column, _, _ in HOMES]
)
def test_id_has_a_home(name: str, column: str, home: set[str], parted: str) -> None:
    cells = [row[column] for row in table(name).rows if row[column]]
    parts = [part for cell in cells for part in (re.split(parted, cell) if parted else [cell])]
    assert [part for part in parts if part.strip() not in home] == []
    assert parts


@pytest.mark.parametrize("name", [name for name in table_names() if name.endswith("_read")])
def test_cell_read_is_a_cell_of_its_table(name: str) -> None:
    of = table(name.removesuffix("_read"))
    assert [row["id"] for row in table(name).rows if row["id"] not in _ids(of.name)] == []
    assert [row["column"] for row in table(name).rows if row["column"] not in of.columns] == []
    assert [row["id"] for row in table(name).rows if not of.row(of.columns[0], row["id"])[row["column"]]] == []
    assert max(Counter((row["id"], row["column"]) for row in table(name).rows).values()) == 1


@pytest.mark.parametrize("name", KEYS)
def test_row_has_a_key_of_its_own(name: str) -> None:
    keys = Counter(tuple(row[column] for column in KEYS[name]) for row in table(name).rows)
    assert [key for key, count in keys.items() if count > 1] == []


@pytest.mark.parametrize("name", BY_ID)
def test_id_is_given_once(name: str) -> None:
    ids = Counter(row["id"] for row in table(name).rows)
    assert [id for id, count in ids.items() if count > 1] == []


@pytest.mark.parametrize("name", table_names())
def test_no_row_is_there_twice(name: str) -> None:
    rows = Counter(tuple(row.values()) for row in table(name).rows)
    assert [row for row, count in rows.items() if count > 1] == []


@pytest.mark.parametrize("name", table_names())
def test_documents_are_known(name: str) -> None:
    found = table(name)
    cited = {found.document} | {row.get("document", "") for row in found.rows}
    cited |= {part for row in found.rows for part in row.get("also", "").split(", ")}
    assert cited - {""} - set(documents()) == set()


@pytest.mark.parametrize("name", [name for name in table_names() if "basis" in table(name).columns])
def test_row_says_on_whose_word_it_stands(name: str) -> None:
    found = table(name)
    assert {row["basis"] for row in found.rows} <= BASES
    for row in found.rows:
        said = found.row_citation(row)
        # only what is confirmed needs a document; what names none must not pass for it
        assert said.document or said.basis not in {Basis.PUBLISHED, Basis.REGULATION, Basis.SECONDARY}


@pytest.mark.parametrize("name", [name for name in table_names() if table(name).document == "several"])
def test_table_of_several_documents_stands_on_the_weakest_word_of_its_rows(name: str) -> None:
    order = (Basis.MEMORY, Basis.PRACTICE, Basis.ARITHMETIC, Basis.LOGIC, Basis.SECONDARY, Basis.PUBLISHED)
    found = table(name)
    weakest = min((found.row_citation(row).basis for row in found.rows), key=order.index)
    assert found.basis is weakest


@pytest.mark.parametrize("name", table_names())
def test_cells_are_short(name: str) -> None:
    longest = max((cell for row in table(name).rows for cell in row.values()), key=len)
    # patterns of words are read by the program, not by a person
    patterns = {"practices_in_words", "safe_forms", "precautions", "denials", "excuses"}
    assert len(longest) < (300 if name not in patterns else 1000)


def test_groups_name_what_exists() -> None:
    homes = {
        "binder_families": FAMILIES,
        "materials": MATERIALS,
        "role": {role.value for role in Role},
        "state": {""},
    }
    rows = table("overcoat_groups").rows
    assert [row for row in rows if row["member"] not in homes[row["home"]]] == []
    assert _ids("overcoat_groups") & (FAMILIES | MATERIALS) == set()


def test_every_role_has_its_place() -> None:
    rows = table("coat_places").rows
    assert {row["role"] for row in rows} == {role.value for role in Role}
    assert all(int(row["from"]) <= int(row["to"]) for row in rows)
    assert {row[column] for row in rows for column in ("local", "sun")} == {"yes", "no"}


def test_properties_of_binders_are_of_closed_lists() -> None:
    columns = ("solvent_strength", "cured_rub", "alkali_sensitive", "acid_sensitive_cure", "isocyanate", "epoxy")
    found = {column: {row[column] for row in table("binder_families").rows} for column in columns}
    assert found == {
        "solvent_strength": {"weak", "medium", "strong", ""},
        "cured_rub": {"soluble", "softens", "resistant", ""},
        "alkali_sensitive": {"yes", "no", ""},
        "acid_sensitive_cure": {"yes", "no", ""},
        "isocyanate": {"yes", "no", ""},
        "epoxy": {"yes", "no", ""},
    }
    empty = {row["id"] for row in table("binder_families").rows if not row["cured_rub"]}
    assert empty == {NOT_NAMED}
    alkali = {row["id"] for row in table("binder_families").rows if row["alkali_sensitive"] == "yes"}
    assert alkali == {"oil_alkyd", "epoxy_ester", "polyester_putty", "alkyd_wb", "polyester"}
