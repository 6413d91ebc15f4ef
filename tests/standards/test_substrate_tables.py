"""Substrates: what each demands, what must stay off it, and how well each cell is founded."""

from __future__ import annotations

import pytest

from specgen.standards.tables import cell_citation, table


@pytest.mark.cases("substrates")
def test_demand_of_a_material(case: dict[str, str]) -> None:
    row = table("substrates").row("material", case["id"])
    said = cell_citation("substrates", case["id"], case["column"])
    assert (row[case["column"]], said.document, said.basis.name.lower()) == (
        case["value"],
        case["document"],
        case["basis"],
    )


@pytest.mark.cases("substrate_coats")
def test_family_on_a_material(case: dict[str, str]) -> None:
    (row,) = [
        row
        for row in table("substrate_coats").rows
        if (row["material"], row["family"]) == (case["material"], case["family"])
    ]
    wanted = ("verdict", "unless", "basis")
    assert [row[column] for column in wanted] == [case[column] for column in wanted]


@pytest.mark.cases("substrate_media")
def test_medium_to_keep_off_a_material(case: dict[str, str]) -> None:
    (row,) = [
        row
        for row in table("substrate_media").rows
        if (row["material"], row["medium"]) == (case["material"], case["medium"])
    ]
    assert (row["verdict"], row["basis"]) == ("forbidden", case["basis"])


@pytest.mark.cases("sweep_blast")
def test_sweep_blasting_of_zinc(case: dict[str, str]) -> None:
    (row,) = [
        row for row in table("sweep_blast_limits").rows if (row["what"], row["side"]) == (case["what"], case["side"])
    ]
    wanted = ("least", "most", "basis")
    assert [row[column] for column in wanted] == [case[column] for column in wanted]


def test_time_to_prime_is_the_window_of_bare_metal() -> None:
    window = table("recoat_windows").row("id", "bare_metal_primer")["most_h"]
    assert {row["max_h_to_prime"] for row in table("substrates").rows} == {"", window}


def test_papers_run_from_coarse_to_fine() -> None:
    rows = [row for row in table("substrates").rows if row["coarsest_p"] and row["finest_p"]]
    assert len(rows) == 8
    assert all(int(row["coarsest_p"]) < int(row["finest_p"]) for row in rows)


def test_verdicts_of_two_tables_do_not_contradict_each_other() -> None:
    """A pair refused outright on the matrix of coats is no first coat of any material of that name."""
    members: dict[str, set[str]] = {}
    for row in table("overcoat_groups").rows:
        members.setdefault(row["id"], set()).add(row["member"])
    refused = {
        (new, old)
        for row in table("overcoat_matrix").rows
        if row["verdict"] == "not recommended" and not row["needs"] and not row["state"]
        for new in members.get(row["new"], {row["new"]})
        for old in members.get(row["old"], {row["old"]})
    }
    first = {
        (row["family"], row["material"]) for row in table("substrate_coats").rows if row["verdict"] == "first coat"
    }
    assert refused & first == set()


def test_bare_anode_beside_a_cathode() -> None:
    order = {row["material"]: int(row["order"]) for row in table("galvanic_series").rows}
    verdicts = {(row["fastener"], row["sheet"]): row["verdict"] for row in table("galvanic_couples").rows}
    assert verdicts == {("stainless", "aluminium"): "accepted", ("aluminium", "stainless"): "not recommended"}
    for (fastener, sheet), verdict in verdicts.items():
        # the small part must be the cathode
        assert (order[fastener] > order[sheet]) is (verdict == "accepted")
    assert order["magnesium"] < order["galvanized_hot_dip"] < order["aluminium"] < order["steel_cold_rolled"]
    assert order["steel_cold_rolled"] < order["copper"] < order["stainless"]
