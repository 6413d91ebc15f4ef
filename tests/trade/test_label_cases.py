"""Label elements row by row, precedence, precautions, supplemental statements, and a declared label set beside them."""

from __future__ import annotations

from datetime import date
from fractions import Fraction

import pytest

from specgen.standards.citations import Basis, documents
from specgen.standards.tables import Row, table, table_names
from specgen.trade.hazard_class import Classification, elements_of, source_of_cell, statements_of
from specgen.trade.known import NotKnown
from specgen.trade.label_comparison import DeclaredLabel, compare_label
from specgen.trade.labelling import LabelElements, Package, label_elements
from specgen.trade.precautions import precautions
from specgen.trade.supplemental import MixtureFacts, Sensitiser, supplemental
from specgen.units.quantity import Quantity, parse_quantity

KINDS = ("prevention", "response", "storage", "disposal")


def classes(text: str) -> tuple[Classification, ...]:
    return tuple(Classification(*part.split("/")) for part in text.split())


def package(text: str) -> Package:
    return "aerosol" if text == "aerosol" else "liquid"


def label(text: str, form: Package = "aerosol") -> LabelElements:
    found = label_elements(classes(text), form)
    assert isinstance(found, LabelElements)
    return found


def codes_of(row: Row) -> list[str]:
    return sorted(code for kind in KINDS for code in row[kind].split())


@pytest.mark.cases("label_rows")
def test_row_of_label_elements(case: dict[str, str]) -> None:
    found = Classification(case["hazard_class"], case["category"], case["statement"])
    row = elements_of(found)
    assert statements_of(found, row) == tuple(case["statements"].split())
    assert row["signal_word"] == case["signal"]
    assert row["pictograms"] == case["pictograms"]
    assert codes_of(row) == case["precautions"].split()
    seen = case["mark"] == "SEEN"
    assert source_of_cell(row, "statements").basis is (Basis.REGULATION if seen else Basis.MEMORY)
    if seen:
        assert case["document"].endswith(row["clause"])


def test_every_code_of_a_label_element_has_its_wording() -> None:
    statements = {row["id"] for row in table("h_statements").rows}
    precautionary = {row["id"] for row in table("p_statements").rows}
    for row in table("label_elements").rows:
        assert set(row["statements"].split()) <= statements, row["id"]
        assert set(codes_of(row)) <= precautionary, row["id"]


def test_every_other_table_of_codes_has_their_wording() -> None:
    statements = {row["id"] for row in table("h_statements").rows}
    precautionary = {row["id"] for row in table("p_statements").rows}
    supplementary = {row["id"] for row in table("euh_statements").rows}
    assert {row["id"] for row in table("euh_triggers").rows} <= supplementary
    assert {row["statement"] for row in table("newer_class_limits").rows} <= supplementary
    for row in table("redundant_statements").rows:
        assert {row["present"], row["omitted"]} <= statements
    for row in table("redundant_precautions").rows:
        assert {row["present"], row["omitted"]} <= precautionary
    for row in table("precaution_priority").rows:
        assert set(row["codes"].split()) <= precautionary
    excluded = {row["code"] for row in table("aerosol_exclusions").rows if row["what"] == "statement"}
    assert excluded == {"H220", "H221", "H224", "H225", "H226", "H228", "H280", "H304"}


def test_every_class_is_named_and_lists_the_categories_of_its_rows() -> None:
    for row in table("hazard_classes").rows:
        found = [entry["category"] for entry in table("label_elements").rows if entry["hazard_class"] == row["id"]]
        assert list(dict.fromkeys(found)) == row["categories"].split()


def test_cells_from_memory_say_so() -> None:
    eye = elements_of(Classification("eye_damage", "2"))
    assert source_of_cell(eye, "pictograms").basis is Basis.MEMORY
    assert source_of_cell(eye, "statements").basis is Basis.REGULATION
    skin = elements_of(Classification("skin_corrosion", "2"))
    assert source_of_cell(skin, "response", "P362+P364").basis is Basis.MEMORY
    assert source_of_cell(skin, "response", "P321").basis is Basis.REGULATION
    inhaled = elements_of(Classification("acute_inhalation", "3"))
    assert source_of_cell(inhaled, "storage", "P405").basis is Basis.MEMORY


def test_category_with_two_statements_asks_for_one() -> None:
    with pytest.raises(KeyError, match=r"has 2 rows for \('stot_single', '3'\)"):
        elements_of(Classification("stot_single", "3"))


@pytest.mark.cases("pictogram_precedence")
def test_precedence(case: dict[str, str]) -> None:
    found = label(case["classes"], package(case["package"]))
    assert [element.code for element in found.statements] == case["statements"].split()
    assert found.signal_word.code == case["signal"]
    assert [element.code for element in found.pictograms] == case["pictograms"].split()
    assert sorted(element.code for element in found.left_out) == case["left_out"].split()
    assert [element.code for element in found.optional] == case["optional"].split()


def test_what_gives_way_cites_its_article() -> None:
    found = label("aerosols/1 respiratory_sensitisation/1 skin_sensitisation/1")
    (gone,) = found.left_out
    assert (gone.code, gone.note, gone.source.clause) == ("GHS07", "left out beside GHS08", "Article 26(1)(d)")
    assert gone.reasons == ("Sensitisation, skin, category 1",)


def test_a_pictogram_from_memory_alone_is_unconfirmed_and_beside_a_read_one_is_not() -> None:
    (alone,) = label("eye_damage/2", "liquid").pictograms
    assert alone.source.basis is Basis.MEMORY
    (both,) = label("eye_damage/2 skin_sensitisation/1", "liquid").pictograms
    assert both.source.basis is Basis.REGULATION


def test_unknown_class_and_aerosol_without_a_category_cannot_be_judged() -> None:
    assert label_elements(classes("explosives/1"), "liquid") == NotKnown(
        "label elements", "the table of label elements does not contain this class", ("explosives 1",)
    )
    assert label_elements(classes("skin_sensitisation/1"), "aerosol") == NotKnown(
        "label elements", "an aerosol has its own category, and none is stated", ("aerosols",)
    )


def test_six_precautions_of_an_aerosol_for_the_public() -> None:
    found = precautions(classes("aerosols/1 skin_sensitisation/1 stot_single/3/H336"), "aerosol", public=True)
    assert [element.code for element in found.on_label] == ["P210", "P211", "P251", "P410+P412", "P102", "P501"]
    assert found.required == ("P102", "P210", "P211", "P251", "P410+P412", "P501")
    assert {element.note for element in found.beyond} == {
        "rank 3",
        "rank 4",
        "rank 5",
        "rank 6",
        "rank 8",
    }
    assert len(found.every) == len(found.on_label) + len(found.beyond)
    assert found.more_than_six == ""


def test_severity_may_need_more_than_six() -> None:
    found = precautions(classes("aerosols/1 respiratory_sensitisation/1"), "aerosol", public=False)
    assert [element.code for element in found.on_label] == ["P210", "P211", "P251", "P410+P412", "P261", "P284"]
    assert found.more_than_six == (
        "unless the nature and severity of the hazards need more: Sensitisation, respiratory, category 1"
    )


def test_what_another_statement_says_is_redundant() -> None:
    found = precautions(
        classes("acute_oral/3 acute_oral/4 stot_repeated/1 skin_sensitisation/1"), "liquid", public=False
    )
    assert {(element.code, element.note) for element in found.redundant} == {
        ("P261", "P260 makes it redundant"),
        ("P301+P312", "P301+P310 makes it redundant"),
    }
    assert not {"P261", "P301+P312"} & {element.code for element in found.every}
    parts = precautions(classes("eye_damage/1 acute_dermal/2 aspiration/1"), "liquid", public=False)
    assert [element.code for element in parts.redundant] == ["P310"]


def test_an_aerosol_takes_no_precaution_of_a_bulk_class() -> None:
    found = precautions(classes("aerosols/1 flammable_liquids/2"), "aerosol", public=False)
    assert [element.code for element in found.every] == ["P210", "P211", "P251", "P410+P412"]


GOOD = DeclaredLabel(
    "Danger", ("H222", "H229", "H317"), ("GHS02", "GHS07"), ("P210", "P211", "P251", "P410+P412", "P102", "P501")
)
CLASSES = "aerosols/1 skin_sensitisation/1"


def differences(declared: DeclaredLabel, text: str = CLASSES) -> list[tuple[str, str, str]]:
    wanted = precautions(classes(text), "aerosol", public=True)
    return [(entry.part, entry.verdict, entry.code) for entry in compare_label(declared, label(text), wanted)]


def test_agreeing_label_has_no_difference() -> None:
    assert differences(GOOD) == []


def test_label_of_an_aerosol_with_faults() -> None:
    declared = DeclaredLabel("Warning", ("H222", "H226", "H317"), ("GHS02", "GHS04"), ("P210", "P251", "P284"))
    assert differences(declared) == [
        ("signal word", "wrong", "Warning"),
        ("statement", "missing", "H229"),
        ("statement", "surplus", "H226"),
        ("pictogram", "missing", "GHS07"),
        ("pictogram", "surplus", "GHS04"),
        ("precaution", "missing", "P102"),
        ("precaution", "missing", "P211"),
        ("precaution", "missing", "P410+P412"),
        ("precaution", "missing", "P501"),
        ("precaution", "surplus", "P284"),
    ]


def test_a_difference_cites_what_it_rests_on() -> None:
    declared = DeclaredLabel("Danger", ("H222", "H226", "H229", "H317", "H400"), ("GHS02", "GHS07"), GOOD.precautions)
    wanted = precautions(classes(CLASSES), "aerosol", public=True)
    found, other = compare_label(declared, label(CLASSES), wanted)
    assert (found.code, found.why) == ("H226", "it does not belong on an aerosol")
    assert (found.source.basis, found.source.clause) == (Basis.REGULATION, "Annex I, 2.3.2.1, note 2")
    assert (other.code, other.why) == ("H400", "no assigned class carries it")
    assert other.source.clause != found.source.clause


def test_what_may_be_left_out_is_no_difference() -> None:
    text = "aerosols/1 aspiration/1"
    label_with = DeclaredLabel("Danger", ("H222", "H229", "H304"), ("GHS02",), GOOD.precautions)
    without = DeclaredLabel("Danger", ("H222", "H229"), ("GHS02",), GOOD.precautions)
    assert differences(label_with, text) == differences(without, text) == []


def supplement(facts: MixtureFacts, text: str = "aerosols/1", market: str = "EU") -> list[str]:
    found = supplemental(facts, classes(text), market)
    return [f"? {entry.what}" if isinstance(entry, NotKnown) else entry.code for entry in found]


def share(text: str) -> Quantity:
    return parse_quantity("share", f"{text} %")


def test_supplemental_statements() -> None:
    none = MixtureFacts(isocyanates=False, epoxy=False)
    assert supplement(none) == []
    assert supplement(MixtureFacts(isocyanates=True, epoxy=False)) == ["EUH204"]
    assert supplement(MixtureFacts(isocyanates=True, epoxy=False), market="US") == []
    assert supplement(MixtureFacts(isocyanates=None, epoxy=None)) == ["? EUH204", "? EUH205"]
    assert supplement(MixtureFacts(False, True, Fraction(700))) == ["EUH205"]
    assert supplement(MixtureFacts(False, True, Fraction(701))) == []
    assert supplement(MixtureFacts(False, True)) == ["? EUH205"]
    assert supplement(MixtureFacts(False, False, dries_skin=True)) == ["EUH066"]
    assert supplement(MixtureFacts(False, False, lead=share("0.15"))) == []
    assert supplement(MixtureFacts(False, False, lead=share("0.16"))) == ["EUH201"]
    small = parse_quantity("volume", "100 mL")
    assert supplement(MixtureFacts(False, False, lead=share("0.16"), contents=small)) == ["EUH201A"]
    assert supplement(MixtureFacts(False, False, titanium_dioxide=share("1"))) == ["? EUH211"]
    assert supplement(MixtureFacts(False, False, titanium_dioxide=share("1")), market="GB") == []


SENSITISERS = [
    ("0.1", "1", "", "aerosols/1", ["EUH208"]),
    ("0.09", "1", "", "aerosols/1", []),
    ("0.01", "1A", "", "aerosols/1", ["EUH208"]),
    ("0.5", "1", "", "aerosols/1 skin_sensitisation/1", []),
    ("0.5", "1", "EUH204", "aerosols/1", ["EUH208"]),
]


@pytest.mark.parametrize(("amount", "category", "covered", "text", "wanted"), SENSITISERS)
def test_sensitiser_below_the_class_limit(
    amount: str, category: str, covered: str, text: str, wanted: list[str]
) -> None:
    oxime = Sensitiser("an oxime", share(amount), "skin_sensitisation", category, covered)
    assert supplement(MixtureFacts(False, False, sensitisers=(oxime,)), text) == wanted


def test_sensitiser_covered_by_the_isocyanate_statement_is_not_named_again() -> None:
    monomer = Sensitiser("HDI", share("0.3"), "respiratory_sensitisation", "1", "EUH204")
    assert supplement(MixtureFacts(True, False, sensitisers=(monomer,))) == ["EUH204"]


def test_table_rows_cite_known_documents() -> None:
    for name in table_names():
        for row in table(name).rows:
            citation = table(name).row_citation(row)
            assert not citation.document or citation.document in documents(), (name, row)


def test_dates_of_the_tables_are_days() -> None:
    for name in (
        "label_dates",
        "exposure_limits",
        "voc_limits_eu",
        "reactivity_limits_california",
        "isocyanate_duties",
    ):
        for row in table(name).rows:
            for column in {"from", "until"} & set(table(name).columns):
                assert not row[column] or date.fromisoformat(row[column]), (name, row)


LABEL_DAYS = [
    # (EU) 2025/2439, Article 1(a), (b), (c), (f): what stays, and what moved; Commission notice and 23rd amendment
    ("clp_2024_label", "2026-07-01"),
    ("clp_2024_rest", "2027-01-01"),
    ("clp_2024_format", "2028-01-01"),
    ("clp_atp_23", "2027-02-01"),
    ("new_classes_new", "2026-05-01"),
    ("new_classes_old", "2028-05-01"),
]


@pytest.mark.parametrize(("id", "day"), LABEL_DAYS)
def test_days_of_the_amended_law(id: str, day: str) -> None:
    assert table("label_dates").row("id", id)["from"] == day


def test_times_to_put_a_label_right_begin_with_the_new_article_30() -> None:
    """(EU) 2024/2865, Article 1(14), moved by (EU) 2025/2439, Article 1(c) and (f)."""
    assert {(row["months"], row["from"]) for row in table("relabelling_times").rows} == {
        ("6", "2028-01-01"),
        ("18", "2028-01-01"),
    }


@pytest.mark.parametrize("code", ["EUH211", "EUH212"])
def test_annulled_statements_rest_on_a_second_hand_word(code: str) -> None:
    """Notice C/2025/6670, not read itself."""
    row = table("euh_triggers").row("id", code)
    assert "C/2025/6670" in row["note"]
    assert table("euh_triggers").row_citation(row).basis is Basis.SECONDARY
