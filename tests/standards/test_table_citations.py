"""On whose word a row and a cell stand."""

from __future__ import annotations

import pytest

from specgen.standards.citations import Basis, Citation
from specgen.standards.tables import cell_citation, table


def test_row_of_several_documents_names_its_own() -> None:
    matrix = table("overcoat_matrix")
    rows = {(row["new"], row["old"]): row for row in matrix.rows}
    assert matrix.row_citation(rows["oil_alkyd", "galvanized"]) == Citation(
        Basis.PUBLISHED, "MIL-HDBK-1110", "4.4.3.3, 4.4.4"
    )
    assert matrix.row_citation(rows["oil_alkyd", "pu"]) == Citation(Basis.MEMORY)
    assert matrix.row_citation(rows["oil_alkyd", "zinc_organic"]) == Citation(Basis.SECONDARY, "OIL-ON-ZINC-ARTICLE")


def test_row_without_its_own_document_takes_that_of_the_table() -> None:
    codes = table("h_statements")
    assert codes.row_citation(codes.row("id", "H222")) == Citation(Basis.REGULATION, "CLP", "Annex III, part 1")
    lengths = table("reading_distance")
    assert lengths.row_citation(lengths.rows[0]) == lengths.citation


def test_cell_read_in_a_document_outweighs_its_row() -> None:
    assert cell_citation("substrates", "steel_cold_rolled", "max_h_to_prime") == Citation(
        Basis.PUBLISHED, "TM-43-0139", "3-3"
    )
    assert cell_citation("substrates", "steel_cold_rolled", "finest_p") == Citation(Basis.PRACTICE)
    assert cell_citation("binder_families", "oil_alkyd", "alkali_sensitive").basis is Basis.PUBLISHED
    assert cell_citation("binder_families", "oil_alkyd", "uv").basis is Basis.MEMORY


def test_cell_of_a_table_without_such_a_list_stands_as_its_row() -> None:
    assert cell_citation("climate_limits", "humidity", "most") == Citation(Basis.PUBLISHED, "IMO-A-798", "3.3.4")


def test_row_and_column_that_are_not_there_are_named() -> None:
    with pytest.raises(KeyError, match="table substrates has 0 rows with material = marble"):
        cell_citation("substrates", "marble", "grade")
    with pytest.raises(KeyError, match="table substrates has no column taste"):
        cell_citation("substrates", "wood", "taste")
