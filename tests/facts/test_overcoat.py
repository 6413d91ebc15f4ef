"""Pairs of families looked up: the row, its group, its state, the ladder of practice, and silence that is never a refusal."""

from __future__ import annotations

import pytest

from specgen.facts.pairs.overcoat import Overcoating, Verdict, on_rub, overcoating, weakest
from specgen.standards.citations import LOGIC, MEMORY, PRACTICE, Basis, Citation, cite
from specgen.standards.tables import table

FAMILIES = [row["id"] for row in table("binder_families").rows]

# new, old, state, verdict, needs, basis
PAIRS = [
    ("epoxy_2k", "vinyl", "", "not recommended", "", Basis.PUBLISHED),
    ("epoxy_latent", "vinyl", "", "not recommended", "", Basis.PRACTICE),
    ("epoxy_2k", "acrylic_1k", "", "not recommended", "", Basis.SECONDARY),
    ("pu_2k_aliphatic", "nitrocellulose", "", "not recommended", "", Basis.PUBLISHED),
    ("pu_2k_aliphatic", "epoxy_2k", "", "accepted", "in_window or abrade", Basis.PUBLISHED),
    ("pu_latent", "epoxy_latent", "", "accepted", "in_window or abrade", Basis.PRACTICE),
    ("epoxy_2k", "oil_alkyd", "", "conditional", "sound; aged_hard; abrade; patch_test", Basis.SECONDARY),
    ("epoxy_2k", "oil_alkyd", "fresh", "not recommended", "", Basis.SECONDARY),
    ("acrylic_1k", "oil_alkyd", "fresh", "not recommended", "", Basis.PUBLISHED),
    ("oil_alkyd", "oil_alkyd", "fresh", "accepted", "abrade", Basis.PUBLISHED),
    ("wash_primer", "powder", "", "not recommended", "", Basis.PUBLISHED),
    ("pu_2k_aliphatic", "wash_primer", "", "conditional", "epoxy_primer", Basis.PUBLISHED),
    ("silicone_heat", "basecoat", "", "not recommended", "", Basis.MEMORY),
    ("epoxy_2k", "steel_rusted", "", "accepted", "min_preparation", Basis.PUBLISHED),
    ("pu_2k_aliphatic", "rubber", "", "not recommended", "", Basis.PUBLISHED),
    # no row: the ladder of practice, then nothing
    ("acrylic_1k", "basecoat", "", "not recommended", "", Basis.PRACTICE),
    ("basecoat", "epoxy_ester", "fresh", "not recommended", "", Basis.PRACTICE),
    ("surfacer_2k", "epoxy_ester", "", "conditional", "aged_hard; abrade; patch_test", Basis.PRACTICE),
    ("epoxy_ester", "zinc_organic", "", "not recommended", "", Basis.PRACTICE),
    ("basecoat", "zinc_organic", "", "conditional", "abrade or in_window", Basis.PRACTICE),
    ("oil_alkyd", "basecoat", "", "conditional", "abrade; patch_test", Basis.PRACTICE),
    ("acrylic_1k", "silicone_heat", "", "not listed", "", Basis.LOGIC),
    ("powder", "wood", "", "not listed", "", Basis.LOGIC),
    # families of which the documents read say little: their own rows, then what is known of their kin, then the ladder
    ("fluoropolymer", "epoxy_2k", "", "accepted", "in_window or abrade", Basis.PRACTICE),
    ("epoxy_phenolic", "vinyl", "", "not recommended", "", Basis.PRACTICE),
    ("pu_2k_aliphatic", "coal_tar_epoxy", "", "not recommended", "", Basis.MEMORY),
    ("coal_tar_epoxy", "coal_tar_epoxy", "", "same material", "in_window or abrade", Basis.MEMORY),
    ("epoxy_wb", "vinyl", "", "conditional", "abrade; patch_test", Basis.PRACTICE),
    ("polyurea", "epoxy_2k", "", "conditional", "abrade or in_window", Basis.PRACTICE),
    ("alkyd_wb", "zinc_pu", "", "not recommended", "", Basis.PRACTICE),
    ("epoxy_2k", "wax", "", "not recommended", "", Basis.PRACTICE),
    ("epoxy_2k", "not-named", "", "not listed", "", Basis.LOGIC),
    ("not-named", "epoxy_2k", "", "not listed", "", Basis.LOGIC),
]


def _needs(found: Overcoating) -> str:
    return "; ".join(" or ".join(choice) for choice in found.needs)


@pytest.mark.parametrize(("new", "old", "state", "verdict", "needs", "basis"), PAIRS)
def test_pair(new: str, old: str, state: str, verdict: str, needs: str, basis: Basis) -> None:
    found = overcoating(new, old, fresh=state == "fresh")
    assert (found.verdict, _needs(found), found.citation.basis) == (verdict, needs, basis)


@pytest.mark.parametrize("new", FAMILIES)
def test_no_silence_refuses_or_accepts(new: str) -> None:
    """What no table lists is refused on practice at most, and accepted never."""
    ladder = [found for old in FAMILIES if (found := overcoating(new, old)).from_ladder]
    assert {found.verdict for found in ladder} <= {Verdict.NOT_LISTED, Verdict.CONDITIONAL, Verdict.NOT_RECOMMENDED}
    assert {found.citation for found in ladder if found.verdict is not Verdict.NOT_LISTED} <= {PRACTICE}
    assert [found for found in ladder if found.verdict is Verdict.CONDITIONAL and not found.needs] == []


def test_every_row_of_the_matrix_is_found() -> None:
    """Each row between two families of their own name comes back as it stands."""
    named = {*FAMILIES}
    for row in table("overcoat_matrix").rows:
        if row["new"] in named and row["old"] in named:
            found = overcoating(row["new"], row["old"], fresh=row["state"] == "fresh")
            assert (found.verdict, found.citation) == (row["verdict"], table("overcoat_matrix").row_citation(row))


def test_clear_asks_its_own_row_first() -> None:
    assert overcoating("pu_latent", "epoxy_2k").verdict is Verdict.ACCEPTED
    clear = overcoating("pu_latent", "epoxy_2k", clear=True)
    assert (clear.verdict, clear.needs, clear.mechanisms) == (
        Verdict.NOT_RECOMMENDED,
        (("colour_coat",),),
        ("chalking",),
    )


def test_where_sources_differ_both_are_named() -> None:
    found = overcoating("epoxy_2k", "acrylic_1k")
    assert (found.other_verdict, found.other) == ("accepted", cite("BINDER-CODE-MATRIX", basis=Basis.SECONDARY))
    assert "sources differ" in found.spoken()
    assert overcoating("epoxy_2k", "vinyl").other is None


def test_what_is_taken_for_what_is_said() -> None:
    assert overcoating("pu_latent", "nitrocellulose").by_likeness == (
        "polyurethane with blocked hardener is treated as polyurethane, "
        "as covered by US Army TB 43-0242, spot painting of vehicles, 5-2 (published)"
    )
    assert overcoating("pu_2k_aliphatic", "nitrocellulose").by_likeness == ""
    # of both coats, and of the lower one alone
    assert overcoating("pu_latent", "epoxy_latent").by_likeness.startswith(
        "polyurethane with blocked hardener is treated as polyurethane and epoxy with blocked hardener is treated as epoxy,"
    )
    assert overcoating("pu_2k_aliphatic", "epoxy_latent").by_likeness.startswith(
        "epoxy with blocked hardener is treated as epoxy, as covered by"
    )


@pytest.mark.parametrize(
    ("new", "rub", "verdict", "needs", "basis"),
    [
        ("epoxy_2k", "soluble", "not recommended", "", Basis.PUBLISHED),
        ("epoxy_latent", "soluble", "not recommended", "", Basis.PRACTICE),
        ("acrylic_wb", "soluble", "conditional", "abrade; patch_test", Basis.PRACTICE),
        ("epoxy_2k", "softens", "conditional", "abrade; patch_test", Basis.PRACTICE),
        ("epoxy_2k", "resistant", "conditional", "abrade", Basis.PRACTICE),
    ],
)
def test_rub_alone(new: str, rub: str, verdict: str, needs: str, basis: Basis) -> None:
    found = on_rub(new, rub)
    assert (found.verdict, _needs(found), found.citation.basis) == (verdict, needs, basis)


def test_family_that_nobody_knows() -> None:
    with pytest.raises(KeyError, match="binder_families has 0 rows with id = rubber_paint"):
        overcoating("rubber_paint", "vinyl")


def test_weakest_word() -> None:
    published = Citation(Basis.PUBLISHED, "MIL-HDBK-1110")
    assert weakest(published, PRACTICE, LOGIC) == PRACTICE
    assert weakest(PRACTICE, MEMORY) == MEMORY
    assert weakest(LOGIC, published) == published
