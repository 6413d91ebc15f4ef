"""A registry number followed into the tables, each case with the document and clause it was read in."""

from __future__ import annotations

from datetime import date

import pytest

from specgen.facts.product.substances import Standing, rows_of, substance
from specgen.standards.tables import table

TODAY, LATER = date(2026, 11, 26), date(2027, 2, 1)
IPDI, DIAMINE, NAPHTHA, CUMENE, HDI = "4098-71-9", "2855-13-2", "64742-95-6", "98-82-8", "822-06-0"

# number, day, classes that hold, act of the entry: all of CLP Annex VI, Table 3.
CLASSES = [
    (
        IPDI,
        TODAY,
        "acute_inhalation/3 stot_single/3 skin_corrosion/2 eye_damage/2 respiratory_sensitisation/1 skin_sensitisation/1 aquatic_chronic/2",
        "32008R1272",
    ),
    (
        IPDI,
        date(2027, 1, 31),
        "acute_inhalation/3 stot_single/3 skin_corrosion/2 eye_damage/2 respiratory_sensitisation/1 skin_sensitisation/1 aquatic_chronic/2",
        "32008R1272",
    ),
    (
        IPDI,
        LATER,
        "acute_inhalation/1 skin_corrosion/1 eye_damage/1 respiratory_sensitisation/1 skin_sensitisation/1A aquatic_chronic/2",
        "32025R1222",
    ),
    (DIAMINE, TODAY, "acute_oral/4 skin_corrosion/1B eye_damage/1 skin_sensitisation/1A", "32021R0849"),
    (NAPHTHA, TODAY, "aspiration/1", "32011R0286"),
    (
        CUMENE,
        TODAY,
        "flammable_liquids/3 carcinogenicity/1B aspiration/1 stot_single/3 aquatic_chronic/2",
        "32022R0692",
    ),
    (
        HDI,
        LATER,
        "acute_inhalation/3 stot_single/3 skin_corrosion/2 eye_damage/2 respiratory_sensitisation/1 skin_sensitisation/1",
        "32008R1272",
    ),
    (
        "110-54-3",
        TODAY,
        "flammable_liquids/2 reproductive/2 aspiration/1 stot_single/3 stot_repeated/1 skin_corrosion/2 aquatic_chronic/2",
        "32024R2564",
    ),
    (
        "127-06-0",
        TODAY,
        "carcinogenicity/1B acute_dermal/4 stot_single/3 stot_repeated/2 eye_damage/1 skin_sensitisation/1",
        "32024R2564",
    ),
    (
        "50-00-0",
        TODAY,
        "carcinogenicity/1B mutagenicity/2 acute_inhalation/2 acute_oral/4 skin_corrosion/1B skin_sensitisation/1A",
        "32024R2564",
    ),
    ("136-52-7", TODAY, "reproductive/1B", "32023R1435"),
    (
        "1314-41-6",
        TODAY,
        "reproductive/1A acute_inhalation/4 acute_oral/4 stot_repeated/2 aquatic_acute/1 aquatic_chronic/1",
        "32008R1272",
    ),
    ("100-51-6", TODAY, "acute_oral/4 eye_damage/2 skin_sensitisation/1B", "32024R0197"),
    (
        "15625-89-5",
        TODAY,
        "carcinogenicity/2 skin_corrosion/2 eye_damage/2 skin_sensitisation/1 aquatic_acute/1 aquatic_chronic/1",
        "32022R0692",
    ),
    (
        "80-05-7",
        TODAY,
        "reproductive/1B stot_single/3 eye_damage/1 skin_sensitisation/1 aquatic_acute/1 aquatic_chronic/1",
        "32022R0692",
    ),
    ("74-98-6", TODAY, "flammable_gases/1A", "32008R1272"),
    ("106-97-8", TODAY, "flammable_gases/1A", "32008R1272"),
    ("115-10-6", TODAY, "flammable_gases/1A", "32008R1272"),
    ("2210-79-9", TODAY, "mutagenicity/2 skin_corrosion/2 skin_sensitisation/1 aquatic_chronic/2", "32008R1272"),
    ("2210-79-9", LATER, "mutagenicity/2 skin_corrosion/2 aquatic_chronic/2 skin_sensitisation/1A", "32025R1222"),
]


@pytest.mark.parametrize(("number", "on", "classes", "act"), CLASSES)
def test_harmonised_classes_on_a_day(number: str, on: date, classes: str, act: str) -> None:
    found = substance(number, on)
    assert found.standing is Standing.ENTRY
    assert found.entry is not None
    assert found.entry["act"] == act
    assert [f"{entry.hazard_class}/{entry.category}" for entry in found.classes] == classes.split()


# CLP Annex VI, Table 3, column of limits, M-factors and estimates; they must be used (Annex VI, 1.1.2.3).
LIMITS = [
    (IPDI, TODAY, "skin_sensitisation", "1", "0.5"),
    (IPDI, LATER, "skin_sensitisation", "1A", "0.001"),
    (IPDI, LATER, "respiratory_sensitisation", "1", "0.5"),
    (HDI, TODAY, "skin_sensitisation", "1", "0.5"),
    (HDI, TODAY, "respiratory_sensitisation", "1", "0.5"),
    (DIAMINE, TODAY, "skin_sensitisation", "1A", "0.001"),
    ("67-56-1", TODAY, "stot_single", "1", "10"),
    ("67-56-1", TODAY, "stot_single", "2", "3"),
    ("7439-92-1", TODAY, "reproductive", "1A", "0.03"),
]


@pytest.mark.parametrize(("number", "on", "hazard_class", "category", "least"), LIMITS)
def test_limits_the_law_sets(number: str, on: date, hazard_class: str, category: str, least: str) -> None:
    entry = substance(number, on).entry
    assert entry is not None
    cells = [cell.split() for cell in entry["limits"].split(", ")]
    assert [cell[3] for cell in cells if cell[:2] == [hazard_class, category]] == [least]


ESTIMATES = [
    (IPDI, LATER, {"mist": "0.03 mg/L"}),
    (IPDI, TODAY, {}),
    (DIAMINE, TODAY, {"oral": "1030 mg/kg"}),
    ("108-10-1", TODAY, {"vapour": "11 mg/L"}),
    ("111-76-2", TODAY, {"vapour": "3 mg/L", "oral": "1200 mg/kg"}),
    ("96-29-7", TODAY, {"dermal": "1100 mg/kg", "oral": "100 mg/kg"}),
    ("50-00-0", TODAY, {"gas": "100 ppm", "oral": "500 mg/kg"}),
]


@pytest.mark.parametrize(("number", "on", "estimates"), ESTIMATES)
def test_estimates_of_acute_toxicity(number: str, on: date, estimates: dict[str, str]) -> None:
    assert substance(number, on).estimates == estimates


def test_supplemental_statements_and_m_factors() -> None:
    """CLP Annex VI, Table 3: EUH071 of formaldehyde and, from the 23rd amendment on, of IPDI; factors of CMIT/MIT and IPBC."""
    assert substance("50-00-0", TODAY).supplemental == ("EUH071",)
    assert substance(IPDI, TODAY).supplemental == ()
    assert substance(IPDI, LATER).supplemental == ("EUH071",)
    factors = [("55965-84-9", TODAY, "100 100"), ("55406-53-6", TODAY, "10 1"), ("55406-53-6", LATER, "10 10")]
    for number, on, wanted in factors:
        entry = substance(number, on).entry
        assert entry is not None
        assert entry["m_factors"] == wanted


def test_an_asterisk_marks_the_mildest_category_that_may_be_given() -> None:
    """CLP Annex VI, 1.2.1: acute toxicity of HDI, and of IPDI until its entry is replaced."""
    for number, on, marked in ((HDI, TODAY, "acute_inhalation"), (IPDI, TODAY, "acute_inhalation"), (IPDI, LATER, "")):
        entry = substance(number, on).entry
        assert entry is not None
        assert entry["minimum"] == marked


def test_note_p_leaves_cancer_to_the_suppliers_proof() -> None:
    """CLP Annex VI, 1.1.3, note P: carcinogenic and mutagenic unless less than 0.1 % of benzene is shown."""
    found = substance(NAPHTHA, TODAY)
    assert found.entry is not None
    assert (found.entry["notes"], found.entry["classes"].split(", ")[:2]) == (
        "P",
        ["carcinogenicity 1B H350", "mutagenicity 1B H340"],
    )
    assert [entry.hazard_class for entry in found.classes] == ["aspiration"]


def test_what_comes_next_is_named_before_it_holds() -> None:
    coming = substance(IPDI, TODAY).coming
    assert coming is not None
    assert (coming["from"], coming["act"]) == ("2027-02-01", "32025R1222")
    assert substance(IPDI, LATER).coming is None
    pigment = substance("5160-02-1", TODAY)
    assert pigment.standing is Standing.NO_ENTRY
    assert pigment.coming is not None


def test_no_entry_is_told_from_never_looked_up() -> None:
    resin, unknown = substance("9003-36-5", TODAY), substance("7732-18-5", TODAY)
    assert (resin.standing, resin.name) == (Standing.NO_ENTRY, "epoxy resin of bisphenol F")
    assert unknown.standing is Standing.NOT_LOOKED_UP
    assert substance("", TODAY).standing is Standing.NO_NUMBER
    assert substance("13463-67-7", TODAY).standing is Standing.NO_ENTRY
    assert [row["group"] for row in rows_of("107-87-9")] == ["ketones"]
    assert rows_of("7732-18-5") == ()


def test_one_number_leads_to_physical_data_and_limits_at_work() -> None:
    found = substance("123-86-4", TODAY)
    assert found.physical is not None
    assert found.physical["flash_iec"] == "22"
    assert {limit.period for limit in found.at_work(("EU",), TODAY)} == {"8 h", "15 min"}
    assert substance("", TODAY).at_work(("EU",), TODAY) == ()


def test_every_substance_that_was_looked_up_stands_in_the_table() -> None:
    rows = table("harmonised_classes").rows
    numbers = {row["cas"] for row in rows if row["cas"]}
    assert len(numbers) + sum(1 for row in rows if not row["cas"]) == 184
    assert sum(1 for row in rows if not row["act"]) == 20
    # One row in force on a day: rows of one number follow each other without a gap or an overlap.
    for number in numbers:
        held = sorted((row["from"], row["until"]) for row in rows if row["cas"] == number)
        assert [until for _, until in held] == [*(start for start, _ in held[1:]), ""], number
